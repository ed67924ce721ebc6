"""Where the screws of a board go: as many as are billed, each on timber behind the board.

Counts and pitches: `knowledge/cladding.md`, section 3; edge distances: section 2. They are set round the edge, along studs in the
field and round each cut-out, half a space from a corner, and moved to the nearest timber where none lies behind.
"""

from __future__ import annotations

from itertools import count, product
from typing import TYPE_CHECKING, Final, NamedTuple

import msgspec

from service.bill.counting import panel_screws, ring_counts, ring_pitch, row_count, screw_grid
from service.frame import Axis, Layer

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.brief import Job
    from service.frame import Box, Frame, Panel
    from service.rules import RuleSet

EDGE_TENTH_MM: Final = {"mdf": 120, "plywood": 120, "plasterboard": 130, "cement_board": 150, "calcium_silicate": 150}
THICK_EDGE_TENTH_MM: Final = 150  # MDF and plywood of 18 and more
THICK_FROM_TENTH_MM: Final = 180
TIMBER_EDGE_TENTH_MM: Final = 60  # from the edge of the timber: cladding.md, section 2
BEARING_TENTH_MM: Final = 190  # least of a board on timber at a joint: the board's own edge distance comes first there
APART_TENTH_MM: Final = 250  # between two screws of one board: house choice, no two in one hole
STEP_TENTH_MM: Final = 50


class ScrewPlace(msgspec.Struct, frozen=True, kw_only=True):
    """A screw through the face of a board, frame axes, at the plane between board and timber."""

    x_tenth_mm: int
    y_tenth_mm: int
    z_tenth_mm: int


