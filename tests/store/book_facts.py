"""What the tests of price books share: files of prices, an order for each, a publish in one step."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING, Any

import msgspec

from service.catalogue import FORMS, Faults, PriceStep, RowKind, demo_rows, in_pieces
from service.store.importing import ImportMode, ImportOrder, import_rows
from service.store.publishing import PublishOrder, publish, read_draft

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Iterable, Sequence

    from sqlalchemy.ext.asyncio import AsyncEngine

    from service.catalogue import Row
    from service.store.importing import Imported

ACTOR = "key:0123456789ab"
TODAY = dt.datetime.now(dt.UTC).date()
DAY = dt.timedelta(days=1)


def prices_at(amount_minor: int) -> list[PriceStep]:
    """Every price of the demo at one amount."""
    return [msgspec.structs.replace(step, amount_minor=amount_minor) for step in demo_rows().prices]


def order(
    kind: RowKind = RowKind.PRICES,
    mode: ImportMode = ImportMode.MERGE,
    **changes: Any,  # noqa: ANN401 - any field
) -> ImportOrder:
    plain = ImportOrder(account="demo", price_book="demo", kind=kind, mode=mode, file_digest="a" * 64, actor=ACTOR)
    return msgspec.structs.replace(plain, **changes)


async def in_pieces_of(rows: Iterable[Row], rows_count: int = 1_000) -> AsyncIterator[Sequence[Row]]:
    for piece in in_pieces(iter(rows), rows_count):
        yield piece


async def take(engine: AsyncEngine, rows: Iterable[Row], wanted: ImportOrder | None = None) -> Imported:
    wanted = wanted or order()
    assert all(isinstance(row, FORMS[wanted.kind].struct) for row in rows)
    return await import_rows(engine, wanted, in_pieces_of(rows), Faults())


async def publish_draft(engine: AsyncEngine, day: dt.date = TODAY, *, account: str = "demo", price_book: str = "demo") -> str:
    draft = await read_draft(engine, account, price_book)
    wanted = PublishOrder(
        account=account, price_book=price_book, effective_from=day, draft_digest=draft.draft_digest, actor=ACTOR
    )
    return await publish(engine, wanted)


async def publish_at(engine: AsyncEngine, amount_minor: int, day: dt.date = TODAY) -> str:
    """Publish the demo with every price at one amount."""
    await take(engine, prices_at(amount_minor), order(file_digest=f"{amount_minor:064x}"))
    return await publish_draft(engine, day)
