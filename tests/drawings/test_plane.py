"""The plane of the section: near the middle, through the rails, along no stud."""

from __future__ import annotations

import pytest

from service.drawings.canvas import Canvas
from service.drawings.plane import draw_plane_ends, find_plane
from service.frame import Axis, Role
from tests.drawings.cases import REQUESTS, case
from tests.drawings.lint import words


@pytest.mark.parametrize("name", REQUESTS)
def test_the_plane_cuts_rails_and_no_stud(name: str) -> None:
    frame, _ = case(name)
    plane = find_plane(frame)
    cut = [member for member in frame.members if member.box.x0_tenth_mm <= plane <= member.box.x1_tenth_mm]

    assert {Axis.X} == {member.along for member in cut}
    assert {Role.TRIMMER, Role.TOP_RAIL_FRONT, Role.TOP_RAIL_REAR} <= {member.role for member in cut}


@pytest.mark.parametrize("name", REQUESTS)
def test_the_plane_goes_through_fire_and_recess(name: str) -> None:
    frame, _ = case(name)
    plane = find_plane(frame)

    assert all(opening.x0_tenth_mm < plane < opening.x1_tenth_mm for opening in frame.openings)


def test_a_stud_in_the_middle_is_passed_at_twenty_mm() -> None:
    """Example A has a stud from 644.5 to 682.5; its middle is at 663.5."""
    assert 6445 - 200 == find_plane(case("a")[0])


def test_a_free_middle_is_taken() -> None:
    """Example B has studs at 525 and 1051 of 1621."""
    assert 8105 == find_plane(case("b")[0])


def test_both_ends_carry_the_letter() -> None:
    canvas = Canvas(10)
    draw_plane_ends(canvas, 6000, (-30.0, 200.0))
    drawing = canvas.finish("n", "t", "d")

    assert ["A", "A"] == words(drawing)
    assert drawing.area_mm[1] < -36.0
    assert drawing.area_mm[3] > 206.0
