"""Catalogue rows into the tables, all or nothing."""

from __future__ import annotations

import datetime as dt
import hashlib
from typing import TYPE_CHECKING

import msgspec
from sqlalchemy import delete, func, insert, select
from sqlalchemy.dialects.postgresql import insert as insert_or_update

from service.catalogue import DEMO_FILES, demo_rows, demo_text, make_catalogue
from service.store import access_tables, tables
from service.store.acting import act_for
from service.store.audit import note
from service.store.publishing import replace_same_day, seal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sqlalchemy import ColumnElement, Table
    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

    from service.catalogue import CatalogueRows

DEMO_NAME = "Demo (invented)"
ACTOR = "command:load-demo"


async def load_demo(engine: AsyncEngine) -> bool:
    """Write the invented demo catalogue as a published price-book revision; nothing if it is there already.

    Returns:
        Whether anything was written.
    """
    digest = hashlib.sha256("".join(demo_text(name) for name in DEMO_FILES).encode()).hexdigest()
    rows = demo_rows()
    async with engine.begin() as connection:
        await act_for(connection, rows.account.account)
        # One loader at a time; the second finds the first one's work.
        await connection.execute(select(func.pg_advisory_xact_lock(func.hashtextextended(f"books:{rows.account.account}", 0))))
        if await _is_loaded(connection, rows, digest):
            return False
        await _write_account(connection, rows)
        await _write_items(connection, rows)
        await _publish(connection, rows, digest)
    return True


async def _is_loaded(connection: AsyncConnection, rows: CatalogueRows, digest: str) -> bool:
    revision = tables.price_book_revision.c
    query = select(revision.revision_id).where(
        revision.account == rows.account.account,
        revision.price_book == rows.price_book,
        revision.state == tables.RevisionState.PUBLISHED,
        revision.source_digest == digest,
        revision.catalogue_revision.is_not(None),
    )
    return (await connection.execute(query)).first() is not None


async def _write_account(connection: AsyncConnection, rows: CatalogueRows) -> None:
    values = msgspec.structs.asdict(rows.account)
    statement = insert_or_update(tables.account).values(values)
    await connection.execute(statement.on_conflict_do_update(index_elements=["account"], set_=values))
    shop = {"account": rows.account.account, "name": DEMO_NAME}
    await connection.execute(insert_or_update(access_tables.shop).values(shop).on_conflict_do_nothing())
    book = {"account": rows.account.account, "price_book": rows.price_book, "is_default": True}
    await connection.execute(insert_or_update(tables.price_book).values(book).on_conflict_do_nothing())


async def _write_items(connection: AsyncConnection, rows: CatalogueRows) -> None:
    """Replace all items of the account."""
    items: tuple[tuple[Table, Sequence[msgspec.Struct]], ...] = (
        (tables.material, rows.materials),
        (tables.appliance, rows.appliances),
        (tables.screen, rows.screens),
        (tables.bracket, rows.brackets),
        (tables.fixing_load, rows.fixing_loads),
        (tables.labour_rate, rows.labour_rates),
        (tables.trade, rows.trades),
    )
    owner = rows.account.account
    for table, kind_rows in items:
        await connection.execute(delete(table).where(table.c.account == owner))
        if kind_rows:
            await connection.execute(insert(table), [{**msgspec.structs.asdict(row), "account": owner} for row in kind_rows])


async def _publish(connection: AsyncConnection, rows: CatalogueRows, digest: str) -> None:
    """A new published revision of the price book; an earlier one of the same day is withdrawn, and kept."""
    revision = tables.price_book_revision
    owner, day = rows.account.account, dt.date.fromisoformat(rows.effective_from)
    await replace_same_day(connection, owner, rows.price_book, day)
    key = {"account": owner, "price_book": rows.price_book, "effective_from": day}
    await connection.execute(delete(revision).where(revision.c.state == tables.RevisionState.DRAFT, *_is(key)))
    values = {**key, "state": tables.RevisionState.DRAFT, "source_digest": digest}
    revision_id = (await connection.execute(insert(revision).values(values).returning(revision.c.revision_id))).scalar_one()
    steps = [msgspec.structs.asdict(step) for step in rows.prices]
    prices = [
        {name: value for name, value in step.items() if name != "valid_from"} | {"revision_id": revision_id} for step in steps
    ]
    await connection.execute(insert(tables.price), prices)
    made = make_catalogue(rows)
    await seal(connection, revision_id, made, day)
    facts = {"price_book": rows.price_book, "catalogue_revision": made.revision, "effective_from": day, "file_digest": digest}
    await note(connection, owner, ACTOR, tables.AuditAction.PUBLISHED, **facts)


def _is(key: dict[str, object]) -> list[ColumnElement[bool]]:
    """The same account and book."""
    return [tables.price_book_revision.c[name] == key[name] for name in ("account", "price_book")]
