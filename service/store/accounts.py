"""Shops: made by the database's owner, standing on an account whose settings and catalogue they begin with."""

from __future__ import annotations

import datetime as dt
from enum import StrEnum
from typing import TYPE_CHECKING, Annotated, Any, Final

import msgspec
from msgspec import UNSET, Meta, UnsetType
from sqlalchemy import insert, select, update
from sqlalchemy.exc import IntegrityError

from service.store import access_tables, tables
from service.store.access import Origin
from service.store.acting import ALL_ACCOUNTS, act_for
from service.store.faults import NoCatalogueError, NoShopError
from service.units import PRINTABLE_PATTERN, Code

if TYPE_CHECKING:
    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

FIRST_BOOK: Final = "list"  # the price book that a new shop's revisions go to unless it makes others


class ShopStatus(StrEnum):
    """Whether a shop's keys open anything."""

    ACTIVE = "active"
    SUSPENDED = "suspended"


class AccountExistsError(ValueError):
    """There is an account of this name already."""

    def __init__(self, account: str) -> None:
        """Name it."""
        super().__init__(f"there is an account {account!r} already")


class NewShop(msgspec.Struct, frozen=True, kw_only=True):
    """A shop to be made."""

    account: Code
    name: Annotated[str, Meta(min_length=1, max_length=120, pattern=PRINTABLE_PATTERN)]
    base_account: str  # whose settings are copied, and whose items it sees until it has its own
    origins: tuple[Origin, ...] = ()


class ShopChange(msgspec.Struct, frozen=True, kw_only=True):
    """What is to be otherwise in a shop; the rest stays."""

    name: Annotated[str, Meta(min_length=1, max_length=120, pattern=PRINTABLE_PATTERN)] | UnsetType = UNSET
    status: ShopStatus | UnsetType = UNSET  # the owner's to say; the service's own user may not
    origins: tuple[Origin, ...] | UnsetType = UNSET


class Shop(msgspec.Struct, frozen=True, kw_only=True):
    """A shop as it is kept, beside the settings of `service.catalogue.Account` that quotes depend on."""

    account: str
    name: str
    status: ShopStatus
    base_account: str | None
    origins: tuple[str, ...]  # pages that may use its browser keys, as the Origin header names them
    created_at: dt.datetime


async def create_shop(engine: AsyncEngine, new: NewShop) -> None:
    """Make an account with the settings of its base, an empty price book as its default, and no key.

    Raises:
        AccountExistsError: the name is taken.
        NoCatalogueError: there is no such base.
    """
    async with engine.begin() as connection:
        settings = await _settings_of(connection, new.base_account)
        if new.account == new.base_account:
            raise AccountExistsError(new.account)
        await act_for(connection, new.account)
        values = {**settings, "account": new.account, "base_account": new.base_account}
        try:
            await connection.execute(insert(tables.account).values(values))
        except IntegrityError as error:
            if getattr(error.orig, "sqlstate", "") != "23505":  # PostgreSQL 18, appendix A: unique_violation
                raise
            raise AccountExistsError(new.account) from error
        shop = {"account": new.account, "name": new.name, "origins": list(new.origins)}
        await connection.execute(insert(access_tables.shop).values(shop))
        book = {"account": new.account, "price_book": FIRST_BOOK, "is_default": True}
        await connection.execute(insert(tables.price_book).values(book))


async def change_shop(engine: AsyncEngine, account: str, change: ShopChange) -> None:
    """Change a shop; its keys hold to that within a second.

    Raises:
        NoShopError: there is no such account.
    """
    values = {name: value for name, value in msgspec.structs.asdict(change).items() if value is not UNSET}
    shop = access_tables.shop
    async with engine.begin() as connection:
        await act_for(connection, account)
        done = await connection.execute(update(shop).where(shop.c.account == account).values(values or {"name": shop.c.name}))
        if done.rowcount == 0:
            raise NoShopError(account)


async def list_shops(engine: AsyncEngine) -> tuple[Shop, ...]:
    """All shops, by account."""
    shop, account = access_tables.shop.c, tables.account.c
    query = select(shop.account, shop.name, shop.status, account.base_account, shop.origins, shop.created_at).join_from(
        access_tables.shop, tables.account
    )
    async with engine.begin() as connection:
        await act_for(connection, ALL_ACCOUNTS)
        rows = (await connection.execute(query.order_by(shop.account))).mappings()
        return tuple(msgspec.convert({name: row[name] for name in Shop.__struct_fields__}, Shop) for row in rows)


async def _settings_of(connection: AsyncConnection, account: str) -> dict[str, Any]:
    await act_for(connection, account)
    row = (await connection.execute(select(tables.account).where(tables.account.c.account == account))).mappings().one_or_none()
    if row is None:
        message = f"no account {account!r} to stand on"
        raise NoCatalogueError(message)
    return {column.name: row[column.name] for column in tables.account.c}
