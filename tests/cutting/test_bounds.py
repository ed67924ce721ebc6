from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from service.cutting.bounds import bought_bound, cost_bound, whole_bars_bound
from tests.cutting.test_compositions import bar_class, cut

if TYPE_CHECKING:
    from service.cutting.compositions import Cut

PRICED = st.lists(st.tuples(st.integers(1, 30), st.integers(1, 9)), min_size=1, max_size=3)  # cost, worth


def least(priced: list[tuple[int, int]], copies: int, needed: int) -> tuple[int, int] | None:
    """Least cost and, apart, least number of bars that hold a worth, by trying all."""
    found = [
        (sum(n * cost for n, (cost, _) in zip(bars, priced, strict=True)), sum(bars))
        for bars in product(range(copies + 1), repeat=len(priced))
        if sum(n * worth for n, (_, worth) in zip(bars, priced, strict=True)) >= needed
    ]
    return (min(cost for cost, _ in found), min(number for _, number in found)) if found else None


@given(PRICED, st.integers(1, 30))
@settings(max_examples=80)
def test_whole_bars_are_counted_exactly(priced: list[tuple[int, int]], needed: int) -> None:
    classes = tuple(bar_class((cost, 1, 4)) for cost, _ in priced)
    right = least(priced, 4, needed)
    if right is not None:
        weighed = [cut(needed, *(worth for _, worth in priced))]

        assert right[0] == whole_bars_bound(classes, weighed)
        assert cost_bound(classes, weighed) <= right[0]


@given(PRICED, st.integers(1, 10**9))
@settings(max_examples=40)
def test_a_bound_on_large_numbers_stays_below_and_near(priced: list[tuple[int, int]], scale: int) -> None:
    """Worths are scaled down to a table of limited size: the bound may be a little too low, never too high."""
    classes = tuple(bar_class((cost, 1, 4)) for cost, _ in priced)
    right = least(priced, 4, 11)
    worths = [worth * scale for _, worth in priced]
    if right is not None:
        bound = whole_bars_bound(classes, [cut(11 * scale, *worths)])

        assert bound <= right[0]
        assert bound >= 0.9 * min(cost * 11 / worth for cost, worth in priced)


def test_no_cut_bounds_nothing() -> None:
    assert 0 == cost_bound((bar_class((5, 1, 9)),), [])
    assert 0 == bought_bound((bar_class((5, 1, 9)),), [])


def test_bars_on_hand_are_not_counted_as_bought() -> None:
    """By hand: 20 needed, two offcuts of 3 on hand: 14 missing, bars of 5: three."""
    classes = (bar_class((0, 0, 2)), bar_class((7, 1, 9)))
    weighed: Cut = cut(20, 3, 5)

    assert 3 == bought_bound(classes, [weighed])
    assert 21 == whole_bars_bound(classes, [weighed])
    assert 20 == cost_bound(classes, [weighed])


def test_what_the_copies_cannot_give_is_not_bounded_by_too_much() -> None:
    assert np.isfinite(cost_bound((bar_class((7, 1, 2)),), [cut(20, 5)]))
    assert 14 == cost_bound((bar_class((7, 1, 2)),), [cut(20, 5)])
