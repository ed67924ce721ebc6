"""The search for sheets: greedy plans, weightings from below, then ever harder searches until value and bound meet."""

from __future__ import annotations

import math
from operator import mul
from typing import TYPE_CHECKING, Final, NamedTuple

import numpy as np

from service.cutting.bounds import bought_bound, cost_bound
from service.cutting.compositions import Cut, list_compositions, make_cut
from service.cutting.cover import Bins
from service.cutting.plan import Method
from service.cutting.plunge_packing import ask_plunge
from service.cutting.search import Search
from service.cutting.sheet_bounds import sheet_cuts
from service.cutting.sheet_greedy import Layout, sheets_cost
from service.cutting.sheet_packing import Way, ask_packing
from service.cutting.sheet_sets import SetList

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from service.cutting.meter import Meter
    from service.cutting.pieces import FirstCut
    from service.cutting.sheet_problem import SheetProblem

_WINDOW_CELLS: Final = 1_600_000  # compositions times classes
_WINDOW_LIMIT: Final = 100_000
_PARTS_CELLS: Final = 4_000  # weightings times classes in the bound of sheets in parts
_BOUND_CUTS: Final = 12  # weightings used for the costlier bounds
_PLANS: Final = 12  # equally good plans kept, to choose the one with the best rest and the fewest stops from
_EDGE_TRIES: Final = (
    (Way.TREE, 128), (Way.TREE, 512), (Way.KNAPSACKS, 1), (Way.CORRECTION, 2), (Way.TREE, 2048), (Way.CORRECTION, 8),
)  # fmt: skip
_PLUNGE_TRIES: Final = ((Way.TREE, 64), (Way.CORRECTION, 2), (Way.KNAPSACKS, 1), (Way.TREE, 512), (Way.CORRECTION, 8))
_SETS_EXPECTED: Final = 20_000  # sets are listed if no more than about so many are expected
_SETS_SHARE: Final = 0.4  # of the work left, for listing the sets
_FEW_SETS: Final = 1_000  # with no more than so many expected the list will hardly fail, and gets a larger share
_FEW_SETS_SHARE: Final = 0.8

type Sheets = tuple[Layout, ...]


class Ask(NamedTuple):
    """Where a search asks for plans."""

    plan: Callable[[SheetProblem, Way, int, Meter], Sheets | None]
    tries: tuple[tuple[Way, int], ...]  # one after the other
    method: Method
    first_cut: FirstCut | None  # None: cuts may stop inside a sheet, so sets cut edge to edge prove nothing


def edge_to_edge(first_cut: FirstCut) -> Ask:
    """Ask for plans that are cut edge to edge."""

    def plan(problem: SheetProblem, way: Way, breadth: int, meter: Meter) -> Sheets | None:
        return ask_packing(problem, way, breadth, first_cut=first_cut, meter=meter)

    return Ask(plan, _EDGE_TRIES, Method.PACKING, first_cut)


PLUNGE: Final = Ask(ask_plunge, _PLUNGE_TRIES, Method.PLUNGE, None)


