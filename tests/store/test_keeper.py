"""The keeper: fresh within a second, serving through an outage, back by itself. Each with a real server."""

from __future__ import annotations

import asyncio
import datetime as dt
import os
import signal
import time
from typing import TYPE_CHECKING

import pytest
from sqlalchemy import delete, func, insert, select, update

from service.catalogue import Catalogue, demo_catalogue
from service.store import CatalogueKeeper, EngineLimits, KeeperState, following, keeper, load_demo, make_engine, migrate, tables
from service.store.book_index import IndexedBook, read_index
from service.store.embedded import EmbeddedPostgres
from tests.postgres import as_service, new_data_dir, unfreeze

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Callable, Iterator
    from pathlib import Path

    from sqlalchemy import Executable
    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

pytestmark = pytest.mark.anyio
POLL_SECONDS = 60.0  # so that what comes in time came by notice


@pytest.fixture
async def engine(demo_database_url: str) -> AsyncIterator[AsyncEngine]:
    """Of a demo whose revision is not frozen, so that each change of the tables shows."""
    engine = make_engine(demo_database_url)
    await unfreeze(engine)
    yield engine
    await engine.dispose()


@pytest.fixture(scope="module")
def own_server() -> Iterator[EmbeddedPostgres]:
    """A server that a test may kill."""
    with EmbeddedPostgres(new_data_dir()) as server:
        migrate(server.url)
        yield server


async def change(engine: AsyncEngine, *statements: Executable) -> None:
    async with engine.begin() as connection:
        for statement in statements:
            await connection.execute(statement)


def all_prices_at(amount_minor: int) -> Executable:
    return update(tables.price).values(amount_minor=amount_minor)


def server_id(server: EmbeddedPostgres) -> int:
    return int((server.data_dir / "postgres" / "postmaster.pid").read_text().split()[0])


async def seconds_until(holds: Callable[[], bool], within_seconds: float) -> float:
    """How long until something holds; fails if it does not in time."""
    start = time.monotonic()
    while not holds():
        assert within_seconds > time.monotonic() - start, "not in time"
        await asyncio.sleep(0.005)
    return time.monotonic() - start


def price_of(catalogue: Catalogue | None) -> int:
    assert catalogue is not None
    return next(iter(catalogue.prices.values()))[0].amount_minor


async def test_before_the_start_it_holds_nothing(demo_database_url: str) -> None:
    idle = CatalogueKeeper(as_service(demo_database_url))

    assert None is idle.current("demo")
    assert None is idle.held("demo", demo_catalogue().revision)
    assert () == idle.accounts()
    assert KeeperState(loaded=False, stale=True, age_seconds=None, version_count=None) == idle.state()


async def test_it_loads_what_is_there(demo_database_url: str) -> None:
    async with CatalogueKeeper(as_service(demo_database_url)) as running:
        assert await running.wait_until_loaded(10)

        assert demo_catalogue() == running.current("demo")
        assert running.current("demo") is running.held("demo", demo_catalogue().revision)
        assert ("demo",) == running.accounts()
        assert None is running.current("nobody")
        state = running.state()
    assert (True, False) == (state.loaded, state.stale)
    assert 0 <= (state.age_seconds or 0) < 10
    assert demo_catalogue() == running.current("demo")  # what is held stays held
    assert running.state().stale


async def test_a_price_change_is_seen_within_a_second(demo_database_url: str, engine: AsyncEngine) -> None:
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)
        before = running.current()

        await change(engine, all_prices_at(7))
        await seconds_until(lambda: price_of(running.current()) == 7, 1.0)

        after = running.current()
        assert before is not None
        assert after is not None
        assert before.revision != after.revision
        assert demo_catalogue() == before  # a request in flight keeps what it began with
        assert before is running.held("demo", before.revision)
        assert after is running.held("demo", after.revision)


async def test_nothing_is_seen_of_what_is_not_committed(demo_database_url: str, engine: AsyncEngine) -> None:
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=0.02) as running:
        assert await running.wait_until_loaded(10)
        async with engine.connect() as connection, connection.begin() as transaction:
            await connection.execute(all_prices_at(7))
            await asyncio.sleep(0.3)
            assert demo_catalogue() == running.current()
            await transaction.rollback()
        await asyncio.sleep(0.1)
        assert demo_catalogue() == running.current()


async def test_a_change_that_changes_nothing_keeps_the_same_value(demo_database_url: str, engine: AsyncEngine) -> None:
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)
        before, version_count = running.current(), running.state().version_count

        await change(engine, update(tables.screen).values(mass_kg=tables.screen.c.mass_kg))
        await seconds_until(lambda: running.state().version_count != version_count, 5)

        assert before is running.current()


