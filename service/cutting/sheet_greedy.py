"""Greedy sheets: one sheet after another is filled piece by piece, always cut edge to edge. There at once, with no solver."""

from __future__ import annotations

import math
from itertools import product
from typing import TYPE_CHECKING, Final, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from service.cutting.meter import Meter
    from service.cutting.sheet_problem import Box, SheetClass, SheetKind, SheetProblem


class Placed(NamedTuple):
    """One piece of a kind on a sheet, in units."""

    kind: int
    x: int
    y: int
    width: int
    height: int


class Layout(NamedTuple):
    """One sheet of a class with its pieces."""

    number: int  # of the class
    pieces: tuple[Placed, ...]


_SHARE: Final = 0.5  # of the work, for plans beyond the first
_MOST_FAVOURITES: Final = 16  # classes that greedy plans prefer in turn; more would take longer than they help

type Order = tuple[int, ...]  # kinds in the order in which they are tried


def greedy_plans(problem: SheetProblem, meter: Meter) -> list[tuple[Layout, ...]]:
    """Give several greedy plans; none if none of them places every piece.

    They differ in the order of the pieces, in how a rest is split, and in the class that is preferred. Once there is a plan,
    no more are made than a part of the work allows.
    """
    favourites = (*_favourites(problem), -1) if len(problem.classes) > 1 else (-1,)
    ways = [_Way(*way) for way in product(_orders(problem), (True, False), favourites)]
    plans: list[tuple[Layout, ...]] = []
    for way in ways:
        plan = _plan(problem, way, meter, needed=not plans)
        if plan is not None:
            plans.append(plan)
        if plans and meter.is_over(_SHARE):
            break
    return plans


def _favourites(problem: SheetProblem) -> list[int]:
    """The classes that can hold most, in the order that they stand in; nothing needs more sheets than there are pieces."""
    pieces = sum(kind.demand for kind in problem.kinds)
    held = [min(of.bars.copies, pieces) * of.width * of.height for of in problem.classes]
    return sorted(sorted(range(len(held)), key=lambda k: -held[k])[:_MOST_FAVOURITES])


def sheets_cost(problem: SheetProblem, plan: Iterable[Layout]) -> tuple[int, int]:
    """Cost and number bought of a plan."""
    used = [0] * len(problem.classes)
    for layout in plan:
        used[layout.number] += 1
    pairs = [of.bars.costs(count) for of, count in zip(problem.classes, used, strict=True)]
    return sum(cost for cost, _ in pairs), sum(bought for _, bought in pairs)


def _orders(problem: SheetProblem) -> tuple[Order, ...]:
    """Largest area, longest side, widest and tallest first."""
    kinds = problem.kinds
    keys = (
        lambda k: (-kinds[k].width * kinds[k].height, k),
        lambda k: (-max(kinds[k].width, kinds[k].height), k),
        lambda k: (-kinds[k].width, k),
        lambda k: (-kinds[k].height, k),
    )
    return tuple(dict.fromkeys(tuple(sorted(range(len(kinds)), key=key)) for key in keys))


class _Way(NamedTuple):
    """One way of filling sheets."""

    order: Order
    wide: bool  # a rest is split so that the part beside the piece is as high as the piece, else as high as the rest
    favourite: int  # class taken as long as it lasts; -1: the cheapest for what it holds


