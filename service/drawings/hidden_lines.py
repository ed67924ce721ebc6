"""Hidden lines of straight-on views of boxes, exact: integers in, no tolerance.

Each box is a rectangle with a near and a far depth. From each of its edges the intervals are taken away where a nearer
rectangle covers the edge strictly inside; what is left is seen, what was taken away is hidden, and a seen edge wins over a
hidden one on the same line (ISO 128-2:2022, from memory).
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import msgspec

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

type Interval = tuple[int, int]
type Line = tuple[bool, int]  # upright, position
type Marked = dict[Line, list[Interval]]


class Face(msgspec.Struct, frozen=True, kw_only=True):
    """A box as a straight-on view sees it; depth grows away from the eye."""

    mark: str
    left_tenth_mm: int
    right_tenth_mm: int
    low_tenth_mm: int
    high_tenth_mm: int
    near_tenth_mm: int


class Edge(msgspec.Struct, frozen=True, kw_only=True, order=True):
    """One straight piece of an outline."""

    upright: bool
    at_tenth_mm: int  # u of an upright edge, v of a level one
    low_tenth_mm: int
    high_tenth_mm: int


class Edges(msgspec.Struct, frozen=True, kw_only=True):
    """All edges of a view, each once."""

    visible: tuple[Edge, ...]
    hidden: tuple[Edge, ...]


def find_edges(faces: Sequence[Face]) -> Edges:
    """Which edges are seen and which are hidden."""
    seen: Marked = {}
    behind: Marked = {}
    for face in faces:
        nearer = [other for other in faces if other.near_tenth_mm < face.near_tenth_mm and overlaps(other, face)]
        for upright, at, span in _outline(face):
            covers = [_span(other, upright=upright) for other in nearer if _covers(other, at, upright=upright)]
            left, taken = subtract(span, covers)
            seen.setdefault((upright, at), []).extend(left)
            behind.setdefault((upright, at), []).extend(taken)
    merged = {line: merge(intervals) for line, intervals in seen.items()}
    rest = {line: _without(intervals, merged.get(line, [])) for line, intervals in behind.items()}
    return Edges(visible=_edges(merged), hidden=_edges(rest))


def overlaps(first: Face, second: Face) -> bool:
    """Whether two faces share area on the picture."""
    return (
        first.left_tenth_mm < second.right_tenth_mm
        and second.left_tenth_mm < first.right_tenth_mm
        and first.low_tenth_mm < second.high_tenth_mm
        and second.low_tenth_mm < first.high_tenth_mm
    )


def subtract(span: Interval, covers: Iterable[Interval]) -> tuple[list[Interval], list[Interval]]:
    """What is left of a span outside the covers, and what the covers take."""
    low, high = span
    left: list[Interval] = []
    taken: list[Interval] = []
    for start, end in merge((max(start, low), min(end, high)) for start, end in covers):
        if start > low:
            left.append((low, start))
        taken.append((start, end))
        low = end
    if low < high:
        left.append((low, high))
    return left, taken


def merge(intervals: Iterable[Interval]) -> list[Interval]:
    """Intervals in order, joined where they touch or overlap; empty ones are left out."""
    joined: list[Interval] = []
    for start, end in sorted(interval for interval in intervals if interval[0] < interval[1]):
        if joined and start <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], end))
        else:
            joined.append((start, end))
    return joined


def largest_visible(face: Face, faces: Sequence[Face]) -> Face | None:
    """The largest rectangle of a face that nothing nearer covers; None when all of it is covered."""
    nearer = [other for other in faces if other.near_tenth_mm < face.near_tenth_mm and overlaps(other, face)]
    if not nearer:
        return face
    columns = _cuts(_span(face, upright=False), [edge for other in nearer for edge in _span(other, upright=False)])
    rows = _cuts(_span(face, upright=True), [edge for other in nearer for edge in _span(other, upright=True)])
    found = [
        ((right - left) * (high - low), left, right, low, high)
        for first, left in enumerate(columns[:-1])
        for right in columns[first + 1 :]
        for low, high in _free_rows(nearer, rows, (left, right))
    ]
    if not found:
        return None
    _, left, right, low, high = max(found, key=lambda one: (one[0], -one[1], -one[3]))
    return msgspec.structs.replace(face, left_tenth_mm=left, right_tenth_mm=right, low_tenth_mm=low, high_tenth_mm=high)


def _cuts(span: Interval, edges: list[int]) -> list[int]:
    low, high = span
    return sorted({low, high, *(edge for edge in edges if low < edge < high)})


def _free_rows(nearer: list[Face], rows: list[int], columns: Interval) -> list[Interval]:
    """Joined rows between two columns that nothing covers."""
    across = [face for face in nearer if face.left_tenth_mm < columns[1] and columns[0] < face.right_tenth_mm]
    covers = [_span(face, upright=True) for face in across]
    return merge((low, high) for low, high in pairwise(rows) if not any(start < high and low < end for start, end in covers))


def _outline(face: Face) -> tuple[tuple[bool, int, Interval], ...]:
    level, height = (face.left_tenth_mm, face.right_tenth_mm), (face.low_tenth_mm, face.high_tenth_mm)
    return (
        (False, face.low_tenth_mm, level),
        (False, face.high_tenth_mm, level),
        (True, face.left_tenth_mm, height),
        (True, face.right_tenth_mm, height),
    )


def _span(face: Face, *, upright: bool) -> Interval:
    return (face.low_tenth_mm, face.high_tenth_mm) if upright else (face.left_tenth_mm, face.right_tenth_mm)


def _covers(face: Face, at: int, *, upright: bool) -> bool:
    low, high = _span(face, upright=not upright)
    return low < at < high


def _without(intervals: list[Interval], taken: list[Interval]) -> list[Interval]:
    return [piece for interval in merge(intervals) for piece in subtract(interval, taken)[0]]


def _edges(marked: Marked) -> tuple[Edge, ...]:
    return tuple(
        sorted(
            Edge(upright=upright, at_tenth_mm=at, low_tenth_mm=low, high_tenth_mm=high)
            for (upright, at), intervals in marked.items()
            for low, high in intervals
        )
    )
