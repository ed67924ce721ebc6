from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING

import pytest
from sqlalchemy import func, select, update
from sqlalchemy.exc import IntegrityError

from service.catalogue import demo_catalogue, demo_rows
from service.store import load_demo, make_engine, read_catalogue, tables, writing
from service.store.audit import read_audit

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from sqlalchemy.ext.asyncio import AsyncEngine

pytestmark = pytest.mark.anyio


@pytest.fixture
async def engine(database_url: str) -> AsyncIterator[AsyncEngine]:
    engine = make_engine(database_url)
    yield engine
    await engine.dispose()


async def row_counts(engine: AsyncEngine) -> dict[str, int]:
    async with engine.connect() as connection:
        return {
            table.name: (await connection.execute(select(func.count()).select_from(table))).scalar_one()
            for table in tables.WATCHED
        }


async def states(engine: AsyncEngine) -> list[str]:
    revision = tables.price_book_revision.c
    async with engine.connect() as connection:
        return list((await connection.execute(select(revision.state).order_by(revision.revision_id))).scalars())


async def test_first_load_writes_every_row_of_the_files(engine: AsyncEngine) -> None:
    assert await load_demo(engine)

    rows = demo_rows()
    expected = {
        "account": 1,
        "material": len(rows.materials),
        "appliance": len(rows.appliances),
        "screen": len(rows.screens),
        "bracket": len(rows.brackets),
        "labour_rate": len(rows.labour_rates),
        "trade": len(rows.trades),
        "fixing_load": len(rows.fixing_loads),
        "price_book": 1,
        "price_book_revision": 1,
        "price": len(rows.prices),
    }
    assert expected == await row_counts(engine)


async def test_second_load_changes_nothing(engine: AsyncEngine) -> None:
    await load_demo(engine)
    before = await row_counts(engine)

    assert not await load_demo(engine)
    assert before == await row_counts(engine)


async def test_two_loads_at_once(engine: AsyncEngine) -> None:
    wrote = await asyncio.gather(load_demo(engine), load_demo(engine))

    assert [False, True] == sorted(wrote)
    assert ["published"] == await states(engine)


async def test_a_load_that_fails_leaves_no_trace(engine: AsyncEngine, monkeypatch: pytest.MonkeyPatch) -> None:
    async def publish_badly(connection: object, rows: object, digest: str) -> None:
        await publish(connection, rows, digest[:10])  # type: ignore[arg-type]  # no SHA-256: the last statements are refused

    publish = writing._publish  # noqa: SLF001 - fails where all else is written
    monkeypatch.setattr(writing, "_publish", publish_badly)

    with pytest.raises(IntegrityError, match="ck_price_book_revision_source_digest"):
        await load_demo(engine)
    assert {0} == set((await row_counts(engine)).values())


async def test_other_files_withdraw_the_revision_and_keep_it(engine: AsyncEngine, monkeypatch: pytest.MonkeyPatch) -> None:
    await load_demo(engine)
    monkeypatch.setattr(writing, "demo_text", lambda name: f"other {name}")

    assert await load_demo(engine)
    assert ["withdrawn", "published"] == await states(engine)
    assert 2 * len(demo_rows().prices) == (await row_counts(engine))["price"]
    assert demo_catalogue() == await read_catalogue(engine)


async def test_what_was_published_stays_whatever_becomes_of_the_items(engine: AsyncEngine) -> None:
    await load_demo(engine)
    async with engine.begin() as connection:
        await connection.execute(update(tables.material).values(description="other"))

    assert not await load_demo(engine)
    assert demo_catalogue() == await read_catalogue(engine)


async def test_a_load_is_in_the_audit(engine: AsyncEngine) -> None:
    await load_demo(engine)

    (entry,) = await read_audit(engine, "demo")
    assert ("command:load-demo", "published", demo_catalogue().revision) == (entry.actor, entry.action, entry.catalogue_revision)
