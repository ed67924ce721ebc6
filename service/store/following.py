"""Following something in the database: told of each change at once, looked at now and then, connected again after any fault."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import random
import time
from typing import TYPE_CHECKING, Final, Self

from sqlalchemy import NullPool
from sqlalchemy.ext.asyncio import create_async_engine

from service.store.engine import EngineLimits, connect_arguments, database_url
from service.store.faults import is_database_away
from service.store.reading import ONE_MOMENT

if TYPE_CHECKING:
    from collections.abc import Awaitable, Callable
    from types import TracebackType

    import asyncpg
    from sqlalchemy.engine import URL
    from sqlalchemy.ext.asyncio import AsyncConnection

CLOSED: Final = "the connection was closed before it could listen"
LOGGER = logging.getLogger(__name__)
LEAST_WAIT_SECONDS: Final = 0.2
GREATEST_WAIT_SECONDS: Final = 10.0
LOAD_LIMITS: Final = EngineLimits(statement_seconds=20.0, command_seconds=25.0)


type Load = Callable[[AsyncConnection], Awaitable[Callable[[], None]]]


def _nothing() -> None:
    """Where nothing is to be done."""


class Follower:
    """Calls for a load at the start, at each notice and at each poll; one task, one connection; `async with` starts and stops."""

    def __init__(self, url: str | URL, channel: str, load: Load, connected: Callable[[], None] = _nothing) -> None:
        """Nothing is connected yet.

        Args:
            url: the database. Not through a pooler that gives each transaction another connection: notices would be lost.
            channel: where notices come.
            load: reads what is followed, in a transaction that is open already and sees one moment; what it yields puts that in
                place once the transaction is over, with no wait between, so that what is in place is never called stale.
            connected: called on each new connection, before the first load on it: it may be to another database.
        """
        self.poll_seconds = 30.0
        self._connected_anew = connected
        self._url = database_url(url)
        self._channel = channel
        self._load = load
        self._wait_seconds = LEAST_WAIT_SECONDS
        self._confirmed_at_seconds: float | None = None
        self._connected = False
        self._loaded = asyncio.Event()
        self._task: asyncio.Task[None] | None = None

    @property
    def age_seconds(self) -> float | None:
        """Since the database last confirmed what was loaded; None: never."""
        return None if self._confirmed_at_seconds is None else time.monotonic() - self._confirmed_at_seconds

    @property
    def is_stale(self) -> bool:
        """Whether the connection is lost, or two looks were missed: a frozen server keeps the connection and says nothing."""
        return not self._connected or self.age_seconds is None or self.age_seconds > 2 * self.poll_seconds

    async def wait_until_loaded(self, within_seconds: float) -> bool:
        """Wait for the first load; False: it did not come in time, and the follower goes on trying."""
        with contextlib.suppress(TimeoutError):
            await asyncio.wait_for(self._loaded.wait(), within_seconds)
        return self._loaded.is_set()

    def start(self) -> None:
        """Begin to follow; again is fine."""
        if self._task is None:
            self._task = asyncio.create_task(self._follow(), name=f"follower of {self._channel}")

    async def stop(self) -> None:
        """End the task and its connection. Again is fine."""
        task, self._task = self._task, None
        if task is not None:
            task.cancel()
            await asyncio.gather(task, return_exceptions=True)
            self._connected = False

    async def __aenter__(self) -> Self:
        """Start."""
        self.start()
        return self

    async def __aexit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        """Stop."""
        await self.stop()

    async def _follow(self) -> None:
        """Connect and listen for ever; after a fault wait, longer each time, and connect again."""
        engine = create_async_engine(self._url, poolclass=NullPool, connect_args=connect_arguments(LOAD_LIMITS))
        while True:
            try:
                async with engine.connect() as connection:
                    await self._listen(await connection.execution_options(**ONE_MOMENT))
            except Exception as error:
                LOGGER.warning("%s not followed: %r", self._channel, error, exc_info=not is_database_away(error))
            self._connected = False
            # Jitter, so that the replicas do not all come back at once.
            await asyncio.sleep(self._wait_seconds * random.uniform(0.5, 1.0))  # noqa: S311 - no secret
            self._wait_seconds = min(2 * self._wait_seconds, GREATEST_WAIT_SECONDS)

    async def _listen(self, connection: AsyncConnection) -> None:
        """Listen first, then load, so that no change falls between; ends only by a fault."""
        driver: asyncpg.Connection[asyncpg.Record] | None = (await connection.get_raw_connection()).driver_connection
        if driver is None:
            raise ConnectionError(CLOSED)
        changed = asyncio.Event()

        def lost(_: object) -> None:
            self._connected = False
            changed.set()

        def noticed(*_: object) -> None:
            changed.set()

        self._connected_anew()
        driver.add_termination_listener(lost)
        await driver.add_listener(self._channel, noticed)
        while True:
            changed.clear()
            async with connection.begin():
                put_in_place = await self._load(connection)
            put_in_place()
            self._confirmed_at_seconds = time.monotonic()
            self._connected = True
            self._wait_seconds = LEAST_WAIT_SECONDS
            self._loaded.set()
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(changed.wait(), self.poll_seconds)
