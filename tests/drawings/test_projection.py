"""Faces of boxes seen from the front and along the section."""

from __future__ import annotations

from service.drawings.canvas import Canvas
from service.drawings.hidden_lines import Edge
from service.drawings.primitives import Line, Pen
from service.drawings.projection import area_of, draw_edges, seen_from_front, seen_from_left
from service.frame import Box
from tests.drawings.lint import primitives

BOX = Box(x0_tenth_mm=100, x1_tenth_mm=500, y0_tenth_mm=20, y1_tenth_mm=90, z0_tenth_mm=1000, z1_tenth_mm=3000)


def test_from_the_front_what_stands_further_out_is_nearer() -> None:
    behind = Box(x0_tenth_mm=0, x1_tenth_mm=900, y0_tenth_mm=0, y1_tenth_mm=20, z0_tenth_mm=0, z1_tenth_mm=9000)

    assert (10.0 / 10, 100.0 / 10, 50.0 / 10, 300.0 / 10) == area_of(Canvas(10), seen_from_front("a", BOX))
    assert seen_from_front("a", BOX).near_tenth_mm < seen_from_front("b", behind).near_tenth_mm


def test_along_the_section_what_is_cut_is_nearest_and_what_lies_before_it_is_gone() -> None:
    cut, beyond = seen_from_left("a", BOX, 300), seen_from_left("a", BOX, 50)

    assert cut is not None
    assert beyond is not None
    assert (20, 90, 300) == (cut.left_tenth_mm, cut.right_tenth_mm, cut.near_tenth_mm)
    assert 100 == beyond.near_tenth_mm
    assert seen_from_left("a", BOX, 500) is None


def test_edges_are_drawn_to_scale() -> None:
    canvas = Canvas(20)
    level = Edge(upright=False, at_tenth_mm=200, low_tenth_mm=0, high_tenth_mm=1000)
    upright = Edge(upright=True, at_tenth_mm=200, low_tenth_mm=0, high_tenth_mm=1000)
    draw_edges(canvas, (level, upright), Pen.HIDDEN)
    lines = [part for part in primitives(canvas.finish("n", "t", "d")) if isinstance(part, Line)]

    assert [((0.0, 1.0), (5.0, 1.0)), ((1.0, 0.0), (1.0, 5.0))] == [(line.start_mm, line.end_mm) for line in lines]
