"""Floor, wall and ceiling: levels of a floor that falls, and what is drawn of a room."""

from __future__ import annotations

import pytest

from service.drawings.canvas import Canvas
from service.drawings.primitives import Fill, Line, Pen, Polygon
from service.drawings.room import draw_ceiling_front, draw_floor_front, draw_room_section, fall_words, floor_at
from tests.drawings.cases import case
from tests.drawings.lint import primitives, words


def ground_of(canvas: Canvas) -> list[Line]:
    return [part for part in primitives(canvas.finish("n", "t", "d")) if isinstance(part, Line) and part.pen is Pen.GROUND]


@pytest.mark.parametrize(
    ("name", "left", "right"),
    [("open at the left, low at the left", -250, 0), ("low at the front", -120, -120), ("low at the back", 0, 0), ("c", 0, 0)],
)
def test_the_floor_along_the_front(name: str, left: int, right: int) -> None:
    frame, job = case(name)
    width = frame.sizes.frame_width_tenth_mm

    assert (left, right) == (floor_at(job, 0, width), floor_at(job, width, width))


def test_packers_fill_the_fall_under_the_stations() -> None:
    frame, job = case("open at the left, low at the left")
    canvas = Canvas(10)
    draw_floor_front(canvas, frame, job, (0.0, 160.0))
    packers = [part for part in primitives(canvas.finish("n", "t", "d")) if isinstance(part, Polygon) and part.fill is Fill.SOLID]

    assert [station.packer_tenth_mm for station in frame.stations if station.packer_tenth_mm] == [
        round(-100 * min(y for _, y in packer.points_mm)) for packer in packers
    ]


def test_the_fall_in_words() -> None:
    assert "the floor falls by 25 to the left" == fall_words(case("open at the left, low at the left")[1])


def test_floor_and_ceiling_of_an_elevation() -> None:
    frame, job = case("a")
    canvas = Canvas(10)
    draw_floor_front(canvas, frame, job, (0.0, 132.7))
    draw_ceiling_front(canvas, frame, job, (0.0, 132.7))

    assert ["floor", "ceiling"] == words(canvas.finish("n", "t", "d"))
    assert [0.0, 251.5] == [line.start_mm[1] for line in ground_of(canvas)]


@pytest.mark.parametrize(("name", "at_wall", "at_front"), [("low at the back", -1.2, 0.0), ("low at the front", 0.0, -1.2)])
def test_the_floor_of_a_section_falls_to_its_low_side(name: str, at_wall: float, at_front: float) -> None:
    frame, job = case(name)
    canvas = Canvas(10)
    draw_room_section(canvas, frame, job, 6000)
    wall, floor = ground_of(canvas)

    assert (at_wall, at_front) == (floor.start_mm[1], floor.end_mm[1])
    assert (0.0, 0.0) == (wall.start_mm[0], wall.end_mm[0])


def test_only_a_breast_up_to_the_ceiling_shows_it() -> None:
    shown = {}
    for name in ("a", "c"):
        canvas = Canvas(10)
        draw_room_section(canvas, *case(name), 6000)
        shown[name] = words(canvas.finish("n", "t", "d"))

    assert {"a": ["floor", "ceiling", "wall"], "c": ["floor", "wall"]} == shown