def _plan(problem: SheetProblem, way: _Way, meter: Meter, *, needed: bool) -> tuple[Layout, ...] | None:
    """Make one plan; given up when the work or the time is over, unless it is needed."""
    left = [kind.demand for kind in problem.kinds]
    used = [0] * len(problem.classes)
    plan: list[Layout] = []
    while any(left):
        layout = _next_sheet(problem, way, left, used)
        if layout is None or (not needed and meter.is_over(_SHARE)):
            return None
        meter.spend(len(used) * (2.5 * len(left) + 1.5 * math.sqrt(len(layout.pieces)) * len(layout.pieces)))
        held = [0] * len(left)
        for piece in layout.pieces:
            held[piece.kind] += 1
        copies = problem.classes[layout.number].bars.copies - used[layout.number]
        times = min(copies, *(count // part for count, part in zip(left, held, strict=True) if part))
        plan += [layout] * times
        used[layout.number] += times
        left = [count - part * times for count, part in zip(left, held, strict=True)]
    return tuple(plan)


def _next_sheet(problem: SheetProblem, way: _Way, left: list[int], used: list[int]) -> Layout | None:
    """Fill one sheet of every class that has one left; choose the favourite, else the cheapest for what it holds."""
    best: tuple[tuple[float, int], Layout] | None = None
    numbers = sorted(range(len(problem.classes)), key=lambda number: number != way.favourite)
    for number in numbers:
        of = problem.classes[number]
        if used[number] >= of.bars.copies:
            continue
        pieces = fill_sheet(problem.kinds, of, way.order, left, wide=way.wide)
        if pieces and number == way.favourite:
            return Layout(number, pieces)
        if pieces:
            price = of.bars.costs(used[number] + 1)[0] - of.bars.costs(used[number])[0]
            area = sum(piece.width * piece.height for piece in pieces)
            rank = (price / area, number)
            if best is None or rank < best[0]:
                best = (rank, Layout(number, pieces))
    return None if best is None else best[1]


def fill_sheet(kinds: tuple[SheetKind, ...], of: SheetClass, order: Order, left: list[int], *, wide: bool) -> tuple[Placed, ...]:
    """Fill one sheet: every kind in turn, as often as it goes, each time into the rest that it fills best."""
    rests = free_boxes(of)
    placed: list[Placed] = []
    for kind in order:
        for _ in range(left[kind]):
            choice = min(_places(kinds[kind], rests), default=None)
            if choice is None:
                break
            _, at, width, height = choice
            x, y, room_width, room_height = rests.pop(at)
            placed.append(Placed(kind, x, y, width, height))
            rests += _split((x, y, room_width, room_height), width, height, wide=wide)
    return tuple(placed)


def _places(kind: SheetKind, rests: list[Box]) -> Iterator[tuple[tuple[int, int], int, int, int]]:
    """Where a piece would go: how tightly, into which rest, lying how."""
    for at, (_, _, room_width, room_height) in enumerate(rests):
        for width, height in kind.ways():
            if width <= room_width and height <= room_height:
                spare = (room_width - width, room_height - height)
                yield (min(spare), max(spare)), at, width, height


def _split(room: Box, width: int, height: int, *, wide: bool) -> list[Box]:
    """Cut a rest around the piece in its corner: one rest beside it, one above it."""
    x, y, room_width, room_height = room
    beside_high, above_wide = (height, room_width) if wide else (room_height, width)
    beside = (x + width, y, room_width - width, beside_high)
    above = (x, y + height, above_wide, room_height - height)
    return [box for box in (beside, above) if box[2] > 0 and box[3] > 0]


def free_boxes(of: SheetClass) -> list[Box]:
    """Cut a sheet edge to edge around its defects: what is left to be used."""
    return _around((0, 0, of.width, of.height), of.defects)


def _around(room: Box, defects: tuple[Box, ...]) -> list[Box]:
    x, y, width, height = room
    hits = [d for d in defects if d[0] < x + width and d[0] + d[2] > x and d[1] < y + height and d[1] + d[3] > y]
    if not hits:
        return [room] if width > 0 and height > 0 else []
    left, bottom, across, up = hits[0]
    right, top = left + across, bottom + up
    low, high = max(y, bottom), min(y + height, top)
    parts = (
        (x, y, width, low - y),
        (x, high, width, y + height - high),
        (x, low, left - x, high - low),
        (right, low, x + width - right, high - low),
    )
    return [box for part in parts if part[2] > 0 and part[3] > 0 for box in _around(part, defects)]
