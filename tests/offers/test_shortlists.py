from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.errors import RequestFaultsError
from service.offers import Estimated, EstimateRequest, ShortlistAnswer, ShortlistRequest, answer_estimate, answer_shortlist
from service.quote import Desk
from service.rules import NEWEST_EDITION, load_rules

if TYPE_CHECKING:
    from service.offers.shortlist_wire import PairAnswer

DESK = Desk(catalogue=demo_catalogue(), rules=load_rules(NEWEST_EDITION), today="2026-12-01")
ROOM = {"room_height_mm": 2400, "wall": "solid_brick"}
WISHES = {"open_ends_count": 2, "least_diagonal_in": 43, "most_width_mm": 2000}


@cache
def shortlist(*, wishes: bool = False) -> ShortlistAnswer:
    return answer_shortlist(msgspec.convert(ROOM | (WISHES if wishes else {}), ShortlistRequest), DESK)


def estimate_of(pair: PairAnswer, **changes: object) -> object:
    body: dict[str, Any] = {
        **ROOM,
        "appliance": {"kind": "catalogue", "model": pair.appliance},
        "screen": {"kind": "catalogue", "model": pair.screen},
        **changes,
    }
    return answer_estimate(msgspec.convert(body, EstimateRequest), DESK)


def test_every_fire_stands_with_every_screen_once() -> None:
    pairs = {(one.appliance, one.screen) for one in shortlist().pairs}

    assert len(shortlist().pairs) == len(pairs) == len(demo_catalogue().appliances) * len(demo_catalogue().screens)


def test_what_fits_stands_first_with_its_price_and_sizes() -> None:
    fits = [one.fits for one in shortlist().pairs]

    assert fits == sorted(fits, reverse=True)
    assert 10 < sum(fits) == shortlist().fitting_count < len(fits)
    assert all(one.price and one.sizes and not one.why_not and not one.nearest_change for one in shortlist().pairs if one.fits)


def test_what_does_not_fit_says_why() -> None:
    assert all(one.why_not and not one.price for one in shortlist().pairs if not one.fits)


def test_most_of_what_does_not_fit_knows_a_change() -> None:
    others = [one for one in shortlist().pairs if not one.fits]

    assert sum(one.nearest_change is not None for one in others) > 0.9 * len(others)


def test_a_change_makes_it_fit() -> None:
    """As an estimate, with the answers of the change put in."""
    tried = [one for one in shortlist().pairs if one.nearest_change and one.nearest_change.answers][:8]

    assert tried
    for pair in tried:
        assert pair.nearest_change
        changed = {one.path[1:]: msgspec.to_builtins(one.value) for one in pair.nearest_change.answers}
        found = estimate_of(pair, **changed)
        assert isinstance(found, Estimated)
        assert not any("checks that fail" in one for one in found.not_proven)


def test_a_pair_fits_as_an_estimate_does_and_costs_as_much() -> None:
    """Strengthening carried over from another screen may add a little; it never takes much."""
    for pair in [one for one in shortlist().pairs if one.fits][::6]:
        found = estimate_of(pair)

        assert isinstance(found, Estimated)
        assert pair.price
        assert float(pair.price.likely.amount) == pytest.approx(float(found.price.likely.amount), rel=0.04)
        assert pair.sizes == found.sizes


def test_wishes_rank_and_leave_nothing_out() -> None:
    wished = [one for one in shortlist(wishes=True).pairs if one.fits]
    missed = [len(one.wishes_missed) for one in wished]

    assert len(wished) == shortlist().fitting_count
    assert missed == sorted(missed)
    assert {*missed} > {0}


def test_of_equals_the_largest_screen_then_the_lowest_price_stands_first() -> None:
    fitting = [one for one in shortlist().pairs if one.fits and one.price]
    order = [(-one.screen_diagonal_in, float(one.price.likely.amount)) for one in fitting if one.price]

    assert order == sorted(order)


def test_the_same_room_has_the_same_bytes() -> None:
    again = answer_shortlist(msgspec.convert(ROOM, ShortlistRequest), DESK)

    assert msgspec.json.encode(shortlist()) == msgspec.json.encode(again)


def test_faults_of_the_room_point_into_it() -> None:
    with pytest.raises(RequestFaultsError) as caught:
        answer_shortlist(msgspec.convert({**ROOM, "date": "2026-02-30"}, ShortlistRequest), DESK)

    assert ["/date"] == [fault.pointer for fault in caught.value.faults]


def test_it_tells_nothing_of_what_the_shop_pays() -> None:
    text = msgspec.json.encode(shortlist())

    assert not [word for word in (b"cost_minor", b"build_up", b"charge_per_hour", b"supplier") if word in text]
