"""One door to the price books of the accounts, for the web and the command."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.store import audit, books, importing, own_rows, publishing, reading
from service.store.faults import NoCatalogueError

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import AsyncIterator, Sequence

    from sqlalchemy.ext.asyncio import AsyncEngine

    from service.catalogue import Catalogue, Faults, Row, RowKind


class BookDesk:
    """Works on one pool of connections, with `WRITE_LIMITS`; each method raises as what it names."""

    def __init__(self, engine: AsyncEngine) -> None:
        """Work on a pool, which the caller disposes of."""
        self._engine = engine

    async def make_book(self, account: str, price_book: str, *, actor: str) -> bool:
        """See `books.make_book`."""
        return await books.make_book(self._engine, account, price_book, actor=actor)

    async def list_books(self, account: str) -> tuple[books.Book, ...]:
        """See `books.list_books`."""
        return await books.list_books(self._engine, account)

    async def list_revisions(self, account: str, price_book: str) -> tuple[books.BookRevision, ...]:
        """See `books.list_revisions`."""
        return await books.list_revisions(self._engine, account, price_book)

    async def read_draft(self, account: str, price_book: str) -> publishing.Draft:
        """See `publishing.read_draft`."""
        return await publishing.read_draft(self._engine, account, price_book)

    async def read_own_rows(self, account: str, price_book: str, kind: RowKind) -> tuple[Row, ...]:
        """See `own_rows.read_own_rows`."""
        return await own_rows.read_own_rows(self._engine, account, price_book, kind)

    async def read_in_force(self, account: str, price_book: str, on: dt.date | None = None) -> Catalogue | None:
        """What holds on a day, by default today; None: nothing does. See `reading.read_catalogue`."""
        try:
            return await reading.read_catalogue(self._engine, account, price_book, on)
        except NoCatalogueError:
            return None

    async def discard_draft(self, account: str, price_book: str, *, actor: str) -> None:
        """See `books.discard_draft`."""
        await books.discard_draft(self._engine, account, price_book, actor=actor)

    async def import_rows(
        self, order: importing.ImportOrder, pieces: AsyncIterator[Sequence[Row]], faults: Faults
    ) -> importing.Imported:
        """See `importing.import_rows`."""
        return await importing.import_rows(self._engine, order, pieces, faults)

    async def publish(self, order: publishing.PublishOrder) -> str:
        """See `publishing.publish`."""
        return await publishing.publish(self._engine, order)

    async def withdraw(self, order: publishing.WithdrawOrder) -> dt.date:
        """See `publishing.withdraw`."""
        return await publishing.withdraw(self._engine, order)

    async def read_audit(
        self, account: str, price_book: str, *, before_count: int | None = None, limit_count: int = 50
    ) -> tuple[audit.AuditEntry, ...]:
        """See `audit.read_audit`."""
        return await audit.read_audit(
            self._engine, account, price_book=price_book, before_count=before_count, limit_count=limit_count
        )
