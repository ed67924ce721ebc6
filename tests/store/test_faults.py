"""Which exceptions mean that the database is away. Most are made by a real server; states: PostgreSQL 18, appendix A."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING

import asyncpg
import pytest
from sqlalchemy import text

from service.store import EngineLimits, NoCatalogueError, is_database_away, make_engine

if TYPE_CHECKING:
    from pathlib import Path

    from sqlalchemy.ext.asyncio import AsyncEngine

pytestmark = pytest.mark.anyio


async def fault_of(engine: AsyncEngine, statement: str, **values: object) -> BaseException:
    """What a statement raises."""
    try:
        async with engine.begin() as connection:
            await connection.execute(text(statement), values)
    except Exception as error:  # noqa: BLE001 - any fault is the answer
        return error
    finally:
        await engine.dispose()
    message = f"nothing was raised by {statement}"
    raise AssertionError(message)


@pytest.mark.parametrize(
    ("statement", "state"),
    [
        ("select pg_sleep(20)", "57014"),  # the statement takes too long
        ("select pg_terminate_backend(pg_backend_pid())", "08003"),  # the connection is gone
        ("do $$ begin raise sqlstate '57P01'; end $$", "57P01"),  # shut down by its owner
        ("do $$ begin raise sqlstate '53300'; end $$", "53300"),  # too many connections
        ("do $$ begin raise sqlstate '57P03'; end $$", "57P03"),  # the server starts up
        ("do $$ begin raise sqlstate '08006'; end $$", "08006"),
    ],
)
async def test_away_by_the_servers_word(database_url: str, statement: str, state: str) -> None:
    error = await fault_of(make_engine(database_url, EngineLimits(statement_seconds=0.1)), statement)

    assert (state, True) == (error.orig.sqlstate, is_database_away(error))  # type: ignore[attr-defined]  # as the driver has it


async def test_no_such_database(database_url: str) -> None:
    error = await fault_of(make_engine(database_url.replace("/copy_", "/no_")), "select 1")

    assert ("3D000", True) == (getattr(error, "sqlstate", None) or error.orig.sqlstate, is_database_away(error))  # type: ignore[attr-defined]  # one of both


async def test_no_such_user(database_url: str) -> None:
    error = await fault_of(make_engine(database_url.replace("inglewright@", "nobody@")), "select 1")

    assert is_database_away(error)


async def test_no_server(tmp_path: Path) -> None:
    error = await fault_of(make_engine(f"postgresql://u@/d?host={tmp_path}"), "select 1")

    assert (True, True) == (isinstance(error, OSError), is_database_away(error))


async def test_refused_by_the_port() -> None:
    error = await fault_of(make_engine("postgresql://u:p@127.0.0.1:1/d"), "select 1")

    assert (True, True) == (isinstance(error, OSError), is_database_away(error))


async def test_no_connection_left(database_url: str) -> None:
    engine = make_engine(database_url, EngineLimits(pool_size_count=1, overflow_count=0, pool_wait_seconds=0.05))
    async with engine.connect() as connection:
        await connection.exec_driver_sql("select 1")
        with pytest.raises(Exception, match="QueuePool limit") as caught:
            async with engine.connect():
                pass
    await engine.dispose()

    assert is_database_away(caught.value)


async def test_the_server_says_nothing(database_url: str) -> None:
    """The driver's own limit, as when the server is frozen."""
    engine = make_engine(database_url, EngineLimits(command_seconds=0.1, statement_seconds=30))

    assert is_database_away(await fault_of(engine, "select pg_sleep(20)"))


async def test_connection_lost_between_two_statements(database_url: str) -> None:
    engine = make_engine(database_url)
    connection = await engine.connect()
    raw = await connection.get_raw_connection()
    assert raw.driver_connection is not None
    raw.driver_connection.terminate()
    with pytest.raises(Exception, match="closed") as caught:
        await connection.exec_driver_sql("select 1")
    await connection.close()
    await engine.dispose()

    assert is_database_away(caught.value)


@pytest.mark.parametrize(
    ("statement", "value"),
    [
        ("select * from nothing_of_the_name", None),  # our mistake in a statement
        ("insert into price_book values ('nobody', 'b', false)", None),  # a foreign key
        ("insert into price_book values (null, 'b', false)", None),
        ("select 1 / 0", None),
        ("select cast(:value as bigint)", 1 << 70),  # refused by the driver
        ("select cast(:value as text)", "\0"),
        ("select cast(:value as text)", "\ud800"),
        ("select cast(:value as date)", "2026-11-25"),  # the wrong type
    ],
)
async def test_our_own_mistakes_are_not_away(database_url: str, statement: str, value: object) -> None:
    error = await fault_of(make_engine(database_url), statement, **({} if value is None else {"value": value}))

    assert not is_database_away(error)


@pytest.mark.parametrize(
    "error", [ValueError("x"), KeyError("x"), NoCatalogueError("x"), asyncio.CancelledError(), RuntimeError()]
)
def test_other_exceptions_are_not_away(error: BaseException) -> None:
    assert not is_database_away(error)


@pytest.mark.parametrize(
    "error",
    [
        asyncpg.CannotConnectNowError("starting up"),
        asyncpg.TooManyConnectionsError("x"),
        asyncpg.ConnectionDoesNotExistError("x"),
        asyncpg.InvalidPasswordError("x"),
        asyncpg.LockNotAvailableError("x"),
        TimeoutError(),
        ConnectionResetError(),
    ],
)
def test_the_drivers_own_exceptions_are_known_unwrapped(error: Exception) -> None:
    assert is_database_away(error)
