"""Weightings of rectangles: how much a sheet can hold at most, so that fewer sheets are certainly not enough.

If f never lets lengths that fit a side side by side weigh more than A, and g likewise B, then no sheet holds pieces whose values
f(width) g(height) add up to more than A B. A piece that may be turned counts with the lesser of its two values.

Source: dual feasible functions, Lueker 1983; conservative scales for packing, Fekete and Schepers 2004. Which functions: theirs
(thresholds; rounding by k + 1 parts).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

import numpy as np

from service.cutting.compositions import Cut
from service.cutting.patterns import Ints, best_values

if TYPE_CHECKING:
    from service.cutting.sheet_problem import SheetProblem

_PARTS: Final = 12  # roundings tried: halves, thirds, ... of a side
_KEPT: Final = 40  # weightings kept of all pairs
_THRESHOLDS: Final = 24  # thresholds tried for one side
_MANY: Final = 8  # with more classes than so many, fewer weightings are kept of each, and functions made of so many sides only


class _Axis(NamedTuple):
    """Functions of lengths along one side: values of all lengths (rows: functions), and what a side of each class holds."""

    values: dict[int, Ints]  # length -> value by function
    holds: Ints  # function by class


def sheet_cuts(problem: SheetProblem) -> list[Cut]:
    """Give the weightings that refuse most: by area first, then the strongest for the largest and for the cheapest sheet."""
    across, up = _axis(problem, along_width=True), _axis(problem, along_width=False)
    values = _values(problem, across, up)
    shape = values.shape[:2]
    demands = np.array([kind.demand for kind in problem.kinds], dtype=np.int64)
    needed = values @ demands
    worths = across.holds[:, None, :] * up.holds[None, :, :]
    ratio = needed[:, :, None] / np.maximum(worths, 1)
    classes = worths.shape[2]
    kept = min(_KEPT, -(-_MANY * _KEPT // classes))
    order = sorted(
        {int(at) for number in range(classes) for at in np.argsort(-ratio[:, :, number].ravel(), kind="stable")[:kept]}
    )
    best = sorted(order, key=lambda at: (-float(ratio.reshape(-1, classes)[at].max()), at))
    cuts = []
    for at in [0, *best]:
        f, g = np.unravel_index(at, shape)
        if needed[f, g] > 0:
            cuts.append(Cut(values[f, g], np.zeros(0, dtype=np.int64), worths[f, g], int(needed[f, g])))
    return cuts


def _axis(problem: SheetProblem, *, along_width: bool) -> _Axis:
    """Make the functions for one side of the sheets: the length itself first."""
    sides = np.array([of.width if along_width else of.height for of in problem.classes], dtype=np.int64)
    lengths = sorted({way[0 if along_width else 1] for kind in problem.kinds for way in kind.ways()})
    usable = np.array([length for length in lengths if length <= int(sides.max())], dtype=np.int64)
    rows = [usable]
    different = sorted(set(sides.tolist()))
    for side in different[:: len(different) // -_MANY][::-1]:  # the largest is among them
        rows += _functions(usable, side)
    unique = list({row.tobytes(): row for row in rows}.values())
    counts = _counts(problem, usable.tolist(), along_width=along_width)
    holds = np.array([_holds(row, usable, counts, sides) for row in unique], dtype=np.int64)
    table = np.array(unique)
    return _Axis({int(length): table[:, at] for at, length in enumerate(usable)}, holds)


def _functions(lengths: Ints, side: int) -> list[Ints]:
    """Thresholds (what is nearly the whole side counts as all of it, what is below the share as nothing), and roundings."""
    halves = [length for length in lengths.tolist() if 2 * length <= side]
    shares = sorted({*halves, *(side - length for length in lengths.tolist() if 2 * length > side), side // 2} - {0})
    step = max(1, len(shares) // _THRESHOLDS)
    rows = [
        np.where(lengths < share, 0, np.where(lengths > side - share, side, lengths))
        for share in shares[::step]
        if 2 * share <= side
    ]
    for parts in range(1, _PARTS):
        scaled = (parts + 1) * lengths
        rows.append(np.where(scaled % side == 0, parts * lengths, scaled // side * side))
    return rows


def _counts(problem: SheetProblem, lengths: list[int], *, along_width: bool) -> Ints:
    """How many pieces may lie with each length along the side."""
    counts = dict.fromkeys(lengths, 0)
    for kind in problem.kinds:
        for length in {way[0 if along_width else 1] for way in kind.ways()}:
            if length in counts:
                counts[length] += kind.demand
    return np.array([counts[length] for length in lengths], dtype=np.int64)


def _holds(values: Ints, lengths: Ints, counts: Ints, sides: Ints) -> Ints:
    """Most value that fits each side, exactly."""
    falling = np.argsort(-lengths)
    return best_values(lengths[falling], counts[falling], values[falling], int(sides.max()))[sides]


def _values(problem: SheetProblem, across: _Axis, up: _Axis) -> Ints:
    """Value of every kind (last axis) under every pair of functions: the lesser of its ways to lie."""
    columns = []
    for kind in problem.kinds:
        ways = [
            across.values[width][:, None] * up.values[height][None, :]
            for width, height in kind.ways()
            if any(of.holds(width, height) for of in problem.classes)
        ]
        columns.append(np.min(np.array(ways), axis=0))
    return np.stack(columns, axis=-1)
