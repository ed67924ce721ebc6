"""Price books, drafts, imports, publishes, withdrawals and their audit, as the service's own user."""

from __future__ import annotations

import asyncio
import datetime as dt
from typing import TYPE_CHECKING

import msgspec
import pytest
from sqlalchemy import update
from sqlalchemy.exc import DBAPIError

from service.catalogue import Faults, RowKind, demo_catalogue, demo_rows, rows_of
from service.store import make_engine, read_catalogue, tables
from service.store.acting import act_for
from service.store.audit import read_audit
from service.store.books import WRITE_LIMITS, BookError, Trouble, discard_draft, list_books, list_revisions, make_book
from service.store.importing import ImportMode, RowsRefusedError, import_rows
from service.store.publishing import PublishOrder, UnsoundError, WithdrawOrder, publish, read_draft, withdraw
from tests.postgres import as_service
from tests.store.book_facts import ACTOR, DAY, TODAY, in_pieces_of, order, prices_at, publish_at, publish_draft, take

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from sqlalchemy.ext.asyncio import AsyncEngine

    from service.catalogue import Catalogue

pytestmark = pytest.mark.anyio
DEMO = demo_catalogue()


@pytest.fixture
async def engine(demo_database_url: str) -> AsyncIterator[AsyncEngine]:
    engine = make_engine(as_service(demo_database_url), WRITE_LIMITS)
    yield engine
    await engine.dispose()


def amounts(catalogue: Catalogue) -> set[int]:
    return {step.amount_minor for steps in catalogue.prices.values() for step in steps}


def steps_of(catalogue: Catalogue) -> list[tuple[str, int, int]]:
    return [(step.code, step.from_count, step.amount_minor) for steps in catalogue.prices.values() for step in steps]


async def refused(work: object) -> Trouble:
    with pytest.raises(BookError) as caught:
        await work  # type: ignore[misc]  # a coroutine
    return caught.value.trouble


async def test_books_and_their_drafts(engine: AsyncEngine) -> None:
    assert await make_book(engine, "demo", "trade", actor=ACTOR)
    assert not await make_book(engine, "demo", "trade", actor=ACTOR)
    await take(engine, prices_at(5), order(price_book="trade"))

    assert [("demo", True, False), ("trade", False, True)] == [
        (book.price_book, book.is_default, book.has_draft) for book in await list_books(engine, "demo")
    ]
    assert () == await list_revisions(engine, "demo", "trade")


async def test_what_is_not_there_is_said(engine: AsyncEngine) -> None:
    assert Trouble.NO_BOOK == await refused(list_revisions(engine, "demo", "none"))
    assert Trouble.NO_BOOK == await refused(read_draft(engine, "demo", "none"))
    assert Trouble.NO_DRAFT == await refused(read_draft(engine, "demo", "demo"))
    assert Trouble.NO_DRAFT == await refused(discard_draft(engine, "demo", "demo", actor=ACTOR))
    assert Trouble.NO_BOOK == await refused(take(engine, prices_at(5), order(price_book="none")))
    assert Trouble.NO_REVISION == await refused(withdraw(engine, withdrawal("demo:demo:2026-09-01:none")))


async def test_a_draft_begins_with_what_is_published(engine: AsyncEngine) -> None:
    await take(engine, [])
    draft = (await read_draft(engine, "demo", "demo")).catalogue

    for kind in RowKind:
        if kind is not RowKind.PRICES:
            assert rows_of(DEMO, kind) == rows_of(draft, kind)
    assert steps_of(DEMO) == steps_of(draft)


@pytest.mark.parametrize("mode", ImportMode)
@pytest.mark.parametrize("kind", RowKind)
async def test_rows_of_every_kind_come_back_as_they_went(engine: AsyncEngine, kind: RowKind, mode: ImportMode) -> None:
    rows = getattr(demo_rows(), kind)
    assert len(rows) == (await take(engine, rows, order(kind, mode))).rows_count

    draft = (await read_draft(engine, "demo", "demo")).catalogue
    expected = [msgspec.structs.replace(row, valid_from="0001-01-01") for row in rows] if kind is RowKind.PRICES else rows
    assert set(expected) == set(rows_of(draft, kind))


async def test_merged_rows_leave_the_others_and_replacing_ones_do_not(engine: AsyncEngine) -> None:
    first, second = demo_rows().screens[:2]
    changed = msgspec.structs.replace(first, mass_kg=1.0)
    new = msgspec.structs.replace(second, model="NEW")

    await take(engine, [changed, new], order(RowKind.SCREENS, file_digest="b" * 64))
    merged = (await read_draft(engine, "demo", "demo")).catalogue.screens
    assert DEMO.screens | {first.model: changed, "NEW": new} == merged

    await take(engine, [changed], order(RowKind.SCREENS, ImportMode.REPLACE))
    assert {first.model: changed} == (await read_draft(engine, "demo", "demo")).catalogue.screens
    assert DEMO == await read_catalogue(engine)  # nothing of a draft holds


