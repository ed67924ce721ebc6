"""Bodies of fire and screen, against the clearances that `knowledge/framing.md` states (sections 2, 5, 6 and 9)."""

from __future__ import annotations

import pytest

from service.drawings.canvas import Canvas
from service.drawings.neighbours import draw_neighbours_front, fire_box, fire_words, screen_box, screen_words
from service.frame import overlap_tenth_mm
from tests.drawings.cases import REQUESTS, case
from tests.drawings.lint import words


@pytest.mark.parametrize("name", REQUESTS)
def test_no_member_stands_in_the_fire_or_in_the_screen(name: str) -> None:
    frame, job = case(name)
    bodies = [body for body in (fire_box(frame, job), screen_box(frame, job)) if body]

    assert [] == [member.mark for member in frame.members for body in bodies if min(overlap_tenth_mm(member.box, body)) > 0]


def test_the_fire_of_example_a_stands_four_mm_out_at_both_ends() -> None:
    """Body 1335 x 480 x 330 on a platform of 430, in a frame of 1327: `worked-examples.md`, A."""
    box = fire_box(*case("a"))

    assert (-40, 13_310, 4300, 9100) == (box.x0_tenth_mm, box.x1_tenth_mm, box.z0_tenth_mm, box.z1_tenth_mm)
    assert (1050, 4350) == (box.y0_tenth_mm, box.y1_tenth_mm)


def test_the_fire_of_example_c_stands_between_its_gaps() -> None:
    """Opening 770 for a body of 760: 5 beside it at each side."""
    frame, job = case("c")
    box, opening = fire_box(frame, job), frame.openings[0]

    assert (50, 50) == (box.x0_tenth_mm - opening.x0_tenth_mm, opening.x1_tenth_mm - box.x1_tenth_mm)


def test_the_screen_of_example_a_hangs_in_the_middle_of_its_recess() -> None:
    """Body 964 x 557 x 74, gaps 50, glass 25 behind the finished face: `worked-examples.md`, A."""
    frame, job = case("a")
    box = screen_box(frame, job)

    assert box is not None
    assert (
        2 * frame.levels.screen_centre_tenth_mm == box.z0_tenth_mm + box.z1_tenth_mm
        if frame.levels.screen_centre_tenth_mm
        else False
    )
    assert (13_270, 4350 - 250, 740) == (box.x0_tenth_mm + box.x1_tenth_mm, box.y1_tenth_mm, box.y1_tenth_mm - box.y0_tenth_mm)


def test_words() -> None:
    frame, job = case("a")
    canvas = Canvas(10)
    draw_neighbours_front(canvas, frame, job)

    assert ["fire 1335 x 480", "screen 964 x 557"] == words(canvas.finish("n", "t", "d"))
    assert "fire 1335 x 480" == fire_words(job)
    assert ("", None) == (screen_words(case("c")[1]), screen_box(*case("c")))
