"""Catalogues held in memory: fresh within moments of a change, and still there when PostgreSQL is away."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import random
import time
from typing import TYPE_CHECKING, Self

import msgspec
from sqlalchemy import NullPool, func, select
from sqlalchemy.ext.asyncio import create_async_engine

from service.store import tables
from service.store.acting import ALL_ACCOUNTS, act_for
from service.store.engine import EngineLimits, connect_arguments, database_url
from service.store.faults import NoCatalogueError, is_database_away
from service.store.reading import DEMO, ONE_MOMENT, catalogue_on

if TYPE_CHECKING:
    import datetime as dt
    from types import TracebackType

    import asyncpg
    from sqlalchemy.engine import URL
    from sqlalchemy.ext.asyncio import AsyncConnection

    from service.catalogue import Catalogue

CLOSED = "the connection was closed before it could listen"
LOGGER = logging.getLogger(__name__)
LEAST_WAIT_SECONDS = 0.2
GREATEST_WAIT_SECONDS = 10.0
KEPT_COUNT = 8  # revisions kept for requests and jobs that began with them
LOAD_LIMITS = EngineLimits(statement_seconds=20.0, command_seconds=25.0)


class KeeperState(msgspec.Struct, frozen=True, kw_only=True):
    """What the keeper holds, for readiness and metrics."""

    loaded: bool  # at least one catalogue is held
    stale: bool  # the database has not confirmed it since the connection was lost
    age_seconds: float | None  # since the database last confirmed it; None: never
    version_count: int | None  # the database's count of changes that it was read at


class CatalogueKeeper:
    """Follows the catalogue tables in one task, on one connection of its own; `async with` starts and stops it."""

    def __init__(self, url: str | URL, *, poll_seconds: float = 30.0) -> None:
        """Nothing is connected yet.

        Args:
            url: the database. Not through a pooler that gives each transaction another connection: notices would be lost.
            poll_seconds: look at least this often, should a notice be lost or a new day begin.
        """
        self._url = database_url(url)
        self._poll_seconds = poll_seconds
        self._wait_seconds = LEAST_WAIT_SECONDS
        self._current: dict[str, Catalogue] = {}
        self._kept: dict[str, dict[str, Catalogue]] = {}
        self._read_at: tuple[int, dt.date] | None = None
        self._confirmed_at_seconds: float | None = None
        self._connected = False
        self._loaded = asyncio.Event()
        self._task: asyncio.Task[None] | None = None

    def current(self, account: str = DEMO) -> Catalogue | None:
        """The newest catalogue held of an account, at today's prices of its default price book; None: none is held."""
        return self._current.get(account)

    def held(self, account: str, revision: str) -> Catalogue | None:
        """A catalogue by its revision: the current one or one of the last few before it; None: no longer held."""
        return self._kept.get(account, {}).get(revision)

    def accounts(self) -> tuple[str, ...]:
        """The accounts of which a catalogue is held, sorted."""
        return tuple(sorted(self._current))

    def state(self) -> KeeperState:
        """Whether anything is held, and how far it can be relied on to be the newest."""
        confirmed = self._confirmed_at_seconds
        age_seconds = None if confirmed is None else time.monotonic() - confirmed
        return KeeperState(
            loaded=bool(self._current),
            # A server that is frozen keeps the connection and says nothing: two looks missed are as bad as none.
            stale=not self._connected or age_seconds is None or age_seconds > 2 * self._poll_seconds,
            age_seconds=age_seconds,
            version_count=self._read_at[0] if self._read_at else None,
        )

    async def wait_until_loaded(self, within_seconds: float) -> bool:
        """Wait for the first load; False: it did not come in time, and the keeper goes on trying."""
        with contextlib.suppress(TimeoutError):
            await asyncio.wait_for(self._loaded.wait(), within_seconds)
        return self._loaded.is_set()

    def start(self) -> None:
        """Begin to follow; again is fine."""
        if self._task is None:
            self._task = asyncio.create_task(self._follow(), name="catalogue keeper")

    async def stop(self) -> None:
        """End the task and its connection; what is held stays held. Again is fine."""
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
                LOGGER.warning("catalogue not followed: %r", error, exc_info=not is_database_away(error))
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

        self._read_at = None  # the same count may be another database's: a copy put back, say
        driver.add_termination_listener(lost)
        await driver.add_listener(tables.CHANNEL, noticed)
        while True:
            changed.clear()
            await self._load(connection)
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(changed.wait(), self._poll_seconds)

    async def _load(self, connection: AsyncConnection) -> None:
        """Read what changed, all accounts in one moment, and put it in place at once."""
        async with connection.begin():
            read_at = await _version(connection)
            changed = await _catalogues(connection) if read_at != self._read_at else None
        if changed is not None:
            self._put(changed, read_at)
        self._confirmed_at_seconds = time.monotonic()
        self._connected = True
        self._wait_seconds = LEAST_WAIT_SECONDS
        self._loaded.set()

    def _put(self, catalogues: list[Catalogue], read_at: tuple[int, dt.date]) -> None:
        kept: dict[str, dict[str, Catalogue]] = {}
        for catalogue in catalogues:
            owner = catalogue.account.account
            before = self._kept.get(owner, {})
            same = before.get(catalogue.revision, catalogue)  # an equal one that callers hold already stays the one
            others = [(revision, held) for revision, held in before.items() if revision != same.revision]
            kept[owner] = dict([*others, (same.revision, same)][-KEPT_COUNT:])
        self._kept = kept
        self._current = {owner: next(reversed(revisions.values())) for owner, revisions in kept.items()}
        self._read_at = read_at


async def _version(connection: AsyncConnection) -> tuple[int, dt.date]:
    """Count of changes, and the day, as prices also change at midnight."""
    row = (await connection.execute(select(tables.catalogue_version.c.version_count, func.current_date()))).one()
    return row[0], row[1]


async def _catalogues(connection: AsyncConnection) -> list[Catalogue]:
    """The catalogue of each account that has prices in its default price book."""
    book = tables.price_book.c
    found = []
    await act_for(connection, ALL_ACCOUNTS)
    for row in await connection.execute(select(book.account, book.price_book).where(book.is_default).order_by(book.account)):
        try:
            found.append(await catalogue_on(connection, row.account, row.price_book))
        except NoCatalogueError as error:
            LOGGER.info("account passed over: %s", error)
    return found
