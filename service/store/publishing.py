"""From a draft to a published revision, which is frozen whole and never edited, and its withdrawal."""

from __future__ import annotations

import asyncio
import datetime as dt
from typing import TYPE_CHECKING, Final

import msgspec
from sqlalchemy import func, select, update

from service.catalogue import NO_DAY, Catalogue, DatedRevision, Soundness, catalogue_digest, freeze, in_force, soundness_of
from service.store import tables
from service.store.audit import note
from service.store.books import BookError, Trouble, find_book, find_draft, reading, writing
from service.store.frozen import write_parts
from service.store.reading import catalogue_of_draft
from service.store.tables import AuditAction, RevisionState

if TYPE_CHECKING:
    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

REVISION: Final = tables.price_book_revision


class Draft(msgspec.Struct, frozen=True, kw_only=True):
    """A draft as it stands, whole: with the items, the settings and what comes from the base."""

    catalogue: Catalogue  # as of no day yet
    draft_digest: str  # of all of its content: a publish names it, so that what was checked is what is published
    source_digest: str  # of the file that was last imported


class PublishOrder(msgspec.Struct, frozen=True, kw_only=True):
    """What is to be published, and from when it holds."""

    account: str
    price_book: str
    effective_from: dt.date
    draft_digest: str
    actor: str


class WithdrawOrder(msgspec.Struct, frozen=True, kw_only=True):
    """What is to be withdrawn."""

    account: str
    price_book: str
    catalogue_revision: str
    actor: str


class UnsoundError(BookError):
    """A draft that does not hold together."""

    def __init__(self, soundness: Soundness) -> None:
        """Keep the findings."""
        super().__init__(Trouble.DRAFT_UNSOUND, f"{soundness.stops_count} findings stop it from being published.")
        self.soundness = soundness


async def read_draft(engine: AsyncEngine, account: str, price_book: str) -> Draft:
    """The draft of a book; raises BookError."""
    async with reading(engine, account) as connection:
        draft = await find_draft(connection, account, price_book)
        query = select(REVISION.c.source_digest).where(REVISION.c.revision_id == draft)
        source = (await connection.execute(query)).scalar_one()
        catalogue = await catalogue_of_draft(connection, account, price_book, (draft, NO_DAY))
    digest = await asyncio.to_thread(catalogue_digest, catalogue)
    return Draft(catalogue=catalogue, draft_digest=digest, source_digest=source)


async def publish(engine: AsyncEngine, order: PublishOrder) -> str:
    """Freeze the draft of a book with all that a quote depends on; it holds from its day on.

    Returns:
        The name of the catalogue revision.

    Raises:
        BookError: no such book or draft; the draft is unsound or another than was named; the day has passed.
    """
    async with writing(engine, order.account) as connection:
        draft = await find_draft(connection, order.account, order.price_book)
        await _check_day(connection, order)
        plain = await catalogue_of_draft(connection, order.account, order.price_book, (draft, NO_DAY))
        await asyncio.to_thread(_check_draft, plain, order)
        day = order.effective_from.isoformat()
        catalogue = await catalogue_of_draft(connection, order.account, order.price_book, (draft, day))
        await replace_same_day(connection, order.account, order.price_book, order.effective_from)
        await seal(connection, draft, catalogue, order.effective_from)
        facts = {"price_book": order.price_book, "catalogue_revision": catalogue.revision, "effective_from": order.effective_from}
        source = (await connection.execute(select(REVISION.c.source_digest).where(REVISION.c.revision_id == draft))).scalar_one()
        await note(connection, order.account, order.actor, AuditAction.PUBLISHED, **facts, file_digest=source)
    return catalogue.revision


