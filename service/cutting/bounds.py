"""Lower bounds on cost and on the number of bars bought, in exact arithmetic, from weightings of the pieces."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING, Final

import numpy as np

if TYPE_CHECKING:
    from service.cutting.compositions import Cut
    from service.cutting.problem import Classes

_COVER_CELLS: Final = 50_000  # cells of the cheapest-cover table; larger sums are scaled down, which keeps the bound valid


def cost_bound(classes: Classes, cuts: list[Cut]) -> int:
    """Least cost that the cuts allow if bars could be bought in parts, rounded up."""
    return max((_in_parts(classes, cut) for cut in cuts), default=0)


def whole_bars_bound(classes: Classes, cuts: list[Cut]) -> int:
    """Least cost of whole bars that hold what each cut by itself asks for: more work than in parts, and no lower."""
    return max((max(_in_parts(classes, cut), _in_whole_bars(classes, cut)) for cut in cuts), default=0)


def bought_bound(classes: Classes, cuts: list[Cut]) -> int:
    """Least number of bars bought that the cuts allow at any cost."""
    return max((_fewest(classes, cut) for cut in cuts), default=0)


def _fewest(classes: Classes, cut: Cut) -> int:
    on_hand = bought = 0
    for of, worth in zip(classes, cut.worths.tolist(), strict=True):
        on_hand += worth * sum(step.copies for step in of.steps if not step.bought)
        bought = max(bought, worth if any(step.bought for step in of.steps) else 0)
    missing = max(0, cut.needed - on_hand)
    return -(-missing // bought) if bought else 0


def _in_parts(classes: Classes, cut: Cut) -> int:
    """Cover the worth needed by bars in parts, the best worth for money first."""
    offers = [
        (Fraction(step.cost, worth), worth * step.copies)
        for of, worth in zip(classes, cut.worths.tolist(), strict=True)
        if worth > 0
        for step in of.steps
    ]
    cost, missing = Fraction(0), cut.needed
    for each, supply in sorted(offers):
        taken = min(missing, supply)
        cost += each * taken
        missing -= taken
    return math.ceil(cost)


def _in_whole_bars(classes: Classes, cut: Cut) -> int:
    """Cheapest set of whole bars that holds the worth needed, by dynamic programming on worth (scaled, rounded safely)."""
    scale = -(-cut.needed // _COVER_CELLS)
    needed = -(-cut.needed // max(1, scale)) if scale <= 1 else cut.needed // scale
    table = np.full(needed + 1, np.iinfo(np.int64).max // 4)
    table[0] = 0
    for of, worth in zip(classes, cut.worths.tolist(), strict=True):
        size = -(-worth // max(1, scale))
        for step in of.steps:
            if size > 0:
                table = _with_bars(table, size, min(step.copies, -(-needed // size)), step.cost)
    least = int(table[needed])
    return least if least < np.iinfo(np.int64).max // 4 else 0


def _with_bars(
    table: np.ndarray[tuple[int], np.dtype[np.int64]], size: int, copies: int, cost: int
) -> np.ndarray[tuple[int], np.dtype[np.int64]]:
    """Add up to `copies` bars of one step: least cost of holding at least so much."""
    lot = 1
    while copies > 0:
        lot = min(lot, copies)
        shift = min(lot * size, len(table) - 1)
        shifted = np.concatenate((np.full(shift, table[0]), table[: len(table) - shift])) + lot * cost
        shifted[: shift + 1] = table[0] + lot * cost
        table = np.minimum(table, shifted)
        copies -= lot
        lot *= 2
    return table
