from __future__ import annotations

import pytest

from service.checks import open_pointers, survey_known
from service.survey.survey import Provenance
from tests.checks.row_cases import A, on
from tests.examples_of import job_of

MEASURED = {"/survey": "measured"}


@pytest.mark.parametrize(
    ("provenance", "expected"),
    [
        (MEASURED, Provenance.MEASURED),
        (None, Provenance.STATED),
        ({"/survey": "stated"}, Provenance.STATED),
        ({**MEASURED, "/survey/room": "measured"}, Provenance.MEASURED),
        ({**MEASURED, "/survey/room": "stated"}, Provenance.STATED),
        ({**MEASURED, "/survey/room/heights": "assumed"}, Provenance.ASSUMED),
        ({"": "measured"}, Provenance.MEASURED),
        ({**MEASURED, "/survey/brief": "stated"}, Provenance.MEASURED),  # wishes are not measured
        ({**MEASURED, "/terms/date": "stated"}, Provenance.MEASURED),
    ],
)
def test_a_survey_is_as_good_as_its_least_known_part(provenance: dict[str, str] | None, expected: Provenance) -> None:
    """`knowledge/survey.md`, section 12; risk and range turn on it (`knowledge/labour.md`, sections 5 and 6)."""
    assert expected is survey_known(job_of(on(A, survey__provenance=provenance)))


def test_a_needed_field_left_out_makes_it_assumed() -> None:
    job = job_of(on(A, survey__wall__damp=None))

    assert ("/survey/wall/damp",) == open_pointers(job)
    assert Provenance.ASSUMED is survey_known(job)


def test_fields_sent_as_assumed_are_open_too() -> None:
    job = job_of(on(A, survey__provenance={**MEASURED, "/survey/wall/units": "assumed", "/survey/floor": "assumed"}))

    assert ("/survey/floor", "/survey/wall/units") == open_pointers(job)


def test_house_choices_are_not_open() -> None:
    assert () == open_pointers(job_of(on(A, survey__brief__screen_gap_mm=None)))
