"""The catalogue, shops and keys in PostgreSQL: schema, reading and writing, and snapshots that outlive an outage.

The embedded server has a door of its own, `service.store.embedded`, as it is not for every system.
"""

from service.store.access import HeldKey, KeyKind, KeyRow, MadeKey, NewKey, Scope, is_same, read_key
from service.store.accounts import AccountExistsError, NewShop, Shop, ShopChange, ShopStatus, change_shop, create_shop, list_shops
from service.store.audit import AuditEntry
from service.store.book_desk import BookDesk
from service.store.books import WRITE_LIMITS, Book, BookError, BookRevision, Trouble
from service.store.engine import EngineLimits, database_url, make_engine
from service.store.faults import (
    NoCatalogueError,
    NoKeyError,
    NoShopError,
    SpentKeyError,
    TooManyKeysError,
    is_database_away,
)
from service.store.importing import Imported, ImportMode, ImportOrder, RowsRefusedError
from service.store.keeper import CatalogueKeeper, KeeperState
from service.store.key_desk import KeyDesk
from service.store.key_ring import KeyRing
from service.store.key_uses import KeyUses
from service.store.publishing import Draft, PublishOrder, UnsoundError, WithdrawOrder
from service.store.reading import read_catalogue
from service.store.schema import migrate
from service.store.writing import load_demo

__all__ = [
    "WRITE_LIMITS",
    "AccountExistsError",
    "AuditEntry",
    "Book",
    "BookDesk",
    "BookError",
    "BookRevision",
    "CatalogueKeeper",
    "Draft",
    "EngineLimits",
    "HeldKey",
    "ImportMode",
    "ImportOrder",
    "Imported",
    "KeeperState",
    "KeyDesk",
    "KeyKind",
    "KeyRing",
    "KeyRow",
    "KeyUses",
    "MadeKey",
    "NewKey",
    "NewShop",
    "NoCatalogueError",
    "NoKeyError",
    "NoShopError",
    "PublishOrder",
    "RowsRefusedError",
    "Scope",
    "Shop",
    "ShopChange",
    "ShopStatus",
    "SpentKeyError",
    "TooManyKeysError",
    "Trouble",
    "UnsoundError",
    "WithdrawOrder",
    "change_shop",
    "create_shop",
    "database_url",
    "is_database_away",
    "is_same",
    "list_shops",
    "load_demo",
    "make_engine",
    "migrate",
    "read_catalogue",
    "read_key",
]