class SheetSearch:
    """One search. `plans` are the best so far, all of the same cost and number; `low` is the least that is not refused."""

    def __init__(self, problem: SheetProblem, ask: Ask, meter: Meter, good: Callable[[Sheets], bool]) -> None:
        """Start with the bounds and without a plan.

        Args:
            problem: the bare problem.
            ask: where plans come from.
            meter: counts the work.
            good: whether a plan can be sawn as the job asks.
        """
        self.problem, self.meter = problem, meter
        self._ask, self._good = ask, good
        self._bars = tuple(of.bars for of in problem.classes)
        self.plans: list[Sheets] = []
        self.method = Method.FIRST_FIT
        self.cuts: list[Cut] = sheet_cuts(problem)
        self.low = (0, 0)

    @property
    def value(self) -> tuple[int, int]:
        """Cost and number bought of the best plans; more than any if there is none."""
        return sheets_cost(self.problem, self.plans[0]) if self.plans else (1 << 62, 0)

    @property
    def done(self) -> bool:
        """Whether nothing cheaper, and nothing with fewer sheets at that cost, is possible."""
        return bool(self.plans) and self.low >= self.value

    @property
    def impossible(self) -> bool:
        """Whether a weighting says that all sheets there are do not hold the pieces."""
        copies = [of.copies for of in self._bars]
        return any(sum(map(mul, copies, cut.worths.tolist())) < cut.needed for cut in self.cuts)

    @property
    def fewest(self) -> int:
        """Least number bought at the plan's cost that is not refused."""
        general = bought_bound(self._bars, self.cuts)
        return max(general, self.low[1]) if self.low[0] == self.value[0] else general

    def run(self, start: Iterable[Sheets], method: Method = Method.FIRST_FIT) -> None:
        """Search until done or out of work.

        Args:
            start: plans to start with.
            method: where they come from.
        """
        for plan in sorted(start, key=lambda plan: sheets_cost(self.problem, plan)):
            self._offer(plan, method)
        self.low = self._least()
        self.meter.spend(2_000)
        for place, (way, breadth) in enumerate(self._ask.tries):
            if self.done or self.meter.is_over():
                return
            self.ask(way, breadth)
            if place == 0 and not self.done:
                self._list_sets()

    def _offer(self, plan: Sheets | None, method: Method) -> None:
        """Keep a plan that is better than the best so far, or beside it if it is as good."""
        if plan is None or plan in self.plans or sheets_cost(self.problem, plan) > self.value:
            return
        better = sheets_cost(self.problem, plan) < self.value
        if (better or len(self.plans) < _PLANS) and self._good(plan):
            if better:
                self.plans, self.method = [], method
            self.plans.append(plan)

    def _least(self) -> tuple[int, int]:
        """Find the cheapest composition that no weighting refuses."""
        classes = len(self._bars)
        start = cost_bound(self._bars, self.cuts[: max(_BOUND_CUTS, _PARTS_CELLS // classes)])
        width, limit = max(1, start // 100), min(_WINDOW_LIMIT, _WINDOW_CELLS // classes)
        while start <= self.value[0]:
            high = min(start + width, self.value[0])
            window = None if self.meter.rang() else list_compositions(self._bars, self.cuts, (start, high), limit)
            self.meter.spend(100 * classes)
            if window is None:
                return (start, 0)
            if len(window.costs):
                return min((int(window.costs[0]), int(window.bought[0])), self.value)
            start, width = high + 1, width * 2
        return self.value

    def ask(self, way: Way, breadth: int) -> None:
        """Ask packingsolver, and keep what is good of its answer."""
        self._offer(self._ask.plan(self.problem, way, breadth, self.meter), self._ask.method)

    def _list_sets(self) -> None:
        """List all sets that fit a sheet, if they are few, and search over them from below."""
        first_cut, expected = self._ask.first_cut, self._sets_expected()
        if first_cut is None or any(of.defects for of in self.problem.classes) or expected > _SETS_EXPECTED:
            return
        most = int(self.meter.left_micros() * (_FEW_SETS_SHARE if expected <= _FEW_SETS else _SETS_SHARE))
        found = SetList(self.problem, first_cut, meter=self.meter, most_micros=most)
        if not found.complete:
            return
        sizes = np.array([kind.width * kind.height for kind in self.problem.kinds], dtype=np.int64)
        demands = np.array([kind.demand for kind in self.problem.kinds], dtype=np.int64)
        bins = Bins(sizes, demands, found.sets())
        search = Search(bins, self._bars, self._as_patterns(), self.meter)
        search.cuts += [make_cut(bins, cut.values) for cut in self.cuts[:_BOUND_CUTS]]
        search.run(lambda _demands, _used: None)
        if search.method is Method.PATTERNS and search.plan is not None:
            layouts = [found.layout(number, tuple(counts.tolist())) for number, counts in search.plan]
            self._offer(tuple(layouts), Method.GUILLOTINE)
        self.low = min(max(self.low, search.low), self.value)
        self.cuts += search.cuts

    def _sets_expected(self) -> int:
        """Guess how many sets fit a sheet: choices of as many kinds as a sheet holds pieces, and one more."""
        pieces = sum(kind.demand for kind in self.problem.kinds)
        sheets = max(1, self.fewest + sum(step.copies for of in self._bars for step in of.steps if not step.bought))
        kinds = len(self.problem.kinds)
        return math.comb(kinds, min(kinds // 2, -(-pieces // sheets) + 1))

    def _as_patterns(self) -> tuple[tuple[int, np.ndarray[tuple[int], np.dtype[np.int64]]], ...] | None:
        """Give the best plan as counts of kinds on each sheet."""
        if not self.plans:
            return None
        kinds = len(self.problem.kinds)
        return tuple(
            (layout.number, np.bincount([piece.kind for piece in layout.pieces], minlength=kinds).astype(np.int64))
            for layout in self.plans[0]
        )
