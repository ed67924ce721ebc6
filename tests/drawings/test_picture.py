from __future__ import annotations

import math

import pytest

from service.drawings.picture import dimetric, draw_frame_picture, draw_picture
from service.drawings.primitives import Polygon
from service.drawings.svg import write_svg
from tests.drawings.cases import REQUESTS, case
from tests.drawings.lint import lint, primitives


def test_axes_are_dimetric() -> None:
    """ISO 5456-3:1996, from memory: 7 and 42 degrees, 1:1:1/2."""
    view = dimetric(20)
    lengths = [math.hypot(*axis) * 200 for axis in (view.x_mm, view.y_mm, view.z_mm)]

    assert [pytest.approx(1), pytest.approx(0.5), pytest.approx(1)] == lengths
    assert pytest.approx(7) == math.degrees(math.atan2(view.x_mm[1], view.x_mm[0]))
    assert pytest.approx(-42) == math.degrees(math.atan2(view.y_mm[1], view.y_mm[0]))


@pytest.mark.parametrize("name", REQUESTS)
def test_pictures_are_clean_and_the_same_each_time(name: str) -> None:
    frame, job = case(name)
    for draw in (draw_picture, draw_frame_picture):
        drawing = draw(frame, job, 20)

        assert [] == lint(drawing)
        assert write_svg(drawing) == write_svg(draw(frame, job, 20))


def test_every_timber_shows_its_front_unless_it_is_hidden() -> None:
    frame, job = case("a")
    painted = [part for part in primitives(draw_frame_picture(frame, job, 20)) if isinstance(part, Polygon)]

    assert 3 * len(frame.members) == len(painted)


def test_the_description_says_what_a_blind_reader_needs() -> None:
    """worked-examples.md, A: 1357 wide, 2515 high, 435 deep, fire 1335 x 480."""
    drawing = draw_picture(*case("a"), 20)

    assert "1357 wide, 2515 high, 435 deep; fire 1335 x 480, screen 43 in" in drawing.description
