"""Published revisions as each process holds them: seen within a second, by their day, and their equal parts once."""

from __future__ import annotations

import asyncio
import time
from typing import TYPE_CHECKING

import msgspec
import pytest

from service.catalogue import RowKind, demo_catalogue, demo_rows
from service.store import CatalogueKeeper, keeper, make_engine
from service.store.books import WRITE_LIMITS
from service.store.publishing import WithdrawOrder, withdraw
from tests.postgres import as_service
from tests.store.book_facts import ACTOR, DAY, TODAY, order, publish_at, publish_draft, take

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import AsyncIterator, Callable

    from sqlalchemy.ext.asyncio import AsyncEngine

pytestmark = pytest.mark.anyio
DEMO = demo_catalogue()
SEPTEMBER = "2026-09-15"
POLL_SECONDS = 60.0  # so that what comes in time came by notice


@pytest.fixture
async def engine(demo_database_url: str) -> AsyncIterator[AsyncEngine]:
    engine = make_engine(as_service(demo_database_url), WRITE_LIMITS)
    yield engine
    await engine.dispose()


async def seconds_until(holds: Callable[[], bool]) -> float:
    start = time.monotonic()
    while not holds():
        assert 10 > time.monotonic() - start, "not in time"
        await asyncio.sleep(0.005)
    return time.monotonic() - start


async def test_a_publish_is_seen_by_every_process_within_a_second(demo_database_url: str, engine: AsyncEngine) -> None:
    url = as_service(demo_database_url)
    async with (
        CatalogueKeeper(url, poll_seconds=POLL_SECONDS) as one,
        CatalogueKeeper(url, poll_seconds=POLL_SECONDS) as other,
    ):
        assert await one.wait_until_loaded(10)
        assert await other.wait_until_loaded(10)
        in_flight = one.current()

        name = await publish_at(engine, 7)
        assert 1.0 > await seconds_until(
            lambda: {name} == {held.revision for each in (one, other) if (held := each.current()) is not None}
        )
        assert DEMO == in_flight  # a request in flight keeps what it began with

        withdrawn = WithdrawOrder(account="demo", price_book="demo", catalogue_revision=name, actor=ACTOR)
        await withdraw(engine, withdrawn)
        assert 1.0 > await seconds_until(lambda: in_flight is one.current())


async def test_a_draft_is_not_seen(demo_database_url: str, engine: AsyncEngine) -> None:
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=0.02) as running:
        assert await running.wait_until_loaded(10)
        await take(engine, [msgspec.structs.replace(demo_rows().screens[0], mass_kg=1.0)], order(RowKind.SCREENS))
        await asyncio.sleep(0.3)

        assert DEMO == running.current()
        assert DEMO.revision == running.revision_on("demo", None, TODAY.isoformat())


async def test_the_day_chooses_the_revision(demo_database_url: str, engine: AsyncEngine) -> None:
    later = await publish_at(engine, 7, TODAY + 2 * DAY)
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)

        def on(day: dt.date | str) -> str | None:
            return running.revision_on("demo", "demo", str(day))

        assert [None, DEMO.revision, DEMO.revision, later] == [
            on("2026-08-31"),
            on(SEPTEMBER),
            on(TODAY + DAY),
            on(TODAY + 2 * DAY),
        ]
        assert None is running.revision_on("demo", "none", SEPTEMBER)
        assert None is running.revision_on("nobody", None, SEPTEMBER)
        assert DEMO == running.current()


async def test_a_revision_that_is_not_held_is_fetched_once(demo_database_url: str, engine: AsyncEngine) -> None:
    later = await publish_at(engine, 7, TODAY + 2 * DAY)
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)
        assert None is running.held("demo", later)

        found = await asyncio.gather(*(running.fetch("demo", later) for _ in range(5)))
        assert found[0] is not None
        assert {id(found[0])} == {id(one) for one in found}
        assert found[0] is running.held("demo", later)
        assert [None, None] == [await running.fetch("demo", "none"), await running.fetch("nobody", later)]


async def test_what_is_equal_is_held_once(demo_database_url: str, engine: AsyncEngine) -> None:
    await publish_at(engine, 7)
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)
        now, before = running.current(), await running.fetch("demo", DEMO.revision)

        assert now is not None
        assert DEMO == before
        for part in ("materials", "appliances", "screens", "brackets", "fixing_loads", "labour_rates", "trades", "account"):
            assert getattr(now, part) is getattr(before, part)
        assert now.prices != before.prices


async def test_the_current_one_stays_when_others_are_fetched(
    demo_database_url: str, engine: AsyncEngine, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(keeper, "KEPT_COUNT", 2)
    names = [await publish_at(engine, amount, TODAY + amount * DAY) for amount in (1, 2, 3)]
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)
        for name in names:
            assert await running.fetch("demo", name) is not None

        assert [None, None] == [running.held("demo", name) for name in names[:2]]
        assert running.held("demo", names[2]) is not None
        assert running.current() is running.held("demo", DEMO.revision)


async def test_the_draft_of_a_publish_is_gone(engine: AsyncEngine) -> None:
    await publish_at(engine, 7)
    await take(engine, [], order(file_digest="e" * 64))
    again = await publish_draft(engine, TODAY + DAY)

    assert again.startswith(f"demo:demo:{TODAY + DAY}:")
