"""One door to the keys of an account, for the web."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.store import keys

if TYPE_CHECKING:
    import datetime as dt

    from sqlalchemy.ext.asyncio import AsyncEngine

    from service.store.access import KeyRow, MadeKey, NewKey


class KeyDesk:
    """Makes, lists, rotates and revokes keys on one pool of connections; each method raises as its namesake in `keys`."""

    def __init__(self, engine: AsyncEngine) -> None:
        """Work on a pool, which the caller disposes of."""
        self._engine = engine

    async def create(self, account: str, new: NewKey) -> MadeKey:
        """See `create_key`."""
        return await keys.create_key(self._engine, account, new)

    async def list(self, account: str) -> tuple[KeyRow, ...]:
        """See `list_keys`."""
        return await keys.list_keys(self._engine, account)

    async def rotate(self, account: str, key_id: str, overlap: dt.timedelta) -> MadeKey:
        """See `rotate_key`."""
        return await keys.rotate_key(self._engine, account, key_id, overlap)

    async def revoke(self, account: str, key_id: str) -> KeyRow:
        """See `revoke_key`."""
        return await keys.revoke_key(self._engine, account, key_id)
