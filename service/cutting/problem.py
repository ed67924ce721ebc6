"""The bare problem behind a bar job: kinds of piece, classes of bar, in whole units without kerf or trim.

A bar of length L less trim t takes pieces l1..lk with k-1 kerfs w: sum(l) + (k-1) w <= L - t. Adding w to every piece and to
the bar gives sum(l + w) <= L - t + w, a plain knapsack. All sizes are divided by their greatest common divisor.
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from typing import TYPE_CHECKING, Final, NamedTuple

from service.cutting.pieces import BarAim, BarJob, BarStock

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.cutting.sources import Pattern


_MOST_CELLS: Final = 20_000_000


class Step(NamedTuple):
    """Bars of one stock entry: what one costs under the aim, and how many there are."""

    cost: int  # minor units or tenths of a millimetre, as the aim says
    bought: int  # 1: bought, 0: on hand
    stock_index: int
    copies: int


class BarClass(NamedTuple):
    """Bars of one capacity, cheapest first; n bars of a class always mean its n cheapest."""

    capacity: int
    steps: tuple[Step, ...]

    @property
    def copies(self) -> int:
        """How many bars of this capacity there are."""
        return sum(step.copies for step in self.steps)

    def costs(self, bars_count: int) -> tuple[int, int]:
        """Cost and number bought of the n cheapest bars."""
        cost = bought = 0
        for step in self.steps:
            taken = min(bars_count, step.copies)
            cost += taken * step.cost
            bought += taken * step.bought
            bars_count -= taken
        return cost, bought


type Classes = tuple[BarClass, ...]


class BarProblem(NamedTuple):
    """Kinds by falling size, classes by falling capacity."""

    sizes: tuple[int, ...]  # in units, kerf included, as all that follows
    demands: tuple[int, ...]
    classes: tuple[BarClass, ...]
    kerf: int  # kerf in units, rounded down; for leftovers only
    unit_tenth_mm: int

    @property
    def cells(self) -> int:
        """Cells of a knapsack table."""
        return len(self.sizes) * self.classes[0].capacity if self.classes else 0

    @property
    def tables_fit(self) -> bool:
        """Whether knapsack tables stay below some 160 MB."""
        return self.cells <= _MOST_CELLS


def cost_of(classes: Classes, plan: Iterable[Pattern]) -> tuple[int, int]:
    """Cost and number bought of a plan, bars taken cheapest first in each class."""
    used = Counter(number for number, _ in plan)
    pairs = [of.costs(used[number]) for number, of in enumerate(classes)]
    return sum(cost for cost, _ in pairs), sum(bought for _, bought in pairs)


def state_bars(job: BarJob) -> BarProblem:
    """Reduce a sound job to its bare problem. Equal lengths are one kind; bars that take no piece are left out."""
    demand: Counter[int] = Counter()
    for piece in job.pieces:
        demand[piece.length_tenth_mm + job.kerf_tenth_mm] += piece.pieces_count
    unit = math.gcd(*demand) if demand else 1
    padded = sorted(demand, reverse=True)
    total = sum(demand.values())
    return BarProblem(
        sizes=tuple(size // unit for size in padded),
        demands=tuple(demand[size] for size in padded),
        classes=_classes(job, unit, padded[-1] if padded else 1, total),
        kerf=job.kerf_tenth_mm // unit,
        unit_tenth_mm=unit,
    )


def usable_tenth_mm(stock: BarStock, job: BarJob) -> int:
    """Length of a bar between its end trims."""
    return stock.length_tenth_mm - job.end_trim_tenth_mm


def _classes(job: BarJob, unit: int, least_tenth_mm: int, total: int) -> tuple[BarClass, ...]:
    by_capacity: defaultdict[int, list[Step]] = defaultdict(list)
    for index, stock in enumerate(job.stock):
        capacity = usable_tenth_mm(stock, job) + job.kerf_tenth_mm
        if capacity < least_tenth_mm or stock.copies_count == 0:
            continue
        length = 0 if stock.offcut else stock.length_tenth_mm
        step = Step(
            cost=stock.cost_minor if job.aim is BarAim.COST else length,
            bought=0 if stock.offcut else 1,
            stock_index=index,
            copies=total if stock.copies_count is None else min(stock.copies_count, total),
        )
        by_capacity[capacity // unit].append(step)
    return tuple(
        BarClass(capacity=capacity, steps=tuple(_cheapest_first(steps, job)))
        for capacity, steps in sorted(by_capacity.items(), reverse=True)
    )


def _cheapest_first(steps: list[Step], job: BarJob) -> list[Step]:
    """Order by cost, then on hand before bought, then what the entry itself says: never by its place in the job."""

    def key(step: Step) -> tuple[int, int, int, int, str, int]:
        stock = job.stock[step.stock_index]
        return (step.cost, step.bought, stock.length_tenth_mm, stock.cost_minor, stock.code, step.copies)

    return sorted(steps, key=key)


def without(problem: BarProblem, demands: Iterable[int], used: list[int]) -> BarProblem:
    """Give what is left of a problem when only these demands remain and bars of these classes are used up."""
    counts = Counter(used)
    return problem._replace(
        demands=tuple(int(demand) for demand in demands),
        classes=tuple(_used_up(of, counts[number]) for number, of in enumerate(problem.classes)),
    )


def _used_up(of: BarClass, bars_count: int) -> BarClass:
    """Take the cheapest bars out of a class."""
    steps = []
    for step in of.steps:
        gone = min(bars_count, step.copies)
        bars_count -= gone
        steps.append(step._replace(copies=step.copies - gone))
    return of._replace(steps=tuple(steps))
