"""From effects on a price to its 10th and 90th percentile. Money in minor units."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterable

PERCENTILE_SD_RATIO: Final = 1.2816  # of a normal distribution, 10 and 90 percent
END_WEIGHT_RATIO: Final = 1 / 6  # Simpson's rule: a cubic effect over an even range is integrated exactly
STEP_MAJOR_COUNT: Final = 10  # ranges are rounded outward to this many units of the currency: labour.md, section 5


class Spreading(NamedTuple):
    """What one uncertainty adds to a price: mean and variance of its effect against the value taken."""

    mean_minor: float
    variance: float


class Percentiles(NamedTuple):
    """Price with tax, before rounding."""

    low_minor: float
    likely_minor: float
    high_minor: float

    @property
    def width_minor(self) -> float:
        """From low to high."""
        return self.high_minor - self.low_minor


def spread_over(low_minor: float, likely_minor: float, high_minor: float) -> Spreading:
    """Mean and variance of an effect whose cause lies anywhere between two ends, all as likely.

    Args:
        low_minor: effect at one end.
        likely_minor: effect in the middle.
        high_minor: effect at the other end.
    """
    middle = 1 - 2 * END_WEIGHT_RATIO
    mean = END_WEIGHT_RATIO * (low_minor + high_minor) + middle * likely_minor
    weighted = ((END_WEIGHT_RATIO, low_minor), (middle, likely_minor), (END_WEIGHT_RATIO, high_minor))
    return Spreading(mean, sum(weight * (effect - mean) ** 2 for weight, effect in weighted))


def percentiles(base_minor: float, spreadings: Iterable[Spreading]) -> Percentiles:
    """10th percentile, mean and 90th percentile of a price moved by many small independent things.

    `labour.md`, section 5 adds lows to lows and highs to highs, on the safe side. That is no percentile: with ten causes all
    of them at their ends at once is one case in many thousands. Variances are added instead, so that low and high are what
    they are called.
    """
    found = tuple(spreadings)
    mean = base_minor + sum(one.mean_minor for one in found)
    off = PERCENTILE_SD_RATIO * math.sqrt(sum(one.variance for one in found))
    return Percentiles(mean - off, mean, mean + off)


def outward(price: Percentiles, minor_per_major_count: int) -> tuple[int, int, int]:
    """Low rounded down, likely to the nearest, high up, to ten units of the currency; in minor units."""
    step = STEP_MAJOR_COUNT * minor_per_major_count
    low = max(0, math.floor(price.low_minor / step) * step)
    high = math.ceil(price.high_minor / step) * step
    return low, math.floor(price.likely_minor / step + 0.5) * step, high