async def test_a_file_with_faults_leaves_no_trace(engine: AsyncEngine) -> None:
    faults = Faults()

    async def pieces() -> AsyncIterator[list[object]]:
        yield list(prices_at(5))
        faults.add(7, "amount", "wrong", "right")

    with pytest.raises(RowsRefusedError):
        await import_rows(engine, order(), pieces(), faults)  # type: ignore[arg-type]  # rows
    assert Trouble.NO_DRAFT == await refused(read_draft(engine, "demo", "demo"))
    assert 1 == len(await read_audit(engine, "demo"))


async def test_the_same_file_again_is_known(engine: AsyncEngine) -> None:
    first = await take(engine, prices_at(5))
    again = await take(engine, prices_at(5))
    other = await take(engine, prices_at(6), order(file_digest="b" * 64))
    back = await take(engine, prices_at(5))

    assert [False, True, False, False] == [one.was_there for one in (first, again, other, back)]
    assert first.rows_count == again.rows_count
    assert {5} == amounts((await read_draft(engine, "demo", "demo")).catalogue)


async def test_after_a_discard_the_same_file_is_taken_again(engine: AsyncEngine) -> None:
    await take(engine, prices_at(5))
    await discard_draft(engine, "demo", "demo", actor=ACTOR)

    assert not (await take(engine, prices_at(5))).was_there
    assert {5} == amounts((await read_draft(engine, "demo", "demo")).catalogue)


async def test_two_imports_at_once_come_one_after_the_other(engine: AsyncEngine) -> None:
    await asyncio.gather(
        take(engine, prices_at(5), order(mode=ImportMode.REPLACE)),
        take(engine, prices_at(6), order(mode=ImportMode.REPLACE, file_digest="b" * 64)),
    )

    assert amounts((await read_draft(engine, "demo", "demo")).catalogue) in ({5}, {6})


async def test_prices_of_several_currencies_and_measures(engine: AsyncEngine) -> None:
    step = demo_rows().prices[0]
    steps = [step, msgspec.structs.replace(step, currency="EUR"), msgspec.structs.replace(step, from_count=20, per="metre")]
    await take(engine, steps, order(mode=ImportMode.REPLACE))

    found = (await read_draft(engine, "demo", "demo")).catalogue.prices[step.code]
    assert [("EUR", 1, "pack"), ("GBP", 1, "pack"), ("GBP", 20, "metre")] == [
        (one.currency, one.from_count, one.per) for one in found
    ]


async def test_a_publish_holds_from_its_day(engine: AsyncEngine) -> None:
    later = await publish_at(engine, 7, TODAY + 3 * DAY)

    assert DEMO == await read_catalogue(engine)
    assert DEMO == await read_catalogue(engine, on=TODAY + 2 * DAY)
    held = await read_catalogue(engine, on=TODAY + 3 * DAY)
    assert (later, {7}) == (held.revision, amounts(held))
    assert later.startswith(f"demo:demo:{TODAY + 3 * DAY}:")
    assert {step.valid_from for steps in held.prices.values() for step in steps} == {(TODAY + 3 * DAY).isoformat()}


async def test_nothing_that_comes_later_changes_what_was_published(engine: AsyncEngine) -> None:
    """Items, settings and later publishes: the catalogue of a past day is the same value, byte for byte."""
    before = msgspec.json.encode(await read_catalogue(engine, on=dt.date(2026, 10, 1)))
    await take(engine, [msgspec.structs.replace(demo_rows().materials[0], description="other")], order(RowKind.MATERIALS))
    async with engine.begin() as connection:
        await act_for(connection, "demo")
        await connection.execute(update(tables.account).values(margin_ratio=0.9))
    await publish_at(engine, 7)

    assert before == msgspec.json.encode(await read_catalogue(engine, on=dt.date(2026, 10, 1)))
    today = await read_catalogue(engine)
    assert (0.9, "other") == (today.account.margin_ratio, today.materials["TM-1007V"].description)


async def test_of_two_publishes_of_one_day_the_later_holds(engine: AsyncEngine) -> None:
    await publish_at(engine, 7)
    await publish_at(engine, 8)

    assert {8} == amounts(await read_catalogue(engine))
    assert ["published", "withdrawn", "published"] == [one.state for one in await list_revisions(engine, "demo", "demo")]


async def test_a_day_that_has_passed_keeps_its_revision(engine: AsyncEngine) -> None:
    assert Trouble.DAY_HAS_PASSED == await refused(publish_at(engine, 7, TODAY - DAY))
    await make_book(engine, "demo", "new", actor=ACTOR)
    await take(engine, prices_at(7), order(price_book="new"))

    name = await publish_draft(engine, dt.date(2026, 1, 1), price_book="new")  # the first of a book may begin in the past
    assert name == (await read_catalogue(engine, "demo", "new")).revision


