from __future__ import annotations

import msgspec
import pytest

from service.price.costing import cost_steps, unpriced_work
from service.price.purse import price_bill
from tests.price.purse_facts import CATALOGUE, purse_of
from tests.price.worked_prices import DELIVERIES
from tests.sold_examples import made, sell, sold


def workings(name: str) -> dict[str, str]:
    return {step.name: step.working for step in made(name).price.steps}


@pytest.mark.parametrize("name", DELIVERIES)
def test_small_orders_pay_for_delivery(name: str) -> None:
    """`knowledge/labour.md`, section 6: 30.00 for each of supplier_a to supplier_c whose goods in M stay below 150.00."""
    assert f"30.00 for each supplier with goods below 150.00: {DELIVERIES[name]}" == workings(name)["delivery"]


def test_workings_show_the_numbers() -> None:
    """`knowledge/worked-examples.md`, "Price B", column working."""
    found = workings("B")

    assert "24.535 h x 34.00" == found["labour joiner"]
    assert "4 h x 36.00, the least of a visit" == found["labour plasterer"]
    assert "4 h x 48.00 in 2 visits + certificate 40.00 = 232.00; + 10 percent" == found["electrician"]
    assert "6 visit days x 18.00" == found["travel"]
    assert "1.5 percent of labour 1209.57" == found["tool wear"]
    assert "7 percent of direct cost: survey stated" == found["risk"]


@pytest.mark.parametrize(
    ("provenance", "removed", "percent", "says"),
    [
        ({"/survey": "measured"}, False, 3, "survey measured"),
        (None, False, 7, "survey stated"),
        ({"/survey": "measured", "/survey/wall": "stated"}, False, 7, "survey stated"),
        ({"/survey": "measured", "/survey/wall/units": "assumed"}, False, 12, "survey assumed in part"),
        ({"/survey": "measured"}, True, 12, "survey assumed in part"),
    ],
)
def test_risk_follows_what_is_known(provenance: dict[str, str] | None, removed: bool, percent: int, says: str) -> None:
    """`knowledge/labour.md`, section 6: 3 measured, 7 stated, 12 assumed percent of the direct cost."""
    changes: dict[str, object] = {"survey__provenance": provenance}
    if removed:
        changes["survey__wall__damp"] = None
    steps = {step.name: step for step in sell(sold("A", **changes)).price.steps}

    assert f"{percent} percent of direct cost: {says}" == steps["risk"].working
    assert round(steps["direct cost"].amount_minor * percent / 100) == steps["risk"].amount_minor


def test_a_trade_without_a_charge_is_named() -> None:
    trades = {trade: row for trade, row in CATALOGUE.trades.items() if trade not in {"mate", "electrician"}}
    purse = purse_of("A", msgspec.structs.replace(CATALOGUE, trades=trades))
    steps = {step.name for step in cost_steps(purse, price_bill(purse)[0])}

    assert ("hours of the mate", "hours of the electrician") == unpriced_work(purse)
    assert not {"labour mate", "electrician"} & steps
    assert () == unpriced_work(purse_of("A"))


def test_work_without_a_rate_makes_the_price_incomplete() -> None:
    rates = tuple(rate for rate in CATALOGUE.labour_rates if rate.task != "L24")
    bought = sell(sold("A"), msgspec.structs.replace(CATALOGUE, labour_rates=rates))

    assert ("hours of L24 lift",) == bought.price.unpriced
