"""All keys that could open anything, in memory: no query for a request, and a revoked one gone everywhere within a second.

While the database is away the keys that are held go on, as the catalogues do: a revocation cannot be written then either.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Self

import msgspec
from sqlalchemy import func, or_, select

from service.store import access_tables
from service.store.access import HeldKey
from service.store.accounts import ShopStatus
from service.store.acting import ALL_ACCOUNTS, act_for
from service.store.following import Follower

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable
    from types import TracebackType

    from sqlalchemy.engine import URL
    from sqlalchemy.ext.asyncio import AsyncConnection

ENDED_DAYS = 7  # a key that ended lately is held, so that its holder is told so and not merely refused


class KeyRing:
    """Keys by their public part; `async with` follows the database meanwhile."""

    def __init__(self, url: str | URL) -> None:
        """Nothing is connected yet."""
        self._keys: dict[str, HeldKey] = {}
        self._follower = Follower(url, access_tables.KEYS_CHANNEL, self._load)

    def find(self, key_id: str) -> HeldKey | None:
        """A key by its public part; None: there is none, or it ended some time ago."""
        return self._keys.get(key_id)

    @property
    def is_loaded(self) -> bool:
        """Whether the keys have been read at all."""
        return self._follower.age_seconds is not None

    @property
    def is_stale(self) -> bool:
        """Whether a revocation may have been missed since the connection was lost."""
        return self._follower.is_stale

    async def wait_until_loaded(self, within_seconds: float) -> bool:
        """As `Follower.wait_until_loaded`."""
        return await self._follower.wait_until_loaded(within_seconds)

    async def __aenter__(self) -> Self:
        """Follow."""
        self._follower.start()
        return self

    async def __aexit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        """Follow no more; what is held stays held."""
        await self._follower.stop()

    async def _load(self, connection: AsyncConnection) -> Callable[[], None]:
        await act_for(connection, ALL_ACCOUNTS)
        found = [_held(row) for row in (await connection.execute(_query())).mappings()]

        def put_in_place() -> None:
            self._keys = {key.key_id: key for key in found}

        return put_in_place


def _query() -> Any:  # noqa: ANN401 - a query of the library
    key, shop = access_tables.access_key.c, access_tables.shop.c
    lately = func.now() - func.make_interval(0, 0, 0, ENDED_DAYS)
    columns = (
        key.key_id, key.account, key.kind, key.scopes, key.secret_digest, key.expires_at, key.revoked_at,
        shop.origins, (shop.status == ShopStatus.SUSPENDED).label("is_suspended"),
    )  # fmt: skip
    joined = access_tables.access_key.join(access_tables.shop, key.account == shop.account)
    return (
        select(*columns)
        .select_from(joined)
        .where(or_(key.revoked_at.is_(None), key.revoked_at > lately), or_(key.expires_at.is_(None), key.expires_at > lately))
    )


def _held(row: Any) -> HeldKey:  # noqa: ANN401 - a row of the driver
    return msgspec.convert({name: row[name] for name in HeldKey.__struct_fields__}, HeldKey)


def has_ended(key: HeldKey, now: dt.datetime) -> bool:
    """Whether a key is past its end."""
    return key.expires_at is not None and key.expires_at <= now
