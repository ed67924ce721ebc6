"""The search from below: composition by composition, until one can be cut. For bars, and for sheets with a list of sets.

The relaxed cover gives a first weighting of the pieces. Compositions are listed from the least cost on; each is refused by a
weighting (a new one is learnt with every refusal), or cut by rounding, or decided over the list of all patterns that it can
use. The first that can be cut has the least cost, and the fewest bars bought at that cost; all that were cheaper are refused.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

import highspy
import numpy as np

from service.cutting.bounds import bought_bound, cost_bound, whole_bars_bound
from service.cutting.compositions import Cut, Window, list_compositions, make_cut, refuse
from service.cutting.cover import Bins, Cover, Priced, Relaxed, integer_duals
from service.cutting.packing import Packed, pack
from service.cutting.patterns import Ints
from service.cutting.plan import Method
from service.cutting.problem import Classes, cost_of
from service.cutting.solver import new_solver, run_integer
from service.cutting.sources import Pattern

if TYPE_CHECKING:
    from service.cutting.meter import Meter

_WINDOW_LIMIT: Final = 200_000  # compositions listed at once
_FIRST_WINDOW: Final = 500  # the first window is a 500th of the bound wide, each next one twice the last
_GUESSES: Final = 40  # compositions tried when there are too many to list


type Plan = tuple[Pattern, ...]
type Complete = Callable[[Ints, list[int]], Plan | None]  # a greedy plan for what is left of the demand when bars are used up


class Search:
    """One search. `plan` is the best so far, `low` the least (cost, number bought) that is not refused."""

    def __init__(self, bins: Bins, classes: Classes, plan: Plan | None, meter: Meter) -> None:
        """Start with a greedy plan, if there is one."""
        self.bins, self.classes, self.plan, self.meter = bins, classes, plan, meter
        self.by_size = make_cut(bins, bins.sizes)
        self.cuts: list[Cut] = [self.by_size]
        self.method = Method.FIRST_FIT
        self.low = (0, 0)
        self.impossible = False  # there are too few copies
        self.cover = Cover(bins, meter)  # asks for the shortfall of compositions; its patterns are everybody's pool
        self._open = False  # some composition was neither cut nor refused; `low` stays there

    @property
    def value(self) -> tuple[int, int]:
        """Cost and number bought of the best plan; more than any if there is none."""
        return (1 << 62, 0) if self.plan is None else cost_of(self.classes, self.plan)

    @property
    def done(self) -> bool:
        """Whether nothing cheaper, and nothing with fewer bars at that cost, is possible."""
        return self.plan is not None and self.low >= self.value

    @property
    def fewest(self) -> int:
        """Least number bought at the plan's cost that is not refused."""
        general = bought_bound(self.classes, self.cuts)
        return max(general, self.low[1]) if self.low[0] == self.value[0] else general

    def run(self, complete: Complete) -> None:
        """Search until done, impossible, or out of work."""
        self._relax(complete)
        self.bound()
        start, width = self.low[0], max(1, self.low[0] // _FIRST_WINDOW)
        everything = sum(of.costs(of.copies)[0] for of in self.classes)
        while not self.done and start <= min(self.value[0], everything) and not self.meter.is_over():
            high = min(start + width, self.value[0])
            window = list_compositions(self.classes, self.cuts, (start, high), _WINDOW_LIMIT)
            self.meter.spend(200)
            if window is not None:
                if not self._try_all(window):
                    return
                self._raise_low(*min((high + 1, 0), self.value))
                start, width = high + 1, max(1, width * 2)
            elif width > 0:
                width //= 8
            else:
                self._guess()
                return
        self.impossible = self.plan is None and not self._open and start > everything

    def bound(self, *, whole: bool = False) -> None:
        """Raise `low` to what the cuts say, of bars in parts or whole; that holds whatever was left open."""
        low = whole_bars_bound(self.classes, self.cuts[:2]) if whole else cost_bound(self.classes, self.cuts)
        self.low = max(self.low, (min(low, self.value[0]), 0))

    def _relax(self, complete: Complete) -> None:
        """Solve the relaxed cover with prices; learn its weighting, its patterns and the plan that rounding down gives."""
        steps = [(number, step) for number, of in enumerate(self.classes) for step in of.steps]
        priced = Priced(
            np.array([number for number, _ in steps], dtype=np.int64),
            np.array([float(step.cost) for _, step in steps]),
            np.array([float(step.copies) for _, step in steps]),
        )
        cover = Cover(self.bins, self.meter, priced)
        nothing = np.zeros(len(self.bins.sizes), dtype=np.int64)
        cover.add_patterns((k, self.bins.source.filled((k, nothing), self.bins.demands)) for k in range(len(self.classes)))
        cover.add_patterns(self.plan or ())
        relaxed = cover.converge(until_covered=False)
        weighting = integer_duals(relaxed.cover_duals)[0]
        if weighting.any():
            self.cuts.insert(0, make_cut(self.bins, weighting))  # compositions are listed by the first cut
        self._round_down(cover, relaxed, complete)
        self.cover.add_patterns(zip(cover.classes, cover.counts, strict=True))

    def _round_down(self, cover: Cover, relaxed: Relaxed, complete: Complete) -> None:
        """Use every pattern as often as whole, and cut the rest greedily."""
        demands, taken = self.bins.demands.copy(), []
        for column in np.nonzero(relaxed.uses >= 1.0)[0].tolist():
            for _ in range(int(relaxed.uses[column])):
                counts = np.minimum(cover.counts[column], demands)
                if counts.any():
                    taken.append((cover.classes[column], counts))
                    demands -= counts
        rest = complete(demands, [number for number, _ in taken])
        if rest is not None:
            self.offer((*taken, *rest))

    def offer(self, plan: Plan, method: Method = Method.PATTERNS) -> bool:
        """Keep a plan if it is better than the best so far; tell whether it is."""
        better = cost_of(self.classes, plan) < self.value
        if better:
            self.plan, self.method = plan, method
        return better

    def _raise_low(self, cost: int, bought: int) -> None:
        if not self._open:
            self.low = max(self.low, (cost, bought))

    def _try_all(self, window: Window) -> bool:
        """Try the compositions of a window in order, as far as they would improve the plan; tell whether all were tried."""
        while len(window.costs):
            at = (int(window.costs[0]), int(window.bought[0]))
            if at >= self.value:
                return True
            if self.meter.is_over():
                return False
            self._raise_low(*at)
            packed = self._pack(window.bars[0])
            if packed.cut is not None:
                window = refuse(window, [packed.cut])
                continue
            self._open |= not packed.known
            window = Window(window.bars[1:], window.costs[1:], window.bought[1:])
        return True

    def _pack(self, bars: Ints) -> Packed:
        packed = pack(self.bins, bars, self.cuts, self.cover, meter=self.meter)
        if packed.cut is not None:
            self.cuts.append(packed.cut)
        if packed.patterns is not None:
            self.offer(packed.patterns)
        return packed

    def _guess(self) -> None:
        """Where compositions are too many to list: let an integer programme pick the cheapest that no cut refuses."""
        self.bound(whole=True)
        for _ in range(_GUESSES):
            bars = self._cheapest()
            if bars is None or self.done or self.meter.is_over():
                return
            if self._pack(bars).cut is None:
                return
            self._raise_low(whole_bars_bound(self.classes, self.cuts[-1:]), 0)

    def _cheapest(self) -> Ints | None:
        """Pick a composition of least cost, then least number bought, that no cut refuses. Its cost is no proof of anything."""
        steps = [(number, step) for number, of in enumerate(self.classes) for step in of.steps]
        model = highspy.HighsLp()
        model.num_col_, model.num_row_ = len(steps), len(self.cuts)
        model.col_cost_ = np.array([step.cost + step.bought / 1024 for _, step in steps])
        model.col_lower_ = np.zeros(len(steps))
        model.col_upper_ = np.array([float(step.copies) for _, step in steps])
        model.row_lower_ = np.array([1.0 for _ in self.cuts])
        model.row_upper_ = np.full(len(self.cuts), highspy.kHighsInf)
        numbers = np.array([number for number, _ in steps])
        matrix = np.array([cut.worths[numbers] / cut.needed for cut in self.cuts])
        model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
        model.a_matrix_.start_ = np.arange(len(self.cuts) + 1, dtype=np.int32) * len(steps)
        model.a_matrix_.index_ = np.tile(np.arange(len(steps), dtype=np.int32), len(self.cuts))
        model.a_matrix_.value_ = matrix.ravel()
        model.integrality_ = [highspy.HighsVarType.kInteger] * len(steps)
        solver = new_solver()
        solver.passModel(model)
        run_integer(solver, len(steps) * len(self.cuts), self.meter)
        values = np.round(np.asarray(solver.getSolution().col_value)).astype(np.int64)
        if len(values) != len(steps):
            return None
        return np.bincount(numbers, weights=values, minlength=len(self.classes)).astype(np.int64)
