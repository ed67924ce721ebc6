"""Requests that would crash, hang or mislead a solver: the list of the cutting findings, section 5, and ours beyond it.

Each is a name and the raw bytes of a body; many are no JSON that a library would write.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from tests.cut_plans.cut_requests import bars_body, pounds, sheets_body

if TYPE_CHECKING:
    from collections.abc import Iterator

PRIMES = (2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71)
HUGE = (2**31, 2**31 - 1, 2**53 + 1, 2**62, 2**63, 2**64, 10**30, 1e308)


def bar(length_mm: float, count: float | None = None, **more: Any) -> dict[str, Any]:  # noqa: ANN401 - any JSON value
    return {"label": "p", "length_mm": length_mm, **({} if count is None else {"pieces_count": count}), **more}


def panel(width_mm: float, height_mm: float, count: int = 1, **more: Any) -> dict[str, Any]:  # noqa: ANN401 - any JSON value
    return {"label": "p", "width_mm": width_mm, "height_mm": height_mm, "pieces_count": count, **more}


def length(length_mm: float, **more: Any) -> dict[str, Any]:  # noqa: ANN401 - any JSON value
    return {"code": f"{length_mm}", "length_mm": length_mm, "price": pounds("5.00"), **more}


def board(width_mm: float, height_mm: float, **more: Any) -> dict[str, Any]:  # noqa: ANN401 - any JSON value
    return {"code": "b", "width_mm": width_mm, "height_mm": height_mm, "price": pounds("9.00"), **more}


def of_findings() -> Iterator[tuple[str, Any]]:
    """Section 5, point by point, as far as a request can reach it (2 and 3 are settings that we never set)."""
    yield "5.1 longer than every bar", bars_body(pieces=[bar(4801)])
    yield "5.1 no bars", bars_body(stock=[])
    yield "5.1 too few copies", bars_body(stock=[length(2400, available_count=1)], pieces=[bar(2000, 5)])
    yield "5.3 deep patterns", sheets_body(pieces=[panel(97 * p, 53 * p, may_turn=True) for p in PRIMES[:8]])
    yield (
        "5.5 one copy with trims",
        sheets_body(stock=[board(2400, 1200, available_count=1)], edge_trim_mm=5, pieces=[panel(600, 300, 6)]),
    )
    yield "5.6 free stock", bars_body(stock=[length(4800, price=pounds("0.00"))])
    yield "5.6 not a number", b'{"bars": {"pieces": [{"label": "p", "length_mm": NaN}], "stock": []}}'
    yield "5.6 infinite", b'{"bars": {"pieces": [{"label": "p", "length_mm": Infinity}], "stock": []}}'
    yield "5.6 infinite by exponent", b'{"bars": {"pieces": [{"label": "p", "length_mm": 1e999}], "stock": []}}'
    yield "5.8 dearer first", bars_body(stock=[length(4800, price=pounds("99.00")), length(2400)], pieces=[bar(1100, 20)])
    yield "5.9 ten thousand different", bars_body(pieces=[bar(100 + at / 10) for at in range(10_000)])
    yield "5.9 a thousand panels", sheets_body(pieces=[panel(100 + at, 1100 - at) for at in range(1000)])
    yield "5.9 ten thousand of twenty", bars_body(pieces=[bar(211 + 37 * p, 500) for p in PRIMES])
    yield "5.9 ten thousand panels of twenty", sheets_body(pieces=[panel(100 + 11 * p, 90 + 7 * p, 500) for p in PRIMES])
    for number in HUGE:
        yield f"5.10 length {number}", bars_body(pieces=[bar(number)], stock=[length(number)])
        yield f"5.10 count {number}", bars_body(pieces=[bar(100, number)])
    for size in (0, -1, -0.0, 1e-300, 0.04):
        yield f"5.10 size {size}", sheets_body(pieces=[panel(size, 300)])
    yield "5.10 no pieces of it", bars_body(pieces=[bar(100, 0)])
    yield "5.10 trims larger than the sheet", sheets_body(edge_trim_mm=700)
    yield "5.10 negative kerf", bars_body(kerf_mm=-4)
    yield "5.10 kerf wider than the sheet", sheets_body(kerf_mm=2500)
    yield "5.10 kerf as wide as a piece", bars_body(kerf_mm=50, pieces=[bar(0.1, 500)])


def of_bars() -> Iterator[tuple[str, Any]]:
    """Ours: bars."""
    yield "most pieces of most kinds", bars_body(pieces=[bar(200 + 11 * at, 50) for at in range(200)])
    yield "most pieces of one kind", bars_body(pieces=[bar(333, 10_000)])
    yield "tiny pieces in the longest bar", bars_body(pieces=[bar(0.1, 10_000)], stock=[length(20_000)], kerf_mm=0.1)
    yield "tiny kerf", bars_body(kerf_mm=0.1, pieces=[bar(101.3 + at, 10) for at in range(100)])
    yield "nearly equal", bars_body(pieces=[bar(1000 + at / 10, 20) for at in range(200)])
    yield "thirds that just do not fit", bars_body(pieces=[bar(1600.1 - at / 10, 7) for at in range(30)], kerf_mm=0)
    yield "adversarial packing", bars_body(pieces=[bar(at * 10 + 1001, 3) for at in range(120)], stock=[length(5000.3)])
    yield "primes", bars_body(pieces=[bar(p * 31.7, 99) for p in PRIMES], stock=[length(4800), length(4200), length(3600)])
    yield (
        "every length of stock",
        bars_body(pieces=[bar(777 + at, 9) for at in range(50)], stock=[length(1000 + 37 * at) for at in range(100)]),
    )
    yield "one of each stock", bars_body(pieces=[bar(900, 90)], stock=[length(1000 + at, available_count=1) for at in range(100)])
    yield "copies that just do not do", bars_body(pieces=[bar(2500, 11)], stock=[length(5100, available_count=5)])
    yield "copies by area but not by shape", bars_body(pieces=[bar(2600, 10)], stock=[length(5100, available_count=6)])
    yield "subset sum", bars_body(pieces=[bar(100 + 2**at, 1) for at in range(12)], stock=[length(4196.7, available_count=2)])
    yield "nothing available", bars_body(stock=[length(4800, available_count=0)])
    yield "trim leaves nothing", bars_body(end_trim_mm=4800)
    yield "trim and piece are the bar", bars_body(end_trim_mm=100, pieces=[bar(4700, 400)])
    yield "dearest", bars_body(stock=[length(4800, price=pounds("9999999.99"))], pieces=[bar(4700, 10_000)])
    yield "too dear", bars_body(stock=[length(4800, price=pounds("999999999999.99"))])
    yield (
        "prices a penny apart",
        bars_body(
            stock=[length(2400 + 100 * at, price=pounds(f"{10 + at / 100:.2f}")) for at in range(40)],
            pieces=[bar(499 + 13 * at, 7) for at in range(60)],
        ),
    )
    yield (
        "hundred offcuts",
        bars_body(
            stock=[length(4800), *(length(300 + 17 * at, offcut=True, available_count=2) for at in range(99))],
            pieces=[bar(290 + 31 * at, 4) for at in range(80)],
        ),
    )
    yield "all the same but for the label", bars_body(pieces=[{"label": f"{at}", "length_mm": 500} for at in range(1000)])
    yield "twins of stock", bars_body(stock=[length(4800) for _ in range(100)])


def of_sheets() -> Iterator[tuple[str, Any]]:
    """Ours: sheets."""
    yield "most panels of most kinds", sheets_body(pieces=[panel(100 + at, 400 - at, 50, may_turn=True) for at in range(200)])
    yield "most panels of one kind", sheets_body(pieces=[panel(301, 199, 10_000, may_turn=True)])
    yield "slivers", sheets_body(pieces=[panel(2400, 0.1, 5000)])
    yield "crumbs in the largest sheet", sheets_body(pieces=[panel(0.1, 0.1, 3000)], stock=[board(20_000, 20_000)])
    yield "windmill", sheets_body(pieces=[panel(700, 500, 40), panel(500, 700, 40)], stock=[board(1200, 1200)])
    yield "nearly square", sheets_body(pieces=[panel(400 + at / 10, 400 - at / 10, may_turn=True) for at in range(60)])
    yield (
        "twenty-five of five to a sheet",
        sheets_body(pieces=[panel(900 + 7 * at, 410 + 3 * at, may_turn=True) for at in range(25)], kerf_mm=3),
    )
    grid = [{"x_mm": 100 + 330 * x, "y_mm": 100 + 160 * y, "width_mm": 10, "height_mm": 10} for x in range(7) for y in range(7)]
    yield "defects everywhere", sheets_body(stock=[board(2400, 1200, defects=grid)], pieces=[panel(250, 130, 30, may_turn=True)])
    whole = [{"x_mm": 0, "y_mm": 0, "width_mm": 2400, "height_mm": 1200}]
    yield "all of it a defect", sheets_body(stock=[board(2400, 1200, defects=whole)])
    yield (
        "defect off the sheet",
        sheets_body(stock=[board(2400, 1200, defects=[{"x_mm": 2399, "y_mm": 0, "width_mm": 9, "height_mm": 9}])]),
    )
    yield (
        "one copy each",
        sheets_body(stock=[board(1300 + at, 700 + at, available_count=1) for at in range(100)], pieces=[panel(1200, 600, 80)]),
    )
    yield "too few copies", sheets_body(stock=[board(2400, 1200, available_count=1)], pieces=[panel(1201, 601, 2)])
    yield (
        "a hundred sizes",
        sheets_body(
            stock=[board(1250 + 11 * at, 900 + 3 * at) for at in range(100)],
            pieces=[panel(300 + at, 200 + at, 5) for at in range(20)],
        ),
    )
    yield "cross first, wide pieces", sheets_body(first_cut="cross", pieces=[panel(2400, 90, 40)])
    yield "against the grain", sheets_body(pieces=[panel(600, 1201)])
    yield "kerf as wide as pieces", sheets_body(kerf_mm=50, pieces=[panel(50, 50, 300)])
    yield "least offcut larger than the sheet", sheets_body(least_offcut_width_mm=20_000, least_offcut_height_mm=20_000)


def of_plunge_saws() -> Iterator[tuple[str, Any]]:
    """Ours: sheets whose cuts may stop inside."""
    for name, body in of_sheets():
        if name in {"windmill", "slivers", "most panels of most kinds", "a hundred sizes", "defects everywhere"}:
            yield f"plunge saw: {name}", {"sheets": body["sheets"] | {"layout": "plunge_saw"}, "effort": "quick"}
    several = [panel(91 + 7 * at, 400 - 5 * at, may_turn=True) for at in range(60)]
    yield "plunge saw: sixty different", sheets_body(layout="plunge_saw", pieces=several, kerf_mm=3)
    yield "plunge saw: sixty on one sheet", sheets_body(layout="plunge_saw", pieces=several, stock=[board(3300, 1250)])
    one_kind = [panel(307, 193, 60, may_turn=True)]
    yield "plunge saw: sixty of one kind", sheets_body(layout="plunge_saw", pieces=one_kind, stock=[board(2000, 1760)])
    yield "unknown layout", sheets_body(layout="by eye")


def of_words() -> Iterator[tuple[str, Any]]:
    """Ours: text, types and shapes."""
    yield (
        "labels of the world",
        bars_body(pieces=[{"label": text, "length_mm": 700} for text in ("🪵" * 80, "שלום", "e\u0301" * 40, "' OR 1=1", "<b>")]),
    )
    yield "label with a control character", bars_body(pieces=[{"label": "a\x00b", "length_mm": 700}])
    yield "half a surrogate", b'{"bars": {"pieces": [{"label": "\\ud800", "length_mm": 7}], "stock": []}}'
    yield "label of a megabyte", bars_body(pieces=[{"label": "x" * 1_000_000, "length_mm": 700}])
    yield "bars as text", {"bars": "all of them"}
    yield "number as text", bars_body(kerf_mm="4")
    yield "truth as number", bars_body(pieces=[bar(1) | {"length_mm": True}])
    yield "unknown effort", bars_body() | {"effort": "for ever"}
    yield "nothing", {}
    yield "nulls", {"bars": None, "sheets": None}
    yield "deep", b"[" * 50_000
    yield "twice the same member", b'{"bars": null, "bars": null}'
    yield "currencies", bars_body(stock=[length(4800), length(2400, price=pounds("1", "EUR"))])
    yield "thorough and large", bars_body(pieces=[bar(203 + 19 * at, 6) for at in range(150)]) | {"effort": "standard"}


def hostile() -> list[tuple[str, bytes]]:
    """All of them by name, as bytes."""
    parts = (*of_findings(), *of_bars(), *of_sheets(), *of_plunge_saws(), *of_words())
    return [(name, body if isinstance(body, bytes) else json.dumps(body).encode()) for name, body in parts]
