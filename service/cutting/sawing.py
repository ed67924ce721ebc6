"""Steps at the saw: parts by name, and cuts with the same stop put together."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING, NamedTuple

from service.cutting.cut_tree import Node, Saw, keeps, lateness
from service.cutting.plan import Direction, PartKind, SheetPart, SheetStep

if TYPE_CHECKING:
    from collections.abc import Iterator


class Named(NamedTuple):
    """A node of the cut tree with its name, its parent's name and its depth."""

    name: str
    parent: str
    depth: int
    node: Node


def name_parts(tree: Node, *, trimmed: bool) -> list[Named]:
    """Name all parts, parents first."""
    root = Named("S.0" if trimmed else "S", "S" if trimmed else "", 0, tree)
    return list(_named(root))


def _named(of: Named) -> Iterator[Named]:
    yield of
    stem = "S" if of.depth == 0 else of.name
    for place, strip in enumerate(of.node.strips):
        yield from _named(Named(f"{stem}.{place + 1}", of.name, of.depth + 1, strip))


def list_parts(named: list[Named], sheet: tuple[int, int], saw: Saw) -> tuple[SheetPart, ...]:
    """List all parts of a sheet; a trimmed sheet is itself the first."""
    parts = [_part(item, saw) for item in named]
    if named[0].parent:
        width, height = sheet
        whole = SheetPart(
            name="S", parent="", kind=PartKind.SHEET, x_tenth_mm=0, y_tenth_mm=0, width_tenth_mm=width, height_tenth_mm=height
        )
        return (whole, *parts)
    return tuple(parts)


def _part(item: Named, saw: Saw) -> SheetPart:
    node = item.node
    return SheetPart(
        name=item.name,
        parent=item.parent,
        kind=_kind(item, saw),
        x_tenth_mm=node.x,
        y_tenth_mm=node.y,
        width_tenth_mm=node.width,
        height_tenth_mm=node.height,
    )


def _kind(item: Named, saw: Saw) -> PartKind:
    if item.node.tag >= 0:
        return PartKind.PIECE
    if item.node.direction is not None:
        return PartKind.SHEET if not item.parent else PartKind.PART
    return PartKind.LEFTOVER if keeps(item.node.width, item.node.height, saw) else PartKind.WASTE


class _Cut(NamedTuple):
    """One cut of one part: what falls off, and how large it is."""

    part: str
    yields: str
    stop: int


def list_steps(named: list[Named], late: list[bool], trim: int, saw: Saw) -> tuple[SheetStep, ...]:
    """Put the cuts in order: trims, then level by level; on each level equal stops of all parts together.

    Where places are fixed, each part is cut by itself in the order of its strips, equal ones that lie together at one stop.

    Args:
        named: all parts, parents first.
        late: by tag, whether a piece is cut after measuring.
        trim: what is cut off each edge first, tenths of a millimetre.
        saw: kerf and whether places are fixed.
    """
    steps = [_trimming(direction, trim) for direction in Direction] if trim else []
    settings: defaultdict[tuple[int, int, Direction, int, int], list[_Cut]] = defaultdict(list)
    for place, item in enumerate(named):
        if item.node.direction is None:
            continue
        run, before = -1, (0, 0)
        for strip, cut in _cuts(item):
            waits = _lateness(strip, late)
            if before != (cut.stop, waits):
                run, before = run + 1, (cut.stop, waits)
            order = run if saw.fixed else waits
            settings[item.depth, place if saw.fixed else 0, item.node.direction, order, -cut.stop].append(cut)
    for (_, _, direction, _, size), cuts in sorted(settings.items()):
        parts = tuple(dict.fromkeys(cut.part for cut in cuts))
        yields = tuple(cut.yields for cut in cuts)
        steps.append(
            SheetStep(parts=parts, direction=direction, trim=False, stop_tenth_mm=-size, cuts_count=len(cuts), yields=yields)
        )
    return tuple(steps)


def _trimming(direction: Direction, trim: int) -> SheetStep:
    return SheetStep(parts=("S",), direction=direction, trim=True, stop_tenth_mm=trim, cuts_count=2, yields=("S.0",))


def _cuts(item: Named) -> Iterator[tuple[Node, _Cut]]:
    """Every strip takes one cut, except a last one that ends where the part ends, and except the last rest."""
    node = item.node
    rip = node.direction is Direction.RIP
    end = node.y + node.height if rip else node.x + node.width
    stem = "S" if item.depth == 0 else item.name
    last = len(node.strips) - 1
    for number, strip in enumerate(node.strips):
        size = strip.height if rip else strip.width
        strip_end = (strip.y if rip else strip.x) + size
        is_rest = strip.tag < 0 and strip.direction is None
        if number < last or (strip_end < end and not is_rest):
            yield strip, _Cut(item.name, f"{stem}.{number + 1}", size)


def _lateness(node: Node, late: list[bool]) -> int:
    tags = list(_tags(node))
    return lateness([late[tag] for tag in tags]) if tags else 0


def _tags(node: Node) -> Iterator[int]:
    if node.tag >= 0:
        yield node.tag
    for strip in node.strips:
        yield from _tags(strip)
