"""Parts of published revisions in the database: written once, read by their digests."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING

from sqlalchemy import select
from sqlalchemy.dialects.postgresql import insert as insert_or_nothing

from service.catalogue import PARTS, FrozenPart, PartBrokenError, thaw_part
from service.store import tables

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sqlalchemy.ext.asyncio import AsyncConnection


async def write_parts(connection: AsyncConnection, account: str, parts: Sequence[FrozenPart]) -> None:
    """Keep the parts of a revision; those that an earlier one of the account has are there already."""
    rows = [{"account": account, "digest": part.digest, "content": part.content} for part in parts]
    await connection.execute(insert_or_nothing(tables.frozen_part).on_conflict_do_nothing(), rows)


async def read_parts(
    connection: AsyncConnection, account: str, digests: Sequence[str], held: Mapping[str, object]
) -> tuple[object, ...]:
    """The values of the parts of a revision.

    Args:
        connection: acting for the account.
        account: whose.
        digests: in the order of `PARTS`; parts that a later version of the service added are not among them.
        held: values by digest that need not be read again.

    Raises:
        PartBrokenError: a part is missing, or is not what its digest says.
    """
    part = tables.frozen_part.c
    wanted = {digest for digest in digests if digest not in held}
    query = select(part.digest, part.content).where(part.account == account, part.digest.in_(wanted))
    found = {row.digest: row.content for row in await connection.execute(query)} if wanted else {}
    if missing := wanted - found.keys():
        message = f"parts of a revision of {account!r} are missing: {', '.join(sorted(missing))}"
        raise PartBrokenError(message)
    fresh = [
        (name, FrozenPart(digest=one, content=found[one])) for name, one in zip(PARTS, digests, strict=False) if one in found
    ]
    values = await asyncio.to_thread(lambda: {one.digest: thaw_part(name, one) for name, one in fresh})
    return tuple(values[digest] if digest in values else held[digest] for digest in digests)
