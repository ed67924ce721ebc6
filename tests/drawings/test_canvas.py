"""The canvas: where texts and lines are, and what meets what."""

from __future__ import annotations

import pytest

from service.drawings.canvas import Canvas, grow, meets, passes_through, write_in_clear
from service.drawings.primitives import AreaMm, Fill, Pen, PointMm, Text

BOX: AreaMm = (0.0, 0.0, 4.0, 2.0)


def test_lengths_are_divided_by_the_scale() -> None:
    assert 133.0 == Canvas(10).mm(13_300)
    assert 66.5 == Canvas(20).mm(13_300)


@pytest.mark.parametrize(
    ("start", "end", "expected"),
    [
        ((-1.0, 1.0), (5.0, 1.0), True),  # across
        ((1.0, 1.0), (2.0, 1.5), True),  # wholly inside
        ((-1.0, -1.0), (5.0, 3.0), True),  # slanted
        ((-1.0, 0.0), (5.0, 0.0), False),  # along the lower edge
        ((0.0, -1.0), (0.0, 3.0), False),  # along the left edge
        ((-1.0, 1.5), (1.0, 3.5), False),  # past a corner
        ((5.0, 1.0), (9.0, 1.0), False),  # beyond
    ],
)
def test_lines_through_areas(start: PointMm, end: PointMm, expected: bool) -> None:
    assert expected is passes_through((start, end), BOX)
    assert expected is passes_through((end, start), BOX)


def test_areas_that_only_touch_do_not_meet() -> None:
    assert not meets(BOX, (4.0, 0.0, 6.0, 2.0))
    assert meets(BOX, (3.9, 1.9, 6.0, 3.0))
    assert (-1.0, -1.0, 5.0, 3.0) == grow(BOX, 1.0)


def test_a_text_takes_its_place() -> None:
    canvas = Canvas(10)
    area = canvas.text((10.0, 10.0), "430")

    assert not canvas.is_free(area)
    assert canvas.is_free(grow(BOX, -0.5))


def test_lines_and_outlines_are_counted_fills_are_not() -> None:
    canvas = Canvas(10)
    canvas.rectangle((1.0, -9.0, 2.0, 9.0), None, Fill.UPPER)
    assert 0 == canvas.crossing_count(BOX)

    canvas.rectangle((1.0, -9.0, 2.0, 9.0), Pen.VISIBLE)
    canvas.line((-9.0, 1.0), (9.0, 1.0), Pen.NARROW)
    assert 3 == canvas.crossing_count(BOX)


def test_dots_keep_texts_away() -> None:
    canvas = Canvas(10)
    canvas.dot((2.0, 1.0))

    assert not canvas.is_free(BOX)


def test_words_go_where_nothing_stands_in_their_way() -> None:
    canvas = Canvas(10)
    canvas.line((-50.0, 1.0), (50.0, 1.0), Pen.VISIBLE)
    write_in_clear(canvas, "fire", [(0.0, 0.0), (0.0, 8.0)])
    write_in_clear(canvas, "fire", [(0.0, 0.0)])
    first, second = [part for group in canvas.finish("n", "t", "d").groups for part in group.parts if isinstance(part, Text)]

    assert ((0.0, 8.0), None) == (first.at_mm, first.backing)
    assert ((0.0, 0.0), Fill.PAPER) == (second.at_mm, second.backing)


def test_the_sheet_goes_round_everything_and_groups_keep_their_order() -> None:
    canvas = Canvas(10)
    canvas.group("later")
    canvas.group("lines")
    canvas.line((-20.0, 0.0), (0.0, 30.0), Pen.NARROW)
    canvas.group("later")
    canvas.ring((50.0, 0.0), 2.0)
    drawing = canvas.finish("name", "title", "words")

    assert (-23.0, -5.0, 55.0, 33.0) == drawing.area_mm
    assert ["later", "lines"] == [group.name for group in drawing.groups]
