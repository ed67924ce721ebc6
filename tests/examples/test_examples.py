from __future__ import annotations

import json

import msgspec
import pytest

from service.quote import QuoteAnswer, QuoteDesigned, Unbuildable
from tests.examples.rewrite import FOLDER, cases, estimate_text, estimates, quote_text
from tests.quote.test_recut import fitter
from tests.sold_examples import sold

WORKED = {"a_three_sided": "A", "b_two_sided": "B", "c_part_height": "C", "c0_on_the_floor": "C0"}
VARIANTS = {
    "in_a_corner",
    "fire_at_the_end",
    "uneven",
    "niche",
    "access_panel",
    "beam",
}  # one of framing.md, section 14, each; invented
REWRITE = "python -m tests.examples.rewrite, then read the diff"


@pytest.mark.parametrize("case", cases())
def test_the_whole_answer_is_the_reviewed_one(case: str) -> None:
    assert quote_text(case) == (FOLDER / case / "quote.json").read_text("utf-8"), REWRITE


@pytest.mark.parametrize("case", estimates())
def test_the_whole_estimate_is_the_reviewed_one(case: str) -> None:
    assert estimate_text(case) == (FOLDER / case / "estimate.json").read_text("utf-8"), REWRITE


def test_there_are_estimates_that_fit_and_one_that_does_not() -> None:
    outcomes = [json.loads((FOLDER / case / "estimate.json").read_text("utf-8"))["outcome"] for case in estimates()]

    assert ["designed", "designed", "unbuildable"] == sorted(outcomes)


@pytest.mark.parametrize("case", WORKED)
def test_requests_of_the_worked_examples_are_those_that_are_tested(case: str) -> None:
    assert sold(WORKED[case]) == json.loads((FOLDER / case / "request.json").read_text("utf-8"))


def test_the_measured_example_is_the_one_that_is_reckoned_by_hand() -> None:
    more = {
        "bars_bought": [{"code": "TM-1035A", "bars_count": 2}],
        "offcuts_left": [{"length_mm": 1280, "offcuts_count": 1}, {"length_mm": 640, "offcuts_count": 3}],
    }

    assert fitter(**more) == json.loads((FOLDER / "measured_on_site" / "request.json").read_text("utf-8"))


def test_there_are_designed_and_refused_cases() -> None:
    answers = {case: msgspec.json.decode((FOLDER / case / "quote.json").read_bytes(), type=QuoteAnswer) for case in cases()}
    refused = {case for case, answer in answers.items() if isinstance(answer, Unbuildable)}

    assert {*WORKED, *VARIANTS, "kit_of_a_manual", "measured_on_site", "refused"} == answers.keys()
    assert {"refused"} == refused
    assert {answer.standing for answer in answers.values() if isinstance(answer, QuoteDesigned)} <= {"firm", "provisional"}
