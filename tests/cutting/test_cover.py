from __future__ import annotations

import numpy as np
import pytest

from service.cutting import Effort, never
from service.cutting.cover import Bins, Cover, Priced, integer_duals
from service.cutting.first_fit import bins_of
from service.cutting.meter import Meter
from service.cutting.problem import state_bars
from service.cutting.sources import Lengths
from tests.cutting.jobs import example_a


def meter() -> Meter:
    return Meter(Effort(), never)


def test_the_relaxed_cost_of_example_a_is_the_one_written_down() -> None:
    """`knowledge/worked-examples.md`, section 0: LP bound of the price of A with allowance 62.61."""
    problem = state_bars(example_a())
    costs = [float(of.steps[0].cost) for of in problem.classes]
    priced = Priced(np.arange(4), np.array(costs), np.full(4, 52.0))
    relaxed = Cover(bins_of(problem), meter(), priced).converge(until_covered=False)

    assert 62.61 == round(relaxed.value / 100, 2)


def test_the_shortfall_is_what_the_bars_cannot_hold() -> None:
    """By hand: three pieces of 6 on bars of 10, one piece each: with two bars 6 fall short; with three nothing."""
    bins = Bins(np.array([6]), np.array([3]), Lengths(np.array([6]), np.array([10])))
    cover = Cover(bins, meter())
    cover.allow(np.array([2]))

    assert 6.0 == pytest.approx(cover.converge(until_covered=True).value)

    cover.allow(np.array([3]))

    assert 0.0 == pytest.approx(cover.converge(until_covered=True).value)


def test_a_pattern_is_added_once() -> None:
    bins = Bins(np.array([6]), np.array([3]), Lengths(np.array([6]), np.array([12])))
    cover = Cover(bins, meter())
    pattern = (0, np.array([2]))

    assert (1, 0) == (cover.add_patterns([pattern, pattern]), cover.add_patterns([pattern]))
    assert [0] == cover.classes


def test_what_is_too_much_for_the_rest_is_put_aside() -> None:
    """By hand: the pattern of two is too much once one piece is left, so that the one bar holds nothing until it shrinks."""
    bins = Bins(np.array([6]), np.array([3]), Lengths(np.array([6]), np.array([12])))
    cover = Cover(bins, meter())
    cover.add_patterns([(0, np.array([2]))])
    cover.shrink(np.array([1]), np.array([1]))

    assert 6.0 == pytest.approx(cover.solve().value)
    assert 0.0 == pytest.approx(cover.converge(until_covered=True).value)


def test_integer_weights_keep_their_ratios() -> None:
    values, scale = integer_duals(np.array([1.5, 0.5, -1e-9]))

    assert (1 << 30, 0) == (values[0], values[2])
    assert 3.0 == pytest.approx(values[0] / values[1])
    assert values[0] == pytest.approx(1.5 * scale)
    assert [0] == integer_duals(np.zeros(1))[0].tolist()
