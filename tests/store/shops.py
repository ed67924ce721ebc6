"""Two shops beside the demo, each with an item, a book and a published price of its own."""

from __future__ import annotations

import datetime as dt
from contextlib import asynccontextmanager
from typing import TYPE_CHECKING

from sqlalchemy import func, insert

from service.catalogue import demo_catalogue
from service.store import make_engine, tables
from service.store.access import KeyKind, NewKey, Scope
from service.store.accounts import FIRST_BOOK, NewShop, create_shop
from service.store.acting import act_for

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from sqlalchemy.ext.asyncio import AsyncEngine

NORTH, SOUTH = "north", "south"
ORIGIN = {NORTH: "https://north.example", SOUTH: "https://south.example"}
DAY = dt.date(2026, 9, 1)


@asynccontextmanager
async def engine_of(url: str) -> AsyncIterator[AsyncEngine]:
    engine = make_engine(url)
    try:
        yield engine
    finally:
        await engine.dispose()


def server_key(*scopes: Scope) -> NewKey:
    return NewKey(kind=KeyKind.SERVER, label="till", scopes=scopes or (Scope.QUOTE,))


async def open_shops(owner_url: str) -> None:
    """North charges 1.11 for its studs, South 2.22; each has a screen of its own."""
    async with engine_of(owner_url) as engine:
        for account, amount_minor in ((NORTH, 111), (SOUTH, 222)):
            new = NewShop(account=account, name=account.title(), base_account="demo", origins=(ORIGIN[account],))
            await create_shop(engine, new)
            await _publish(engine, account, amount_minor)


async def _publish(engine: AsyncEngine, account: str, amount_minor: int) -> None:
    catalogue = demo_catalogue()
    screen = {field: getattr(catalogue.screens["SC-043"], field) for field in tables.screen.c.keys() if field != "account"}  # noqa: SIM118 - columns
    async with engine.begin() as connection:
        await act_for(connection, account)
        await connection.execute(insert(tables.screen).values({**screen, "account": account, "model": f"OWN-{account}"}))
        revision = {
            "account": account,
            "price_book": FIRST_BOOK,
            "effective_from": DAY,
            "state": "published",
            "source_digest": "0" * 64,
            "published_at": func.now(),
        }
        made = insert(tables.price_book_revision).values(revision).returning(tables.price_book_revision.c.revision_id)
        revision_id = (await connection.execute(made)).scalar_one()
        prices = [
            {
                "revision_id": revision_id,
                "code": code,
                "from_count": 1,
                "amount_minor": amount_minor,
                "currency": "GBP",
                "supplier": "invented",
                "lead_days": 1,
            }
            for code in catalogue.materials
        ]
        await connection.execute(insert(tables.price), prices)
