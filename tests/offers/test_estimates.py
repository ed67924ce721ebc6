"""Estimates against full quotes of the same rooms.

More of them: `INGLEWRIGHT_SURVEYS_COUNT=500 uv run pytest tests/offers/test_estimates.py`.
"""

from __future__ import annotations

import os
import statistics
from functools import cache
from itertools import pairwise
from random import Random

import msgspec
import pytest

from service.cutting import QUICK
from service.errors import RequestFaultsError, UnbuildableError
from service.offers import Estimated, EstimateRequest, NotEstimated, answer_estimate
from service.quote import Desk, Made, make_quote
from service.rules import NEWEST_EDITION, load_rules
from tests.offers.drawn_surveys import CATALOGUE, DAY, draw_answers, draw_survey

SURVEYS_COUNT = int(os.environ.get("INGLEWRIGHT_SURVEYS_COUNT", "36"))
LEAST_HELD_RATIO = 0.85
DESK = Desk(catalogue=CATALOGUE, rules=load_rules(NEWEST_EDITION), today=DAY, effort=QUICK)
FIRE = {"kind": "catalogue", "model": "AF-302"}
SCREEN = {"kind": "catalogue", "model": "SC-043"}
HANDFUL = {"appliance": FIRE, "screen": SCREEN, "room_height_mm": 2400, "finish": "painted"}
VALUES: dict[str, list[object]] = {  # of an answer: those that the ranges of survey.md give
    "supply": ["fused_connection", "fused_connection", "fused_connection", "new_circuit"],
    "wall": ["solid_brick", "dense_block", "aerated_block", "concrete", "plasterboard_on_dabs"],
    "flights_count": [0, 1, 2, 3],
    "floor_fall_mm": [0, 4, 8, 12],
    "joists": ["across_wall", "along_wall"],
}


def estimate(**members: object) -> Estimated:
    found = answer_estimate(msgspec.convert({**HANDFUL, **members}, EstimateRequest), DESK)
    assert isinstance(found, Estimated)
    return found


def ends(found: Estimated) -> tuple[float, float]:
    return float(found.price.low.amount), float(found.price.high.amount)


def width(found: Estimated) -> float:
    low, high = ends(found)
    return high - low


@cache
def drawn() -> list[tuple[Estimated, Made]]:
    """Estimates and the full quotes of rooms that they may be of."""
    pairs = []
    for number in range(SURVEYS_COUNT):
        chance = Random(number)  # noqa: S311 - no secret
        asked = draw_answers(chance)
        found = answer_estimate(asked, DESK)
        if isinstance(found, Estimated):
            brief = msgspec.to_builtins(found.request.survey.brief)
            try:
                pairs.append((found, make_quote(draw_survey(asked, brief, chance), DESK)))
            except (UnbuildableError, RequestFaultsError):
                continue
    return pairs


def test_most_rooms_that_are_drawn_can_be_quoted() -> None:
    assert len(drawn()) > SURVEYS_COUNT * 0.75


def test_the_range_holds_the_full_price() -> None:
    """At least 85 in a hundred, the unknowns drawn from the ranges of survey.md."""
    held = [low <= made.price.total_minor / 100 <= high for found, made in drawn() for low, high in [ends(found)]]

    assert sum(held) / len(held) >= LEAST_HELD_RATIO


def test_the_range_is_not_wide_for_its_own_sake() -> None:
    shares = [width(found) / float(found.price.likely.amount) for found, _made in drawn()]

    assert 0.05 < statistics.mean(shares) < 0.25


@pytest.mark.parametrize("member", VALUES)
def test_an_answer_narrows_the_range_on_average(member: str) -> None:
    before = width(estimate())
    after = [width(estimate(**{member: value})) for value in VALUES[member]]

    assert statistics.mean(after) <= before


def test_all_answers_together_narrow_it_truly() -> None:
    told = {"wall": "solid_brick", "supply": "fused_connection", "joists": "across_wall", "floor_fall_mm": 0, "flights_count": 0}

    assert width(estimate(**told)) < 0.9 * width(estimate())


def test_the_same_answers_give_the_same_bytes() -> None:
    first, again = (msgspec.json.encode(estimate()) for _ in range(2))

    assert first == again


def test_the_survey_that_it_gives_can_be_quoted() -> None:
    found = estimate()
    body = msgspec.json.encode(found.request)
    made = make_quote(msgspec.json.decode(body, type=type(found.request)), DESK)

    assert found.sizes.finished_width_mm * 10 == made.frame.sizes.finished_width_tenth_mm
    assert found.on_site_days == made.labour.visit_days


def test_it_says_what_it_assumed_greatest_effect_first() -> None:
    effects = [
        float(one.effect_high.amount) - float(one.effect_low.amount)
        for one in estimate().assumptions
        if one.effect_low and one.effect_high
    ]

    assert len(effects) > 5
    assert all(one >= after - 1 for one, after in pairwise(effects))  # shown in whole units


def test_no_pennies_are_shown_of_what_is_not_known() -> None:
    found = estimate()
    effects = [amount for one in found.assumptions for amount in (one.effect_low, one.effect_high) if amount]
    shown = [found.price.low, found.price.likely, found.price.high, *effects, *(one.narrows_by for one in found.narrowing)]

    assert all(one.amount.endswith(".00") for one in shown)


def test_it_asks_for_what_narrows_most() -> None:
    asks = estimate().narrowing

    assert 2 <= len(asks) <= 3
    assert {one.member for one in asks} <= set(EstimateRequest.__struct_fields__)
    assert [float(one.narrows_by.amount) for one in asks] == sorted((float(one.narrows_by.amount) for one in asks), reverse=True)


def test_it_says_that_the_cuts_are_not_proven() -> None:
    assert any("not proven" in one for one in estimate().not_proven)


def test_cautions_are_those_for_a_buyer() -> None:
    found = estimate().cautions

    assert found
    assert all("customer" in one.audience for one in found)


def test_what_does_not_fit_has_alternatives_that_do() -> None:
    found = answer_estimate(
        msgspec.convert({**HANDFUL, "screen": {"kind": "catalogue", "model": "SC-065"}}, EstimateRequest), DESK
    )

    assert isinstance(found, NotEstimated)
    assert ["recess_wide"] == [one.code for one in found.unmet]
    assert found.alternatives


def test_faults_point_into_the_answers() -> None:
    with pytest.raises(RequestFaultsError) as caught:
        answer_estimate(
            msgspec.convert({**HANDFUL, "appliance": {"kind": "catalogue", "model": "AF-999"}}, EstimateRequest), DESK
        )

    assert ["/appliance/model"] == [fault.pointer for fault in caught.value.faults]


def test_a_fire_of_a_class_is_in_the_price() -> None:
    found = estimate(appliance={"kind": "size_class", "open_ends_count": 2, "length_mm": 1335})

    assert found.complete
    assert not found.not_in_price
    assert width(found) > width(estimate())


def test_plastered_breasts_name_their_board() -> None:
    found = estimate(finish="skimmed")

    assert "/survey/brief/board" in [one.pointer for one in found.assumptions]


def test_nothing_that_the_shop_pays_is_told() -> None:
    """Amounts are of the whole with tax; no line, rate, purchase price or build-up."""
    names = set(msgspec.to_builtins(estimate()))

    assert not names & {"bill", "labour", "price_lines", "build_up", "cut_plan"}
    assert {"low", "likely", "high"} == set(msgspec.to_builtins(estimate().price))
