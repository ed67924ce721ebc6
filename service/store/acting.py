"""For whom a transaction acts. Row-level security shows it that account's rows, those of the account it stands on, and no others.

A query that forgets its filter then finds less, never a stranger's rows; a transaction that acts for nobody finds none. COPY
into such a table is refused by PostgreSQL: copy into a temporary table, then insert from that.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from sqlalchemy import func, select

if TYPE_CHECKING:
    from sqlalchemy.ext.asyncio import AsyncConnection

SETTING: Final = "inglewright.account"
ALL_ACCOUNTS: Final = "*"  # sees which accounts, price books and keys there are; nothing else, and writes nothing
SERVICE_ROLE: Final = "inglewright_service"


async def act_for(connection: AsyncConnection, account: str) -> None:
    """Act for an account until the transaction ends, or until the next call; the connection goes back to the pool as nobody's.

    Args:
        connection: with a transaction begun.
        account: the shop, or `ALL_ACCOUNTS`.
    """
    await connection.execute(select(func.set_config(SETTING, account, True)))  # noqa: FBT003 - PostgreSQL's own argument
