"""What a quote does with timber on hand and with a yard that has only so many."""

from __future__ import annotations

import pytest

from service.errors import RequestFaultsError
from tests.sold_examples import made, sell, sold


def with_options(**options: object) -> dict[str, object]:
    return sold("A") | {"options": options}


def test_offcuts_on_hand_are_cut_first_and_not_billed() -> None:
    """Example A buys 12 bars for 62.97 (`knowledge/worked-examples.md`); two whole bars on hand must save money."""
    plain, helped = made("A"), sell(with_options(offcuts_on_hand=[{"length_mm": 4800, "offcuts_count": 2}]), like="A")
    bars = helped.plan.bars

    assert bars.cost_minor < plain.plan.bars.cost_minor
    assert 2 == sum(one.taken_count for one in bars.stock if one.offcut)
    assert not [line for line in helped.bill.lines if line.code.startswith("on-hand")]
    assert helped.bill.mass_bought_kg < plain.bill.mass_bought_kg
    assert helped.price.materials_minor < plain.price.materials_minor


def test_what_the_yard_has_limits_the_plan() -> None:
    plain = made("A").plan.bars
    dearest = max((one for one in plain.stock if not one.offcut), key=lambda one: one.taken_count)
    limited = sell(
        with_options(stock_available=[{"code": dearest.code, "available_count": dearest.taken_count - 1}]), like="A"
    ).plan.bars

    assert {one.code: one.taken_count for one in limited.stock}.get(dearest.code, 0) <= dearest.taken_count - 1
    assert limited.cost_minor >= plain.cost_minor


@pytest.mark.parametrize(("code", "word"), [("NO-SUCH", "no stud length"), ("every", "cannot give")])
def test_what_cannot_be_is_told_where_it_was_asked(code: str, word: str) -> None:
    codes = [one.code for one in made("A").job.timber.stock] if code == "every" else [code]
    available = [{"code": one, "available_count": 1} for one in codes]
    with pytest.raises(RequestFaultsError) as caught:
        sell(with_options(stock_available=available), like="A")

    assert {"/options/stock_available"} == {fault.pointer for fault in caught.value.faults}
    assert any(word in fault.detail for fault in caught.value.faults)
