"""Survey.md, section 12: a pointer to an object covers what lies under it, the longest wins; sent and not named is stated."""

from __future__ import annotations

import pytest

from service.brief import provenance_of
from service.survey.survey import Provenance
from tests.examples_of import changed, example_c, faults_of, request_of

NAMED = {"": "assumed", "/survey/wall": "measured", "/survey/wall/lining_mm": "stated", "/survey/wall/lin": "assumed"}


@pytest.mark.parametrize(
    ("pointer", "known"),
    [
        ("/survey/wall/lining_mm", Provenance.STATED),
        ("/survey/wall/plumb_mm", Provenance.MEASURED),
        ("/survey/wall", Provenance.MEASURED),
        ("/survey/wallpaper", Provenance.ASSUMED),
        ("/survey/room/heights", Provenance.ASSUMED),
    ],
)
def test_the_longest_pointer_wins(pointer: str, known: Provenance) -> None:
    survey = request_of(changed(example_c(), {"/survey/provenance": NAMED})).survey

    assert known is provenance_of(survey, pointer)


def test_not_named_is_stated() -> None:
    assert Provenance.STATED is provenance_of(request_of(example_c()).survey, "/survey/wall/lining_mm")


@pytest.mark.parametrize(
    "pointer",
    [
        "", "/survey", "/survey/wall", "/survey/wall/lining_mm", "/survey/room/heights/0", "/survey/brief/appliance/model",
        "/terms/date", "/survey/site/parking_cost/amount", "/options/kerf_mm",
    ],
)  # fmt: skip
def test_pointers_into_the_body(pointer: str) -> None:
    assert () == faults_of(changed(example_c(), {"/survey/provenance": {pointer: "measured"}}))


@pytest.mark.parametrize("pointer", ["/", "/surveys", "/survey/walls", "/survey/wall/lining", "/terms/day", "/wall/lining_mm"])
def test_pointers_to_nothing_are_refused(pointer: str) -> None:
    (fault,) = faults_of(changed(example_c(), {"/survey/provenance": {pointer: "measured"}}))

    assert "/survey/provenance" == fault.pointer
    assert repr(pointer) in fault.detail
