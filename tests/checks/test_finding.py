from __future__ import annotations

import pytest

from service.checks.finding import Facts, field_name
from service.checks.report import Report
from service.rules import load_rules
from service.survey.ceiling import Ceiling
from service.survey.floor import Floor
from service.survey.room import Room
from service.survey.services import Chimney, Services
from service.survey.site import Site
from service.survey.wall import Wall
from tests.checks.row_cases import A
from tests.examples_of import frame_of, job_of


def facts(request: dict[str, object]) -> Facts:
    return Facts(job=job_of(request), frame=frame_of(request), rules=load_rules(), report=Report())


def test_what_was_not_told_is_empty() -> None:
    bare = facts({"survey": {"brief": A["survey"]["brief"]}})
    parts = (bare.room, bare.wall, bare.ceiling, bare.floor, bare.services, bare.chimney, bare.site)

    assert (Room(), Wall(), Ceiling(), Floor(), Services(), Chimney(), Site()) == parts


def test_what_was_told_is_there() -> None:
    assert 40 == facts(A).room.volume_m3
    assert 2005 == facts(A).site.build_year


@pytest.mark.parametrize(
    ("x_mm", "margin_mm", "inside"),
    [
        (1_271.5, 0, True),
        (1_271.4, 0, False),
        (2_628.5, 0, True),
        (2_628.6, 0, False),
        (2_728.5, 100, True),
        (2_728.6, 100, False),
    ],
)
def test_points_on_the_wall(x_mm: float, margin_mm: float, inside: bool) -> None:
    """Example A: 1357 wide about 1950."""
    assert inside == facts(A).holds(x_mm, margin_mm)


@pytest.mark.parametrize(
    ("x0_mm", "x1_mm", "margin_mm", "reaches"),
    [
        (0, 1_271.5, 0, False),
        (0, 1_271.6, 0, True),
        (2_628.5, 4_000, 0, False),
        (2_700, 4_000, 100, True),
        (1_900, 2_000, 0, True),
    ],
)
def test_stretches_of_the_wall(x0_mm: float, x1_mm: float, margin_mm: float, reaches: bool) -> None:
    assert reaches == facts(A).reaches(x0_mm, x1_mm, margin_mm)


@pytest.mark.parametrize(
    ("pointer", "name"),
    [
        ("/survey/wall/flat_mm", "wall flat"),
        ("/survey/brief/appliance/clear_rear_mm", "fire clear rear"),
        ("/survey/brief/screen/max_ambient_deg_c", "screen max ambient"),
        ("/survey/wall/damp", "wall damp"),
        ("/survey/wall", "survey wall"),
        ("", ""),
    ],
)
def test_fields_have_names_in_sentences(pointer: str, name: str) -> None:
    assert name == field_name(pointer)
