"""Spreading of labels, against the least-squares optimum found by trying."""

from __future__ import annotations

from itertools import pairwise, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.drawings.spreading import spread


def test_labels_with_room_stay_where_they_want() -> None:
    assert [1.0, 5.0, 9.0] == spread([1.0, 5.0, 9.0], [2.0, 2.0, 2.0], 0.5)


def test_two_that_meet_share_the_way() -> None:
    assert spread([5.0, 5.0], [2.0, 2.0], 1.0) == pytest.approx([3.5, 6.5])


def test_no_labels() -> None:
    assert [] == spread([], [], 1.0, (0.0, 1.0))


def test_bounds_push_all_that_stands_in_the_way() -> None:
    assert spread([0.0, 0.0, 9.0], [2.0, 2.0, 2.0], 0.0, (0.0, 10.0)) == pytest.approx([1.0, 3.0, 9.0])


def test_bounds_without_room_are_given_up() -> None:
    first, second = spread([1.0, 1.0], [4.0, 4.0], 0.0, (0.0, 5.0))

    assert second - first == pytest.approx(4.0)


def test_an_exact_fit_keeps_its_bounds() -> None:
    """Sizes whose sum is the room only up to rounding of floats."""
    centres = spread([0.0] * 3, [0.1, 0.1, 0.1], 0.0, (0.0, 0.3))

    assert centres == pytest.approx([0.05, 0.15, 0.25])


@given(st.lists(st.integers(0, 8), min_size=1, max_size=3).map(sorted))
@settings(max_examples=25)
def test_nothing_on_a_fine_grid_is_nearer(want: list[int]) -> None:
    """Brute force on steps of a quarter: the sum of squares found is the least of all that keep order and distance."""
    size, gap = 1.5, 0.5
    found = spread([float(value) for value in want], [size] * len(want), gap)
    grid = [step / 4 - 4 for step in range(65)]
    allowed = [places for places in product(grid, repeat=len(want)) if all(b - a >= size + gap for a, b in pairwise(places))]
    best = min(sum((place - value) ** 2 for place, value in zip(places, want, strict=True)) for places in allowed)

    assert all(b - a >= size + gap - 1e-9 for a, b in pairwise(found))
    assert sum((place - value) ** 2 for place, value in zip(found, want, strict=True)) <= best + 1e-9
