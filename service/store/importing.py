"""Rows of a file into a draft: copied into a temporary table, then taken over in one transaction, or not at all.

The rows of row-level security cannot be copied into, and a file is known to be good only at its end: so the rows wait in a
table of this transaction alone. A process that is killed meanwhile leaves nothing.
"""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING, Any, Final

import msgspec
from sqlalchemy import column, delete, insert, literal, or_, select, text
from sqlalchemy import table as named_table
from sqlalchemy.dialects.postgresql import insert as insert_or_update

from service.catalogue import FORMS, RowKind
from service.store import tables
from service.store.audit import note
from service.store.books import begin_draft, set_source, writing
from service.store.tables import AuditAction

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Sequence

    import asyncpg
    from sqlalchemy import Table
    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

    from service.catalogue import Faults, Row

STAGED: Final = "staged_rows"
TARGETS: Final[dict[RowKind, Table]] = {
    RowKind.PRICES: tables.price,
    RowKind.MATERIALS: tables.material,
    RowKind.APPLIANCES: tables.appliance,
    RowKind.SCREENS: tables.screen,
    RowKind.BRACKETS: tables.bracket,
    RowKind.FIXING_LOADS: tables.fixing_load,
    RowKind.LABOUR_RATES: tables.labour_rate,
    RowKind.TRADES: tables.trade,
}
CLOSED: Final = "the connection was closed before the rows could be copied"


class ImportMode(StrEnum):
    """What happens to rows that the file does not name."""

    MERGE = "merge"  # they stay
    REPLACE = "replace"  # they go


class ImportOrder(msgspec.Struct, frozen=True, kw_only=True):
    """What is to be imported where."""

    account: str
    price_book: str
    kind: RowKind
    mode: ImportMode
    file_digest: str  # SHA-256 of the file and of how it is to be read, hexadecimal
    actor: str


class Imported(msgspec.Struct, frozen=True, kw_only=True):
    """What came of an import."""

    rows_count: int
    was_there: bool  # the same file was the last of its kind in the draft: nothing was done


class RowsRefusedError(Exception):
    """A file with faults; nothing of it was taken."""

    def __init__(self, faults: Faults) -> None:
        """Keep the faults."""
        super().__init__(f"{faults.faults_count} faults")
        self.faults = faults


async def import_rows(engine: AsyncEngine, order: ImportOrder, pieces: AsyncIterator[Sequence[Row]], faults: Faults) -> Imported:
    """Take the rows of a file into the draft of a book, which is begun at need. Items are the shop's, and in all its drafts.

    Args:
        engine: with `books.WRITE_LIMITS`.
        order: what and where.
        pieces: the rows, piece by piece.
        faults: what is wrong with the file, complete when the pieces are used up.

    Raises:
        RowsRefusedError: the file has faults.
        BookError: there is no such book.
    """
    async with writing(engine, order.account) as connection:
        draft = await begin_draft(connection, order.account, order.price_book, actor=order.actor)
        if (known := await _same_again(connection, order)) is not None:
            return Imported(rows_count=known, was_there=True)
        rows_count = await _stage(connection, order.kind, pieces)
        if faults.faults_count:
            raise RowsRefusedError(faults)
        await _take_over(connection, order, draft)
        await set_source(connection, draft, order.file_digest)
        facts = {"price_book": order.price_book, "kind": order.kind, "mode": order.mode, "file_digest": order.file_digest}
        await note(connection, order.account, order.actor, AuditAction.ROWS_IMPORTED, **facts, rows_count=rows_count)
    return Imported(rows_count=rows_count, was_there=False)


async def _same_again(connection: AsyncConnection, order: ImportOrder) -> int | None:
    """How many rows the same file had, if it was the last of its kind and still is in the draft."""
    entry = tables.audit_entry.c
    of_kind = entry.kind == order.kind
    if order.kind is RowKind.PRICES:
        taken_back = entry.action == AuditAction.DRAFT_DISCARDED
        of_kind = (entry.price_book == order.price_book) & or_(of_kind, taken_back)
    query = select(entry.file_digest, entry.mode, entry.rows_count).where(entry.account == order.account, of_kind)
    last = (await connection.execute(query.order_by(entry.entry_count.desc()).limit(1))).one_or_none()
    if last is None or (last.file_digest, last.mode) != (order.file_digest, order.mode):
        return None
    return int(last.rows_count)


async def _stage(connection: AsyncConnection, kind: RowKind, pieces: AsyncIterator[Sequence[Row]]) -> int:
    """Copy the rows into a table that goes with the transaction."""
    names = _names(kind)
    like = select(*(TARGETS[kind].c[name] for name in names)).compile(dialect=connection.dialect)
    await connection.execute(text(f"create temporary table {STAGED} on commit drop as {like} with no data"))
    driver: asyncpg.Connection[Any] | None = (await connection.get_raw_connection()).driver_connection
    if driver is None:
        raise ConnectionError(CLOSED)
    rows_count = 0

    async def records() -> AsyncIterator[tuple[object, ...]]:
        nonlocal rows_count
        async for piece in pieces:
            rows_count += len(piece)
            for row in piece:
                yield tuple(getattr(row, name) for name in names)

    await driver.copy_records_to_table(STAGED, records=records(), columns=names)
    return rows_count


async def _take_over(connection: AsyncConnection, order: ImportOrder, draft: int) -> None:
    """From the temporary table into the real one."""
    target, names = TARGETS[order.kind], _names(order.kind)
    is_price = order.kind is RowKind.PRICES
    owner_name, owner = ("revision_id", draft) if is_price else ("account", order.account)
    if order.mode is ImportMode.REPLACE:
        await connection.execute(delete(target).where(target.c[owner_name] == owner))
    staged = named_table(STAGED, *(column(name, target.c[name].type) for name in names))
    rows = select(literal(owner, target.c[owner_name].type), *(staged.c[name] for name in names))
    if order.mode is ImportMode.REPLACE:
        await connection.execute(insert(target).from_select([owner_name, *names], rows))
        return
    merged = insert_or_update(target).from_select([owner_name, *names], rows)
    keys = FORMS[order.kind].keys
    changes = {name: merged.excluded[name] for name in names if name not in keys}
    await connection.execute(merged.on_conflict_do_update(index_elements=[owner_name, *keys], set_=changes))


def _names(kind: RowKind) -> list[str]:
    form = FORMS[kind]
    return [name for name in form.struct.__struct_fields__ if name not in form.left_out]
