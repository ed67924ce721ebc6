"""Catalogues held in memory: fresh within moments of a change, and still there when PostgreSQL is away."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING, Self

import msgspec
from sqlalchemy import NullPool, func, select
from sqlalchemy.ext.asyncio import create_async_engine

from service.store import tables
from service.store.acting import act_for
from service.store.book_index import read_index
from service.store.engine import connect_arguments, database_url
from service.store.following import LOAD_LIMITS, Follower
from service.store.frozen import read_parts
from service.store.reading import DEMO, ONE_MOMENT, catalogue_on
from service.store.snapshots import Snapshots

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable
    from types import TracebackType

    from sqlalchemy.engine import URL
    from sqlalchemy.ext.asyncio import AsyncConnection

    from service.catalogue import Catalogue
    from service.store.book_index import IndexedBook, IndexedRevision

KEPT_COUNT = 8  # revisions kept for requests and jobs that began with them


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
        self._current: dict[str, Catalogue] = {}
        self._snapshots = Snapshots(KEPT_COUNT)
        self._index: tuple[IndexedBook, ...] = ()
        self._fetching: dict[tuple[str, str], asyncio.Lock] = {}
        self._read_at: tuple[int, dt.date] | None = None
        self._follower = Follower(url, tables.CHANNEL, self._load, self._forget_count)
        self._follower.poll_seconds = poll_seconds

    def current(self, account: str = DEMO) -> Catalogue | None:
        """The newest catalogue held of an account, at today's prices of its default price book; None: none is held."""
        return self._current.get(account)

    def held(self, account: str, revision: str) -> Catalogue | None:
        """A catalogue by its revision: the current one or one of the last few before it; None: no longer held."""
        return self._snapshots.get(account, revision)

    def revision_on(self, account: str, price_book: str | None, day: str) -> str | None:
        """Name of the revision of a book (None: the default one) that holds on a day; None: none does, or no such book."""
        book = self._book(account, price_book)
        found = None if book is None else book.on(day)
        if found is None:
            return None
        if found.part_digests is None:  # published before revisions were frozen: there is one catalogue for all of its days
            return self._current[account].revision if account in self._current else None
        return found.dated.catalogue_revision

    async def fetch(self, account: str, revision: str) -> Catalogue | None:
        """A catalogue by its revision, out of the database where it is not held; None: there is no such revision.

        Raises:
            OSError, sqlalchemy.exc.SQLAlchemyError: the database is away, see `is_database_away`.
        """
        lock = self._fetching.setdefault((account, revision), asyncio.Lock())
        try:
            async with lock:  # one request fetches, the others find it
                return self._snapshots.get(account, revision) or await self._fetch(account, revision)
        finally:
            if not lock.locked():
                self._fetching.pop((account, revision), None)

    def accounts(self) -> tuple[str, ...]:
        """The accounts of which a catalogue is held, sorted."""
        return tuple(sorted(self._current))

    def state(self) -> KeeperState:
        """Whether anything is held, and how far it can be relied on to be the newest."""
        return KeeperState(
            loaded=bool(self._current),
            stale=self._follower.is_stale,
            age_seconds=self._follower.age_seconds,
            version_count=self._read_at[0] if self._read_at else None,
        )

    async def wait_until_loaded(self, within_seconds: float) -> bool:
        """As `Follower.wait_until_loaded`."""
        return await self._follower.wait_until_loaded(within_seconds)

    def start(self) -> None:
        """Begin to follow; again is fine."""
        self._follower.start()

    async def stop(self) -> None:
        """Follow no more; what is held stays held. Again is fine."""
        await self._follower.stop()

    async def __aenter__(self) -> Self:
        """Start."""
        self.start()
        return self

    async def __aexit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        """Stop."""
        await self.stop()

    def _forget_count(self) -> None:
        """The same count may be another database's: a copy put back, say."""
        self._read_at = None

    async def _load(self, connection: AsyncConnection) -> Callable[[], None]:
        """Read what changed, all accounts in one moment, to be put in place at once."""
        read_at = await _version(connection)
        if read_at == self._read_at:
            return lambda: None
        index = await read_index(connection)
        current = await self._read_current(connection, index, read_at[1].isoformat())

        def put_in_place() -> None:
            self._index, self._current, self._read_at = index, current, read_at
            self._snapshots.keep_only({book.account for book in index})

        return put_in_place

    async def _read_current(
        self, connection: AsyncConnection, index: tuple[IndexedBook, ...], today: str
    ) -> dict[str, Catalogue]:
        """The catalogue of each account that has prices in its default price book."""
        current = {}
        for book in index:
            found = book.today_or_first(today) if book.is_default else None
            if found is not None:
                current[book.account] = await self._read(connection, book, found, is_current=True)
        return current

    async def _read(
        self, connection: AsyncConnection, book: IndexedBook, found: IndexedRevision, *, is_current: bool
    ) -> Catalogue:
        """A revision as it is held; else out of the database, with the parts that are not held."""
        if found.part_digests is None:
            return self._snapshots.put(await catalogue_on(connection, book.account, book.price_book), is_current=is_current)
        name = found.dated.catalogue_revision
        if (held := self._snapshots.get(book.account, name)) is not None:
            return self._snapshots.put(held, is_current=is_current)
        await act_for(connection, book.account)
        values = await read_parts(connection, book.account, found.part_digests, self._snapshots.parts)
        parts = dict(zip(found.part_digests, values, strict=True))
        return self._snapshots.put_parts(name, book.price_book, parts, is_current=is_current)

    async def _fetch(self, account: str, revision: str) -> Catalogue | None:
        named = ((book, book.named(revision)) for book in self._index if book.account == account)
        book, found = next(((book, one) for book, one in named if one is not None), (None, None))
        if book is None or found is None or found.part_digests is None:
            return None
        engine = create_async_engine(self._url, poolclass=NullPool, connect_args=connect_arguments(LOAD_LIMITS))
        try:
            async with engine.connect() as connection:
                moment = await connection.execution_options(**ONE_MOMENT)
                async with moment.begin():
                    return await self._read(moment, book, found, is_current=False)
        finally:
            await engine.dispose()

    def _book(self, account: str, price_book: str | None) -> IndexedBook | None:
        return next(
            (
                book
                for book in self._index
                if book.account == account and (book.is_default if price_book is None else book.price_book == price_book)
            ),
            None,
        )


async def _version(connection: AsyncConnection) -> tuple[int, dt.date]:
    """Count of changes, and the day, as prices also change at midnight."""
    row = (await connection.execute(select(tables.catalogue_version.c.version_count, func.current_date()))).one()
    return row[0], row[1]
