"""Columns of words: in order, clear of each other and of the lines that run through."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from service.drawings.canvas import Canvas
from service.drawings.columns import Callout, heights_between, write_column
from service.drawings.primitives import Line, Pen
from tests.drawings.lint import lint, primitives, texts


def test_words_with_room_stand_level_with_what_they_name() -> None:
    assert [10.0, 30.0] == heights_between([10.0, 30.0], [0.0, 20.0, 40.0])


def test_words_keep_to_the_bands_between_lines() -> None:
    """Two want to stand on the line at 20; the band from 20 to 21 takes none."""
    first, second = heights_between([20.0, 20.5], [0.0, 20.0, 21.0, 60.0])

    assert first <= 20.0 - 1.6
    assert second >= 21.0 + 1.6


@given(
    st.lists(st.floats(0, 250, allow_nan=False), max_size=18).map(sorted),
    st.lists(st.floats(0, 250, allow_nan=False), max_size=7).map(sorted),
)
@settings(max_examples=150)
def test_any_column_is_clear(want: list[float], lines: list[float]) -> None:
    heights = heights_between(want, lines)

    assert len(want) == len(heights)
    assert all(second - first >= 3.25 for first, second in pairwise(heights))
    assert [] == [(height, line) for height in heights for line in lines if abs(height - line) < 1.6]


def test_a_column_at_each_side() -> None:
    canvas = Canvas(10)
    for y in (0.0, 10.0, 40.0):
        canvas.line((0.0, y), (60.0, y), Pen.NARROW)
    callouts = [Callout(words=f"U-S{number}", at_mm=(5.0, 9.0 + number / 10)) for number in range(5)]
    width = write_column(canvas, callouts, 30.0, [0.0, 10.0, 40.0], to_right=True)
    write_column(canvas, [Callout(words="U-RB1", at_mm=(2.0, 5.0), dotted=False)], -10.0, to_right=False)
    drawing = canvas.finish("n", "t", "d")
    leaders = [part for part in primitives(drawing) if isinstance(part, Line)][3:]

    assert [] == lint(drawing)
    assert width > 5.0
    assert {(5.0, 9.0 + number / 10) for number in range(5)} | {(2.0, 5.0)} == {leader.start_mm for leader in leaders}
    assert [f"U-S{number}" for number in range(5)] == [text.content for text in texts(drawing)][:5]
