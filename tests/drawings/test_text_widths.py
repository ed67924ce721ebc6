"""Widths of texts, against advance widths that are published elsewhere."""

from __future__ import annotations

import pytest

from service.drawings.primitives import Anchor, Text
from service.drawings.text_widths import text_area_mm, text_reach_mm, text_width_mm, wrap

# Advance widths of Helvetica in thousandths of the font size: Adobe's AFM files of the 14 core fonts (from memory).
HELVETICA = {
    "0": 556,
    "A": 667,
    "B": 667,
    "C": 722,
    "M": 833,
    "U": 722,
    "W": 944,
    "a": 556,
    "i": 222,
    "m": 833,
    "-": 333,
    ".": 278,
    " ": 278,
}


@pytest.mark.parametrize("letter", HELVETICA)
def test_no_letter_is_narrower_than_in_helvetica(letter: str) -> None:
    """At 0.727 mm a capital the font size is 1 mm, so that thousandths of it are micrometres."""
    width = 1000 * text_width_mm(letter, 0.727)

    assert HELVETICA[letter] <= round(width) <= 1.4 * HELVETICA[letter]


def test_width_grows_with_letters_and_height() -> None:
    assert text_width_mm("88", 2.5) == pytest.approx(2 * text_width_mm("8", 2.5))
    assert text_width_mm("8", 5.0) == pytest.approx(2 * text_width_mm("8", 2.5))
    assert text_width_mm("", 2.5) == 0.0


def test_an_unknown_letter_counts_as_the_widest() -> None:
    known = max(text_width_mm(chr(code), 2.5) for code in range(32, 127))

    assert text_width_mm("\u4e2d", 2.5) >= known
    assert text_width_mm("\x07", 2.5) >= known


@pytest.mark.parametrize(("anchor", "left_mm"), [(Anchor.START, 10.0), (Anchor.MIDDLE, 10.0 - 0.5), (Anchor.END, 10.0 - 1.0)])
def test_area_follows_the_anchor(anchor: Anchor, left_mm: float) -> None:
    text = Text(at_mm=(10.0, 20.0), content="8" * 40, height_mm=2.5, anchor=anchor)
    width = text_width_mm(text.content, 2.5)
    left, low, right, high = text_area_mm(text)

    assert (left, right) == pytest.approx((10.0 + (left_mm - 10.0) * width, 10.0 + (left_mm - 10.0) * width + width))
    assert (low, high) == pytest.approx((20.0, 20.0 + 2.5 * 1.06))


def test_a_turned_text_stands_left_of_its_baseline() -> None:
    text = Text(at_mm=(10.0, 20.0), content="430", height_mm=2.5, turned=True)
    left, low, right, high = text_area_mm(text)

    assert (right, low) == (10.0, 20.0)
    assert high - low == pytest.approx(text_width_mm("430", 2.5))
    assert right - left == pytest.approx(2.5 * 1.06)


def test_letters_with_tails_reach_below() -> None:
    assert text_reach_mm("U-S1", 2.5)[0] == 0.0
    assert text_reach_mm("ceiling", 2.5)[0] > 0.5


def test_wrap_keeps_order_and_width() -> None:
    words = ["one", "two", "three", "four", "a-word-that-is-far-too-long-for-any-line", "end"]
    lines = wrap(words, 2.5, 25.0)

    assert words == " ".join(lines).split(" ")
    assert [] == [line for line in lines if text_width_mm(line, 2.5) > 25.0 and " " in line]
    assert lines[0] == "one two three"
