from __future__ import annotations

import asyncio
import datetime as dt
from typing import TYPE_CHECKING

import msgspec
import pytest
from sqlalchemy import delete, insert, select, update

from service.catalogue import Catalogue, demo_catalogue, demo_rows
from service.store import NoCatalogueError, make_engine, read_catalogue, reading, tables
from tests.postgres import unfreeze

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

pytestmark = pytest.mark.anyio
CODE = demo_rows().materials[0].code
PRICE = {"code": CODE, "from_count": 1, "currency": "GBP", "supplier": "s", "lead_days": 1}


@pytest.fixture
async def engine(demo_database_url: str) -> AsyncIterator[AsyncEngine]:
    """Of a demo whose revision is not frozen, so that each change of the tables shows."""
    engine = make_engine(demo_database_url)
    await unfreeze(engine)
    yield engine
    await engine.dispose()


async def add_revision(connection: AsyncConnection, day: dt.date, amount_minor: int, **changes: object) -> None:
    """One more revision of the demo book, with one price in it."""
    values = {
        "account": "demo",
        "price_book": "demo",
        "effective_from": day,
        "state": "published",
        "source_digest": "0" * 64,
        "published_at": dt.datetime(2026, 8, 1, tzinfo=dt.UTC),
    }
    revision = tables.price_book_revision
    done = await connection.execute(insert(revision).values(values | changes).returning(revision.c.revision_id))
    await connection.execute(
        insert(tables.price).values(PRICE | {"revision_id": done.scalar_one(), "amount_minor": amount_minor})
    )


def first_price(catalogue: Catalogue) -> tuple[str, int]:
    (step,) = catalogue.prices[CODE]
    return step.valid_from, step.amount_minor


async def test_what_is_read_back_is_what_the_files_hold(engine: AsyncEngine) -> None:
    read = await read_catalogue(engine)

    assert demo_catalogue() == read
    assert demo_catalogue().revision == read.revision
    assert msgspec.json.encode(demo_catalogue()) == msgspec.json.encode(read)  # also the order of maps, also 1 and 1.0


async def test_any_change_is_another_revision(engine: AsyncEngine) -> None:
    seen = {(await read_catalogue(engine)).revision}
    for table, change in (
        (tables.material, {"mass_kg": 1.25}),
        (tables.price, {"amount_minor": 1}),
        (tables.account, {"margin_ratio": 0.25}),
        (tables.labour_rate, {"rate_hours": 0.5}),
        (tables.fixing_load, {"standing": "stated"}),
    ):
        async with engine.begin() as connection:
            await connection.execute(update(table).values(change))
        seen.add((await read_catalogue(engine)).revision)

    assert 6 == len(seen)


async def test_the_day_chooses_the_revision(engine: AsyncEngine) -> None:
    async with engine.begin() as connection:
        await add_revision(connection, dt.date(2026, 10, 5), 100)
        await add_revision(connection, dt.date(2026, 10, 12), 200)
        await add_revision(connection, dt.date(2026, 10, 13), 300, state="draft", published_at=None)
        await add_revision(connection, dt.date(2026, 10, 14), 400, state="withdrawn")

    async def on(day: dt.date) -> tuple[str, int]:
        return first_price(await read_catalogue(engine, on=day))

    assert "2026-09-01" == (await on(dt.date(2026, 10, 4)))[0]
    assert ("2026-10-05", 100) == await on(dt.date(2026, 10, 5))
    assert ("2026-10-05", 100) == await on(dt.date(2026, 10, 11))
    assert ("2026-10-12", 200) == await on(dt.date(2027, 1, 1))


async def test_every_day_of_a_revision_gives_the_same_catalogue(engine: AsyncEngine) -> None:
    days = (dt.date(2026, 9, 1), dt.date(2026, 12, 31))

    assert [demo_catalogue()] * 2 == [await read_catalogue(engine, on=day) for day in days]


async def test_without_a_day_it_is_today(engine: AsyncEngine) -> None:
    today = dt.datetime.now(dt.UTC).date()
    async with engine.begin() as connection:
        await add_revision(connection, dt.date(2000, 1, 1), 1)
        await add_revision(connection, today - dt.timedelta(days=1), 2)
        await add_revision(connection, today + dt.timedelta(days=2), 3)
        await connection.execute(delete(tables.price_book_revision).where(tables.price_book_revision.c.source_digest != "0" * 64))

    assert 2 == first_price(await read_catalogue(engine))[1]


