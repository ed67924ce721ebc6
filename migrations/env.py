"""How Alembic runs the migrations: async, one process at a time, one transaction each."""

from __future__ import annotations

import asyncio
import os
from typing import TYPE_CHECKING

from alembic import context
from sqlalchemy import NullPool, text
from sqlalchemy.ext.asyncio import create_async_engine

from service.store import access_tables  # noqa: F401 - for its tables
from service.store.engine import database_url
from service.store.tables import METADATA

if TYPE_CHECKING:
    from sqlalchemy import Connection

LOCK = 4_715_920_161  # any number, as long as nothing else in this database locks by it
# A change of a table waits for those that use it, and all that come later wait behind it: better to give up and try again
# (`service.store.migrate` does).
# A query of rows that would be kept from it by row-level security fails instead of finding none.
LIMITS = {"lock_timeout": "2s", "row_security": "off"}


def run(connection: Connection) -> None:
    """Hold the lock of this session, then run; the lock goes with the session at the latest."""
    connection.execute(text("select pg_advisory_lock(:lock)"), {"lock": LOCK})
    for name, value in LIMITS.items():
        connection.execute(text("select set_config(:name, :value, false)"), {"name": name, "value": value})
    connection.commit()
    context.configure(
        connection=connection,
        target_metadata=METADATA,
        compare_type=True,
        compare_server_default=True,
        transaction_per_migration=True,
    )
    with context.begin_transaction():
        context.run_migrations()


async def connect_and_run() -> None:
    """Connect to the database named by the caller, else by the environment."""
    url = context.config.attributes.get("url") or os.environ["INGLEWRIGHT_DATABASE_URL"]  # noqa: TID251 - Alembic's own command
    engine = create_async_engine(database_url(url), poolclass=NullPool)
    try:
        async with engine.connect() as connection:
            await connection.run_sync(run)
    finally:
        await engine.dispose()


if context.is_offline_mode():
    message = "migrations run against a live database only"
    raise SystemExit(message)
asyncio.run(connect_and_run())
