"""The order in which boxes are painted, furthest first, so that nearer ones cover them (`drawings.md`, section 4).

Seen along one direction, a box is behind another where an axis parts them and the other lies on the near side of it. Boxes
that share no paper need no order. Cycles are broken by cutting the longest of them at a face of another.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

import msgspec

from service.drawings.solids import Side

if TYPE_CHECKING:
    from collections.abc import Sequence

    from service.drawings.primitives import PointMm
    from service.drawings.solids import Solid

MOST_CUTS_COUNT: Final = 50
TOUCH: Final = 1e-6
AXES: Final = ("x", "y", "z")


class Projection(NamedTuple):
    """Where one tenth of a millimetre along each axis goes on the paper, and which end of each axis is nearer.

    `nearer` is 1 where the high end of an axis is nearer to the eye, -1 where the low end is.
    """

    x_mm: PointMm
    y_mm: PointMm
    z_mm: PointMm
    nearer: tuple[int, int, int]

    def point_mm(self, x_tenth_mm: int, y_tenth_mm: int, z_tenth_mm: int) -> PointMm:
        """A corner on the paper."""
        return (
            self.x_mm[0] * x_tenth_mm + self.y_mm[0] * y_tenth_mm + self.z_mm[0] * z_tenth_mm,
            self.x_mm[1] * x_tenth_mm + self.y_mm[1] * y_tenth_mm + self.z_mm[1] * z_tenth_mm,
        )


class _Spread(NamedTuple):
    """Extent of a box across each of the three projected axes."""

    low: tuple[float, ...]
    high: tuple[float, ...]


def paint_order(solids: Sequence[Solid], view: Projection) -> tuple[Solid, ...]:
    """The boxes, furthest first; those that block each other in a ring come back in pieces.

    Boxes must not share volume; touching is fine. After 50 cuts the rest is painted in the order of the depth of its middle.
    """
    left = sorted(solids, key=_place)
    for _cut in range(MOST_CUTS_COUNT):
        order, stuck = _sorted_out(left, view)
        if not stuck:
            return tuple(order)
        pieces = _cut_one(stuck)
        if pieces is None:
            break
        left = sorted([*(one for one in left if one is not pieces[0]), *pieces[1:]], key=_place)
    order, stuck = _sorted_out(left, view)
    return (*order, *sorted(stuck, key=lambda one: (_depth(one, view), _place(one))))


def _place(solid: Solid) -> tuple[object, ...]:
    at = solid.box
    return (
        solid.mark, at.x0_tenth_mm, at.y0_tenth_mm, at.z0_tenth_mm, at.x1_tenth_mm, at.y1_tenth_mm, at.z1_tenth_mm,
    )  # fmt: skip


def _sorted_out(solids: Sequence[Solid], view: Projection) -> tuple[list[Solid], list[Solid]]:
    """Topological order, and what is left in rings."""
    count = len(solids)
    spreads = [_spread(one, view) for one in solids]
    ranges = [_ranges(one) for one in solids]
    behind: list[list[int]] = [[] for _each in range(count)]
    waiting = [0] * count
    for first in range(count):
        for second in range(first):
            if not _share_paper(spreads[first], spreads[second]):
                continue
            order = _nearer(ranges[first], ranges[second], view.nearer)
            far, near = (second, first) if order > 0 else (first, second)
            if order:
                behind[far].append(near)
                waiting[near] += 1
    ready = [place for place in range(count) if not waiting[place]]
    found: list[Solid] = []
    for place in ready:  # grows while it is read
        found.append(solids[place])
        for near in behind[place]:
            waiting[near] -= 1
            if not waiting[near]:
                ready.append(near)
    return found, [solids[place] for place in range(count) if waiting[place]]


def _ranges(solid: Solid) -> tuple[tuple[int, int], ...]:
    at = solid.box
    return ((at.x0_tenth_mm, at.x1_tenth_mm), (at.y0_tenth_mm, at.y1_tenth_mm), (at.z0_tenth_mm, at.z1_tenth_mm))


def _spread(solid: Solid, view: Projection) -> _Spread:
    lows, highs = [], []
    for axis in (view.x_mm, view.y_mm, view.z_mm):
        normal = (-axis[1], axis[0])
        low = high = 0.0
        for (start, end), step in zip(_ranges(solid), (view.x_mm, view.y_mm, view.z_mm), strict=True):
            each = normal[0] * step[0] + normal[1] * step[1]
            low += min(each * start, each * end)
            high += max(each * start, each * end)
        lows.append(low)
        highs.append(high)
    return _Spread(tuple(lows), tuple(highs))


def _share_paper(first: _Spread, second: _Spread) -> bool:
    return all(
        a_low < b_high - TOUCH and b_low < a_high - TOUCH
        for a_low, a_high, b_low, b_high in zip(first.low, first.high, second.low, second.high, strict=True)
    )


def _nearer(first: tuple[tuple[int, int], ...], second: tuple[tuple[int, int], ...], nearer: tuple[int, int, int]) -> int:
    """1: the first is nearer; -1: the second is; 0: they share volume, and no order helps."""
    for one, other, sign in zip(first, second, nearer, strict=True):
        if one[0] >= other[1]:
            return sign
        if other[0] >= one[1]:
            return -sign
    return 0


def _cut_one(stuck: Sequence[Solid]) -> tuple[Solid, Solid, Solid] | None:
    """The longest box that a face of another crosses, and its two pieces."""
    for solid in sorted(stuck, key=lambda one: -max(high - low for low, high in _ranges(one))):
        own = _ranges(solid)
        axis = max(range(3), key=lambda place: own[place][1] - own[place][0])
        low, high = own[axis]
        faces = sorted({edge for other in stuck for edge in _ranges(other)[axis] if low < edge < high})
        if faces:
            middle = min(faces, key=lambda edge: abs(2 * edge - low - high))
            return (solid, *_halves(solid, axis, middle))
    return None


def _halves(solid: Solid, axis: int, at: int) -> tuple[Solid, Solid]:
    name = AXES[axis]
    lower = msgspec.structs.replace(solid.box, **{f"{name}1_tenth_mm": at})
    upper = msgspec.structs.replace(solid.box, **{f"{name}0_tenth_mm": at})
    sides = {"x": (Side.RIGHT, Side.LEFT), "z": (Side.HIGH, Side.LOW)}.get(name)
    joined = solid.joined
    return (
        msgspec.structs.replace(solid, box=lower, joined=joined | {sides[0]} if sides else joined),
        msgspec.structs.replace(solid, box=upper, joined=joined | {sides[1]} if sides else joined),
    )


def _depth(solid: Solid, view: Projection) -> float:
    """How near the middle of a box is, in an order of its own."""
    return sum(sign * (low + high) for (low, high), sign in zip(_ranges(solid), view.nearer, strict=True))