async def test_without_a_day_a_book_that_is_yet_to_begin_gives_its_first_revision(engine: AsyncEngine) -> None:
    async with engine.begin() as connection:
        await connection.execute(delete(tables.price_book_revision))
        await add_revision(connection, dt.date(9998, 2, 1), 2)
        await add_revision(connection, dt.date(9998, 1, 1), 1)

    assert 1 == first_price(await read_catalogue(engine))[1]
    with pytest.raises(NoCatalogueError, match="no published revision"):
        await read_catalogue(engine, on=dt.date(9997, 12, 31))


@pytest.mark.parametrize(
    ("account", "price_book", "says"),
    [("nobody", "demo", "no account 'nobody'"), ("demo", "other", "price book 'other' of account 'demo'")],
)
async def test_what_is_missing_is_named(engine: AsyncEngine, account: str, price_book: str, says: str) -> None:
    with pytest.raises(NoCatalogueError, match=says):
        await read_catalogue(engine, account, price_book)


async def test_a_shop_sees_the_base_and_overrides_it(engine: AsyncEngine) -> None:
    material = demo_rows().materials[0]
    own = msgspec.structs.replace(material, description="our own")
    extra = msgspec.structs.replace(material, code="OWN-1")
    shop = msgspec.structs.asdict(demo_rows().account) | {"account": "shop", "base_account": "demo", "margin_ratio": 0.5}
    async with engine.begin() as connection:
        await connection.execute(insert(tables.account).values(shop))
        await connection.execute(insert(tables.price_book).values(account="shop", price_book="list", is_default=True))
        rows = [msgspec.structs.asdict(row) | {"account": "shop"} for row in (own, extra)]
        await connection.execute(insert(tables.material), rows)
        await add_revision(connection, dt.date(2026, 9, 1), 5, account="shop", price_book="list")

    read = await read_catalogue(engine, "shop", "list")

    assert demo_catalogue().materials | {own.code: own, "OWN-1": extra} == read.materials
    assert demo_catalogue().screens == read.screens
    assert ("shop", 0.5, {CODE}) == (read.account.account, read.account.margin_ratio, set(read.prices))
    assert demo_catalogue() == await read_catalogue(engine)  # and the base sees nothing of the shop


async def test_reading_is_of_one_moment(engine: AsyncEngine, monkeypatch: pytest.MonkeyPatch) -> None:
    """A change that is committed while the tables are read, between the first and the last, is not seen in part."""
    read_items = reading._items  # noqa: SLF001 - where another writer comes between

    async def read_and_be_disturbed(connection: AsyncConnection, table: object, *rest: object) -> object:
        if table is tables.bracket:
            async with engine.begin() as other:
                await other.execute(update(tables.trade).values(charge_per_hour_minor=1))
                await other.execute(update(tables.price).values(amount_minor=1))
        return await read_items(connection, table, *rest)  # type: ignore[arg-type]  # handed on as it came

    monkeypatch.setattr(reading, "_items", read_and_be_disturbed)

    assert demo_catalogue() == await read_catalogue(engine)
    monkeypatch.undo()
    assert demo_catalogue() != await read_catalogue(engine)


async def test_reading_cannot_write(engine: AsyncEngine, monkeypatch: pytest.MonkeyPatch) -> None:
    seen = []

    async def look(connection: AsyncConnection, *_: object) -> object:
        seen.append((await connection.exec_driver_sql("show transaction_isolation")).scalar_one())
        seen.append((await connection.exec_driver_sql("show transaction_read_only")).scalar_one())
        return await in_force(connection, "demo", "demo", None)

    in_force = reading._revision_in_force  # noqa: SLF001 - a place inside the transaction
    monkeypatch.setattr(reading, "_revision_in_force", look)
    await read_catalogue(engine)

    assert ["repeatable read", "on"] == seen
    async with engine.connect() as connection:  # and the connection goes back to the pool as it was
        assert "read committed" == (await connection.exec_driver_sql("show transaction_isolation")).scalar_one()
        assert "off" == (await connection.exec_driver_sql("show transaction_read_only")).scalar_one()


async def test_many_readers_at_once(engine: AsyncEngine) -> None:
    read = await asyncio.gather(*(read_catalogue(engine) for _ in range(20)))

    assert [demo_catalogue()] * 20 == read


async def test_nothing_of_a_reader_stays_behind(engine: AsyncEngine) -> None:
    await read_catalogue(engine)
    async with engine.connect() as connection:
        idle = (await connection.execute(select(tables.catalogue_version.c.version_count))).scalar_one()

    assert 0 < idle
    assert 0 == engine.pool.checkedout()  # type: ignore[attr-defined]  # the pool in use counts
