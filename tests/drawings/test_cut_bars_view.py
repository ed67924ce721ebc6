from __future__ import annotations

import pytest

from service.drawings.cut_bars_view import draw_bar_cuts
from service.units import text_mm
from tests.drawings.lint import lint, words
from tests.sold_examples import made

NAMES = ("A", "B", "C", "C0")


@pytest.mark.parametrize("name", NAMES)
def test_the_diagram_is_readable(name: str) -> None:
    assert [] == lint(draw_bar_cuts(made(name).plan))


@pytest.mark.parametrize("name", NAMES)
def test_every_piece_is_on_it_with_its_stop(name: str) -> None:
    plan = made(name).plan
    said = " ".join(words(draw_bar_cuts(plan)))
    for bars in (plan.bars, *(other.plan for other in plan.other_bars)):
        for group in bars.groups:
            assert all(text_mm(cut.end_tenth_mm) in said for cut in group.cuts)
            assert all(label in said for labels in group.labels for label in labels)


@pytest.mark.parametrize("name", NAMES)
def test_stock_to_take_is_that_of_the_plan(name: str) -> None:
    plan = made(name).plan
    said = " ".join(words(draw_bar_cuts(plan)))

    assert all(f"{one.taken_count} x {one.code}" in said for one in plan.bars.stock)


def test_pieces_that_wait_for_a_measure_are_marked() -> None:
    """worked-examples.md, A: 4 x 1605 and 3 x 632 carry the allowance."""
    said = words(draw_bar_cuts(made("A").plan))

    assert 4 == sum("U-L" in one and "*" in one for one in said)
    assert 3 == sum("U-CA" in one and "*" in one for one in said)
    assert any("20 longer here" in one for one in said)
