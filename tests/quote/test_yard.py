"""What a quote does with timber on hand and with a yard that has only so many."""

from __future__ import annotations

import pytest

from service.cutting import SheetLayout
from service.errors import RequestFaultsError
from service.quote.quote import yard_of
from tests.examples_of import request_of
from tests.sold_examples import desk_of, made, sell, sold


def with_options(**options: object) -> dict[str, object]:
    return sold("A") | {"options": options}


def test_offcuts_on_hand_are_cut_first_and_not_billed() -> None:
    """Example A buys 12 bars for 62.97 (`knowledge/worked-examples.md`); two whole bars on hand must save money."""
    plain, helped = made("A"), sell(with_options(offcuts_on_hand=[{"length_mm": 4800, "offcuts_count": 2}]))
    bars = helped.plan.bars

    assert bars.cost_minor < plain.plan.bars.cost_minor
    assert 2 == sum(one.taken_count for one in bars.stock if one.offcut)
    assert not [line for line in helped.bill.lines if line.code.startswith("on-hand")]
    assert helped.bill.mass_bought_kg < plain.bill.mass_bought_kg
    assert helped.price.materials_minor < plain.price.materials_minor


def test_what_the_yard_has_limits_the_plan() -> None:
    plain = made("A").plan.bars
    dearest = max((one for one in plain.stock if not one.offcut), key=lambda one: one.taken_count)
    limited = sell(with_options(stock_available=[{"code": dearest.code, "available_count": dearest.taken_count - 1}])).plan.bars

    assert {one.code: one.taken_count for one in limited.stock}.get(dearest.code, 0) <= dearest.taken_count - 1
    assert limited.cost_minor >= plain.cost_minor


def test_a_plunge_saw_is_allowed_only_where_it_is_asked_for() -> None:
    asked = with_options(plunge_saw=True)
    plain, allowed = made("A").plan, sell(asked).plan

    assert SheetLayout.EDGE_TO_EDGE is yard_of(request_of(sold("A")), desk_of()).layout
    assert SheetLayout.PLUNGE_SAW is yard_of(request_of(asked), desk_of()).layout
    assert {SheetLayout.EDGE_TO_EDGE} == {group.layout for board in plain.boards for group in board.plan.groups}
    assert all(one.plan.cost_minor <= other.plan.cost_minor for one, other in zip(allowed.boards, plain.boards, strict=True))


def faults_of(*available: tuple[str, int]) -> list[tuple[str, str]]:
    """Pointer and detail of each fault where the yard has so many."""
    rows = [{"code": code, "available_count": count} for code, count in available]
    with pytest.raises(RequestFaultsError) as caught:
        sell(with_options(stock_available=rows))
    return [(fault.pointer.removeprefix("/options/stock_available"), fault.detail) for fault in caught.value.faults]


def test_codes_that_are_not_of_the_job_are_told_row_by_row() -> None:
    known = made("A").plan.bars.stock[0].code
    faults = faults_of(("NO-SUCH", 1), (known, 99), ("NOR-THIS", 1))

    assert ["/0/code", "/2/code"] == [pointer for pointer, _ in faults]
    assert all("no stud length" in detail for _, detail in faults)


def test_too_little_is_told_at_the_row_or_at_all_rows_and_for_bars_and_boards_at_once() -> None:
    """One row limits the board; several limit the lengths, and none of them alone is at fault."""
    lengths, board = [one.code for one in made("A").job.timber.stock], made("A").plan.boards[0].code
    faults = faults_of(*((code, 1) for code in lengths), (board, 1))

    assert ["", f"/{len(lengths)}/available_count"] == [pointer for pointer, _ in faults]
    assert all("cannot give" in detail for _, detail in faults)
