"""Price books at size: an import of 100 000 rows, a read at that size, a snapshot of 5 000 items: `uv run poe bench`.

The bounds are the issue's, met here with room; they fail only where something is wrong by a factor.
"""

from __future__ import annotations

import asyncio
import statistics
import time
from typing import TYPE_CHECKING

import msgspec
import pytest

from service.catalogue import PARTS, RowKind, demo_rows, freeze, in_pieces, make_catalogue, read_csv, thaw, thaw_part, write_csv
from service.store import CatalogueKeeper, make_engine
from service.store.books import WRITE_LIMITS
from service.store.importing import ImportMode, import_rows
from service.store.publishing import read_draft
from tests.postgres import as_service, demo_database_url
from tests.store.book_facts import order, publish_draft
from tests.web.client import application, client_of
from tests.web.doubles import HeldKeeper

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Callable, Sequence

    from service.catalogue import Catalogue, Row

__all__ = ["demo_database_url"]
ROWS_COUNT = 100_000
ITEMS_COUNT = 5_000
ROUNDS_COUNT = 9


def prices_csv() -> bytes:
    """A price list of 100 000 rows: every demo code with as many breaks by quantity as it takes."""
    steps = demo_rows().prices
    rows = [
        msgspec.structs.replace(steps[place % len(steps)], from_count=1 + place // len(steps), amount_minor=place)
        for place in range(ROWS_COUNT)
    ]
    codes = {(row.code, row.from_count): row for row in rows}
    return write_csv([*codes.values(), *_more(ROWS_COUNT - len(codes))], RowKind.PRICES)


def _more(rows_count: int) -> list[Row]:
    first = demo_rows().prices[0]
    return [msgspec.structs.replace(first, code=f"MORE-{place}") for place in range(rows_count)]


async def pieces_of(rows: object) -> AsyncIterator[Sequence[Row]]:
    pieces = in_pieces(rows, 2_000)  # type: ignore[arg-type]  # an iterator of rows
    while piece := await asyncio.to_thread(next, pieces, None):
        yield piece


def median_ms(work: Callable[[], object]) -> float:
    times = []
    for _round in range(ROUNDS_COUNT):
        start = time.perf_counter()
        work()
        times.append((time.perf_counter() - start) * 1000)
    return statistics.median(times)


@pytest.mark.parametrize("mode", ImportMode)
def test_import_of_a_hundred_thousand_rows(demo_database_url: str, mode: ImportMode) -> None:
    body = prices_csv()

    async def run() -> tuple[float, float, float, float]:
        engine = make_engine(as_service(demo_database_url), WRITE_LIMITS)
        start = time.perf_counter()
        reader, rows = read_csv(body, RowKind.PRICES)
        done = await import_rows(engine, order(mode=mode), pieces_of(rows), reader.faults)
        imported = time.perf_counter()
        assert ROWS_COUNT == done.rows_count
        await read_draft(engine, "demo", "demo")
        looked = time.perf_counter()
        name = await publish_draft(engine)
        published = time.perf_counter()
        async with CatalogueKeeper(as_service(demo_database_url)) as keeper:
            assert await keeper.wait_until_loaded(30)
            held = time.perf_counter()
            current = keeper.current()
            assert current is not None
            assert name == current.revision
        await engine.dispose()
        return imported - start, looked - imported, published - looked, held - published

    imported, looked, published, held = asyncio.run(run())
    print(
        f"\n{mode}: {len(body) / 1e6:.1f} MB, import {imported:.1f} s, draft read {looked:.1f} s,"
        f" publish {published:.1f} s, held by a new process after {held:.1f} s"
    )
    assert 15 > imported


def test_snapshot_of_five_thousand_items() -> None:
    rows = demo_rows()
    materials = [
        msgspec.structs.replace(rows.materials[place % len(rows.materials)], code=f"M-{place}") for place in range(ITEMS_COUNT)
    ]
    prices = [msgspec.structs.replace(rows.prices[0], code=row.code) for row in materials]
    catalogue = make_catalogue(msgspec.structs.replace(rows, materials=(*materials,), prices=(*prices,)))
    parts = freeze(catalogue)

    def load() -> object:
        return thaw("r", "b", [thaw_part(name, part) for name, part in zip(PARTS, parts, strict=True)])

    took = median_ms(load)
    print(f"\nsnapshot of {ITEMS_COUNT} items and prices: {took:.0f} ms, {sum(len(part.content) for part in parts) / 1e3:.0f} kB")
    assert 200 > took


def big_catalogue() -> Catalogue:
    """A hundred thousand materials of many widths."""
    rows = demo_rows()
    materials = [
        msgspec.structs.replace(rows.materials[place % len(rows.materials)], code=f"M-{place:06d}", width_mm=place % 1_999)
        for place in range(ROWS_COUNT)
    ]
    prices = [msgspec.structs.replace(rows.prices[0], code=row.code) for row in materials]
    return make_catalogue(msgspec.structs.replace(rows, materials=(*materials,), prices=(*prices,)))


READS = {
    "by key": "/v1/materials/M-050000",
    "a page": "/v1/materials?cursor=4d2d303530303030",
    "by kind": "/v1/materials?kind=board&cursor=4d2d303530303030",
    "by width, few": "/v1/materials?greatest_width_mm=1",
    "by width, many": "/v1/materials?greatest_width_mm=1500&limit=50",
    "by kind and width": "/v1/materials?kind=timber&greatest_width_mm=40",
}


def test_reads_of_a_hundred_thousand_items() -> None:
    """Through the whole web layer, without a network; the first of each kind also sorts, and is printed apart."""
    keeper = HeldKeeper(big_catalogue())

    async def run() -> dict[str, tuple[float, float]]:
        found = {}
        async with client_of(application(keeper=keeper)) as client:
            await client.get("/health/live")
            for name, path in READS.items():
                times = []
                for _round in range(4 * ROUNDS_COUNT):
                    start = time.perf_counter()
                    answer = await client.get(path)
                    times.append((time.perf_counter() - start) * 1000)
                    assert 200 == answer.status_code
                found[name] = (times[0], statistics.median(times[1:]))
        return found

    for name, (first, median) in asyncio.run(run()).items():
        print(f"\n{name}: {median:.1f} ms, the first {first:.0f} ms", end="")
        assert 5 > median
    print()
