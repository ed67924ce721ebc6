"""The ring follows a real database, as the service's own user."""

from __future__ import annotations

import asyncio
import datetime as dt
import time
from typing import TYPE_CHECKING

import msgspec
import pytest
from sqlalchemy import update

from service.store import access_tables
from service.store.access import KeyKind, NewKey, Scope, is_same, read_key
from service.store.key_ring import KeyRing, has_ended
from service.store.keys import create_key, revoke_key, rotate_key
from tests.postgres import as_service
from tests.store.shops import NORTH, ORIGIN, SOUTH, engine_of, open_shops, server_key
from tests.store.test_access import held

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Callable

    from sqlalchemy.ext.asyncio import AsyncEngine

pytestmark = pytest.mark.anyio


@pytest.fixture
async def engine(demo_database_url: str) -> AsyncIterator[AsyncEngine]:
    await open_shops(demo_database_url)
    async with engine_of(as_service(demo_database_url)) as engine:
        yield engine


async def seconds_until(holds: Callable[[], object], within_seconds: float = 5.0) -> float:
    start = time.monotonic()
    while not holds():
        assert within_seconds > time.monotonic() - start, "not in time"
        await asyncio.sleep(0.005)
    return time.monotonic() - start


async def test_it_holds_the_keys_of_all_shops_and_what_they_open(engine: AsyncEngine) -> None:
    till = await create_key(engine, NORTH, server_key(Scope.QUOTE, Scope.ADMIN))
    page = await create_key(engine, SOUTH, NewKey(kind=KeyKind.BROWSER, label="page"))
    ring = KeyRing(engine.url)
    assert (False, True, None) == (ring.is_loaded, ring.is_stale, ring.find(till.row.key_id))
    async with ring:
        assert await ring.wait_until_loaded(10)
        assert (True, False) == (ring.is_loaded, ring.is_stale)
        first, second = ring.find(till.row.key_id), ring.find(page.row.key_id)

    assert first is not None
    assert second is not None
    assert (NORTH, KeyKind.SERVER, frozenset({Scope.QUOTE, Scope.ADMIN})) == (first.account, first.kind, first.scopes)
    assert (SOUTH, KeyKind.BROWSER, frozenset({ORIGIN[SOUTH]}), False) == (
        second.account,
        second.kind,
        second.origins,
        second.is_suspended,
    )
    text = read_key(till.key)
    assert text is not None
    assert is_same(text, first)
    assert not is_same(text, second)
    assert first is ring.find(till.row.key_id)  # what is held stays held


async def test_two_processes_see_each_change_within_a_second(engine: AsyncEngine, demo_database_url: str) -> None:
    async with KeyRing(engine.url) as one, KeyRing(engine.url) as other:
        assert await one.wait_until_loaded(10)
        assert await other.wait_until_loaded(10)
        made = await create_key(engine, NORTH, server_key())
        key_id = made.row.key_id
        await seconds_until(lambda: one.find(key_id) and other.find(key_id), 1.0)

        new = await rotate_key(engine, NORTH, key_id, dt.timedelta(hours=1))
        await seconds_until(lambda: one.find(new.row.key_id) and other.find(new.row.key_id), 1.0)
        still = one.find(key_id)
        assert still is not None
        assert not has_ended(still, dt.datetime.now(dt.UTC))
        assert has_ended(still, dt.datetime.now(dt.UTC) + dt.timedelta(hours=1))

        await revoke_key(engine, NORTH, key_id)
        await seconds_until(lambda: all(_is_revoked(ring, key_id) for ring in (one, other)), 1.0)

        async with engine_of(demo_database_url) as owner, owner.begin() as connection:
            await connection.execute(update(access_tables.shop).values(status="suspended"))
        await seconds_until(lambda: all(_is_suspended(ring, key_id) for ring in (one, other)), 1.0)


def _is_revoked(ring: KeyRing, key_id: str) -> bool:
    key = ring.find(key_id)
    return key is not None and key.revoked_at is not None


def _is_suspended(ring: KeyRing, key_id: str) -> bool:
    key = ring.find(key_id)
    return key is not None and key.is_suspended


async def test_a_notice_that_is_lost_is_made_up_for(engine: AsyncEngine, demo_database_url: str) -> None:
    made = await create_key(engine, NORTH, server_key())
    ring = KeyRing(engine.url)
    ring._follower.poll_seconds = 0.05  # noqa: SLF001 - half a minute otherwise
    async with ring, engine_of(demo_database_url) as owner:
        assert await ring.wait_until_loaded(10)
        async with owner.begin() as connection:
            await connection.exec_driver_sql("alter table access_key disable trigger access_key_changed")
        await revoke_key(engine, NORTH, made.row.key_id)
        await seconds_until(lambda: _is_revoked(ring, made.row.key_id))


async def test_a_key_that_ended_long_ago_is_not_held(engine: AsyncEngine, demo_database_url: str) -> None:
    gone, lately = [await create_key(engine, NORTH, server_key()) for _ in range(2)]
    async with engine_of(demo_database_url) as owner, owner.begin() as connection:
        for made, days in ((gone, 8), (lately, 6)):
            then = dt.datetime.now(dt.UTC) - dt.timedelta(days=days)
            key = access_tables.access_key
            await connection.execute(update(key).where(key.c.key_id == made.row.key_id).values(revoked_at=then))
    async with KeyRing(engine.url) as ring:
        assert await ring.wait_until_loaded(10)

        assert (False, True) == (ring.find(gone.row.key_id) is not None, _is_revoked(ring, lately.row.key_id))


async def test_the_connection_is_cut_and_comes_back(engine: AsyncEngine, demo_database_url: str) -> None:
    made = await create_key(engine, NORTH, server_key())
    async with KeyRing(engine.url) as ring, engine_of(demo_database_url) as owner:
        assert await ring.wait_until_loaded(10)
        await engine.dispose()
        async with owner.begin() as connection:
            others = "select count(pg_terminate_backend(pid)) from pg_stat_activity"
            others += " where datname = current_database() and pid <> pg_backend_pid()"
            assert 1 == (await connection.exec_driver_sql(others)).scalar_one()
        await revoke_key(engine, NORTH, made.row.key_id)  # while nobody listens
        await seconds_until(lambda: _is_revoked(ring, made.row.key_id) and not ring.is_stale)


def test_an_end_is_reached_at_its_moment() -> None:
    now = dt.datetime(2026, 11, 25, 12, tzinfo=dt.UTC)
    text = read_key("iws_0123456789ab_" + "A" * 43)
    assert text is not None
    key = msgspec.structs.replace(held(text), expires_at=now)

    assert [False, True] == [has_ended(key, now - dt.timedelta(microseconds=1)), has_ended(key, now)]
    assert not has_ended(held(text), now)
