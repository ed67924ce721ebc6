"""The real jobs: a task in, the bytes of an answer out."""

from __future__ import annotations

from typing import Any
from xml.etree import ElementTree

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.drawings import View
from service.errors import Reason, RequestFaultsError
from service.offers import EstimateRequest, ShortlistRequest
from service.quote import BillDesigned, FrameAnswer, FrameDesigned, QuoteAnswer, QuoteDesigned, Unbuildable
from service.rules import NEWEST_EDITION
from service.survey import SurveyRequest
from service.workers import (
    DrawingRequest,
    DrawingTask,
    EstimateTask,
    ShortlistTask,
    SurveyTask,
    encode_task,
    example_survey,
    jobs,
)

DAY = "2026-12-01"


def task(**changes: Any) -> bytes:  # noqa: ANN401 - any JSON value
    request = msgspec.convert(example_survey() | changes, SurveyRequest)
    return encode_task(SurveyTask(request=request, today=DAY, search_seconds=20))


def too_low() -> dict[str, Any]:
    """The example under a ceiling that leaves no room for its screen."""
    survey: dict[str, Any] = example_survey()["survey"]
    for point in survey["room"]["heights"]:
        point["height_mm"] = 1_900
    return survey


def drawing(view: str, survey: dict[str, Any] | None = None) -> bytes:
    body = example_survey() | {"view": view} | ({"survey": survey} if survey else {})
    return encode_task(DrawingTask(request=msgspec.convert(body, DrawingRequest), today=DAY))


def test_a_frame() -> None:
    """Worked example A of the trade notes: 52 members, 1357 wide, and 6 more noggins in its hung ladders (section 0, 5.13 on)."""
    answer = msgspec.json.decode(jobs.make_frame(task(), demo_catalogue()), type=FrameDesigned)

    assert (52 + 6, 1357.0) == (len(answer.frame.members), answer.frame.sizes.finished_width_mm)


def test_a_bill_and_a_quote_of_one_survey_agree() -> None:
    bill = msgspec.json.decode(jobs.make_bill(task(), demo_catalogue()), type=BillDesigned)
    quote = msgspec.json.decode(jobs.make_quote(task(), demo_catalogue()), type=QuoteDesigned)

    assert bill.bill == quote.bill
    assert bill.cut_plan == quote.cut_plan
    assert quote.reference == "Q-1042"
    assert quote.standing == "firm"


def test_an_estimate_and_a_shortlist_of_one_room_agree() -> None:
    fire, screen = {"kind": "catalogue", "model": "AF-103"}, {"kind": "catalogue", "model": "SC-043"}
    asked = msgspec.convert({"appliance": fire, "screen": screen, "room_height_mm": 2400}, EstimateRequest)
    room = msgspec.convert({"room_height_mm": 2400}, ShortlistRequest)
    whole = demo_catalogue()
    few = msgspec.structs.replace(
        whole, appliances={"AF-103": whole.appliances["AF-103"]}, screens={"SC-043": whole.screens["SC-043"]}
    )
    estimate = jobs.make_estimate(encode_task(EstimateTask(request=asked, today=DAY, search_seconds=20)), few)
    shortlist = jobs.make_shortlist(encode_task(ShortlistTask(request=room, today=DAY, search_seconds=20)), few)

    assert msgspec.json.decode(estimate)["price"] == msgspec.json.decode(shortlist)["pairs"][0]["price"]


def test_the_same_task_has_the_same_bytes() -> None:
    assert jobs.make_quote(task(), demo_catalogue()) == jobs.make_quote(task(), demo_catalogue())


def test_what_cannot_be_built_is_an_answer() -> None:
    answer: FrameAnswer = msgspec.json.decode(jobs.make_frame(task(survey=too_low()), demo_catalogue()), type=FrameAnswer)
    quote: QuoteAnswer = msgspec.json.decode(jobs.make_quote(task(survey=too_low()), demo_catalogue()), type=QuoteAnswer)

    assert isinstance(answer, Unbuildable)
    assert isinstance(quote, Unbuildable)
    assert answer.unmet == quote.unmet
    assert answer.unmet


@pytest.mark.parametrize("view", [view.value for view in View])
def test_a_drawing_is_svg_and_nothing_else(view: str) -> None:
    picture = jobs.make_drawing(drawing(view), demo_catalogue())
    root = ElementTree.fromstring(picture)  # noqa: S314 - our own bytes

    assert root.tag == "{http://www.w3.org/2000/svg}svg"
    assert b"<script" not in picture
    assert b"http" not in picture.replace(b"http://www.w3.org/", b"")


def test_there_is_no_drawing_of_what_cannot_be_built() -> None:
    with pytest.raises(RequestFaultsError) as caught:
        jobs.make_drawing(drawing("section", too_low()), demo_catalogue())

    assert {Reason.UNBUILDABLE} == {fault.reason for fault in caught.value.faults}
    assert all(fault.detail and fault.remedy for fault in caught.value.faults)


def test_a_rule_set_is_named_or_the_newest() -> None:
    named = jobs.make_frame(task(options={"rule_set": NEWEST_EDITION}), demo_catalogue())
    with pytest.raises(RequestFaultsError) as caught:
        jobs.make_frame(task(options={"rule_set": "2019"}), demo_catalogue())

    assert NEWEST_EDITION == msgspec.json.decode(named, type=FrameDesigned).origin.rule_set
    assert ["/options/rule_set"] == [fault.pointer for fault in caught.value.faults]


def test_warming_up_runs_through_everything() -> None:
    jobs.warm_up()
