"""A sheet whose cuts stop inside: where the pieces lie, what is left to keep, and the lines to be marked out."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING, NamedTuple

from service.cutting.cut_tree import Node, Rect, Saw, keeps
from service.cutting.plan import Direction, MarkLine

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from service.cutting.cut_tree import Room


def lie_flat(room: Room, pieces: list[Rect], off: Iterable[Room], saw: Saw) -> Node:
    """Give a tree of one level: the pieces where they lie, to cut now first, then the rests worth keeping, largest first.

    Args:
        room: the sheet between its trims.
        pieces: what is cut.
        off: defects; no rest reaches over them.
        saw: kerf and the smallest rest worth keeping.
    """
    ordered = sorted(pieces, key=lambda piece: (piece.after_measure, piece.y, piece.x))
    nodes = [Node(piece.x, piece.y, piece.width, piece.height, piece.tag, None, ()) for piece in ordered]
    taken = [_widened((piece.x, piece.y, piece.width, piece.height), saw.kerf) for piece in ordered]
    rests = [Node(*rest, -1, None, ()) for rest in _rests(room, [*taken, *off], saw)]
    return Node(*room, -1, None, (*nodes, *rests))


def _widened(box: Room, by: int) -> Room:
    x, y, width, height = box
    return x - by, y - by, width + 2 * by, height + 2 * by


def _rests(room: Room, taken: list[Room], saw: Saw) -> Iterator[Room]:
    """Take the largest free rectangle worth keeping, again and again."""
    free = [room]
    for box in taken:
        free = _without(free, box)
    while kept := [box for box in free if keeps(box[2], box[3], saw)]:
        largest = max(kept, key=lambda box: (box[2] * box[3], box))
        yield largest
        free = _without(free, _widened(largest, saw.kerf))


def _without(free: list[Room], box: Room) -> list[Room]:
    """Take a box out of the largest free rectangles; they may overlap each other."""
    parts = {part for room in free for part in _around(room, box)}
    return [one for one in sorted(parts) if not any(one != other and _holds(other, one) for other in parts)]


def _around(room: Room, box: Room) -> Iterator[Room]:
    x, y, width, height = room
    left, bottom, right, top = box[0], box[1], box[0] + box[2], box[1] + box[3]
    if left >= x + width or right <= x or bottom >= y + height or top <= y:
        yield room
        return
    sides = (
        (x, y, left - x, height),
        (right, y, x + width - right, height),
        (x, y, width, bottom - y),
        (x, top, width, y + height - top),
    )
    yield from (side for side in sides if side[2] > 0 and side[3] > 0)


def _holds(outer: Room, inner: Room) -> bool:
    across = outer[0] <= inner[0] and inner[0] + inner[2] <= outer[0] + outer[2]
    return across and outer[1] <= inner[1] and inner[1] + inner[3] <= outer[1] + outer[3]


class _Edge(NamedTuple):
    """Where a line starts and ends; two pieces a kerf apart ask for the same one."""

    start: int
    end: int


def mark_lines(pieces: Iterable[Rect], size: tuple[int, int], kerf: int) -> tuple[MarkLine, ...]:
    """Give the saw lines that free all pieces: those that pieces to cut now need first; what lies on the sheet's edge needs none.

    Args:
        pieces: where they lie, from the sheet's own corner.
        size: width and height of the sheet.
        kerf: what the saw takes.
    """
    wanted: defaultdict[tuple[bool, Direction, int], list[_Edge]] = defaultdict(list)
    for piece in pieces:
        for direction, at, edge in _edges(piece, size, kerf):
            wanted[piece.after_measure, direction, at].append(edge)
    lines: list[MarkLine] = []
    for (late, direction, at), edges in sorted(wanted.items()):
        now = wanted.get((False, direction, at), []) if late else []
        lines += [
            MarkLine(direction=direction, at_tenth_mm=at, from_tenth_mm=edge.start, to_tenth_mm=edge.end, after_measure=late)
            for edge in _joined(edges, kerf)
            if not any(done.start <= edge.start and edge.end <= done.end for done in _joined(now, kerf))
        ]
    return tuple(lines)


def _edges(piece: Rect, size: tuple[int, int], kerf: int) -> Iterator[tuple[Direction, int, _Edge]]:
    right, top = piece.x + piece.width, piece.y + piece.height
    along, up = _Edge(piece.x, right), _Edge(piece.y, top)
    if piece.y > 0:
        yield Direction.RIP, piece.y - kerf, along
    if top < size[1]:
        yield Direction.RIP, top, along
    if piece.x > 0:
        yield Direction.CROSS, piece.x - kerf, up
    if right < size[0]:
        yield Direction.CROSS, right, up


def _joined(edges: Iterable[_Edge], kerf: int) -> list[_Edge]:
    """Put edges together that overlap or lie no more than a kerf apart: no piece can reach in between."""
    lines: list[_Edge] = []
    for edge in sorted(edges):
        if lines and edge.start <= lines[-1].end + kerf:
            lines[-1] = _Edge(lines[-1].start, max(lines[-1].end, edge.end))
        else:
            lines.append(edge)
    return lines
