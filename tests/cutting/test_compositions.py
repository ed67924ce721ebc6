from __future__ import annotations

from itertools import product

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from service.cutting.compositions import Cut, costs_by_number, list_compositions, make_cut, refuse
from service.cutting.cover import Bins
from service.cutting.problem import BarClass, Step
from service.cutting.sources import Lengths

NOTHING = np.zeros(0, dtype=np.int64)


def bar_class(*steps: tuple[int, int, int]) -> BarClass:
    """Steps of cost, bought and copies."""
    return BarClass(
        capacity=1,
        steps=tuple(Step(cost=cost, bought=bought, stock_index=0, copies=copies) for cost, bought, copies in steps),
    )


def cut(needed: int, *worths: int) -> Cut:
    return Cut(NOTHING, NOTHING, np.array(worths, dtype=np.int64), needed)


def test_bars_of_a_class_cost_their_cheapest() -> None:
    costs, bought = costs_by_number(bar_class((0, 0, 1), (30, 1, 2), (50, 1, 9)), 4)

    assert [0, 0, 30, 60, 110] == costs.tolist()
    assert [0, 0, 1, 2, 3] == bought.tolist()


CLASSES = st.lists(st.tuples(st.integers(1, 9), st.integers(1, 4)), min_size=1, max_size=3)


@given(CLASSES, st.integers(0, 20), st.integers(0, 20), st.data())
@settings(max_examples=80)
def test_exactly_the_compositions_within_cost_and_cuts_are_listed(
    drawn: list[tuple[int, int]], low: int, more: int, data: st.DataObject
) -> None:
    classes = tuple(bar_class((cost, 1, copies)) for cost, copies in drawn)
    worth = st.lists(st.integers(0, 8), min_size=len(classes), max_size=len(classes))
    cuts = [cut(data.draw(st.integers(0, 25)), *data.draw(worth)) for _ in range(2)]
    window = list_compositions(classes, cuts, (low, low + more), 10_000)
    wanted = []
    for bars in product(*(range(copies + 1) for _, copies in drawn)):
        cost = sum(count * each for count, (each, _) in zip(bars, drawn, strict=True))
        if low <= cost <= low + more and all(np.array(bars) @ c.worths >= c.needed for c in cuts):
            wanted.append((cost, sum(bars), bars))

    assert window is not None
    listed = [(c, b, tuple(row)) for c, b, row in zip(window.costs, window.bought, window.bars.tolist(), strict=True)]
    assert sorted(wanted) == sorted(listed)
    assert [item[:2] for item in listed] == sorted(item[:2] for item in listed)


def test_bars_that_are_free_and_on_hand_are_all_taken() -> None:
    classes = (bar_class((0, 0, 3)), bar_class((5, 1, 9)))
    window = list_compositions(classes, [cut(10, 2, 4)], (0, 5), 100)

    assert window is not None
    assert [[3, 1]] == window.bars.tolist()


def test_too_many_compositions_are_given_up() -> None:
    classes = tuple(bar_class((cost, 1, 50)) for cost in (7, 8, 9, 10))

    assert list_compositions(classes, [cut(1, 1, 1, 1, 1)], (0, 400), 1_000) is None


def test_a_new_cut_refuses() -> None:
    window = list_compositions((bar_class((5, 1, 9)),), [cut(1, 1)], (0, 20), 100)

    assert window is not None
    assert [3, 4] == refuse(window, [cut(5, 2)]).bars.ravel().tolist()


def test_a_cut_is_what_pieces_and_bars_are_worth() -> None:
    """By hand: pieces 3 x 5 and 1 x 2 worth 4 and 1; a bar of 7 holds 5 + 2: worth 5; needed 13."""
    sizes, demands = np.array([5, 2]), np.array([3, 1])
    made = make_cut(Bins(sizes, demands, Lengths(sizes, np.array([7]))), np.array([4, 1]))

    assert (13, [5]) == (made.needed, made.worths.tolist())
