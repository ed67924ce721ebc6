"""A shop's own rows of a draft, without those of the account it stands on: what an export gives and an import takes."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING

import msgspec
from sqlalchemy import select

from service.catalogue import FORMS, NO_DAY, RowKind
from service.store.books import find_draft, reading
from service.store.importing import TARGETS

if TYPE_CHECKING:
    from sqlalchemy.ext.asyncio import AsyncEngine

    from service.catalogue import Row


async def read_own_rows(engine: AsyncEngine, account: str, price_book: str, kind: RowKind) -> tuple[Row, ...]:
    """Rows of one kind in the draft of a book; raises BookError where there is no such book or draft."""
    form, target = FORMS[kind], TARGETS[kind]
    names = [name for name in form.struct.__struct_fields__ if name not in form.left_out]
    async with reading(engine, account) as connection:
        draft = await find_draft(connection, account, price_book)
        own = target.c.revision_id == draft if kind is RowKind.PRICES else target.c.account == account
        rows = (await connection.execute(select(*(target.c[name] for name in names)).where(own))).all()
    constant = dict.fromkeys(form.left_out, NO_DAY)

    def made() -> tuple[Row, ...]:
        return tuple(msgspec.convert({**dict(zip(names, row, strict=True)), **constant}, form.struct) for row in rows)

    return await asyncio.to_thread(made)
