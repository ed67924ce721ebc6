"""The bare problem behind a sheet job: kinds of rectangle, classes of sheet, without kerf or trim.

As with bars, adding the kerf to every side of a piece and to both sides of the sheet (less its edge trims) turns "neighbours are
a kerf apart, a cut may run off the edge" into plain packing edge to edge. All sizes are divided by their greatest common divisor.
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from typing import TYPE_CHECKING, NamedTuple

from service.cutting.problem import BarClass, Step

if TYPE_CHECKING:
    from service.cutting.pieces import Defect, SheetJob, SheetPiece, SheetStock

type Box = tuple[int, int, int, int]  # x, y, width, height


class SheetKind(NamedTuple):
    """Pieces of one size; one that may be turned lies with its longer side along x."""

    width: int
    height: int
    rotatable: bool
    demand: int

    def ways(self) -> tuple[tuple[int, int], ...]:
        """Sizes as the piece may lie: straight first."""
        straight = (self.width, self.height)
        return (straight, straight[::-1]) if self.rotatable and self.width != self.height else (straight,)


class SheetClass(NamedTuple):
    """Sheets of one size and with the same defects; `bars` says what they cost, as for bars of one capacity."""

    width: int
    height: int
    defects: tuple[Box, ...]
    bars: BarClass

    def holds(self, width: int, height: int) -> bool:
        """Whether a box fits, defects apart."""
        return width <= self.width and height <= self.height


class SheetProblem(NamedTuple):
    """Kinds and classes, largest first."""

    kinds: tuple[SheetKind, ...]
    classes: tuple[SheetClass, ...]
    unit_tenth_mm: int


def kind_key(piece: SheetPiece) -> tuple[int, int, bool]:
    """What makes pieces one kind."""
    width, height = piece.width_tenth_mm, piece.height_tenth_mm
    if piece.rotatable and height > width:
        width, height = height, width
    return width, height, piece.rotatable and width != height


def state_sheets(job: SheetJob) -> SheetProblem:
    """Reduce a sound job to its bare problem."""
    demand: Counter[tuple[int, int, bool]] = Counter()
    for piece in job.pieces:
        demand[kind_key(piece)] += piece.pieces_count
    kerf = job.kerf_tenth_mm
    unit = math.gcd(*(side + kerf for width, height, _ in demand for side in (width, height))) if demand else 1
    kinds = [
        SheetKind(width=(w + kerf) // unit, height=(h + kerf) // unit, rotatable=turn, demand=count)
        for (w, h, turn), count in demand.items()
    ]
    order = sorted(kinds, key=lambda kind: (-kind.width * kind.height, -kind.width, kind.rotatable))
    return SheetProblem(kinds=tuple(order), classes=_classes(job, unit, sum(demand.values())), unit_tenth_mm=unit)


def _classes(job: SheetJob, unit: int, total: int) -> tuple[SheetClass, ...]:
    by_size: defaultdict[tuple[int, int, tuple[Box, ...]], list[Step]] = defaultdict(list)
    lost = 2 * job.edge_trim_tenth_mm - job.kerf_tenth_mm
    for index, stock in enumerate(job.stock):
        width, height = (stock.width_tenth_mm - lost) // unit, (stock.height_tenth_mm - lost) // unit
        copies = total if stock.copies_count is None else min(stock.copies_count, total)
        if copies and width > 0 and height > 0:
            step = Step(cost=stock.cost_minor, bought=0 if stock.offcut else 1, stock_index=index, copies=copies)
            by_size[width, height, _defects(stock, job, unit)].append(step)
    largest_first = sorted(by_size.items(), key=lambda item: (-item[0][0] * item[0][1], item[0]))
    return tuple(
        SheetClass(
            width=width, height=height, defects=defects,
            bars=BarClass(capacity=width * height, steps=tuple(_cheapest_first(steps, job))),
        )
        for (width, height, defects), steps in largest_first
    )  # fmt: skip


def _cheapest_first(steps: list[Step], job: SheetJob) -> list[Step]:
    def key(step: Step) -> tuple[int, int, int, int, str, int]:
        stock: SheetStock = job.stock[step.stock_index]
        return (step.cost, step.bought, stock.width_tenth_mm, stock.height_tenth_mm, stock.code, step.copies)

    return sorted(steps, key=key)


def _defects(stock: SheetStock, job: SheetJob, unit: int) -> tuple[Box, ...]:
    """Defects in units from the corner of the trimmed sheet, each a little too large rather than too small."""
    return tuple(sorted(_defect(defect, job, unit) for defect in stock.defects))


def _defect(defect: Defect, job: SheetJob, unit: int) -> Box:
    left, right = _span(defect.x_tenth_mm, defect.width_tenth_mm, job, unit)
    bottom, top = _span(defect.y_tenth_mm, defect.height_tenth_mm, job, unit)
    return left, bottom, right - left, top - bottom


def _span(at: int, size: int, job: SheetJob, unit: int) -> tuple[int, int]:
    """A padded piece from x to x + w + kerf keeps off a defect at a..b if x + w <= a or x >= b: so a is moved on by the kerf."""
    start = at - job.edge_trim_tenth_mm
    end = start + size
    padded = min(start + job.kerf_tenth_mm, end - 1)
    low, high = max(0, padded // unit), max(0, -(-end // unit))
    return low, max(high, low + 1) if high > 0 else low
