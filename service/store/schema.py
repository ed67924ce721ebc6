"""Bring a database to the schema that this code needs."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from alembic import command
from alembic.config import Config

from service.store.engine import database_url

if TYPE_CHECKING:
    from sqlalchemy.engine import URL

NEWEST = "head"
SOURCE_TREE = Path(__file__).parents[2] / "migrations"
INSTALLED = Path(__file__).parents[1] / "migrations"  # where the wheel carries them


def migrate(url: str | URL, revision: str = NEWEST) -> None:
    """Run all migrations up to a revision, one process at a time; nothing to do is fine.

    Blocks, and runs its own event loop: inside one, call it through `asyncio.to_thread`.

    Raises:
        ValueError: as `database_url`.
    """
    command.upgrade(migration_settings(url), revision)


def migration_settings(url: str | URL) -> Config:
    """Alembic's settings for a database, for its other commands."""
    settings = Config(attributes={"url": database_url(url)})
    folder = SOURCE_TREE if SOURCE_TREE.is_dir() else INSTALLED
    settings.set_main_option("script_location", str(folder).replace("%", "%%"))
    return settings
