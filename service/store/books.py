"""Price books: their revisions and one draft each. Every write of an account's books holds one lock, and is all or nothing."""

from __future__ import annotations

import datetime as dt
from contextlib import asynccontextmanager
from enum import StrEnum
from typing import TYPE_CHECKING, Final

import msgspec
from sqlalchemy import delete, func, insert, literal, select, true, update
from sqlalchemy.dialects.postgresql import insert as insert_or_nothing

from service.store import tables
from service.store.acting import act_for
from service.store.audit import note
from service.store.engine import EngineLimits
from service.store.reading import ONE_MOMENT
from service.store.tables import AuditAction, RevisionState

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

# An import of 100 000 rows takes seconds, and one write of an account waits for the one before.
WRITE_LIMITS: Final = EngineLimits(
    pool_size_count=2, overflow_count=2, statement_seconds=60.0, command_seconds=65.0, lock_seconds=15.0
)
NO_DIGEST: Final = "0" * 64  # of a draft that nothing was imported into
NEWEST_FIRST: Final = (tables.price_book_revision.c.effective_from.desc(), tables.price_book_revision.c.revision_id.desc())


class Trouble(StrEnum):
    """Why something cannot be done with a book; one for each remedy."""

    NO_BOOK = "no_book"
    NO_DRAFT = "no_draft"
    NO_REVISION = "no_revision"
    DRAFT_CHANGED = "draft_changed"
    DRAFT_UNSOUND = "draft_unsound"
    DAY_HAS_PASSED = "day_has_passed"
    NOTHING_WOULD_HOLD = "nothing_would_hold"


class BookError(Exception):
    """Something that cannot be done with a book; nothing was changed."""

    def __init__(self, trouble: Trouble, detail: str) -> None:
        """Keep both."""
        super().__init__(detail)
        self.trouble = trouble
        self.detail = detail


class BookRevision(msgspec.Struct, frozen=True, kw_only=True):
    """A revision of a price book that was published."""

    catalogue_revision: str | None  # None: it was published before revisions were frozen
    effective_from: dt.date
    state: RevisionState
    source_digest: str
    published_at: dt.datetime
    withdrawn_from: dt.date | None


class Book(msgspec.Struct, frozen=True, kw_only=True):
    """A price book."""

    price_book: str
    is_default: bool
    has_draft: bool


@asynccontextmanager
async def writing(engine: AsyncEngine, account: str) -> AsyncIterator[AsyncConnection]:
    """A transaction that acts for an account and holds the lock of its books."""
    async with engine.begin() as connection:
        await act_for(connection, account)
        await connection.execute(select(func.pg_advisory_xact_lock(func.hashtextextended(f"books:{account}", 0))))
        yield connection


@asynccontextmanager
async def reading(engine: AsyncEngine, account: str) -> AsyncIterator[AsyncConnection]:
    """A transaction that acts for an account and sees one moment."""
    async with engine.connect() as connection:
        moment = await connection.execution_options(**ONE_MOMENT)
        async with moment.begin():
            await act_for(moment, account)
            yield moment


async def make_book(engine: AsyncEngine, account: str, price_book: str, *, actor: str) -> bool:
    """Make a price book; the first of an account is its default.

    Returns:
        Whether it was made; False: it was there already.
    """
    book = tables.price_book
    async with writing(engine, account) as connection:
        others = (await connection.execute(select(func.count()).where(book.c.account == account))).scalar_one()
        values = {"account": account, "price_book": price_book, "is_default": not others}
        made = await connection.execute(
            insert_or_nothing(book).values(values).on_conflict_do_nothing().returning(book.c.price_book)
        )
        if is_new := made.one_or_none() is not None:
            await note(connection, account, actor, AuditAction.BOOK_MADE, price_book=price_book)
    return is_new


async def list_books(engine: AsyncEngine, account: str) -> tuple[Book, ...]:
    """The price books of an account, by name."""
    book, revision = tables.price_book.c, tables.price_book_revision.c
    draft = (
        select(true())
        .where(revision.account == book.account, revision.price_book == book.price_book, revision.state == RevisionState.DRAFT)
        .exists()
    )
    query = select(book.price_book, book.is_default, draft.label("has_draft")).where(book.account == account)
    async with reading(engine, account) as connection:
        rows = await connection.execute(query.order_by(book.price_book))
        return tuple(Book(**row._asdict()) for row in rows)