@pytest.mark.parametrize("statement", [delete(tables.price_book_revision), delete(tables.account)])
async def test_an_account_without_prices_is_held_no_more(
    demo_database_url: str, engine: AsyncEngine, statement: Executable
) -> None:
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)
        await change(engine, statement)
        await seconds_until(lambda: running.current() is None, 5)

        assert (False, False) == (running.state().loaded, running.state().stale)


async def test_every_account_is_held(demo_database_url: str, engine: AsyncEngine) -> None:
    row = {column.name: column for column in tables.account.c} | {
        "account": func.concat("shop"),
        "base_account": func.concat("demo"),
    }
    copied = insert(tables.account).from_select(list(row), select(*row.values()))
    book = insert(tables.price_book).values(account="shop", price_book="list", is_default=True)
    day = dt.date(2026, 9, 1)
    publish = insert(tables.price_book_revision).values(
        account="shop", price_book="list", effective_from=day, state="published", source_digest="0" * 64, published_at=func.now()
    )
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)
        await change(engine, copied, book, publish)
        await seconds_until(lambda: running.current("shop") is not None, 5)

        shop = running.current("shop")
        assert shop is not None
        assert ("shop", "list", {}) == (shop.account.account, shop.price_book, shop.prices)
        assert demo_catalogue().materials == shop.materials
        assert ("demo", "shop") == running.accounts()
        assert demo_catalogue() == running.current("demo")


async def test_only_the_last_revisions_are_kept(
    demo_database_url: str, engine: AsyncEngine, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(keeper, "KEPT_COUNT", 3)
    seen = []
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)
        for amount_minor in range(4):
            await change(engine, all_prices_at(amount_minor))
            await seconds_until(lambda: price_of(running.current()) == amount_minor, 5)  # noqa: B023 - awaited within the turn
            seen.append(running.current())
        held = [running.held("demo", catalogue.revision) for catalogue in seen if catalogue]
        assert [None, *seen[1:]] == held

        await change(engine, all_prices_at(1))  # back to one that is held: it is the newest again
        await seconds_until(lambda: price_of(running.current()) == 1, 5)
        assert seen[1] is running.current()


async def test_a_notice_that_is_lost_is_made_up_for(demo_database_url: str, engine: AsyncEngine) -> None:
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=0.05) as running:
        assert await running.wait_until_loaded(10)
        async with engine.begin() as connection:
            await connection.exec_driver_sql("alter table price disable trigger price_changed")
            await connection.execute(all_prices_at(7))
            await connection.execute(
                update(tables.catalogue_version).values(version_count=tables.catalogue_version.c.version_count + 1)
            )

        await seconds_until(lambda: price_of(running.current()) == 7, 5)


async def test_a_new_day_is_read_without_any_notice(demo_database_url: str, monkeypatch: pytest.MonkeyPatch) -> None:
    days, loads = [dt.date(2026, 11, 25)], []

    async def version(_: object) -> tuple[int, dt.date]:
        return 1, days[-1]

    async def read(connection: AsyncConnection) -> tuple[IndexedBook, ...]:
        loads.append(days[-1])
        return await read_index(connection)

    monkeypatch.setattr(keeper, "_version", version)
    monkeypatch.setattr(keeper, "read_index", read)
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=0.01) as running:
        assert await running.wait_until_loaded(10)
        await asyncio.sleep(0.2)
        assert days == loads  # once, however often it looked

        days.append(dt.date(2026, 11, 26))
        await seconds_until(lambda: days == loads, 5)


async def test_its_connection_is_cut(demo_database_url: str, engine: AsyncEngine) -> None:
    cut = (
        "select count(pg_terminate_backend(pid)) from pg_stat_activity"
        " where datname = current_database() and pid <> pg_backend_pid() and query not like '%terminate%'"
    )
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)
        async with engine.begin() as connection:
            assert 1 == (await connection.exec_driver_sql(cut)).scalar_one()
            await connection.execute(all_prices_at(7))  # while nobody listens
        await seconds_until(lambda: price_of(running.current()) == 7, 5)
        assert not running.state().stale


async def test_the_pool_is_left_alone(demo_database_url: str, engine: AsyncEngine) -> None:
    async with CatalogueKeeper(as_service(demo_database_url), poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)

        assert 0 == engine.pool.checkedout()  # type: ignore[attr-defined]  # the pool in use counts
    async with engine.connect() as connection:
        others = await connection.exec_driver_sql(
            "select count(*) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()"
        )
        assert 0 == others.scalar_one()  # and its own connection is gone


