"""The longest single rest of a bought bar, with cost and number bought fixed.

One bought bar of the composition is shortened until the pieces no longer fit. Every weighting says how much the short bar must
still hold; the largest of these is tried, and either it can be cut (then no longer rest is possible) or it is refused by a new
weighting, or by the list of all patterns, and the next content that pieces can make is tried.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

import numpy as np

from service.cutting.compositions import Window, list_compositions
from service.cutting.cover import Cover
from service.cutting.packing import pack
from service.cutting.sources import Lengths, Pattern

if TYPE_CHECKING:
    from service.cutting.patterns import Ints
    from service.cutting.problem import BarProblem
    from service.cutting.search import Search

_WINDOW_LIMIT: Final = 20_000
_TRIES: Final = 60


class Rest(NamedTuple):
    """The plan with the longest rest found, in units of the problem, and whether no longer one is possible."""

    plan: tuple[Pattern, ...]
    rest: int
    proven: bool


class _Short(NamedTuple):
    """A composition in which one bar of a class is the short one, and the least content that is not refused for it."""

    bars: Ints
    number: int
    content: int


def rest_of(problem: BarProblem, pattern: Pattern) -> int:
    """What is left of a bar after its cuts, in units; the last cut may run off the end."""
    number, counts = pattern
    content = int(counts @ np.array(problem.sizes, dtype=np.int64))
    return max(0, problem.classes[number].capacity - problem.kerf - content)


def longest_rest(problem: BarProblem, search: Search) -> Rest:
    """Search for the longest single rest of a bought bar at the cost and number of the search's plan."""
    plan = search.plan or ()
    best = Rest(plan, _longest_of(problem, plan), proven=False)
    window = _equals(search) if problem.tables_fit else None
    if window is None:
        return best
    contents = _Contents(problem, search)
    shorts = [
        _Short(bars, number, contents.least(bars, number, 0)) for bars in window.bars for number in _bought_classes(problem, bars)
    ]
    known = True
    for _ in range(_TRIES):
        shorts = [short for short in shorts if contents.rest(short) > best.rest]
        if not shorts:
            return best._replace(proven=known and search.done)
        if search.meter.is_over():
            return best
        short = max(shorts, key=contents.rest)
        shorts = [item for item in shorts if item is not short]
        found, refused = contents.try_short(short)
        if found is not None:
            best = Rest(found, _longest_of(problem, found), proven=False)
            continue
        known &= refused
        after = short.content if contents.learnt else short.content + 1
        shorts = [*shorts, short._replace(content=after)]
        shorts = [item._replace(content=contents.least(item.bars, item.number, item.content)) for item in shorts]
    return best


def _equals(search: Search) -> Window | None:
    """List the compositions with the plan's cost and number bought."""
    cost, bought = search.value
    window = list_compositions(search.classes, search.cuts, (cost, cost), _WINDOW_LIMIT)
    if window is None:
        return None
    same = window.bought == bought
    return Window(window.bars[same], window.costs[same], window.bought[same])


def _bought_classes(problem: BarProblem, bars: Ints) -> list[int]:
    """Classes of which a composition buys at least one bar."""
    return [number for number, of in enumerate(problem.classes) if bars[number] and of.costs(int(bars[number]))[1]]


def _longest_of(problem: BarProblem, plan: tuple[Pattern, ...]) -> int:
    """Longest rest of a bought bar: of a class that is partly on hand, the bars with the longest rests are the bought ones."""
    counts = np.bincount([number for number, _ in plan], minlength=len(problem.classes))
    classes = set(_bought_classes(problem, counts))
    return max((rest_of(problem, pattern) for pattern in plan if pattern[0] in classes), default=0)


class _Contents:
    """What short bars must hold, by all weightings, and whether they can."""

    def __init__(self, problem: BarProblem, search: Search) -> None:
        self._problem, self._search = problem, search
        self._capacities = np.array([of.capacity for of in problem.classes], dtype=np.int64)
        self.learnt = False  # the last refusal was a new weighting
        reach = search.by_size
        self._reachable = np.nonzero(reach.by_capacity == np.arange(len(reach.by_capacity)))[0]

    def least(self, bars: Ints, number: int, content: int) -> int:
        """Least content, from `content` on, that pieces can make and no weighting refuses; past the capacity if there is none."""
        search = self._search
        for cut in search.cuts:
            must = cut.needed - int(bars @ cut.worths) + int(cut.worths[number])
            content = max(content, int(np.searchsorted(cut.by_capacity, must)))
        at = int(np.searchsorted(self._reachable, content))
        past = int(self._capacities[0]) + 1
        return int(self._reachable[at]) if at < len(self._reachable) else past

    def rest(self, short: _Short) -> int:
        """Rest that a short bar would leave."""
        return int(self._capacities[short.number]) - self._problem.kerf - short.content

    def try_short(self, short: _Short) -> tuple[tuple[Pattern, ...] | None, bool]:
        """Try to cut with one short bar: the plan, or whether it is certainly impossible."""
        search = self._search
        source = Lengths(search.bins.sizes, np.append(self._capacities, short.content))
        bins = search.bins._replace(source=source)
        bars = np.append(short.bars, 1)
        bars[short.number] -= 1
        cover = Cover(bins, search.meter)
        cover.add_patterns(zip(search.cover.classes, search.cover.counts, strict=True))
        cuts = [cut._replace(worths=np.append(cut.worths, cut.by_capacity[short.content])) for cut in search.cuts]
        packed = pack(bins, bars, cuts, cover, meter=search.meter)
        self.learnt = packed.cut is not None
        if packed.cut is not None:
            search.cuts.append(packed.cut._replace(worths=packed.cut.worths[:-1]))
        if packed.patterns is None:
            return None, packed.known
        last = len(self._capacities)
        return tuple((short.number if number == last else number, counts) for number, counts in packed.patterns), True
