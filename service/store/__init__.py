"""The catalogue in PostgreSQL: schema, reading and writing, and snapshots that outlive an outage.

The embedded server has a door of its own, `service.store.embedded`, as it is not for every system.
"""

from service.store.engine import EngineLimits, database_url, make_engine
from service.store.faults import NoCatalogueError, is_database_away
from service.store.keeper import CatalogueKeeper, KeeperState
from service.store.reading import read_catalogue
from service.store.schema import migrate
from service.store.writing import load_demo

__all__ = [
    "CatalogueKeeper",
    "EngineLimits",
    "KeeperState",
    "NoCatalogueError",
    "database_url",
    "is_database_away",
    "load_demo",
    "make_engine",
    "migrate",
    "read_catalogue",
]
