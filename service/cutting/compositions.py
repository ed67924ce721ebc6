"""Compositions: how many bars of each class are taken. They are tried from the cheapest on, until one can be cut.

A *cut* is a weighting of the pieces: if a bar of class j holds pieces worth at most m_j, and all pieces are worth D, then every
composition n that can be cut has sum(n_j m_j) >= D. Weights, worths and sums are integers, so a refusal is exact. The cheapest
composition that no cut refuses is a lower bound of the cost, and of the number bought at that cost.

Source: weak duality (Farkas); the cuts are Benders' feasibility cuts with an integer master, Hooker 2000; the listing is our own.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

import numpy as np

if TYPE_CHECKING:
    from service.cutting.cover import Bins
    from service.cutting.patterns import Ints
    from service.cutting.problem import BarClass


_HUGE: Final = 1 << 60  # more than all pieces are worth by any weighting


class Cut(NamedTuple):
    """One weighting: worth of a bar by capacity, and what all pieces are worth."""

    values: Ints
    by_capacity: Ints  # lengths only: best worth for every capacity
    worths: Ints  # best worth of a bar of each class
    needed: int


def make_cut(bins: Bins, values: Ints) -> Cut:
    """Weigh the pieces by `values` (integers, none negative)."""
    worths, by_capacity = bins.source.weigh(bins.demands, values)
    return Cut(values, by_capacity, worths, int(values @ bins.demands))


class Window(NamedTuple):
    """All compositions whose cost lies within limits, by cost, then number bought, then most capacity first."""

    bars: Ints  # one composition a row
    costs: Ints
    bought: Ints


def costs_by_number(of: BarClass, most: int) -> tuple[Ints, Ints]:
    """Cost and number bought of the 0..most cheapest bars of a class."""
    costs, bought = [0], [0]
    for step in of.steps:
        count = min(step.copies, most - len(costs) + 1)
        costs += [costs[-1] + step.cost * k for k in range(1, count + 1)]
        bought += [bought[-1] + step.bought * k for k in range(1, count + 1)]
    return np.array(costs, dtype=np.int64), np.array(bought, dtype=np.int64)


def list_compositions(classes: tuple[BarClass, ...], cuts: list[Cut], span: tuple[int, int], limit: int) -> Window | None:
    """List every composition with a cost in the span, both ends included, that no cut refuses.

    None if there are more than `limit` on the way. Bars that are free and on hand are all taken: more bars never make a demand
    harder to cover.
    """
    main, (low, high) = cuts[0], span
    order = sorted(range(len(classes)), key=lambda j: _efficiency(classes[j], int(main.worths[j])))
    bars, cost, bought, supply = (np.zeros((1, 0), dtype=np.int64), *np.zeros((3, 1), dtype=np.int64))
    for place, number in enumerate(order):
        of = classes[number]
        costs, boughts = costs_by_number(of, of.copies)
        least = _free(of)
        ceiling = np.searchsorted(costs, high - cost, side="right")  # numbers of bars that can still be paid for
        index = np.repeat(np.arange(len(cost)), np.maximum(0, ceiling - least))
        if len(index) > limit:
            return None
        first = np.cumsum(np.maximum(0, ceiling - least)) - np.maximum(0, ceiling - least)
        number_of = np.arange(len(index)) - first[index] + least
        cost, bought = cost[index] + costs[number_of], bought[index] + boughts[number_of]
        supply = supply[index] + number_of * int(main.worths[number])
        bars = np.concatenate((bars[index], number_of[:, None]), axis=1)
        good = supply + _still_to_come(classes, main, order[place + 1 :], high - cost) >= main.needed
        bars, cost, bought, supply = bars[good], cost[good], bought[good], supply[good]
    bars = bars[:, np.argsort(order)] if order else bars
    window = Window(bars[cost >= low], cost[cost >= low], bought[cost >= low])
    return _in_order(refuse(window, cuts[1:]), cuts[-1])


def refuse(window: Window, cuts: list[Cut]) -> Window:
    """Drop the compositions that a cut refuses."""
    for cut in cuts:
        good = window.bars @ cut.worths >= cut.needed
        window = Window(window.bars[good], window.costs[good], window.bought[good])
    return window


def _in_order(window: Window, cut: Cut) -> Window:
    slack = window.bars @ cut.worths
    order = np.lexsort((*window.bars.T, -slack, window.bought, window.costs))
    return Window(window.bars[order], window.costs[order], window.bought[order])


def _free(of: BarClass) -> int:
    """How many bars of a class are free and on hand."""
    return sum(step.copies for step in of.steps if step.cost == 0 and step.bought == 0)


def _efficiency(of: BarClass, worth: int) -> float:
    """Worth for money of the cheapest priced bar of a class; free ones come last."""
    priced = [step.cost for step in of.steps if step.cost]
    return worth / priced[0] if priced else float("inf")


def _still_to_come(classes: tuple[BarClass, ...], cut: Cut, rest: list[int], budget: Ints) -> Ints:
    """Most worth that the classes still to come can add for a budget (never too little)."""
    best, free = 0.0, 0
    for number in rest:
        worth = int(cut.worths[number])
        for step in classes[number].steps:
            if step.cost == 0:
                free += worth * step.copies
            else:
                best = max(best, worth / step.cost)
    return np.minimum(np.ceil(best * np.maximum(budget, 0) * (1 + 1e-9)), _HUGE).astype(np.int64) + min(free, _HUGE)
