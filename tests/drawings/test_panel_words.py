"""Mark and size on boards: on two lines where there is room, else by a leader."""

from __future__ import annotations

import msgspec

from service.drawings.canvas import Canvas
from service.drawings.panel_words import size_words, write_panel_words
from service.drawings.primitives import Fill, Pen
from tests.drawings.cases import case
from tests.drawings.lint import lint, texts, words

PANEL = next(panel for panel in case("a")[0].panels if panel.mark == "P-FB1")


def test_the_cut_size_of_example_a() -> None:
    """`knowledge/worked-examples.md`, A: face of the base 1357 x 430."""
    assert "1357 x 430" == size_words(PANEL)


def test_two_lines_in_the_middle_of_a_board() -> None:
    canvas = Canvas(10)
    canvas.rectangle((0.0, 0.0, 135.7, 43.0), Pen.VISIBLE)

    assert () == write_panel_words(canvas, [(PANEL, (0.0, 0.0, 135.7, 43.0))])
    assert ["P-FB1", "1357 x 430"] == words(canvas.finish("n", "t", "d"))
    assert [] == lint(canvas.finish("n", "t", "d"))


def test_words_stand_upright_on_a_narrow_board() -> None:
    canvas = Canvas(10)
    canvas.rectangle((0.0, 0.0, 10.0, 54.0), Pen.VISIBLE)
    write_panel_words(canvas, [(PANEL, (0.0, 0.0, 10.0, 54.0))])

    assert [True, True] == [text.turned for text in texts(canvas.finish("n", "t", "d"))]
    assert [] == lint(canvas.finish("n", "t", "d"))


def test_words_interrupt_lines_that_are_everywhere() -> None:
    canvas = Canvas(10)
    for x in range(0, 60, 4):
        canvas.line((float(x), 0.0), (float(x), 40.0), Pen.HIDDEN)
    write_panel_words(canvas, [(PANEL, (0.0, 0.0, 60.0, 40.0))])

    assert [Fill.BOARD, Fill.BOARD] == [text.backing for text in texts(canvas.finish("n", "t", "d"))]


def test_a_strip_gets_a_leader() -> None:
    canvas = Canvas(10)
    strip = msgspec.structs.replace(PANEL, mark="P-FL1", cut_width_mm=43, cut_height_mm=30)
    canvas.rectangle((0.0, 0.0, 4.3, 3.0), Pen.VISIBLE)

    assert () == write_panel_words(canvas, [(strip, (0.0, 0.0, 4.3, 3.0))])
    assert ["P-FL1 43 x 30"] == words(canvas.finish("n", "t", "d"))
    assert [] == lint(canvas.finish("n", "t", "d"))
