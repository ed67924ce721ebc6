"""Which revisions all price books have, and on which days they hold: small enough to be held by each process."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

import msgspec
from sqlalchemy import and_, select

from service.catalogue import DatedRevision, in_force
from service.store import tables
from service.store.acting import ALL_ACCOUNTS, act_for
from service.store.publishing import as_dated
from service.store.tables import RevisionState

if TYPE_CHECKING:
    from sqlalchemy import RowMapping
    from sqlalchemy.ext.asyncio import AsyncConnection


class IndexedRevision(msgspec.Struct, frozen=True, kw_only=True):
    """A revision that was published."""

    dated: DatedRevision
    part_digests: tuple[str, ...] | None  # None: published before revisions were frozen


class IndexedBook(msgspec.Struct, frozen=True, kw_only=True):
    """A price book and its revisions."""

    account: str
    price_book: str
    is_default: bool
    revisions: tuple[IndexedRevision, ...]

    def on(self, day: str) -> IndexedRevision | None:
        """The revision that holds on a day."""
        found = in_force((one.dated for one in self.revisions), day)
        return next((one for one in self.revisions if one.dated is found), None)

    def today_or_first(self, today: str) -> IndexedRevision | None:
        """The revision that holds today; of a book that is yet to begin, the first."""
        coming = [one for one in self.revisions if one.dated.withdrawn_from is None]
        return self.on(today) or min(coming, key=lambda one: one.dated.effective_from, default=None)

    def named(self, catalogue_revision: str) -> IndexedRevision | None:
        """The revision of a name."""
        return next((one for one in self.revisions if one.dated.catalogue_revision == catalogue_revision), None)


async def read_index(connection: AsyncConnection) -> tuple[IndexedBook, ...]:
    """All books of all accounts, by account and name; the transaction acts for all accounts from here on."""
    await act_for(connection, ALL_ACCOUNTS)
    book, revision = tables.price_book, tables.price_book_revision
    own = and_(
        revision.c.account == book.c.account, revision.c.price_book == book.c.price_book, revision.c.state != RevisionState.DRAFT
    )
    names = ("revision_id", "effective_from", "state", "withdrawn_from", "catalogue_revision", "part_digests")
    query = select(book, *(revision.c[name] for name in names)).join_from(book, revision, own, isouter=True)
    rows = (await connection.execute(query.order_by(book.c.account, book.c.price_book, revision.c.revision_id))).mappings()
    groups = groupby(rows, key=lambda row: (row["account"], row["price_book"], row["is_default"]))
    return tuple(
        IndexedBook(account=name[0], price_book=name[1], is_default=name[2], revisions=tuple(map(_revision, _published(group))))
        for name, group in groups
    )


def _published(rows: object) -> list[RowMapping]:
    return [row for row in rows if row["revision_id"] is not None]  # type: ignore[attr-defined]  # a group of rows


def _revision(row: RowMapping) -> IndexedRevision:
    digests = row["part_digests"]
    return IndexedRevision(dated=as_dated(row), part_digests=None if digests is None else tuple(digests))
