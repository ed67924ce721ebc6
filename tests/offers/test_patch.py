from __future__ import annotations

import msgspec
import pytest

from service.offers import patched
from service.quote import Operation
from tests.examples_of import example_c, request_of


def test_a_member_is_set_and_its_parents_are_made() -> None:
    request = request_of(example_c())
    depth, rule = Operation(path="/survey/brief/breast_depth_mm", value=410.0), Operation(path="/options/rule_set", value="x-1")

    made = patched(request, (depth, rule))

    assert 410.0 == made.survey.brief.breast_depth_mm
    assert made.options is not None
    assert "x-1" == made.options.rule_set
    assert request.survey.room == made.survey.room


def test_choices_and_nothing_can_be_set() -> None:
    operations = (
        Operation(path="/survey/brief/screen", value={"kind": "catalogue", "model": "SC-043"}),
        Operation(path="/survey/brief/finish", value=None),
    )
    brief = patched(request_of(example_c()), operations).survey.brief

    assert ("SC-043", None) == (getattr(brief.screen, "model", None), brief.finish)


def test_what_a_member_does_not_take_is_refused() -> None:
    with pytest.raises(msgspec.ValidationError, match="breast_depth_mm"):
        patched(request_of(example_c()), (Operation(path="/survey/brief/breast_depth_mm", value=-5.0),))
