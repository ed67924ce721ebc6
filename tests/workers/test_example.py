"""The example request."""

from __future__ import annotations

import msgspec

from service.survey import SurveyRequest
from service.workers import example_bytes, example_survey
from tests.examples_of import example_a


def test_the_example_is_a_survey_and_each_call_gives_a_new_one() -> None:
    first = example_survey()
    first["survey"]["brief"].clear()

    assert msgspec.convert(example_survey(), SurveyRequest) == msgspec.json.decode(example_bytes(), type=SurveyRequest)


def test_the_example_of_contract_and_demo_is_the_first_worked_example() -> None:
    """Example A of `knowledge/worked-examples.md`, every field that a firm quote needs measured."""
    assert example_survey() == example_a()
