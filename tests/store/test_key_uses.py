from __future__ import annotations

import asyncio
import datetime as dt
import time
from typing import TYPE_CHECKING

import pytest

from service.store.key_ring import KeyRing
from service.store.key_uses import KeyUses
from service.store.keys import create_key, list_keys
from tests.postgres import as_service
from tests.store.shops import NORTH, SOUTH, engine_of, open_shops, server_key

if TYPE_CHECKING:
    from collections.abc import AsyncIterator
    from pathlib import Path

    from sqlalchemy.ext.asyncio import AsyncEngine

pytestmark = pytest.mark.anyio
NOON = dt.datetime(2026, 11, 25, 12, tzinfo=dt.UTC)


@pytest.fixture
async def engine(demo_database_url: str) -> AsyncIterator[AsyncEngine]:
    await open_shops(demo_database_url)
    async with engine_of(as_service(demo_database_url)) as engine:
        yield engine


async def last_uses(engine: AsyncEngine, *accounts: str) -> list[dt.datetime | None]:
    return [row.last_used_at for account in accounts for row in await list_keys(engine, account)]


async def test_uses_of_two_shops_are_written_together_and_the_latest_stays(engine: AsyncEngine) -> None:
    north, south = [(await create_key(engine, account, server_key())).row.key_id for account in (NORTH, SOUTH)]
    one, other = KeyUses(engine), KeyUses(engine)
    one.note(NORTH, north, NOON)
    one.note(NORTH, north, NOON + dt.timedelta(minutes=5))
    one.note(SOUTH, south, NOON)
    other.note(NORTH, north, NOON + dt.timedelta(minutes=2))  # another process, which writes later
    assert [None, None] == await last_uses(engine, NORTH, SOUTH)
    await one.write()
    await other.write()
    await one.write()  # nothing more to write

    assert [NOON + dt.timedelta(minutes=5), NOON] == await last_uses(engine, NORTH, SOUTH)


async def test_they_are_written_now_and_then_and_at_the_end(engine: AsyncEngine) -> None:
    key_id = (await create_key(engine, NORTH, server_key())).row.key_id
    async with KeyUses(engine, write_seconds=0.05) as uses:
        uses.note(NORTH, key_id, NOON)
        end = time.monotonic() + 5
        while [NOON] != await last_uses(engine, NORTH):
            assert time.monotonic() < end
            await asyncio.sleep(0.02)
    async with KeyUses(engine) as uses:
        uses.note(NORTH, key_id, NOON + dt.timedelta(days=1))

    assert [NOON + dt.timedelta(days=1)] == await last_uses(engine, NORTH)


async def test_a_note_tells_nobody(engine: AsyncEngine) -> None:
    """A notice for each would have every process read all keys every minute."""
    key_id = (await create_key(engine, NORTH, server_key())).row.key_id
    async with KeyRing(engine.url) as ring:
        assert await ring.wait_until_loaded(10)
        held = ring.find(key_id)
        uses = KeyUses(engine)
        uses.note(NORTH, key_id, NOON)
        await uses.write()
        await asyncio.sleep(0.3)

        assert held is ring.find(key_id)


async def test_while_the_database_is_away_they_stay_noted(engine: AsyncEngine, tmp_path: Path) -> None:
    key_id = (await create_key(engine, NORTH, server_key())).row.key_id
    async with engine_of(f"postgresql://nobody@/none?host={tmp_path}") as away:
        uses = KeyUses(away)
        uses.note(NORTH, key_id, NOON)
        await uses.write()
        uses._engine = engine  # noqa: SLF001 - the database is back
        await uses.write()

    assert [NOON] == await last_uses(engine, NORTH)


async def test_a_key_that_is_gone_keeps_no_other_from_being_noted(engine: AsyncEngine) -> None:
    key_id = (await create_key(engine, SOUTH, server_key())).row.key_id
    uses = KeyUses(engine)
    uses.note(NORTH, "0" * 12, NOON)
    uses.note(SOUTH, key_id, NOON)
    await uses.write()

    assert [NOON] == await last_uses(engine, SOUTH)
