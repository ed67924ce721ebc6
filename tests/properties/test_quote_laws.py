"""Laws of a whole quote, for surveys over the sane range."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from service.catalogue import PriceStep, demo_catalogue
from service.errors import RequestFaultsError, UnbuildableError
from service.quote import Desk, QuoteDesigned, answer_quote, make_quote, render_quote_text
from service.rules import load_rules
from tests.examples_of import DAY, changed, request_of
from tests.sold_examples import NAMES, desk_of, sold
from tests.strategies import requests, shuffled

if TYPE_CHECKING:
    from service.catalogue import Catalogue
    from service.quote import Made

DEMO = demo_catalogue()
DESK = Desk(catalogue=DEMO, rules=load_rules(), today=DAY)
FEW = 40  # a quote takes about 0.1 s
FINISHES = {
    "mdf": "painted",
    "plywood": "painted",
    "plasterboard": "skimmed",
    "cement_board": "skimmed",
    "calcium_silicate": "painted",
}


def finished(request: dict[str, Any]) -> dict[str, Any]:
    """The request with a finish that its board takes."""
    board = request["survey"]["brief"]["board"]
    kind = DEMO.materials[board["code"]].board_kind if board["kind"] == "catalogue" else board["board_kind"]
    return changed(request, {"/survey/brief/finish": FINISHES[kind or "mdf"]})


def quoted(request: dict[str, Any], desk: Desk = DESK) -> Made:
    """The quote of a request that can be built."""
    try:
        return make_quote(request_of(finished(request)), desk)
    except (RequestFaultsError, UnbuildableError):
        assume(condition=False)
        raise


@settings(max_examples=FEW)
@given(requests())
def test_every_sound_survey_gets_a_quote_or_a_reason(request: dict[str, Any]) -> None:
    """Nothing else is raised; the quote is never firm while checks are not made, goes over the wire and can be read."""
    answer = answer_quote(request_of(request), DESK)

    if isinstance(answer, QuoteDesigned):
        assert answer.standing in {"provisional", "estimate"}
        assert answer.standing_reasons
    else:
        assert answer.unmet
        assert all(unmet.says and unmet.offer for unmet in answer.unmet)
    assert answer == msgspec.json.decode(msgspec.json.encode(answer), type=type(answer))
    assert max(len(line) for line in render_quote_text(answer).splitlines()) <= 100


@settings(max_examples=FEW)
@given(requests())
def test_what_is_needed_is_bought(request: dict[str, Any]) -> None:
    """Every line holds its need with the waste; what has no price is named once; sums hold."""
    made = quoted(request)
    priced = {line.code for line in made.price.bill_lines}

    for line in made.bill.lines:
        assert line.packs_count >= 1, line.description
        assert line.packs_count + 1e-6 >= line.used_packs_ratio, line.description
        assert line.rule
        assert (line.code in priced) != (f"{line.packs_count} x {line.description}" in made.price.unpriced)
    assert sum(line.net_minor for line in made.price.sale) + made.price.tax_minor == made.price.total_minor
    assert sum(stage.amount_minor for stage in made.price.stages) == made.price.total_minor


@settings(max_examples=FEW)
@given(requests())
def test_every_member_and_board_is_cut(request: dict[str, Any]) -> None:
    made = quoted(request)
    bars = (made.plan.bars, *(other.plan for other in made.plan.other_bars))
    cut = [mark for plan in bars for group in plan.groups for bar in group.labels for mark in bar]
    laid = [mark for board in made.plan.boards for group in board.plan.groups for sheet in group.labels for mark in sheet]

    assert sorted(member.mark for member in made.frame.members if member.from_bar) == sorted(cut)
    assert sorted(panel.mark for panel in made.frame.panels) == sorted(laid)


def dearer(factor: float) -> Catalogue:
    """The demo catalogue at other prices, bars and boards moved against each other."""

    def at(step: PriceStep) -> PriceStep:
        own = factor if step.code.startswith(("TM", "BD-20")) else 1.0 / factor
        return msgspec.structs.replace(step, amount_minor=round(step.amount_minor * own) + len(step.code) * hash_of(step.code))

    return msgspec.structs.replace(DEMO, prices={code: tuple(at(step) for step in steps) for code, steps in DEMO.prices.items()})


def hash_of(code: str) -> int:
    """A small number that differs from code to code, the same on every run."""
    return sum(code.encode()) % 7


@settings(max_examples=FEW)
@given(requests(), st.sampled_from([0.3, 0.9, 1.7, 4.0]))
def test_prices_change_no_member_board_or_caution(request: dict[str, Any], factor: float) -> None:
    """`design.md`, section 7: design and checks never see a price."""
    plain = quoted(request)
    other = quoted(request, msgspec.structs.replace(DESK, catalogue=dearer(factor)))

    assert plain.job == other.job
    assert plain.frame == other.frame
    assert plain.bill.counts == other.bill.counts
    assert plain.bill.measures == other.bill.measures
    assert plain.price.materials_minor != other.price.materials_minor or not plain.price.bill_lines


@pytest.mark.parametrize("name", NAMES)
@given(st.randoms(use_true_random=False))
@settings(max_examples=8)
def test_the_order_of_lists_is_no_matter(name: str, chance: Any) -> None:  # noqa: ANN401 - Hypothesis' own random
    """`knowledge/survey.md`, section 15: every list sorted. The same bytes, also of the request that is sent back."""

    def reorder(items: list[Any]) -> list[Any]:
        return list(chance.sample(items, len(items)))

    request = sold(name)
    straight = answer_quote(request_of(request), desk_of())
    mixed = answer_quote(request_of(shuffled(request, reorder)), desk_of())

    assert msgspec.json.encode(straight) == msgspec.json.encode(mixed)


@settings(max_examples=10)
@given(requests())
def test_the_same_request_gives_the_same_bytes(request: dict[str, Any]) -> None:
    """`knowledge/labour.md`, section 9."""
    first, again = (msgspec.json.encode(answer_quote(request_of(request), DESK)) for _time in range(2))

    assert first == again
