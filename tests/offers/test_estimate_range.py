from __future__ import annotations

import random
import statistics

import pytest

from service.offers.estimate_range import Percentiles, Spreading, outward, percentiles, spread_over


def test_an_even_range_has_the_mean_and_variance_of_the_even_distribution() -> None:
    """Mean of an even distribution (a + b)/2, variance (b - a)^2 / 12 (any textbook of statistics)."""
    found = spread_over(-600, 0, 600)

    assert 0 == pytest.approx(found.mean_minor)
    assert 1_200**2 / 12 == pytest.approx(found.variance)


def test_a_lopsided_range_moves_the_mean() -> None:
    assert 200 / 6 == pytest.approx(spread_over(0, 0, 200).mean_minor)


def test_what_is_known_spreads_nothing() -> None:
    assert Spreading(0, 0) == spread_over(0, 0, 0)


def test_low_and_high_are_the_tenth_and_ninetieth_of_a_hundred() -> None:
    """Against ten thousand sums of twelve even draws."""
    chance = random.Random(7)  # noqa: S311 - no secret
    sums = [100_000 + sum(chance.uniform(-1_000, 1_000) for _ in range(12)) for _ in range(10_000)]
    low, *_, high = statistics.quantiles(sums, n=10)
    found = percentiles(100_000, [spread_over(-1_000, 0, 1_000)] * 12)

    assert low == pytest.approx(found.low_minor, rel=0.002)
    assert high == pytest.approx(found.high_minor, rel=0.002)
    assert statistics.mean(sums) == pytest.approx(found.likely_minor, rel=0.002)


def test_a_range_is_rounded_outward_and_shows_no_pennies() -> None:
    assert (123_000, 124_000, 126_000) == outward(Percentiles(123_456, 124_499, 125_001), 100)
    assert (120, 120, 130) == outward(Percentiles(123, 124, 125), 1)


def test_a_price_is_never_below_nothing() -> None:
    assert 0 == outward(Percentiles(-5_000, 10, 5_000), 100)[0]
