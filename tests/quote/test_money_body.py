from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.catalogue import demo_catalogue, to_minor
from service.quote import QuoteDesigned
from service.quote.money_body import bill_body, labour_body, price_body
from tests.sold_examples import NAMES, answered, made, sell, sold

if TYPE_CHECKING:
    from service.units import Money


def minor(money: Money | None) -> int:
    assert money is not None
    return to_minor(money.amount, money.currency)


@pytest.mark.parametrize("name", NAMES)
def test_sums_hold_on_the_wire(name: str) -> None:
    """`knowledge/labour.md`, section 9, read from the answer as a client would."""
    quote = answered(name)
    assert isinstance(quote, QuoteDesigned)
    price = quote.price

    assert sum(minor(line.net) for line in price.lines) == minor(price.net)
    assert minor(price.net) + minor(price.tax) == minor(price.total)
    assert sum(minor(stage.amount) for stage in price.stages) == minor(price.total)
    assert sum(minor(line.charged) for line in quote.bill.lines if line.group == "material") == minor(quote.bill.materials)


def test_a_line_without_a_price_is_null_and_named() -> None:
    catalogue = demo_catalogue()
    prices = {code: steps for code, steps in catalogue.prices.items() if code != "FX-3040E"}
    at = sell(sold("A"), msgspec.structs.replace(catalogue, prices=prices))
    body = bill_body(at.bill, at.price)
    line = next(one for one in body.lines if one.code == "FX-3040E")

    assert (None, None, None, None) == (line.each, line.charged, line.supplier, line.lead_days)
    assert ("1 x Wood screw 4.0 x 40 countersunk",) == body.unpriced
    assert not price_body(at.price).complete
    assert ("provisional sum, still to be priced: 1 x Wood screw 4.0 x 40 countersunk",) == price_body(at.price).unpriced


def test_a_complete_price_says_so() -> None:
    assert price_body(made("A").price).complete


def test_hours_go_as_they_are() -> None:
    labour = made("B").labour

    assert msgspec.to_builtins(labour) == msgspec.to_builtins(labour_body(labour))


def test_what_is_used_again_says_how_much_of_it_is_charged() -> None:
    sheets = next(line for line in bill_body(made("A").bill, made("A").price).lines if line.code == "SD-8010G")

    assert (0.25, "9.40") == (sheets.charged_ratio, sheets.charged.amount if sheets.charged else "")
