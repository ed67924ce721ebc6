"""A real PostgreSQL for tests: one embedded server for the whole run, started at first use, a fresh database for each test.

Use: in a folder's conftest.py, `from tests.postgres import anyio_backend, database_url, demo_database_url`.
"""

from __future__ import annotations

import asyncio
import atexit
import fcntl
import itertools
import shutil
import tempfile
import time
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from sqlalchemy.engine import make_url

from service.store import load_demo, make_engine, migrate
from service.store.acting import SERVICE_ROLE
from service.store.cluster import Cluster
from service.store.embedded import EmbeddedPostgres
from service.store.installation import find_runner

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sqlalchemy.ext.asyncio import AsyncEngine

NUMBERS = itertools.count(1)
PREFIX = "inglewright-test-"
LEFT_SECONDS = 600  # no test uses a server that it has let go of for that long


def new_data_dir() -> Path:
    """A new folder for an embedded server, removed when the run ends."""
    folder = Path(tempfile.mkdtemp(prefix=PREFIX))
    folder.chmod(0o755)  # root's server runs as another user, who must pass through
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    return folder


def cluster_of(server: EmbeddedPostgres) -> Cluster:
    """The files and process below a handle."""
    folder = server.data_dir / "postgres"
    return Cluster(folder, find_runner(server.data_dir, folder), durable=False)


@cache
def shared_server() -> EmbeddedPostgres:
    """The server of this run; it stops itself when the run ends."""
    clear_away(LEFT_SECONDS)
    server = EmbeddedPostgres(new_data_dir(), durable=False)
    server.start()
    return server


def clear_away(left_seconds: float) -> None:
    """Stop the servers, and remove the folders, of earlier runs that were killed."""
    for lock in Path(tempfile.gettempdir()).glob(f"{PREFIX}*/users.lock"):
        with lock.open() as users:
            try:
                fcntl.flock(users, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except BlockingIOError:
                continue  # somebody's tests run
            if time.time() - lock.stat().st_mtime > left_seconds:
                cluster_of(EmbeddedPostgres(lock.parent)).stop()
                shutil.rmtree(lock.parent, ignore_errors=True)


def run_sql(statement: str) -> None:
    """One statement on the server of this run, outside the tests' databases."""
    cluster_of(shared_server()).query(statement)


@cache
def template(*, with_demo: bool) -> str:
    """A database with the newest schema, and with the demo data at wish, that others are copied from."""
    name = "with_demo" if with_demo else "migrated"
    url = shared_server().url_of(name)
    if with_demo:
        run_sql(f'create database "{name}" template "{template(with_demo=False)}"')
        asyncio.run(_load_demo(url))
    else:
        run_sql(f'create database "{name}"')
        migrate(url)
    return name


async def _load_demo(url: str) -> None:
    engine = make_engine(url)
    await load_demo(engine)
    await engine.dispose()


@contextmanager
def copy_of(original: str) -> Iterator[str]:
    """Address of a new copy of a database; it is dropped afterwards, whoever is still connected."""
    name = f"copy_{next(NUMBERS)}"
    run_sql(f'create database "{name}" template "{original}"')
    try:
        yield shared_server().url_of(name)
    finally:
        run_sql(f'drop database if exists "{name}" with (force)')


def as_service(url: str) -> str:
    """The same database, for the service's own user."""
    return as_user(url, SERVICE_ROLE)


def as_user(url: str, name: str) -> str:
    """The same database, for a user."""
    return make_url(url).set(username=name).render_as_string()


async def unfreeze(engine: AsyncEngine) -> None:
    """Make what is published as a version of the service before frozen revisions left it: read from the tables as they stand."""
    async with engine.begin() as connection:
        await connection.exec_driver_sql("alter table price_book_revision disable trigger price_book_revision_kept")
        await connection.exec_driver_sql("update price_book_revision set catalogue_revision = null, part_digests = null")
        await connection.exec_driver_sql("alter table price_book_revision enable trigger price_book_revision_kept")


@pytest.fixture
def anyio_backend() -> str:
    """Tests marked `anyio` run on asyncio, as the service does."""
    return "asyncio"


@pytest.fixture
def empty_database_url() -> Iterator[str]:
    """Address of a database without anything in it."""
    with copy_of("template0") as url:
        yield url


@pytest.fixture
def database_url() -> Iterator[str]:
    """Address of a database with the newest schema and no data."""
    with copy_of(template(with_demo=False)) as url:
        yield url


@pytest.fixture
def demo_database_url() -> Iterator[str]:
    """Address of a database with the demo catalogue."""
    with copy_of(template(with_demo=True)) as url:
        yield url
