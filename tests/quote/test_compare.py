from __future__ import annotations

import json
from decimal import Decimal

import msgspec
import pytest

from service.quote import answer_quote
from service.quote.compare import Cause, compare_quotes
from tests.examples_of import changed, request_of
from tests.sold_examples import desk_of, sold


def quote(name: str = "C", changes: dict[str, object] | None = None, *, dearer: int = 0) -> bytes:
    desk = desk_of()
    if dearer:
        prices = {
            code: tuple(msgspec.structs.replace(step, amount_minor=step.amount_minor + dearer) for step in steps)
            for code, steps in desk.catalogue.prices.items()
        }
        catalogue = msgspec.structs.replace(desk.catalogue, prices=prices, revision=f"{desk.catalogue.revision}x")
        desk = msgspec.structs.replace(desk, catalogue=catalogue)
    return msgspec.json.encode(answer_quote(request_of(changed(sold(name), changes or {})), desk))


PLAIN = quote()


def test_a_quote_is_like_itself() -> None:
    found = compare_quotes(PLAIN, PLAIN)

    assert found.same
    assert () == found.causes
    assert 0 == found.differences_count
    assert Decimal(0) == Decimal(found.total_change)


def test_a_change_of_the_brief_is_told_with_what_it_did() -> None:
    found = compare_quotes(PLAIN, quote(changes={"/survey/brief/breast_depth_mm": 340}))

    assert (Cause.REQUEST,) == found.causes
    assert [("/request/survey/brief/breast_depth_mm", "300.0", "340.0")] == [
        (one.pointer, one.first, one.second) for one in found.request
    ]
    assert any(one.pointer.startswith("/frame/members/") for one in found.members)
    first, second = json.loads(PLAIN), json.loads(quote(changes={"/survey/brief/breast_depth_mm": 340}))
    assert Decimal(second["price"]["total"]["amount"]) - Decimal(first["price"]["total"]["amount"]) == Decimal(found.total_change)


def test_dearer_prices_change_no_member() -> None:
    found = compare_quotes(PLAIN, quote(dearer=100))

    assert (Cause.PRICES,) == found.causes
    assert () == found.members
    assert Decimal(found.total_change) > 0
    assert all(Decimal(line.change) == Decimal(line.second or "0") - Decimal(line.first or "0") for line in found.sale)


def test_another_day_and_engine_are_causes_of_their_own() -> None:
    later = json.loads(PLAIN)
    later["origin"] |= {"date": "2027-01-01", "engine_version": "another"}
    later["request"]["terms"]["date"] = "2027-01-01"

    assert (Cause.ENGINE, Cause.DAY) == compare_quotes(PLAIN, json.dumps(later).encode()).causes


def test_a_signature_is_no_difference() -> None:
    assert compare_quotes(PLAIN, json.dumps(json.loads(PLAIN) | {"signature": {"jws": "x"}}).encode()).same


@pytest.mark.parametrize("document", [b"{", b"[]", b'{"outcome": "unbuildable"}', b'{"outcome": "designed"}'])
def test_what_is_no_quote_is_refused(document: bytes) -> None:
    with pytest.raises(ValueError, match="this is no"):
        compare_quotes(PLAIN, document)
