"""Requests for cut plans, as a caller writes them."""

from __future__ import annotations

from typing import Any

import msgspec

from service.cut_plans import CutPlanRequest


def pounds(amount: str, currency: str = "GBP") -> dict[str, str]:
    return {"amount": amount, "currency": currency}


def bars_body(**changes: Any) -> dict[str, Any]:  # noqa: ANN401 - any JSON value
    """Nine pieces from two lengths and an offcut. By hand: 3 x 2400 = 7200 is one of 4800 and one of 2400."""
    body = {
        "pieces": [{"label": "stud", "length_mm": 2350, "pieces_count": 3}, {"label": "noggin", "length_mm": 300}],
        "stock": [
            {"code": "long", "length_mm": 4800, "price": pounds("7.00")},
            {"code": "short", "length_mm": 2400, "price": pounds("4.00")},
            {"code": "rack", "length_mm": 310, "offcut": True, "available_count": 1},
        ],
        "kerf_mm": 4,
    }
    return {"bars": body | changes, "effort": "quick"}


def sheets_body(**changes: Any) -> dict[str, Any]:  # noqa: ANN401 - any JSON value
    """Four quarters of a sheet: they fit one only without a saw cut between them."""
    body = {
        "pieces": [{"label": "quarter", "width_mm": 1200, "height_mm": 600, "pieces_count": 4}],
        "stock": [{"code": "board", "width_mm": 2400, "height_mm": 1200, "price": pounds("10.00")}],
    }
    return {"sheets": body | changes, "effort": "quick"}


def read(body: dict[str, Any]) -> CutPlanRequest:
    return msgspec.convert(body, CutPlanRequest, strict=True)


def pinwheel_body(**changes: Any) -> dict[str, Any]:  # noqa: ANN401 - any JSON value
    """Five pieces that fill a sheet round and round, with saw cuts of 4 mm: 804 + 4 + 400 = 1208 each way."""
    sizes = ((804, 400, 2), (400, 804, 2), (400, 400, 1))
    pieces = [{"label": f"{w} x {h}", "width_mm": w, "height_mm": h, "pieces_count": count} for w, h, count in sizes]
    stock = [{"code": "board", "width_mm": 1208, "height_mm": 1208, "price": pounds("10.00")}]
    return sheets_body(pieces=pieces, stock=stock, kerf_mm=4, **changes)