async def test_start_and_stop_again_are_fine(demo_database_url: str) -> None:
    running = CatalogueKeeper(as_service(demo_database_url))
    await running.stop()
    running.start()
    running.start()
    assert await running.wait_until_loaded(10)
    await running.stop()
    await running.stop()


async def test_a_fault_of_any_kind_does_not_end_it(
    demo_database_url: str, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    faults = iter([ValueError("planted"), KeyError("planted")])

    async def read_badly(connection: AsyncConnection) -> tuple[IndexedBook, ...]:
        for fault in faults:
            raise fault
        return await read_index(connection)

    monkeypatch.setattr(keeper, "read_index", read_badly)
    async with CatalogueKeeper(as_service(demo_database_url)) as running:
        assert await running.wait_until_loaded(10)
        assert demo_catalogue() == running.current()

    assert 2 == sum("planted" in record.getMessage() for record in caplog.records)


async def test_a_database_that_comes_late(own_server: EmbeddedPostgres) -> None:
    own_server.stop()
    async with CatalogueKeeper(own_server.service_url) as running:
        assert not await running.wait_until_loaded(0.3)
        assert KeeperState(loaded=False, stale=True, age_seconds=None, version_count=None) == running.state()

        await asyncio.to_thread(own_server.start)
        engine = make_engine(own_server.url)
        await load_demo(engine)
        await engine.dispose()

        await seconds_until(lambda: running.current() is not None, 20)
        assert demo_catalogue() == running.current()


async def test_it_serves_on_while_the_server_is_dead(own_server: EmbeddedPostgres) -> None:
    engine = make_engine(own_server.url)
    await load_demo(engine)
    await unfreeze(engine)
    async with CatalogueKeeper(own_server.service_url, poll_seconds=POLL_SECONDS) as running:
        assert await running.wait_until_loaded(10)
        held = running.current()

        os.kill(server_id(own_server), signal.SIGKILL)
        await seconds_until(lambda: running.state().stale, 5)
        await asyncio.sleep(0.5)
        assert held is running.current()
        assert (True, True) == (running.state().loaded, running.state().stale)
        assert 0.5 <= (running.state().age_seconds or 0)

        await asyncio.to_thread(own_server.start)
        await change(engine, all_prices_at(11))
        await seconds_until(lambda: price_of(running.current()) == 11, 20)
        assert not running.state().stale
        assert following.LEAST_WAIT_SECONDS == running._follower._wait_seconds  # noqa: SLF001 - short waits again at the next outage
        await change(engine, all_prices_at(12))  # and it listens again
        await seconds_until(lambda: price_of(running.current()) == 12, 1.0)
    await engine.dispose()


async def test_it_serves_on_while_the_server_is_frozen(own_server: EmbeddedPostgres, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(following, "LOAD_LIMITS", EngineLimits(connect_seconds=0.5, command_seconds=2.0))
    engine = make_engine(own_server.url)
    await load_demo(engine)
    await unfreeze(engine)
    async with CatalogueKeeper(own_server.service_url, poll_seconds=0.1) as running:
        assert await running.wait_until_loaded(10)
        held = running.current()
        async with engine.connect() as connection:
            found = await connection.exec_driver_sql("select pid from pg_stat_activity where backend_type = 'client backend'")
            backends = [row[0] for row in found]
        frozen = [server_id(own_server), *backends]
        for number in frozen:
            os.kill(number, signal.SIGSTOP)
        try:
            assert 1.8 > await seconds_until(lambda: running.state().stale, 2)  # before the driver gives up
            await asyncio.sleep(3)  # long enough for the driver to give up and to try anew
            assert running.state().stale
            assert held is running.current()
        finally:
            for number in frozen:
                os.kill(number, signal.SIGCONT)
        await seconds_until(lambda: not running.state().stale, 20)
        assert held is running.current()
    await engine.dispose()


async def test_the_wait_between_tries_grows_to_its_bound(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    waits: list[float] = []

    def no_wait(least: float, greatest: float) -> float:
        assert (0.5, 1.0) == (least, greatest)
        waits.append(running._follower._wait_seconds)  # noqa: SLF001 - seen nowhere else
        return 0.0

    monkeypatch.setattr("service.store.following.random.uniform", no_wait)
    async with CatalogueKeeper(f"postgresql://nobody@/none?host={tmp_path}") as running:
        await seconds_until(lambda: len(waits) >= 9, 10)

    assert [0.2, 0.4, 0.8, 1.6, 3.2, 6.4, 10.0, 10.0, 10.0] == waits[:9]