class _Area(NamedTuple):
    """A rectangle in the plane of a board."""

    u0: int
    u1: int
    v0: int
    v1: int

    def shrunk(self, by: int) -> _Area:
        """Smaller all round; what is narrower becomes its centre line."""
        u, v = min(by, (self.u1 - self.u0) // 2), min(by, (self.v1 - self.v0) // 2)
        return _Area(self.u0 + u, self.u1 - u, self.v0 + v, self.v1 - v)

    def within(self, other: _Area) -> _Area | None:
        """What both share; None where that is nothing."""
        both = _Area(max(self.u0, other.u0), min(self.u1, other.u1), max(self.v0, other.v0), min(self.v1, other.v1))
        return both if both.u0 <= both.u1 and both.v0 <= both.v1 else None

    def nearest(self, u: int, v: int) -> tuple[int, int]:
        """The point of it that lies nearest."""
        return min(max(u, self.u0), self.u1), min(max(v, self.v0), self.v1)

    def holds(self, u: int, v: int) -> bool:
        """Whether a point lies inside, not on the edge."""
        return self.u0 < u < self.u1 and self.v0 < v < self.v1


class _Plane(NamedTuple):
    """A board as its screws see it."""

    axes: tuple[str, str, str]  # across the board, along it, up it
    depth: int  # of the timber's face
    board: _Area
    holes: tuple[_Area, ...]
    timbers: tuple[_Area, ...]  # where a screw may go


def place_screws(panel: Panel, frame: Frame, job: Job, rules: RuleSet) -> tuple[ScrewPlace, ...]:
    """As many screws as `panel_screws` counts; fewer only where no timber behind the board has room for another."""
    if panel_screws(panel, job, rules) == 0 or not (plane := _plane(panel, frame, _edge(panel, job))):
        return ()
    placed: list[tuple[int, int]] = []
    for u, v in _wanted(panel, plane, job, rules):
        spot = _free(plane, u, v, placed)
        if spot is not None:
            placed.append(spot)
    return tuple(_place(plane, u, v) for u, v in sorted(placed, key=lambda one: (one[1], one[0])))


def _edge(panel: Panel, job: Job) -> int:
    """From the edge of a board to a screw; those that are not of the facing are of wood."""
    kind = job.board.board_kind if panel.layer is Layer.FACING else "mdf"
    thick = kind in {"mdf", "plywood"} and panel.thickness_tenth_mm >= THICK_FROM_TENTH_MM
    return THICK_EDGE_TENTH_MM if thick else EDGE_TENTH_MM.get(kind, 150)


def _plane(panel: Panel, frame: Frame, edge: int) -> _Plane | None:
    """The side of a board that most timber lies against; None where none does."""
    sides = {name: _side(panel.box, name) for name in ("x", "y", "z")}
    across = min(sides, key=lambda name: sides[name][1] - sides[name][0])
    along, up = {"x": ("y", "z"), "y": ("x", "z"), "z": ("x", "y")}[across]
    board = _Area(*sides[along], *sides[up])
    touching: dict[int, list[_Area]] = {}
    for member in frame.members:
        low, high = _side(member.box, across)
        for depth in {sides[across][0], sides[across][1]} & {low, high}:
            area = _Area(*_side(member.box, along), *_side(member.box, up))
            shared = area.within(board)
            if shared and shared.u0 < shared.u1 and shared.v0 < shared.v1 and (high == depth) == (depth == sides[across][0]):
                touching.setdefault(depth, []).append(shared)
    if not touching:
        return None
    depth = max(touching, key=lambda at: sum((one.u1 - one.u0) * (one.v1 - one.v0) for one in touching[at]))
    holes = tuple(
        _Area(
            board.u0 + one.x_tenth_mm, board.u0 + one.x_tenth_mm + one.width_tenth_mm,
            board.v0 + one.y_tenth_mm, board.v0 + one.y_tenth_mm + one.height_tenth_mm,
        )
        for one in panel.cut_outs
    )  # fmt: skip
    off_timber_edge = min(TIMBER_EDGE_TENTH_MM, BEARING_TENTH_MM - edge)
    good = (one.shrunk(off_timber_edge).within(board.shrunk(edge)) for one in touching[depth])
    timbers = tuple(one for one in good if one)
    keep_off = tuple(_Area(hole.u0 - edge, hole.u1 + edge, hole.v0 - edge, hole.v1 + edge) for hole in holes)
    return _Plane((across, along, up), depth, board, keep_off, timbers) if timbers else None


def _side(box: Box, axis: str) -> tuple[int, int]:
    return getattr(box, f"{axis}0_tenth_mm"), getattr(box, f"{axis}1_tenth_mm")


def _wanted(panel: Panel, plane: _Plane, job: Job, rules: RuleSet) -> Iterator[tuple[int, int]]:
    """Where the screws would be if timber lay everywhere."""
    board = plane.board
    if panel.layer in {Layer.LINING, Layer.BACKBOARD}:
        rows = row_count(panel, rules)
        lying = board.u1 - board.u0 >= board.v1 - board.v0
        for at, far in product(range(rows), (False, True)):
            if lying:
                yield board.u0 + (2 * at + 1) * (board.u1 - board.u0) // (2 * rows), board.v1 if far else board.v0
            else:
                yield board.u1 if far else board.u0, board.v0 + (2 * at + 1) * (board.v1 - board.v0) // (2 * rows)
        return
    pitch = ring_pitch(panel, job, rules)
    yield from _ring(board, ring_counts((panel.width_tenth_mm, panel.height_tenth_mm), pitch))
    for hole, cut in zip(plane.holes, panel.cut_outs, strict=True):
        yield from _ring(hole, ring_counts((cut.width_tenth_mm, cut.height_tenth_mm), pitch))
    columns, rows = screw_grid(panel, rules)
    for column, row in product(range(1, columns + 1), range(1, rows + 1)):
        yield (
            board.u0 + column * (board.u1 - board.u0) // (columns + 1),
            board.v0 + row * (board.v1 - board.v0) // (rows + 1),
        )


def _ring(area: _Area, counts: tuple[int, int]) -> Iterator[tuple[int, int]]:
    """Half a space from each corner, then equal spaces: none stands in a corner."""
    along, up = counts
    for at, v in product(range(along), (area.v0, area.v1)):
        yield area.u0 + (2 * at + 1) * (area.u1 - area.u0) // (2 * along), v
    for at, u in product(range(up), (area.u0, area.u1)):
        yield u, area.v0 + (2 * at + 1) * (area.v1 - area.v0) // (2 * up)


def _free(plane: _Plane, u: int, v: int, placed: list[tuple[int, int]]) -> tuple[int, int] | None:
    """The nearest place on timber that is off cut-outs and other screws."""
    best: tuple[int, int, int] | None = None
    for timber in plane.timbers:
        near = timber.nearest(u, v)
        if best and _far(near, (u, v)) >= best[0]:
            continue
        spot = next((one for one in _along(timber, *near) if _is_free(plane, one, placed)), None)
        if spot and (best is None or _far(spot, (u, v)) < best[0]):
            best = (_far(spot, (u, v)), *spot)
    return None if best is None else best[1:]


def _along(timber: _Area, u: int, v: int) -> Iterator[tuple[int, int]]:
    """A place, then those further and further off along the timber."""
    yield u, v
    lying = timber.u1 - timber.u0 >= timber.v1 - timber.v0
    low, high, at = (timber.u0, timber.u1, u) if lying else (timber.v0, timber.v1, v)
    for step in count(1):
        off = step * STEP_TENTH_MM
        if at - off < low and at + off > high:
            return
        for spot in (at - off, at + off):
            if low <= spot <= high:
                yield (spot, v) if lying else (u, spot)


def _is_free(plane: _Plane, spot: tuple[int, int], placed: list[tuple[int, int]]) -> bool:
    return not any(hole.holds(*spot) for hole in plane.holes) and all(_far(one, spot) >= APART_TENTH_MM**2 for one in placed)


def _far(one: tuple[int, int], other: tuple[int, int]) -> int:
    return (one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2


def _place(plane: _Plane, u: int, v: int) -> ScrewPlace:
    at = dict(zip(plane.axes, (plane.depth, u, v), strict=True))
    return ScrewPlace(x_tenth_mm=at[Axis.X], y_tenth_mm=at[Axis.Y], z_tenth_mm=at[Axis.Z])
