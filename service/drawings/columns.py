"""Columns of words beside a view, in the order of height, each with a leader to what it names.

Lines may run level through a column (extension lines of heights); the words keep to the bands between them.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

import msgspec

from service.drawings.canvas import DIMENSION_HEIGHT_MM as HEIGHT_MM
from service.drawings.primitives import Anchor, Pen, PointMm
from service.drawings.spreading import spread
from service.drawings.text_widths import text_width_mm

if TYPE_CHECKING:
    from collections.abc import Sequence

    from service.drawings.canvas import Canvas

_GAP_MM: Final = 1.1
_FAR_MM: Final = 500.0  # how far a column may go past its outermost lines
_SIZE_MM: Final = 1.3 * HEIGHT_MM  # of one line of words, with what small letters take below and above
type Band = tuple[float, float]


class Callout(msgspec.Struct, frozen=True, kw_only=True):
    """Words for the place that they name."""

    words: str
    at_mm: PointMm
    dotted: bool = True  # False: the leader ends at an outline


def write_column(
    canvas: Canvas, callouts: Sequence[Callout], edge_mm: float, lines_mm: Sequence[float] = (), *, to_right: bool
) -> float:
    """Write a column whose words start (or, to the left, end) at an edge; the width that it takes.

    Args:
        canvas: the view.
        callouts: what to write.
        edge_mm: x of the edge.
        lines_mm: heights of the lines that run through the column.
        to_right: whether the column stands at the right of the view.
    """
    anchor, sign = (Anchor.START, 1.0) if to_right else (Anchor.END, -1.0)
    ordered = sorted(callouts, key=lambda callout: (callout.at_mm[1], sign * callout.at_mm[0], callout.words))
    heights = heights_between([callout.at_mm[1] for callout in ordered], lines_mm)
    for callout, height in zip(ordered, heights, strict=True):
        canvas.line(callout.at_mm, (edge_mm - sign * 0.6, height), Pen.NARROW)
        if callout.dotted:
            canvas.dot(callout.at_mm)
        canvas.text((edge_mm, height - HEIGHT_MM / 2), callout.words, anchor=anchor)
    return max((text_width_mm(callout.words, HEIGHT_MM) for callout in ordered), default=0.0)


def heights_between(want_mm: Sequence[float], lines_mm: Sequence[float]) -> list[float]:
    """Heights of words near to where they want to stand, in order, clear of each other and of level lines, in mm."""
    lines = sorted(set(lines_mm)) or [0.0]
    bands = list(pairwise((lines[0] - _FAR_MM, *lines, lines[-1] + _FAR_MM)))
    heights: list[float] = []
    first = 0
    for band, count in zip(bands, _counts(want_mm, bands), strict=True):
        here = want_mm[first : first + count]
        heights += spread(here, [_SIZE_MM] * count, _GAP_MM, (band[0] + 0.4, band[1] - 0.4))
        first += count
    return heights


def _counts(want_mm: Sequence[float], bands: Sequence[Band]) -> list[int]:
    """How many words go in each band, in order, at the least sum of squared ways out of where they want to be."""
    best: dict[int, tuple[float, list[int]]] = {0: (0.0, [])}
    for band in bands:
        room = _room(band)
        longer: dict[int, tuple[float, list[int]]] = {}
        for placed, (cost, counts) in best.items():
            for count in range(min(room, len(want_mm) - placed) + 1):
                whole = cost + sum(_way(want, band) ** 2 for want in want_mm[placed : placed + count])
                if placed + count not in longer or whole < longer[placed + count][0]:
                    longer[placed + count] = (whole, [*counts, count])
        best = longer
    return best[len(want_mm)][1]


def _room(band: Band) -> int:
    """How many words a band takes."""
    return max(int((band[1] - band[0] - 0.8 + _GAP_MM) // (_SIZE_MM + _GAP_MM)), 0)


def _way(want_mm: float, band: Band) -> float:
    half = 0.4 + _SIZE_MM / 2
    return max(band[0] + half - want_mm, want_mm - band[1] + half, 0.0)
