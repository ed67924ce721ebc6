"""The cover model: patterns that together cover the demand, as a linear programme whose columns are made on demand.

Rows: every kind is covered (a shortfall is allowed at a price), and no more patterns of a class are used than there are bars.
Two questions are asked of it. *Cost*: which bars, bought in parts if need be, cover the demand cheapest? *Counts*: with so many
bars of each class, how little falls short? The answers' dual values, rounded to integers, are turned into exact bounds by
`duals`, so no proof rests on the solver's own arithmetic.

Source: column generation, Gilmore and Gomory 1961; solved by HiGHS.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

import highspy
import numpy as np
from numpy.typing import NDArray

from service.cutting.solver import new_solver

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.cutting.meter import Meter
    from service.cutting.patterns import Ints
    from service.cutting.sources import Pattern, Source

type Floats = NDArray[np.float64]
type Int32s = NDArray[np.int32]

_EPS: Final = 1e-7
_DUAL_TOP: Final = 1 << 30  # integer dual values lie below this: sums over 10,000 pieces stay far below 2**63


class Bins(NamedTuple):
    """A problem or what is left of one: kinds by falling size (length or area), and where patterns come from."""

    sizes: Ints
    demands: Ints
    source: Source


class Priced(NamedTuple):
    """Cost of bars in the linear programme: class, cost and copies of each price step."""

    classes: Ints
    costs: Floats
    copies: Floats


class Relaxed(NamedTuple):
    """An answer of the cover model."""

    value: float  # cost, or length of the shortfall
    uses: Floats  # how often each column is used
    cover_duals: Floats  # worth of one piece of each kind
    bar_duals: Floats  # worth of one bar of each class


def integer_duals(duals: Floats) -> tuple[Ints, float]:
    """Scale dual values to integers, none above `_DUAL_TOP`, and give the scale; only their ratios matter."""
    top = float(duals.max(initial=0.0))
    scale = _DUAL_TOP / top if top > 0.0 else 0.0
    return np.floor(np.maximum(duals, 0.0) * scale).astype(np.int64), scale


class _Entries(NamedTuple):
    """Entries of new columns: where each column starts, the rows, the values."""

    starts: Int32s
    rows: Int32s
    values: Floats


class Cover:
    """The linear programme over the patterns found so far; it grows as long as a better pattern exists."""

    def __init__(self, bins: Bins, meter: Meter, priced: Priced | None = None) -> None:
        """Lay one row a kind, one row a class, one shortfall column a kind; with prices, one column a price step."""
        self.bins = bins
        self.counts: list[Ints] = []  # the patterns, column by column
        self.classes: list[int] = []
        self._meter = meter
        self._kinds, self._steps = len(bins.sizes), 0 if priced is None else len(priced.classes)
        self._known: set[tuple[int, bytes]] = set()
        self._solver = new_solver()
        self._solver.setOptionValue("presolve", "off")
        self._lay_rows()
        kinds = np.arange(self._kinds, dtype=np.int32)
        dear = 1.0 if priced is None else _shortfall_cost(bins, priced)
        self._add((bins.sizes * dear).astype(np.float64), highspy.kHighsInf, _Entries(kinds, kinds, np.ones(self._kinds)))
        if priced is not None:
            steps = np.arange(self._steps, dtype=np.int32)
            rows = (self._kinds + priced.classes).astype(np.int32)
            self._add(priced.costs, priced.copies, _Entries(steps, rows, np.full(self._steps, -1.0)))

    def _lay_rows(self) -> None:
        classes = self.bins.source.classes_count
        rows = self._kinds + classes
        lower = np.concatenate((self.bins.demands.astype(float), np.full(classes, -highspy.kHighsInf)))
        upper = np.concatenate((np.full(self._kinds, highspy.kHighsInf), np.zeros(classes)))
        empty = np.zeros(rows, dtype=np.int32)
        self._solver.addRows(rows, lower, upper, 0, empty, np.zeros(0, dtype=np.int32), np.zeros(0))

    def _add(self, costs: Floats, upper: Floats | float, entries: _Entries) -> None:
        count = len(costs)
        uppers = np.broadcast_to(np.asarray(upper, dtype=float), (count,)).copy()
        self._solver.addCols(count, costs, np.zeros(count), uppers, len(entries.rows), *entries)

    def allow(self, bars: Ints) -> None:
        """Set how many bars of each class there are; for a cover without prices."""
        for number, count in enumerate(bars):
            self._solver.changeRowBounds(self._kinds + number, -highspy.kHighsInf, float(count))

    def add_patterns(self, patterns: Iterable[Pattern]) -> int:
        """Add those patterns that are not there yet; tell how many that were."""
        starts, rows, values = [], [], []
        length = 0
        for number, counts in patterns:
            key = (number, counts.tobytes())
            if key in self._known:
                continue
            self._known.add(key)
            used = np.nonzero(counts)[0]
            starts.append(length)
            rows += [used, np.array([self._kinds + number])]
            values += [counts[used], np.ones(1)]
            length += len(used) + 1
            self.counts.append(counts)
            self.classes.append(number)
        if starts:
            joined = np.concatenate(rows).astype(np.int32), np.concatenate(values).astype(float)
            self._add(np.zeros(len(starts)), highspy.kHighsInf, _Entries(np.array(starts, dtype=np.int32), *joined))
        return len(starts)

    def shrink(self, demands: Ints, bars: Ints) -> None:
        """Go on with what is left of the demand and of the bars; patterns that are now too much are put aside."""
        old, self.bins = self.bins, self.bins._replace(demands=demands)
        for kind in np.nonzero(old.demands != demands)[0].tolist():
            self._solver.changeRowBounds(kind, float(demands[kind]), highspy.kHighsInf)
        self.allow(bars)
        if self.counts:
            over = np.nonzero((np.array(self.counts) > demands).any(axis=1))[0]
            if len(over):
                columns = (over + self._kinds + self._steps).astype(np.int32)
                self._solver.changeColsBounds(len(over), columns, np.zeros(len(over)), np.zeros(len(over)))

    def solve(self) -> Relaxed:
        """Solve over the patterns there are."""
        self._solver.run()
        info, solution = self._solver.getInfo(), self._solver.getSolution()
        size = self._kinds + self.bins.source.classes_count
        self._meter.spend(200 + max(0, info.simplex_iteration_count) * (12 + size * 0.15))  # measured roughly
        duals = np.asarray(solution.row_dual)
        uses = np.asarray(solution.col_value)[self._kinds + self._steps :]
        return Relaxed(info.objective_function_value, uses, duals[: self._kinds], -duals[self._kinds :])

    def converge(self, *, until_covered: bool) -> Relaxed:
        """Add patterns until none improves the answer, or (with `until_covered`) nothing falls short any more."""
        while True:
            relaxed = self.solve()
            if until_covered and relaxed.value < _EPS:
                return relaxed
            if not self.add_patterns(self.better_patterns(relaxed)) or self._meter.is_over():
                return relaxed

    def better_patterns(self, relaxed: Relaxed) -> list[Pattern]:
        """Ask for patterns that are worth more than their class costs at these duals."""
        values, scale = integer_duals(relaxed.cover_duals)
        least = np.floor(relaxed.bar_duals * scale + _EPS * _DUAL_TOP).astype(np.int64)
        self._meter.spend(self.bins.source.effort_micros)
        return list(self.bins.source.better(self.bins.demands, values, least))


def _shortfall_cost(bins: Bins, priced: Priced) -> float:
    """Cost per unit of size that makes any shortfall dearer than any bar."""
    return float(priced.costs.max(initial=1.0) + 1.0) / float(bins.sizes.min(initial=1))