async def withdraw(engine: AsyncEngine, order: WithdrawOrder) -> dt.date:
    """Let a revision hold no more; for the days on which it held it can still be asked for.

    Returns:
        The first day on which it holds no more.

    Raises:
        BookError: no such book or published revision, or no other would hold today.
    """
    named = (
        (REVISION.c.account == order.account)
        & (REVISION.c.price_book == order.price_book)
        & (REVISION.c.catalogue_revision == order.catalogue_revision)
        & (REVISION.c.state == RevisionState.PUBLISHED)
    )
    async with writing(engine, order.account) as connection:
        await find_book(connection, order.account, order.price_book)
        query = select(REVISION.c.revision_id, func.greatest(REVISION.c.effective_from, func.current_date())).where(named)
        found = (await connection.execute(query)).one_or_none()
        if found is None:
            raise BookError(Trouble.NO_REVISION, "There is no published revision of that name in the price book.")
        revision_id, withdrawn_from = found
        held = await _holds_today(connection, order)
        change = {"state": RevisionState.WITHDRAWN, "withdrawn_from": withdrawn_from}
        await connection.execute(update(REVISION).where(REVISION.c.revision_id == revision_id).values(change))
        if held and not await _holds_today(connection, order):
            detail = "No other revision would hold today; publish one first."
            raise BookError(Trouble.NOTHING_WOULD_HOLD, detail)
        facts = {"price_book": order.price_book, "catalogue_revision": order.catalogue_revision}
        await note(connection, order.account, order.actor, AuditAction.WITHDRAWN, **facts, effective_from=withdrawn_from)
    return dt.date.fromisoformat(str(withdrawn_from))


async def seal(connection: AsyncConnection, draft: int, catalogue: Catalogue, effective_from: dt.date) -> None:
    """Freeze a catalogue and make the draft that it was made from a published revision."""
    parts = await asyncio.to_thread(freeze, catalogue)
    await write_parts(connection, catalogue.account.account, parts)
    values = {
        "state": RevisionState.PUBLISHED,
        "published_at": func.now(),
        "effective_from": effective_from,
        "catalogue_revision": catalogue.revision,
        "part_digests": [part.digest for part in parts],
    }
    await connection.execute(update(REVISION).where(REVISION.c.revision_id == draft).values(values))


async def replace_same_day(connection: AsyncConnection, account: str, price_book: str, day: dt.date) -> None:
    """Withdraw what was published for the same day: the later one holds."""
    same = (REVISION.c.account == account) & (REVISION.c.price_book == price_book) & (REVISION.c.effective_from == day)
    change = {"state": RevisionState.WITHDRAWN, "withdrawn_from": day}
    await connection.execute(update(REVISION).where(same, REVISION.c.state == RevisionState.PUBLISHED).values(change))


async def dated_revisions(connection: AsyncConnection, account: str, price_book: str) -> tuple[DatedRevision, ...]:
    """The revisions of a book with their days."""
    of_book = (REVISION.c.account == account) & (REVISION.c.price_book == price_book) & (REVISION.c.state != RevisionState.DRAFT)
    return tuple(as_dated(row) for row in (await connection.execute(select(REVISION).where(of_book))).mappings())


def as_dated(row: object) -> DatedRevision:
    """A row of the revisions as `catalogue.in_force` reads it; one that was withdrawn before days were kept never held."""
    told = dict(row)  # type: ignore[call-overload]  # a row mapping
    withdrawn_from = told["withdrawn_from"]
    if withdrawn_from is None and told["state"] == RevisionState.WITHDRAWN:
        withdrawn_from = told["effective_from"]
    return DatedRevision(
        catalogue_revision=told["catalogue_revision"] or "",
        effective_from=told["effective_from"].isoformat(),
        published_count=told["revision_id"],
        withdrawn_from=None if withdrawn_from is None else withdrawn_from.isoformat(),
    )


def _check_draft(catalogue: Catalogue, order: PublishOrder) -> None:
    if catalogue_digest(catalogue) != order.draft_digest:
        raise BookError(Trouble.DRAFT_CHANGED, "The draft is another than the one that was named; look at it again.")
    soundness = soundness_of(catalogue)
    if soundness.stops_count:
        raise UnsoundError(soundness)


async def _check_day(connection: AsyncConnection, order: PublishOrder) -> None:
    """A day that has passed keeps the revision that it had; only the first of a book may begin in the past."""
    today: dt.date = (await connection.execute(select(func.current_date()))).scalar_one()
    if order.effective_from >= today:
        return
    if await dated_revisions(connection, order.account, order.price_book):
        detail = f"{order.effective_from} has passed; the earliest day is {today}."
        raise BookError(Trouble.DAY_HAS_PASSED, detail)


async def _holds_today(connection: AsyncConnection, order: WithdrawOrder) -> bool:
    today: dt.date = (await connection.execute(select(func.current_date()))).scalar_one()
    return in_force(await dated_revisions(connection, order.account, order.price_book), today.isoformat()) is not None