async def list_revisions(engine: AsyncEngine, account: str, price_book: str) -> tuple[BookRevision, ...]:
    """The revisions of a book that were published, the latest first.

    Raises:
        BookError: there is no such book.
    """
    revision = tables.price_book_revision.c
    query = (
        select(*(revision[name] for name in BookRevision.__struct_fields__))
        .where(revision.account == account, revision.price_book == price_book, revision.state != RevisionState.DRAFT)
        .order_by(*NEWEST_FIRST)
    )
    async with reading(engine, account) as connection:
        await find_book(connection, account, price_book)
        rows = await connection.execute(query)
        return tuple(msgspec.convert(dict(zip(BookRevision.__struct_fields__, row, strict=True)), BookRevision) for row in rows)


async def find_book(connection: AsyncConnection, account: str, price_book: str) -> None:
    """Raise BookError where there is no such book."""
    book = tables.price_book.c
    query = select(book.price_book).where(book.account == account, book.price_book == price_book)
    if (await connection.execute(query)).one_or_none() is None:
        raise BookError(Trouble.NO_BOOK, f"There is no price book {price_book!r}.")


async def find_draft(connection: AsyncConnection, account: str, price_book: str) -> int:
    """Number of the draft of a book; raises BookError where there is none, or no such book."""
    found = await _draft(connection, account, price_book)
    if found is None:
        await find_book(connection, account, price_book)
        raise BookError(Trouble.NO_DRAFT, f"The price book {price_book!r} has no draft.")
    return found


async def begin_draft(connection: AsyncConnection, account: str, price_book: str, *, actor: str) -> int:
    """The draft of a book; a new one begins with the prices of the latest revision. Inside `writing`; raises BookError."""
    found = await _draft(connection, account, price_book)
    if found is not None:
        return found
    await find_book(connection, account, price_book)
    revision, price = tables.price_book_revision, tables.price.c
    values = {"account": account, "price_book": price_book, "state": RevisionState.DRAFT, "source_digest": NO_DIGEST}
    new = insert(revision).values({**values, "effective_from": func.current_date()}).returning(revision.c.revision_id)
    draft = (await connection.execute(new)).scalar_one()
    before = await _latest(connection, account, price_book)
    if before is not None:
        names = [column.name for column in price if column.name != "revision_id"]
        rows = select(literal(draft, price.revision_id.type), *(price[name] for name in names)).where(price.revision_id == before)
        await connection.execute(insert(tables.price).from_select(["revision_id", *names], rows))
    await note(connection, account, actor, AuditAction.DRAFT_BEGUN, price_book=price_book)
    return int(draft)


async def discard_draft(engine: AsyncEngine, account: str, price_book: str, *, actor: str) -> None:
    """Take the draft of a book away, with its prices; items that were imported stay. Raises BookError."""
    revision = tables.price_book_revision
    async with writing(engine, account) as connection:
        draft = await find_draft(connection, account, price_book)
        await connection.execute(delete(revision).where(revision.c.revision_id == draft))
        await note(connection, account, actor, AuditAction.DRAFT_DISCARDED, price_book=price_book)


async def set_source(connection: AsyncConnection, draft: int, source_digest: str) -> None:
    """Say what a draft was last made from."""
    revision = tables.price_book_revision
    await connection.execute(update(revision).where(revision.c.revision_id == draft).values(source_digest=source_digest))


async def _draft(connection: AsyncConnection, account: str, price_book: str) -> int | None:
    revision = tables.price_book_revision.c
    query = select(revision.revision_id).where(
        revision.account == account, revision.price_book == price_book, revision.state == RevisionState.DRAFT
    )
    return (await connection.execute(query)).scalar_one_or_none()


async def _latest(connection: AsyncConnection, account: str, price_book: str) -> int | None:
    revision = tables.price_book_revision.c
    query = select(revision.revision_id).where(
        revision.account == account, revision.price_book == price_book, revision.state == RevisionState.PUBLISHED
    )
    return (await connection.execute(query.order_by(*NEWEST_FIRST).limit(1))).scalar_one_or_none()
