"""When each key was last used, kept in memory and written together once a minute: no write for a request."""

from __future__ import annotations

import asyncio
import contextlib
import logging
from itertools import groupby
from typing import TYPE_CHECKING, Final, Self

from sqlalchemy import DateTime, Text, column, func, select, values
from sqlalchemy.dialects.postgresql import insert

from service.store import access_tables
from service.store.acting import act_for
from service.store.faults import is_database_away

if TYPE_CHECKING:
    import datetime as dt
    from types import TracebackType

    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

LOGGER = logging.getLogger(__name__)
WRITE_SECONDS: Final = 60.0


class KeyUses:
    """Notes uses; `async with` writes them meanwhile, and what is left at the end."""

    def __init__(self, engine: AsyncEngine, *, write_seconds: float = WRITE_SECONDS) -> None:
        """Nothing is written yet."""
        self._engine = engine
        self._write_seconds = write_seconds
        self._noted: dict[tuple[str, str], dt.datetime] = {}  # by account and key: as many as there are keys at most
        self._task: asyncio.Task[None] | None = None

    def note(self, account: str, key_id: str, at: dt.datetime) -> None:
        """A key was used."""
        self._noted[account, key_id] = at

    async def write(self) -> None:
        """Write what was noted; if the database is away it stays noted."""
        noted, self._noted = self._noted, {}
        try:
            async with self._engine.begin() as connection:
                for account, uses in groupby(sorted(noted.items()), key=lambda use: use[0][0]):
                    await _write(connection, account, {key_id: at for (_, key_id), at in uses})
        except Exception as error:
            LOGGER.warning("last uses of keys not written: %r", error, exc_info=not is_database_away(error))
            self._noted = noted | self._noted

    async def __aenter__(self) -> Self:
        """Begin to write now and then."""
        self._task = asyncio.create_task(self._go_on(), name="last uses of keys")
        return self

    async def __aexit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        """Write the rest."""
        if self._task is not None:
            self._task.cancel()
            with contextlib.suppress(asyncio.CancelledError):
                await self._task
        await self.write()

    async def _go_on(self) -> None:
        while True:
            await asyncio.sleep(self._write_seconds)
            await self.write()


async def _write(connection: AsyncConnection, account: str, uses: dict[str, dt.datetime]) -> None:
    """One statement for a shop; a key that is gone meanwhile is passed over."""
    await act_for(connection, account)
    use, key = access_tables.access_key_use, access_tables.access_key
    noted = values(column("key_id", Text()), column("at", DateTime(timezone=True)), name="noted").data(list(uses.items()))
    found = select(key.c.account, key.c.key_id, noted.c.at).join_from(key, noted, key.c.key_id == noted.c.key_id)
    new = insert(use).from_select(["account", "key_id", "last_used_at"], found.where(key.c.account == account))
    # Another process may have noted a later one.
    latest = func.greatest(use.c.last_used_at, new.excluded.last_used_at)
    await connection.execute(new.on_conflict_do_update(index_elements=["key_id"], set_={"last_used_at": latest}))
