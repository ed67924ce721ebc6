"""The audit of a shop's price books: who did what, when, from which file. Written with the change itself, never changed."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

import msgspec
from sqlalchemy import func, insert, select

from service.store import tables
from service.store.acting import act_for
from service.store.reading import ONE_MOMENT

if TYPE_CHECKING:
    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

    from service.store.tables import AuditAction


class AuditEntry(msgspec.Struct, frozen=True, kw_only=True):
    """One thing that was done."""

    entry_count: int  # counted from 1 in each account
    at: dt.datetime
    actor: str  # `key:` and the public part of a key, or `command:` and its name
    action: str
    price_book: str | None = None
    kind: str | None = None
    mode: str | None = None
    file_digest: str | None = None  # SHA-256 of the file as it was sent
    rows_count: int | None = None
    catalogue_revision: str | None = None
    effective_from: dt.date | None = None


async def note(connection: AsyncConnection, account: str, actor: str, action: AuditAction, **facts: object) -> None:
    """Write one entry, in the transaction of what it tells of; the caller holds the lock of the account's books."""
    entry = tables.audit_entry
    last = (await connection.execute(select(func.max(entry.c.entry_count)).where(entry.c.account == account))).scalar_one()
    values = {"account": account, "entry_count": (last or 0) + 1, "actor": actor, "action": action, **facts}
    await connection.execute(insert(entry).values(values))


async def read_audit(
    engine: AsyncEngine, account: str, *, price_book: str | None = None, before_count: int | None = None, limit_count: int = 50
) -> tuple[AuditEntry, ...]:
    """Entries of an account, the newest first.

    Args:
        engine: where from.
        account: whose.
        price_book: only those of this book, and those of items, which are in every book.
        before_count: only those before this entry.
        limit_count: most entries wanted.
    """
    entry = tables.audit_entry.c
    query = select(*(entry[name] for name in AuditEntry.__struct_fields__)).where(entry.account == account)
    if price_book is not None:
        query = query.where(entry.price_book == price_book)
    if before_count is not None:
        query = query.where(entry.entry_count < before_count)
    async with engine.connect() as connection:
        moment = await connection.execution_options(**ONE_MOMENT)
        async with moment.begin():
            await act_for(moment, account)
            rows = await moment.execute(query.order_by(entry.entry_count.desc()).limit(limit_count))
            return tuple(AuditEntry(**dict(zip(AuditEntry.__struct_fields__, row, strict=True))) for row in rows)
