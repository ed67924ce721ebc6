"""Keys of two shops in a real database, by the service's own user."""

from __future__ import annotations

import asyncio
import datetime as dt
from typing import TYPE_CHECKING

import pytest
from sqlalchemy import insert, select, update

from service.store import access_tables, keys
from service.store.access import KeyKind, NewKey, Scope, digest_of, read_key
from service.store.acting import act_for
from service.store.faults import NoKeyError, NoShopError, SpentKeyError, TooManyKeysError
from service.store.keys import create_key, list_keys, revoke_key, rotate_key
from tests.postgres import as_service
from tests.store.shops import NORTH, SOUTH, engine_of, open_shops, server_key

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from sqlalchemy.ext.asyncio import AsyncEngine

pytestmark = pytest.mark.anyio
HOUR = dt.timedelta(hours=1)


@pytest.fixture
async def engine(demo_database_url: str) -> AsyncIterator[AsyncEngine]:
    await open_shops(demo_database_url)
    async with engine_of(as_service(demo_database_url)) as engine:
        yield engine


async def kept(engine: AsyncEngine, account: str, key_id: str) -> dict[str, object]:
    query = select(access_tables.access_key).where(access_tables.access_key.c.key_id == key_id)
    async with engine.begin() as connection:
        await act_for(connection, account)
        return dict((await connection.execute(query)).mappings().one())


async def test_of_a_new_key_only_its_digest_is_kept(engine: AsyncEngine) -> None:
    new = NewKey(kind=KeyKind.SERVER, label="till", scopes=(Scope.QUOTE, Scope.ADMIN, Scope.QUOTE))
    made = await create_key(engine, NORTH, new)
    text = read_key(made.key)
    row = await kept(engine, NORTH, made.row.key_id)

    assert text is not None
    assert made.row.key_id == text.key_id
    assert digest_of(text) == row["secret_digest"]
    assert text.secret not in repr(row)
    assert ((Scope.ADMIN, Scope.QUOTE), "till", None) == (made.row.scopes, made.row.label, made.row.last_used_at)
    assert (made.row,) == await list_keys(engine, NORTH)


async def test_no_account_sees_or_ends_or_rotates_a_key_of_another(engine: AsyncEngine) -> None:
    made = await create_key(engine, NORTH, server_key())

    assert () == await list_keys(engine, SOUTH)
    with pytest.raises(NoKeyError):
        await revoke_key(engine, SOUTH, made.row.key_id)
    with pytest.raises(NoKeyError):
        await rotate_key(engine, SOUTH, made.row.key_id, HOUR)
    assert (made.row,) == await list_keys(engine, NORTH)


async def test_a_key_of_no_account_is_refused(engine: AsyncEngine) -> None:
    with pytest.raises(NoShopError, match="no account 'west'"):
        await create_key(engine, "west", server_key())


async def test_rotation_leaves_the_old_key_its_overlap(engine: AsyncEngine) -> None:
    old = await create_key(engine, NORTH, server_key(Scope.QUOTE, Scope.CATALOGUE_READ))
    new = await rotate_key(engine, NORTH, old.row.key_id, HOUR)
    rows = {row.key_id: row for row in await list_keys(engine, NORTH)}
    ended = rows[old.row.key_id].expires_at

    assert old.key != new.key
    assert (old.row.scopes, old.row.kind, old.row.label) == (new.row.scopes, new.row.kind, new.row.label)
    assert (old.row.key_id, None) == (new.row.rotated_from, new.row.expires_at)
    assert ended is not None
    assert HOUR == ended - new.row.created_at


async def test_rotation_at_once_ends_the_old_key_and_never_gives_it_more_time(engine: AsyncEngine) -> None:
    at_once = await create_key(engine, NORTH, server_key())
    new = await rotate_key(engine, NORTH, at_once.row.key_id, dt.timedelta(0))
    end = dt.datetime.now(dt.UTC) + HOUR / 2
    short = await create_key(engine, NORTH, NewKey(kind=KeyKind.BROWSER, label="page", expires_at=end))
    await rotate_key(engine, NORTH, short.row.key_id, HOUR)
    rows = {row.key_id: row for row in await list_keys(engine, NORTH)}

    assert new.row.created_at == rows[at_once.row.key_id].expires_at
    assert end == rows[short.row.key_id].expires_at


async def test_a_key_has_one_successor(engine: AsyncEngine) -> None:
    old = await create_key(engine, NORTH, server_key())
    tries = await asyncio.gather(*(rotate_key(engine, NORTH, old.row.key_id, HOUR) for _ in range(3)), return_exceptions=True)

    assert 1 == sum(not isinstance(found, BaseException) for found in tries)
    assert 2 == sum(isinstance(found, SpentKeyError) for found in tries)
    assert 2 == len(await list_keys(engine, NORTH))


async def test_a_key_that_has_ended_is_not_rotated(engine: AsyncEngine) -> None:
    revoked, expired = [await create_key(engine, NORTH, server_key()) for _ in range(2)]
    await revoke_key(engine, NORTH, revoked.row.key_id)
    async with engine.begin() as connection:
        await act_for(connection, NORTH)
        key = access_tables.access_key.c
        end = key.created_at + dt.timedelta(microseconds=1)
        await connection.execute(update(access_tables.access_key).where(key.key_id == expired.row.key_id).values(expires_at=end))

    for made in (revoked, expired):
        with pytest.raises(SpentKeyError, match="has ended"):
            await rotate_key(engine, NORTH, made.row.key_id, HOUR)


async def test_revoking_again_changes_nothing(engine: AsyncEngine) -> None:
    made = await create_key(engine, NORTH, server_key())
    first = await revoke_key(engine, NORTH, made.row.key_id)
    again = await revoke_key(engine, NORTH, made.row.key_id)

    assert first.revoked_at is not None
    assert first == again


async def test_an_account_has_so_many_live_keys_and_no_more(engine: AsyncEngine, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(keys, "MOST_LIVE_COUNT", 3)
    tries = await asyncio.gather(*(create_key(engine, NORTH, server_key()) for _ in range(5)), return_exceptions=True)
    assert 2 == sum(isinstance(found, TooManyKeysError) for found in tries)

    (row, *_) = await list_keys(engine, NORTH)
    await revoke_key(engine, NORTH, row.key_id)
    await create_key(engine, NORTH, server_key())
    await create_key(engine, SOUTH, server_key())


@pytest.mark.parametrize(
    ("kind", "scopes"), [("browser", ["quote"]), ("server", []), ("server", ["everything"]), ("carrier", ["quote"])]
)
async def test_the_database_holds_no_key_that_makes_no_sense(engine: AsyncEngine, kind: str, scopes: list[str]) -> None:
    values = {"key_id": "0" * 12, "account": NORTH, "kind": kind, "label": "", "scopes": scopes, "secret_digest": bytes(32)}
    async with engine.begin() as connection:
        await act_for(connection, NORTH)
        with pytest.raises(Exception, match="violates check constraint"):
            await connection.execute(insert(access_tables.access_key).values(values))
