from __future__ import annotations

import pytest

from service.drawings.plan_view import draw_plan, seen_from_above
from service.drawings.primitives import Polygon
from service.drawings.svg import write_svg
from service.frame import Box
from service.units import text_mm
from tests.drawings.cases import REQUESTS, case
from tests.drawings.lint import lint, primitives, words


@pytest.mark.parametrize("scale", [10, 20])
@pytest.mark.parametrize("name", REQUESTS)
def test_the_plan_is_readable(name: str, scale: int) -> None:
    assert [] == lint(draw_plan(*case(name), scale))


@pytest.mark.parametrize("name", REQUESTS)
def test_the_plan_says_stations_width_and_depth(name: str) -> None:
    frame, job = case(name)
    said = words(draw_plan(frame, job, 10))
    stations = {text_mm(station.x_tenth_mm) for station in frame.stations if station.x_tenth_mm}

    assert stations <= {one.split(" ")[0] for one in said}
    assert {text_mm(frame.sizes.frame_width_tenth_mm), text_mm(frame.sizes.finished_depth_tenth_mm)} <= set(said)


def test_worked_depths_of_example_a() -> None:
    """worked-examples.md, A, closure of depth: 89 + 242 + 89 + 15 = 435."""
    said = words(draw_plan(*case("a"), 10))

    assert {"89", "242", "15", "435", "1327", "429.7", "859.3", "1289"} <= set(said)


def test_a_box_above_the_plane_is_not_seen_and_one_through_it_is_cut() -> None:
    box = Box(x0_tenth_mm=0, x1_tenth_mm=10, y0_tenth_mm=20, y1_tenth_mm=50, z0_tenth_mm=100, z1_tenth_mm=900)
    cut, above = seen_from_above("m", box, 500), seen_from_above("m", box, 100)

    assert above is None
    assert cut is not None
    assert (-50, -20, -500) == (cut.low_tenth_mm, cut.high_tenth_mm, cut.near_tenth_mm)


def test_what_is_cut_is_said_and_drawn() -> None:
    """Example B: closed at the left: two ladder uprights and the jack are cut at 300, with the noggins met there."""
    frame, job = case("b")
    drawing = draw_plan(frame, job, 10)
    cut = [member for member in frame.members if member.box.z0_tenth_mm < 3_000 < member.box.z1_tenth_mm]

    assert f"{len(cut)} timbers cut" in drawing.description
    assert {member.mark for member in cut} <= set(words(drawing))
    assert any(isinstance(part, Polygon) for part in primitives(drawing))
    assert write_svg(drawing) == write_svg(draw_plan(frame, job, 10))
