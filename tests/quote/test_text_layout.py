from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.quote.text_layout import WIDTH, amount, number, row, runs_of, title, value_of, words, wrapped
from service.units import Money


def test_a_title_stands_over_a_line() -> None:
    empty, line = title("SIZES")

    assert "" == empty
    assert (WIDTH, "SIZES ---") == (len(line), line[:9])


@given(st.lists(st.from_regex(r"[a-z]{1,12}", fullmatch=True), max_size=60), st.integers(0, 20))
def test_wrapping_loses_no_word_and_keeps_the_width(parts: list[str], indent: int) -> None:
    lines = list(wrapped(" ".join(parts), indent))

    assert parts == [word for line in lines for word in line.split()]
    assert all(len(line) <= WIDTH for line in lines)
    assert all(line.startswith(" " * indent) for line in lines)


def test_lines_after_the_first_hang_in() -> None:
    first, second = list(wrapped("word " * 25))

    assert ("word", "  word") == (first[:4], second[:6])


def test_a_label_stands_once() -> None:
    lines = list(row("levels", "word " * 25))

    assert ["levels     word", "           word"] == [line[:15] for line in lines]
    assert ["empty      "] == list(row("empty", ""))


@pytest.mark.parametrize(
    ("marks", "written"),
    [
        (["B-U1", "B-U2", "B-U3"], "B-U1..3"),
        (["B-U1", "B-U3"], "B-U1 B-U3"),
        (["B-U9", "B-U10", "U-N1"], "B-U9..10 U-N1"),
        (["P-FU1"], "P-FU1"),
        (["post"], "post"),
        ([], ""),
    ],
)
def test_neighbouring_marks_are_drawn_together(marks: list[str], written: str) -> None:
    assert written == runs_of(marks)


@pytest.mark.parametrize(
    ("value", "written"),
    [(1200.0, "1200"), (40.5, "40.5"), (None, "-"), (True, "yes"), (False, "no"), ("none", "none"), (3, "3")],
)
def test_values_as_a_person_writes_them(value: str | float | bool | None, written: str) -> None:
    assert written == value_of(value)


def test_numbers_amounts_and_words() -> None:
    assert ("195.5", "-") == (number(195.5), number(None))
    assert ("4.13", "no price") == (amount(Money(amount="4.13", currency="GBP")), amount(None))
    assert "screen bearer" == words("screen_bearer")
