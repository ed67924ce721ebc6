"""Marks: inside where they fit, by a leader where not, handed back where there is no room."""

from __future__ import annotations

from service.drawings.canvas import Canvas
from service.drawings.marks import Wanted, write_marks
from service.drawings.primitives import AreaMm, Circle, Drawing, Line, Pen
from service.drawings.text_widths import text_area_mm
from tests.drawings.lint import lint, primitives, texts


def part(canvas: Canvas, mark: str, area: AreaMm) -> Wanted:
    canvas.rectangle(area, Pen.VISIBLE)
    return Wanted(mark=mark, area_mm=area)


def finished(canvas: Canvas) -> Drawing:
    return canvas.finish("marks", "Marks", "Marks")


def test_a_mark_lies_along_its_part() -> None:
    canvas = Canvas(10)
    left_over = write_marks(canvas, [part(canvas, "U-S1", (0.0, 0.0, 60.0, 3.8)), part(canvas, "U-J1", (70.0, 0.0, 73.8, 60.0))])
    level, upright = texts(finished(canvas))

    assert () == left_over
    assert (False, True) == (level.turned, upright.turned)
    assert [] == lint(finished(canvas))
    assert [] == [one for one in primitives(finished(canvas)) if isinstance(one, Circle)]


def test_a_mark_moves_along_its_part_out_of_the_way_of_a_line() -> None:
    canvas = Canvas(10)
    wanted = part(canvas, "U-B1", (0.0, 0.0, 60.0, 8.9))
    canvas.line((30.0, -5.0), (30.0, 20.0), Pen.NEIGHBOUR)

    assert () == write_marks(canvas, [wanted])
    assert [] == lint(finished(canvas))


def test_a_part_too_small_gets_a_leader_that_starts_inside_it() -> None:
    canvas = Canvas(10)
    area = (0.0, 0.0, 3.8, 5.0)
    assert () == write_marks(canvas, [part(canvas, "U-CB1", area)])
    (dot,) = [one for one in primitives(finished(canvas)) if isinstance(one, Circle)]
    (leader,) = [one for one in primitives(finished(canvas)) if isinstance(one, Line)]
    (text,) = texts(finished(canvas))

    assert [] == lint(finished(canvas))
    assert dot.centre_mm == leader.start_mm
    assert 0.0 < dot.centre_mm[0] < 3.8
    assert 0.0 < dot.centre_mm[1] < 5.0
    box = text_area_mm(text)
    assert max(box[0] - leader.end_mm[0], leader.end_mm[0] - box[2]) <= 0.6  # the leader ends at its text


def test_a_crowd_of_small_parts_is_told_apart() -> None:
    canvas = Canvas(10)
    wanted = [part(canvas, f"U-CB{number}", (12.0 * number, 0.0, 12.0 * number + 3.0, 3.0)) for number in range(8)]

    assert () == write_marks(canvas, wanted)
    assert [] == lint(finished(canvas))
    assert {f"U-CB{number}" for number in range(8)} == {text.content for text in texts(finished(canvas))}


def test_what_finds_no_place_is_handed_back() -> None:
    canvas = Canvas(10)
    wanted = part(canvas, "U-CB1", (0.0, 0.0, 2.0, 2.0))
    for step in range(-60, 60):
        canvas.line((-60.0, float(step)), (60.0, float(step)), Pen.NARROW)

    assert ("U-CB1",) == write_marks(canvas, [wanted])
    assert [] == texts(finished(canvas))
