"""First fit decreasing: the plan that is there at once, with no solver at all."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np

from service.cutting.cover import Bins
from service.cutting.problem import BarProblem, cost_of
from service.cutting.sources import Lengths, Pattern

if TYPE_CHECKING:
    from service.cutting.meter import Meter
    from service.cutting.patterns import Ints
    from service.cutting.problem import BarClass

_SHARE: Final = 0.25  # of the work, for plans beyond the first
_MOST_FAVOURITES: Final = 16  # classes that a greedy plan prefers in turn; more would take longer than they help


def bins_of(problem: BarProblem) -> Bins:
    """Give a problem in the form that the cover model takes."""
    sizes = np.array(problem.sizes, dtype=np.int64)
    capacities = np.array([of.capacity for of in problem.classes], dtype=np.int64)
    return Bins(sizes, np.array(problem.demands, dtype=np.int64), Lengths(sizes, capacities))


def first_fit(problem: BarProblem, meter: Meter) -> tuple[Pattern, ...] | None:
    """Give the cheapest of several greedy plans, or None if none of them covers the demand from the copies there are.

    Each fills bars longest piece first (filling one bar at a time with the longest that still fit is first fit decreasing,
    bar by bar): one plan with each class as far as its copies go, and one that takes the class of least cost for what it
    holds. Last, every bar is exchanged for the cheapest that holds its pieces. Once there is a plan, no more are made than a
    part of the work allows.
    """
    bins = bins_of(problem)
    pieces = sum(problem.demands)
    largest = sorted(range(len(problem.classes)), key=lambda k: -_most_held(problem.classes[k], pieces))
    found: list[tuple[Pattern, ...]] = []
    for favourite in (-1, *sorted(largest[:_MOST_FAVOURITES])):
        plan = _greedy(problem, bins, favourite, meter, needed=not found)
        if plan is not None:
            found.append(exchange(problem, plan))
        if found and meter.is_over(_SHARE):
            break
    return min(found, key=lambda plan: cost_of(problem.classes, plan), default=None)


def _most_held(of: BarClass, pieces: int) -> int:
    """How much a class can hold at most; nothing needs more bars than there are pieces."""
    return min(of.copies, pieces) * of.capacity


def _greedy(problem: BarProblem, bins: Bins, favourite: int, meter: Meter, *, needed: bool) -> tuple[Pattern, ...] | None:
    """Make one plan; given up when the work or the time is over, unless it is needed."""
    demands = bins.demands.copy()
    left = [of.copies for of in problem.classes]
    used = [0] * len(left)
    chosen: list[Pattern] = []
    while demands.any():
        choice = _next_bar(problem, bins._replace(demands=demands), used, favourite)
        if choice is None or (not needed and meter.is_over(_SHARE)):
            return None
        meter.spend(20 * (1 if choice[0] == favourite else len(left)))
        number, counts = choice
        times = _repeats(counts, demands, left[number] - used[number])
        chosen += [(number, counts)] * times
        demands = demands - counts * times
        used[number] += times
    return tuple(chosen)


def _repeats(counts: Ints, demands: Ints, copies: int) -> int:
    """How often the same filling comes out again: as long as the demand allows it."""
    held = counts > 0
    return max(1, min(copies, int((demands[held] // counts[held]).min())))


def _next_bar(problem: BarProblem, bins: Bins, used: list[int], favourite: int) -> Pattern | None:
    """Fill one bar of every class that has one left and takes the longest piece; choose by favourite, else by cost for length."""
    best: tuple[tuple[float, int], Pattern] | None = None
    longest = int(bins.sizes[np.nonzero(bins.demands)[0][0]])
    empty = np.zeros(len(bins.sizes), dtype=np.int64)
    usable = [k for k, of in enumerate(problem.classes) if used[k] < of.copies and of.capacity >= longest]
    if favourite in usable:
        return favourite, bins.source.filled((favourite, empty), bins.demands)
    for number in usable:
        of = problem.classes[number]
        counts = bins.source.filled((number, empty), bins.demands)
        price = of.costs(used[number] + 1)[0] - of.costs(used[number])[0]
        rank = (price / int(counts @ bins.sizes), number)
        if best is None or rank < best[0]:
            best = (rank, (number, counts))
    return None if best is None else best[1]


def exchange(problem: BarProblem, plan: tuple[Pattern, ...]) -> tuple[Pattern, ...]:
    """Exchange every bar for the cheapest one left that holds its pieces, longest content first."""
    sizes = np.array(problem.sizes, dtype=np.int64)
    used = [0] * len(problem.classes)
    result: list[Pattern] = []
    for _, counts in sorted(plan, key=lambda item: (-int(item[1] @ sizes), item[0])):
        length = int(counts @ sizes)
        fitting = [
            (of.costs(used[k] + 1)[0] - of.costs(used[k])[0], of.capacity, k)
            for k, of in enumerate(problem.classes)
            if of.capacity >= length and used[k] < of.copies
        ]
        if not fitting:
            return plan
        cheapest = min(fitting)[2]
        used[cheapest] += 1
        result.append((cheapest, counts))
    return tuple(result) if cost_of(problem.classes, tuple(result)) <= cost_of(problem.classes, plan) else plan
