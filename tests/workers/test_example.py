"""The example request."""

from __future__ import annotations

import msgspec

from service.survey import SurveyRequest
from service.workers import example_bytes, example_survey


def test_the_example_is_a_survey_and_each_call_gives_a_new_one() -> None:
    first = example_survey()
    first["survey"]["brief"].clear()

    assert msgspec.convert(example_survey(), SurveyRequest) == msgspec.json.decode(example_bytes(), type=SurveyRequest)
