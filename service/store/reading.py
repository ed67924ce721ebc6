"""One catalogue out of the tables, in one moment, as a value."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING, Any

import msgspec
from sqlalchemy import and_, case, func, or_, select

from service.catalogue import (
    Account,
    Appliance,
    Bracket,
    Catalogue,
    CatalogueRows,
    FixingLoad,
    LabourRate,
    Material,
    PriceStep,
    Screen,
    Trade,
    make_catalogue,
    thaw,
)
from service.store import tables
from service.store.acting import act_for
from service.store.faults import NoCatalogueError
from service.store.frozen import read_parts

if TYPE_CHECKING:
    import datetime as dt

    from sqlalchemy import Row, RowMapping, Table
    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

DEMO = "demo"
ONE_MOMENT: dict[str, Any] = {"isolation_level": "REPEATABLE READ", "postgresql_readonly": True}


async def read_catalogue(
    engine: AsyncEngine, account: str = DEMO, price_book: str = DEMO, on: dt.date | None = None
) -> Catalogue:
    """The catalogue of an account at the prices in force on a day.

    Args:
        engine: where from.
        account: the shop.
        price_book: one of its price books.
        on: the day; None is today by the database's clock, and then a book none of whose revisions is in force yet
            gives its first one.

    Raises:
        NoCatalogueError: no such account, or no revision of that book in force on the day.
    """
    async with engine.connect() as connection:
        moment = await connection.execution_options(**ONE_MOMENT)
        async with moment.begin():
            return await catalogue_on(moment, account, price_book, on)


async def catalogue_on(connection: AsyncConnection, account: str, price_book: str, on: dt.date | None = None) -> Catalogue:
    """As `read_catalogue`, inside a transaction that the caller holds; it acts for the account from here on."""
    await act_for(connection, account)
    shop = await _shop(connection, account)
    revision = await _revision_in_force(connection, account, price_book, on)
    if revision.part_digests is not None:
        values = await read_parts(connection, account, revision.part_digests, {})
        return thaw(revision.catalogue_revision, price_book, values)
    return await compose(connection, shop, price_book, (revision.revision_id, revision.effective_from.isoformat()))


async def catalogue_of_draft(connection: AsyncConnection, account: str, price_book: str, revision: tuple[int, str]) -> Catalogue:
    """What a draft would be: the items as they stand and its prices, as of a day.

    Args:
        connection: in a transaction; it acts for the account from here on.
        account: the shop.
        price_book: its book.
        revision: the number of the draft, and the day from which its prices hold.
    """
    await act_for(connection, account)
    return await compose(connection, await _shop(connection, account), price_book, revision)


async def compose(connection: AsyncConnection, shop: RowMapping, price_book: str, revision: tuple[int, str]) -> Catalogue:
    """A catalogue out of the tables as they stand: items of the shop over those of its base, and the prices of a revision."""
    revision_id, effective_from = revision
    owners = (shop["account"], shop["base_account"] or shop["account"])
    return await asyncio.to_thread(
        make_catalogue,
        CatalogueRows(
            account=msgspec.convert({field: shop[field] for field in Account.__struct_fields__}, Account),
            price_book=price_book,
            effective_from=effective_from,
            materials=await _items(connection, tables.material, Material, owners),
            appliances=await _items(connection, tables.appliance, Appliance, owners),
            screens=await _items(connection, tables.screen, Screen, owners),
            brackets=await _items(connection, tables.bracket, Bracket, owners),
            fixing_loads=await _items(connection, tables.fixing_load, FixingLoad, owners),
            labour_rates=await _items(connection, tables.labour_rate, LabourRate, owners),
            trades=await _items(connection, tables.trade, Trade, owners),
            prices=await _prices(connection, revision_id, effective_from),
        ),
    )


async def _shop(connection: AsyncConnection, account: str) -> RowMapping:
    shop = (await connection.execute(select(tables.account).where(tables.account.c.account == account))).mappings().one_or_none()
    if shop is None:
        message = f"no account {account!r}"
        raise NoCatalogueError(message)
    return shop


async def _revision_in_force(
    connection: AsyncConnection, account: str, price_book: str, on: dt.date | None
) -> Row[Any, Any, Any, Any]:
    """The revision that holds on a day, as `catalogue.in_force` says; without a day, else the first that is to come."""
    revision = tables.price_book_revision.c
    day = func.current_date() if on is None else on
    has_come = revision.effective_from <= day
    holds = or_(
        revision.state == tables.RevisionState.PUBLISHED, revision.withdrawn_from > func.greatest(day, revision.effective_from)
    )
    asked = and_(revision.account == account, revision.price_book == price_book, holds)
    query = (
        select(revision.revision_id, revision.effective_from, revision.catalogue_revision, revision.part_digests)
        .where(asked if on is None else and_(asked, has_come))
        .order_by(has_come.desc(), case((has_come, revision.effective_from)).desc(), revision.effective_from)
        .order_by(revision.revision_id.desc())
        .limit(1)
    )
    row = (await connection.execute(query)).one_or_none()
    if row is None:
        message = f"no published revision of price book {price_book!r} of account {account!r} is in force {on or 'yet'}"
        raise NoCatalogueError(message)
    return row


async def _items[T: msgspec.Struct](
    connection: AsyncConnection, table: Table, kind: type[T], owners: tuple[str, str]
) -> tuple[T, ...]:
    """Rows of the account and of the one it stands on; the account's own come last, and so hold."""
    query = (
        select(*(table.c[field] for field in kind.__struct_fields__))
        .where(table.c.account.in_(owners))
        .order_by(table.c.account == owners[0])
    )
    rows = (await connection.execute(query)).all()
    names = kind.__struct_fields__
    return await asyncio.to_thread(lambda: tuple(msgspec.convert(dict(zip(names, row, strict=True)), kind) for row in rows))


async def _prices(connection: AsyncConnection, revision_id: int, effective_from: str) -> tuple[PriceStep, ...]:
    price = tables.price.c
    columns = [price[name] for name in PriceStep.__struct_fields__ if name != "valid_from"]
    rows = (await connection.execute(select(*columns).where(price.revision_id == revision_id))).mappings().all()
    return await asyncio.to_thread(lambda: tuple(PriceStep(**row, valid_from=effective_from) for row in rows))
