"""Lead times of the demo book: `service/catalogue/demo/prices.csv`, invented."""

from __future__ import annotations

import msgspec

from service.catalogue import demo_catalogue
from service.quote import QuoteDesigned, answer_quote
from service.quote.lead_times import awaited_of
from service.survey.terms import SuppliedBy
from tests.examples_of import request_of
from tests.sold_examples import desk_of, made, sold


def test_what_the_shop_buys_is_awaited() -> None:
    """AF-302: 10 days; BK-301: 5; the customer's screen is none of ours."""
    at = made("A")
    found = {one.what: one.lead_days for one in awaited_of(at, demo_catalogue())}
    customer = msgspec.structs.replace(at.deal, appliance_supplied_by=SuppliedBy.CUSTOMER)
    less = {one.what for one in awaited_of(msgspec.structs.replace(at, deal=customer), demo_catalogue())}

    assert (10, 5) == (found["the fire"], found["the screen bracket"])
    assert "the screen" not in found
    assert "the fire" not in less
    assert found.keys() >= {line.description for line in at.price.bill_lines}


def test_a_quote_says_what_is_late() -> None:
    answer = answer_quote(request_of(sold("A", terms__first_day="2026-12-08")), desk_of())

    assert isinstance(answer, QuoteDesigned)
    assert any(one.code == "W09" and "the fire (10 days)" in one.says for one in answer.cautions)
