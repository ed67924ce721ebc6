from __future__ import annotations

from typing import Any

import msgspec
import pytest

from service.errors import RequestFaultsError
from service.quote import (
    BillAnswer,
    BillDesigned,
    FrameAnswer,
    FrameDesigned,
    QuoteAnswer,
    QuoteDesigned,
    Unbuildable,
    answer_bill,
    answer_frame,
    answer_quote,
)
from tests.examples_of import changed, request_of
from tests.sold_examples import NAMES, answered, desk_of, sold

GAS = {"/survey/services/gas": "present"}


@pytest.mark.parametrize("name", NAMES)
def test_answers_go_over_the_wire_and_back(name: str) -> None:
    request, desk = request_of(sold(name)), desk_of()
    pairs: tuple[tuple[Any, Any], ...] = (
        (answer_frame(request, desk), FrameAnswer), (answer_bill(request, desk), BillAnswer), (answered(name), QuoteAnswer),
    )  # fmt: skip

    for answer, kind in pairs:
        sent = msgspec.json.encode(answer)

        assert answer == msgspec.json.decode(sent, type=kind)
        assert sent == msgspec.json.encode(msgspec.json.decode(sent, type=kind))


@pytest.mark.parametrize("name", NAMES)
def test_the_three_answers_tell_the_same_story(name: str) -> None:
    request, desk = request_of(sold(name)), desk_of()
    frame, bill, quote = answer_frame(request, desk), answer_bill(request, desk), answered(name)
    assert isinstance(frame, FrameDesigned)
    assert isinstance(bill, BillDesigned)
    assert isinstance(quote, QuoteDesigned)

    assert frame.frame == quote.frame
    assert (bill.bill, bill.cut_plan) == (quote.bill, quote.cut_plan)
    assert frame.cautions == bill.cautions == quote.cautions
    assert frame.origin == bill.origin == quote.origin


@pytest.mark.parametrize("answer", [answer_frame, answer_bill, answer_quote])
def test_what_cannot_be_built_is_an_answer(answer: Any) -> None:  # noqa: ANN401 - any of the three
    found = answer(request_of(changed(sold("A"), GAS)), desk_of())
    sent = msgspec.json.encode(found)

    assert isinstance(found, Unbuildable)
    assert ["refused_b03"] == [unmet.code for unmet in found.unmet]
    assert "unbuildable" == msgspec.json.decode(sent)["outcome"]
    assert found == msgspec.json.decode(sent, type=QuoteAnswer)


@pytest.mark.parametrize("answer", [answer_frame, answer_bill, answer_quote])
def test_faults_point_into_the_request_as_it_was_sent(answer: Any) -> None:  # noqa: ANN401 - any of the three
    """Lists are sorted before they are read; a fault still counts as the sender does: here the second obstacle."""
    obstacles = [
        {"kind": "window", "x0_mm": 3_700, "x1_mm": 3_800},
        {"kind": "window", "x0_mm": 3_500, "x1_mm": 3_400},
    ]  # fmt: skip
    with pytest.raises(RequestFaultsError) as caught:
        answer(request_of(changed(sold("A"), {"/survey/room/obstacles": obstacles})), desk_of())

    assert ["/survey/room/obstacles/1"] == [fault.pointer for fault in caught.value.faults]


def test_a_quote_is_firm_only_without_a_reason_against_it() -> None:
    """`knowledge/survey.md`, section 1."""
    for name in NAMES:
        quote = answered(name)
        assert isinstance(quote, QuoteDesigned)

        assert ("provisional" if quote.standing_reasons else "firm") == quote.standing


def test_checks_and_strengthening_stand_in_every_answer() -> None:
    request, desk = request_of(sold("A")), desk_of()
    frame, bill, quote = answer_frame(request, desk), answer_bill(request, desk), answer_quote(request, desk)
    assert isinstance(frame, FrameDesigned)
    assert isinstance(bill, BillDesigned)
    assert isinstance(quote, QuoteDesigned)

    assert frame.checks == bill.checks == quote.checks
    assert frame.checks_skipped == bill.checks_skipped == quote.checks_skipped
    assert frame.strengthening == bill.strengthening == quote.strengthening
    assert frame.checks_not_made == bill.checks_not_made == quote.checks_not_made


def test_a_quote_carries_what_it_was_made_from() -> None:
    quote = answered("A")
    assert isinstance(quote, QuoteDesigned)

    assert "Q-1042" == quote.reference
    assert quote.request.terms is not None
    assert (quote.origin.date, quote.origin.catalogue_revision) == (
        quote.request.terms.date,
        quote.request.terms.catalogue_revision,
    )
    assert quote == answer_quote(quote.request, desk_of())


def test_things_in_another_order_are_told_in_the_same_words() -> None:
    accessories = [{"kind": "switch", "x_mm": 1_300, "z_mm": 1_200}, {"kind": "socket", "x_mm": 2_000, "z_mm": 300}]
    obstacles = [{"kind": kind, "x0_mm": 2_800, "x1_mm": 3_500, "z0_mm": z0} for kind, z0 in (("window", 900), ("window", 100))]
    answers = [
        msgspec.json.encode(answer_quote(request_of(changed(sold("A"), {
            "/survey/services/accessories": accessories[::step], "/survey/room/obstacles": obstacles[::step],
        })), desk_of()))
        for step in (1, -1)
    ]  # fmt: skip

    assert answers[0] == answers[1]
