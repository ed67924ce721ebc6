"""The cut tree: how a layout is sawn edge to edge, found from the pieces alone, with the pieces pushed together.

A node is cut along one direction into strips, every strip along the other direction, and so on. Strips are put in the order of
sawing: to cut now before after measuring, large before small, so that equal ones lie together and need one stop.
"""

from __future__ import annotations

from typing import NamedTuple

from service.cutting.pieces import FirstCut
from service.cutting.plan import Direction

type Room = tuple[int, int, int, int]  # x, y, width, height


class Rect(NamedTuple):
    """A piece on a sheet, in tenths of a millimetre; `tag` says which."""

    x: int
    y: int
    width: int
    height: int
    tag: int
    after_measure: bool = False


class Node(NamedTuple):
    """A part of a sheet: a piece (`tag` >= 0), a part with strips, or a rest (neither)."""

    x: int
    y: int
    width: int
    height: int
    tag: int
    direction: Direction | None
    strips: tuple[Node, ...]


class Saw(NamedTuple):
    """What the saw and the shop ask of a tree."""

    kerf: int
    least: tuple[int, int]  # sides of the smallest rest worth keeping, larger first
    first_cut: FirstCut
    fixed: bool  # pieces keep their places: there are defects between them


class NotGuillotineError(Exception):
    """The pieces cannot be sawn apart edge to edge."""


def grow_tree(room: Room, pieces: list[Rect], saw: Saw) -> Node:
    """Find a cut tree for pieces in a room.

    Raises:
        NotGuillotineError: there is none, or none that starts with the cut asked for.
    """
    asked = {FirstCut.RIP: Direction.RIP, FirstCut.CROSS: Direction.CROSS}.get(saw.first_cut)
    if asked is None:
        return _grow(room, pieces, saw, tuple(Direction))
    if _option(room, pieces, saw, asked) is not None:
        return _grow(room, pieces, saw, (asked,))
    tree = _grow(room, pieces, saw, tuple(Direction))
    if _cuts_along(tree, asked):
        raise NotGuillotineError
    return tree


def _cuts_along(node: Node, direction: Direction) -> bool:
    """Tell whether a tree has any cut along a direction; where it has none, there is no first one to ask for."""
    return node.direction is direction or any(_cuts_along(strip, direction) for strip in node.strips)


class _Option(NamedTuple):
    """One way to cut a part along one direction."""

    direction: Direction
    groups: list[list[Rect]]
    lead: int  # free room before the first strip, if places are fixed
    rest: int  # free room after the last


def _grow(room: Room, pieces: list[Rect], saw: Saw, allowed: tuple[Direction, ...]) -> Node:
    x, y, width, height = room
    if len(pieces) == 1 and (pieces[0].width, pieces[0].height) == (width, height):
        return Node(x, y, width, height, pieces[0].tag, None, ())
    options = [option for direction in allowed if (option := _option(room, pieces, saw, direction)) is not None]
    if not options:
        raise NotGuillotineError
    best = max(options, key=lambda option: _merit(option, room, saw))
    return _cut(room, best, saw)


def _option(room: Room, pieces: list[Rect], saw: Saw, direction: Direction) -> _Option | None:
    """Part the pieces along a direction; None if no cut along it does anything."""
    rip = direction is Direction.RIP
    groups: list[list[Rect]] = []
    end = 0
    for piece in sorted(pieces, key=lambda p: (p.y, p.x) if rip else (p.x, p.y)):
        low, high = _span(piece, rip=rip)
        if groups and low < end + saw.kerf:
            groups[-1].append(piece)
        else:
            groups.append([piece])
        end = max(end, high)
    start, size = (room[1], room[3]) if rip else (room[0], room[2])
    spans = [_span_of(group, rip=rip) for group in groups]
    lead = spans[0][0] - start if saw.fixed else 0
    held = end - start if saw.fixed else sum(high - low for low, high in spans) + (len(spans) - 1) * saw.kerf
    rest = size - held
    return _Option(direction, groups, lead, rest) if len(groups) > 1 or rest > 0 or lead > 0 else None


def _span(piece: Rect, *, rip: bool) -> tuple[int, int]:
    return (piece.y, piece.y + piece.height) if rip else (piece.x, piece.x + piece.width)


def _span_of(group: list[Rect], *, rip: bool) -> tuple[int, int]:
    spans = [_span(piece, rip=rip) for piece in group]
    return min(low for low, _ in spans), max(high for _, high in spans)


def keeps(width: int, height: int, saw: Saw) -> bool:
    """Whether a rest is worth keeping, either way round."""
    return min(width, height) > 0 and max(width, height) >= saw.least[0] and min(width, height) >= saw.least[1]


def _merit(option: _Option, room: Room, saw: Saw) -> tuple[int, int, bool]:
    """Prefer the cut that leaves the largest rest worth keeping, then the one that parts most, then the rip."""
    rip = option.direction is Direction.RIP
    width, height = (room[2], option.rest - saw.kerf) if rip else (option.rest - saw.kerf, room[3])
    return (width * height if keeps(width, height, saw) else 0, len(option.groups), rip)


def _cut(room: Room, option: _Option, saw: Saw) -> Node:
    """Cut a room into strips, push them together unless they are fixed, and go on in each."""
    rip = option.direction is Direction.RIP
    x, y, width, height = room
    start, size = (y, height) if rip else (x, width)
    groups = option.groups if saw.fixed else sorted(option.groups, key=lambda group: _sawing_order(group, rip=rip))
    strips: list[Node] = []
    if option.lead > saw.kerf:
        strips.append(_rest_node(room, start, option.lead - saw.kerf, rip=rip))
    at = start + option.lead
    for place, group in enumerate(groups):
        low, high = _span_of(group, rip=rip)
        end = at + high - low
        if saw.fixed:
            at = low
            end = _span_of(groups[place + 1], rip=rip)[0] - saw.kerf if place + 1 < len(groups) else high
        moved = [_moved(piece, at - low, rip=rip) for piece in group]
        strips.append(_grow((x, at, width, end - at) if rip else (at, y, end - at, height), moved, saw, tuple(Direction)))
        at = end + saw.kerf
    if start + size - at > 0:
        strips.append(_rest_node(room, at, start + size - at, rip=rip))
    return Node(x, y, width, height, -1, option.direction, tuple(strips))


def _rest_node(room: Room, at: int, size: int, *, rip: bool) -> Node:
    x, y, width, height = room
    return Node(x, at, width, size, -1, None, ()) if rip else Node(at, y, size, height, -1, None, ())


def _moved(piece: Rect, by: int, *, rip: bool) -> Rect:
    return piece._replace(y=piece.y + by) if rip else piece._replace(x=piece.x + by)


def _sawing_order(group: list[Rect], *, rip: bool) -> tuple[int, int, int]:
    """To cut now before mixed before after measuring; then large before small, then as they lay."""
    low, high = _span_of(group, rip=rip)
    return lateness([piece.after_measure for piece in group]), low - high, low


def lateness(after: list[bool]) -> int:
    """0: all to cut now; 1: some after measuring; 2: all after measuring."""
    return 2 if all(after) else int(any(after))