async def test_what_was_checked_is_what_is_published(engine: AsyncEngine) -> None:
    await take(engine, prices_at(7))
    seen = (await read_draft(engine, "demo", "demo")).draft_digest
    await take(engine, prices_at(8), order(file_digest="b" * 64))

    wanted = PublishOrder(account="demo", price_book="demo", effective_from=TODAY, draft_digest=seen, actor=ACTOR)
    assert Trouble.DRAFT_CHANGED == await refused(publish(engine, wanted))
    assert DEMO == await read_catalogue(engine)


async def test_an_unsound_draft_is_not_published(engine: AsyncEngine) -> None:
    screen = msgspec.structs.replace(demo_rows().screens[0], bracket="NONE")
    await take(engine, [screen], order(RowKind.SCREENS))

    with pytest.raises(UnsoundError) as caught:
        await publish_draft(engine)
    assert 1 == caught.value.soundness.stops_count
    assert DEMO == await read_catalogue(engine)


EDITS = {
    "amounts": "update price set amount_minor = 1",
    "fewer prices": "delete from price",
    "more prices": """
        insert into price (revision_id, code, from_count, amount_minor, currency, supplier, lead_days)
        select min(revision_id), 'X', 1, 1, 'GBP', 's', 1 from price""",
    "another day": "update price_book_revision set effective_from = current_date",
    "back to a draft": "update price_book_revision set state = 'draft'",
    "no revision": "delete from price_book_revision",
    "other parts": "update frozen_part set content = ''",
    "no parts": "delete from frozen_part",
    "other hands": "update audit_entry set actor = 'somebody'",
    "no audit": "delete from audit_entry",
}


@pytest.mark.parametrize("edit", EDITS)
async def test_what_was_published_is_never_edited(engine: AsyncEngine, edit: str) -> None:
    async with engine.connect() as connection:
        await act_for(connection, "demo")
        with pytest.raises(DBAPIError, match=r"stays? as|permission denied"):
            await connection.exec_driver_sql(EDITS[edit])

    assert DEMO == await read_catalogue(engine)


def withdrawal(revision: str) -> WithdrawOrder:
    return WithdrawOrder(account="demo", price_book="demo", catalogue_revision=revision, actor=ACTOR)


async def test_a_withdrawal_brings_the_one_before_back(engine: AsyncEngine) -> None:
    name = await publish_at(engine, 7)
    assert TODAY == await withdraw(engine, withdrawal(name))

    assert DEMO == await read_catalogue(engine)
    assert Trouble.NO_REVISION == await refused(withdraw(engine, withdrawal(name)))


async def test_what_is_to_come_is_withdrawn_before_it_holds(engine: AsyncEngine) -> None:
    name = await publish_at(engine, 7, TODAY + 2 * DAY)
    assert TODAY + 2 * DAY == await withdraw(engine, withdrawal(name))

    assert DEMO == await read_catalogue(engine, on=TODAY + 5 * DAY)


async def test_the_last_one_that_holds_is_not_withdrawn(engine: AsyncEngine) -> None:
    assert Trouble.NOTHING_WOULD_HOLD == await refused(withdraw(engine, withdrawal(DEMO.revision)))
    assert DEMO == await read_catalogue(engine)


async def test_days_on_which_it_held_keep_it(engine: AsyncEngine) -> None:
    """The demo holds since September; from today on another does, and the demo is withdrawn."""
    await publish_at(engine, 7)
    await withdraw(engine, withdrawal(DEMO.revision))

    assert DEMO == await read_catalogue(engine, on=TODAY - DAY)
    assert {7} == amounts(await read_catalogue(engine, on=TODAY))


async def test_the_audit_tells_everything(engine: AsyncEngine) -> None:
    name = await publish_at(engine, 7)
    await withdraw(engine, withdrawal(name))
    await take(engine, prices_at(9), order(file_digest="c" * 64))
    await discard_draft(engine, "demo", "demo", actor="command:discard")

    told = await read_audit(engine, "demo")
    assert [
        ("command:discard", "draft_discarded", None),
        (ACTOR, "rows_imported", "c" * 64),
        (ACTOR, "draft_begun", None),
        (ACTOR, "withdrawn", None),
        (ACTOR, "published", f"{7:064x}"),
        (ACTOR, "rows_imported", f"{7:064x}"),
        (ACTOR, "draft_begun", None),
    ] == [(one.actor, one.action, one.file_digest) for one in told[:-1]]
    assert [*range(8, 0, -1)] == [one.entry_count for one in told]
    assert {name} == {one.catalogue_revision for one in told if one.action in {"published", "withdrawn"}} - {DEMO.revision}
    assert told[2:4] == await read_audit(engine, "demo", before_count=told[1].entry_count, limit_count=2)
    assert () == await read_audit(engine, "demo", price_book="other")


async def test_rows_in_pieces_are_counted(engine: AsyncEngine) -> None:
    done = await import_rows(engine, order(), in_pieces_of(prices_at(5), 7), Faults())

    assert len(demo_rows().prices) == done.rows_count
