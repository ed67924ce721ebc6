"""Captions: title, scale and notes under a view, no wider than it."""

from __future__ import annotations

from service.drawings.canvas import Canvas
from service.drawings.captions import write_caption
from service.drawings.primitives import Pen
from service.drawings.text_widths import text_area_mm
from tests.drawings.lint import lint, texts, words


def test_a_caption_stands_under_the_view_and_within_its_width() -> None:
    canvas = Canvas(20)
    canvas.rectangle((0.0, 0.0, 120.0, 60.0), Pen.VISIBLE)
    write_caption(
        canvas, "Section A-A", ["a sentence of many words " * 8, ("out of sight:", *(f"U-N{number}" for number in range(30)))]
    )
    drawing = canvas.finish("n", "t", "d")

    assert [] == lint(drawing)
    assert ["SECTION A-A", "SCALE 1:20, dimensions in mm"] == words(drawing)[:2]
    assert all(text.at_mm[1] < 0.0 and text_area_mm(text)[2] <= 120.0 for text in texts(drawing))


def test_entries_end_with_a_semicolon_but_the_last() -> None:
    canvas = Canvas(10)
    canvas.rectangle((0.0, 0.0, 150.0, 60.0), Pen.VISIBLE)
    write_caption(canvas, "View", [("not in the face:", "P-RL1 return", "P-LD1 lid")])

    assert "not in the face: P-RL1 return; P-LD1 lid" == words(canvas.finish("n", "t", "d"))[-1]
