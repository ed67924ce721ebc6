"""Bring a database to the schema that this code needs."""

from __future__ import annotations

import logging
import time
from pathlib import Path
from typing import TYPE_CHECKING, Final

from alembic import command
from alembic.config import Config
from sqlalchemy.exc import DBAPIError

from service.store.engine import database_url

if TYPE_CHECKING:
    from sqlalchemy.engine import URL

LOGGER = logging.getLogger(__name__)
NEWEST = "head"
LOCK_NOT_AVAILABLE: Final = "55P03"  # PostgreSQL 18, appendix A: also when `lock_timeout` has passed
WAITS_SECONDS: Final = (0.5, 1.0, 2.0, 3.0, 5.0, 5.0, 5.0, 5.0, 5.0)  # house choice: nine more tries in half a minute
SOURCE_TREE = Path(__file__).parents[2] / "migrations"
INSTALLED = Path(__file__).parents[1] / "migrations"  # where the wheel carries them


def migrate(url: str | URL, revision: str = NEWEST) -> None:
    """Run all migrations up to a revision, one process at a time; nothing to do is fine.

    A change that would have to wait for a table in use gives up, so that nobody queues behind it, and is tried again.
    Blocks, and runs its own event loop: inside one, call it through `asyncio.to_thread`.

    Raises:
        ValueError: as `database_url`.
        sqlalchemy.exc.DBAPIError: a table was in use at every try.
    """
    settings = migration_settings(url)
    for wait_seconds in WAITS_SECONDS:
        try:
            command.upgrade(settings, revision)
        except DBAPIError as error:
            if getattr(error.orig, "sqlstate", None) != LOCK_NOT_AVAILABLE:
                raise
            LOGGER.warning("a table is in use; the migration is tried again in %g s", wait_seconds)
            time.sleep(wait_seconds)
        else:
            return
    command.upgrade(settings, revision)


def migration_settings(url: str | URL) -> Config:
    """Alembic's settings for a database, for its other commands."""
    settings = Config(attributes={"url": database_url(url)})
    folder = SOURCE_TREE if SOURCE_TREE.is_dir() else INSTALLED
    settings.set_main_option("script_location", str(folder).replace("%", "%%"))
    return settings
