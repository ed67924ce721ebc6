"""The cutting stage on its own: plans by hand, aims, determinism, every fault at once."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest

from service.cut_plans import CutPlanMade, answer_cut_plan
from service.errors import Reason, RequestFaultsError
from tests.cut_plans.cut_requests import bars_body, pinwheel_body, pounds, read, sheets_body


def made(body: dict[str, Any]) -> CutPlanMade:
    return answer_cut_plan(read(body))


def faults(body: dict[str, Any]) -> list[tuple[str, Reason]]:
    with pytest.raises(RequestFaultsError) as caught:
        made(body)
    assert all(fault.detail and fault.remedy for fault in caught.value.faults)
    return [(fault.pointer, fault.reason) for fault in caught.value.faults]


def test_bars_at_least_cost_with_an_offcut() -> None:
    """By hand: two studs from 4800 (4704 of it with the saw cut) and one from 2400; the noggin comes out of the rack."""
    bars = made(bars_body()).bars

    assert bars is not None
    assert (pounds("11.00"), 2, True) == (msgspec.to_builtins(bars.cost), bars.proof.bought_count, bars.proof.first_proven)
    assert [("long", 1), ("short", 1), ("rack", 1)] == [(one.code, one.taken_count) for one in bars.stock]
    assert ["least_cost", "fewest_bars", "longest_leftover", "few_saw_settings"] == [one.aim for one in bars.aims]
    assert [True, True, False] == [bars.aims[0].proven, bars.aims[1].proven, bars.aims[3].proven]
    assert bars.stock_length_mm == pytest.approx(
        bars.pieces_length_mm + bars.kerf_length_mm + bars.trim_length_mm + bars.kept_length_mm + bars.waste_length_mm
    )


def test_sheets_with_and_without_a_saw_cut() -> None:
    """Four quarters fill a sheet; with a saw cut neither two halves across (2403) nor up (1203) fit: one a sheet."""
    scored, sawn = made(sheets_body()).sheets, made(sheets_body(kerf_mm=3)).sheets

    assert scored is not None
    assert sawn is not None
    assert (1, True) == (scored.proof.bought_count, scored.proof.first_proven)
    assert 4 == sawn.proof.bought_count
    assert sawn.stock_area_m2 == pytest.approx(sawn.pieces_area_m2 + sawn.kept_area_m2 + sawn.lost_area_m2)


def test_bars_and_sheets_in_one_request_are_those_of_two() -> None:
    both = made(bars_body() | sheets_body())

    assert (made(bars_body()).bars, made(sheets_body()).sheets) == (both.bars, both.sheets)


def test_the_same_request_gives_the_same_bytes() -> None:
    body = bars_body(pieces=[{"label": f"p{at}", "length_mm": 311 + 97 * at, "pieces_count": 3} for at in range(12)])

    assert msgspec.json.encode(made(body)) == msgspec.json.encode(made(body))


def test_the_server_limits_the_work() -> None:
    origin = answer_cut_plan(read(bars_body() | {"effort": "thorough"}), most_work_count=300).origin

    assert 300 == origin.work_limit_count


def test_the_limit_is_shared_by_all_searches() -> None:
    body = bars_body() | pinwheel_body(layout="plunge_saw") | {"effort": "thorough"}
    origin = answer_cut_plan(read(body), most_work_count=900).origin

    assert 300 == origin.work_limit_count


def test_a_clock_that_rings_at_once_still_gives_a_plan_and_says_so() -> None:
    body = bars_body(pieces=[{"label": f"p{at}", "length_mm": 311 + 97 * at, "pieces_count": 3} for at in range(12)])
    bars = answer_cut_plan(read(body), stop=lambda: True).bars

    assert bars is not None
    assert "clock_guard" == bars.proof.stopped


def test_nothing_asked_for_is_a_fault() -> None:
    assert [("", Reason.CONTRADICTION)] == faults({})


def test_without_prices_bars_by_length_and_sheets_by_number() -> None:
    stock = [{"code": "x", "length_mm": 4800}, {"code": "y", "length_mm": 3000}]
    bars = made(bars_body(stock=stock, aim="length")).bars
    sheets = made(sheets_body(stock=[{"code": "b", "width_mm": 2400, "height_mm": 1200}])).sheets

    assert bars is not None
    assert sheets is not None
    assert (None, "least_length") == (bars.cost, bars.aims[0].aim)
    assert (None, "fewest_sheets", 1) == (sheets.cost, sheets.aims[0].aim, sheets.proof.bought_count)


def test_a_missing_price_is_named_where_cost_is_the_aim() -> None:
    unpriced = [{"code": "x", "length_mm": 4800}, {"code": "y", "length_mm": 3000, "price": pounds("1.00")}]
    boards = [
        {"code": at, "width_mm": 2400, "height_mm": 1200, **price} for at, price in (("a", {}), ("b", {"price": pounds("1")}))
    ]

    expected = [("/bars/stock/0/price", Reason.NO_PRICE), ("/sheets/stock/0/price", Reason.NO_PRICE)]
    assert expected == faults(bars_body(stock=unpriced) | sheets_body(stock=boards))


def test_mixed_negative_and_split_pennies_are_all_named() -> None:
    stock = [
        {"code": code, "length_mm": 4800, "price": pounds(amount, currency)}
        for code, amount, currency in (("a", "1.00", "GBP"), ("b", "-1.00", "EUR"), ("c", "0.005", "GBP"), ("d", "1", "XYZ"))
    ]

    expected = [
        ("/bars/stock/1/price", Reason.IMPOSSIBLE_VALUE),
        ("/bars/stock/1/price/currency", Reason.CONTRADICTION),
        ("/bars/stock/2/price", Reason.IMPOSSIBLE_VALUE),
        ("/bars/stock/3/price", Reason.IMPOSSIBLE_VALUE),
        ("/bars/stock/3/price/currency", Reason.CONTRADICTION),
    ]
    assert expected == faults(bars_body(stock=stock))


def test_a_piece_that_fits_nowhere_is_named_with_the_nearest_stock() -> None:
    pieces = [{"label": "Übermaß", "length_mm": 4801}, {"label": "ok", "length_mm": 100}, {"label": "far", "length_mm": 9000}]
    with pytest.raises(RequestFaultsError) as caught:
        made(bars_body(pieces=pieces) | sheets_body(pieces=[{"label": "tall", "width_mm": 100, "height_mm": 2400}]))

    places = [fault.pointer for fault in caught.value.faults]
    assert ["/bars/pieces/0/length_mm", "/bars/pieces/2/length_mm", "/sheets/pieces/0"] == places
    assert "Übermaß" in caught.value.faults[0].detail
    assert "long (4800 mm)" in caught.value.faults[0].remedy
    assert "turned" in caught.value.faults[2].remedy


def test_too_many_pieces_kinds_and_too_few_copies() -> None:
    many = [{"label": "p", "length_mm": 100, "pieces_count": 6000}, {"label": "q", "length_mm": 200, "pieces_count": 6000}]
    kinds = [{"label": "p", "length_mm": 100 + at} for at in range(201)]
    few = [{"code": "x", "length_mm": 2400, "price": pounds("1"), "available_count": 2}]

    assert [("/bars/pieces", Reason.IMPOSSIBLE_VALUE)] == faults(bars_body(pieces=many))
    assert [("/bars/pieces", Reason.IMPOSSIBLE_VALUE)] == faults(bars_body(pieces=kinds))
    assert [("/bars/stock", Reason.UNCUTTABLE_PIECE)] == faults(bars_body(stock=few))


def test_a_defect_that_lies_off_the_sheet() -> None:
    defect = {"x_mm": 2300, "y_mm": 0, "width_mm": 200, "height_mm": 100}
    board = {"code": "b", "width_mm": 2400, "height_mm": 1200, "price": pounds("1"), "defects": [defect]}

    assert [("/sheets/stock/0/defects/0", Reason.IMPOSSIBLE_VALUE)] == faults(sheets_body(stock=[board]))
