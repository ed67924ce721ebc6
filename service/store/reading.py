"""One catalogue out of the tables, in one moment, as a value."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec
from sqlalchemy import and_, case, func, select

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
)
from service.store import tables
from service.store.acting import act_for
from service.store.faults import NoCatalogueError

if TYPE_CHECKING:
    import datetime as dt

    from sqlalchemy import Table
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
    shop = (await connection.execute(select(tables.account).where(tables.account.c.account == account))).mappings().one_or_none()
    if shop is None:
        message = f"no account {account!r}"
        raise NoCatalogueError(message)
    revision_id, effective_from = await _revision_in_force(connection, account, price_book, on)
    owners = (account, shop["base_account"] or account)
    return make_catalogue(
        CatalogueRows(
            account=msgspec.convert({field: shop[field] for field in Account.__struct_fields__}, Account),
            price_book=price_book,
            effective_from=effective_from.isoformat(),
            materials=await _items(connection, tables.material, Material, owners),
            appliances=await _items(connection, tables.appliance, Appliance, owners),
            screens=await _items(connection, tables.screen, Screen, owners),
            brackets=await _items(connection, tables.bracket, Bracket, owners),
            fixing_loads=await _items(connection, tables.fixing_load, FixingLoad, owners),
            labour_rates=await _items(connection, tables.labour_rate, LabourRate, owners),
            trades=await _items(connection, tables.trade, Trade, owners),
            prices=await _prices(connection, revision_id, effective_from),
        )
    )


async def _revision_in_force(
    connection: AsyncConnection, account: str, price_book: str, on: dt.date | None
) -> tuple[int, dt.date]:
    """The latest published revision whose day has come; without a day, else the first that is to come."""
    revision = tables.price_book_revision.c
    in_force = revision.effective_from <= (func.current_date() if on is None else on)
    asked = and_(revision.account == account, revision.price_book == price_book, revision.state == tables.RevisionState.PUBLISHED)
    query = (
        select(revision.revision_id, revision.effective_from)
        .where(asked if on is None else and_(asked, in_force))
        .order_by(in_force.desc(), case((in_force, revision.effective_from)).desc(), revision.effective_from)
        .limit(1)
    )
    row = (await connection.execute(query)).one_or_none()
    if row is None:
        message = f"no published revision of price book {price_book!r} of account {account!r} is in force {on or 'yet'}"
        raise NoCatalogueError(message)
    return row.revision_id, row.effective_from


async def _items[T: msgspec.Struct](
    connection: AsyncConnection, table: Table, kind: type[T], owners: tuple[str, str]
) -> tuple[T, ...]:
    """Rows of the account and of the one it stands on; the account's own come last, and so hold."""
    query = (
        select(*(table.c[field] for field in kind.__struct_fields__))
        .where(table.c.account.in_(owners))
        .order_by(table.c.account == owners[0])
    )
    rows = await connection.execute(query)
    return tuple(msgspec.convert(dict(zip(kind.__struct_fields__, row, strict=True)), kind) for row in rows)


async def _prices(connection: AsyncConnection, revision_id: int, effective_from: dt.date) -> tuple[PriceStep, ...]:
    price = tables.price.c
    query = select(price.code, price.amount_minor, price.currency, price.from_count, price.supplier, price.lead_days)
    day = effective_from.isoformat()
    rows = await connection.execute(query.where(price.revision_id == revision_id))
    return tuple(PriceStep(**row._asdict(), valid_from=day) for row in rows)
