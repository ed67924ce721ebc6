"""Marks on parts: inside where they fit, else at the end of a leader with a dot, else left over for a list beside the view.

Leaders that end in a dot inside the outline: ISO 128-22 (secondary). Costs and radii: `drawings.md`, section 4.
"""

from __future__ import annotations

from itertools import product
from math import cos, pi, sin
from typing import TYPE_CHECKING, Final

import msgspec

from service.drawings.canvas import DIMENSION_HEIGHT_MM as HEIGHT_MM
from service.drawings.canvas import grow, meets, passes_through
from service.drawings.primitives import Anchor, AreaMm, Pen, PointMm, Text
from service.drawings.text_widths import text_area_mm, text_width_mm

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from service.drawings.canvas import Canvas, Segment

_SHARES: Final = (0.5, 0.42, 0.58, 0.34, 0.66, 0.25, 0.75, 0.15, 0.85)  # of the length, where a mark is tried
_ACROSS: Final = (0.5, 0.75, 0.25)  # of the breadth, the same
_ANCHORS: Final = ((0.5, 0.5), (0.3, 0.5), (0.7, 0.5), (0.12, 0.5), (0.88, 0.5))  # along and across, where a leader is tried
_RADII_MM: Final = (3.2, 4.6, 6.0, 7.5, 9.0, 12.0)
_ANGLES: Final = tuple((cos(pi * step / 6), sin(pi * step / 6)) for step in (1, 5, 11, 7, 2, 4, 10, 8, 0, 6, 3, 9))
_ORDER: Final = sorted(product(_RADII_MM, range(len(_ANCHORS))), key=lambda pair: pair[0] + pair[1] / 2)
_REACH_MM: Final = 34.0  # a leader and its text lie within this distance
_CROSSING_COST: Final = 10.0


class Wanted(msgspec.Struct, frozen=True, kw_only=True):
    """A mark and the clear area of the part that it names."""

    mark: str
    area_mm: AreaMm


class _Try(msgspec.Struct, frozen=True, kw_only=True):
    dot_mm: PointMm
    end_mm: PointMm
    text: Text
    area_mm: AreaMm


def write_marks(canvas: Canvas, wanted: Sequence[Wanted]) -> tuple[str, ...]:
    """Write every mark; those that found no place are handed back in their order."""
    outside = [mark for mark in wanted if not _inside(canvas, mark)]
    return tuple(mark.mark for mark in outside if not _leader(canvas, mark))


def _inside(canvas: Canvas, wanted: Wanted) -> bool:
    left, low, right, high = wanted.area_mm
    wide, tall = right - left, high - low
    for turned in (tall > wide, tall <= wide):
        length, breadth = (tall, wide) if turned else (wide, tall)
        if breadth < HEIGHT_MM + 0.8 or length < text_width_mm(wanted.mark, HEIGHT_MM) + 1.0:
            continue
        for across, share in ((across, share) for across in _ACROSS for share in _SHARES):
            x = left + wide * across + HEIGHT_MM / 2 if turned else left + wide * share
            y = low + tall * share if turned else low + tall * across - HEIGHT_MM / 2
            text = Text(at_mm=(x, y), content=wanted.mark, height_mm=HEIGHT_MM, anchor=Anchor.MIDDLE, turned=turned)
            area = text_area_mm(text)
            if _within(area, wanted.area_mm) and canvas.is_free(area) and not canvas.crossing_count(grow(area, 0.2)):
                canvas.text(text.at_mm, text.content, turned=turned)
                return True
    return False


def _within(inner_mm: AreaMm, outer_mm: AreaMm) -> bool:
    return inner_mm[0] >= outer_mm[0] and inner_mm[1] >= outer_mm[1] and inner_mm[2] <= outer_mm[2] and inner_mm[3] <= outer_mm[3]


def _leader(canvas: Canvas, wanted: Wanted) -> bool:
    around = _Around(canvas, grow(wanted.area_mm, _REACH_MM))
    best: tuple[float, _Try] | None = None
    for base_cost, tried in _tries(wanted):
        if best is not None and base_cost >= best[0]:
            break
        cost = around.cost_of(tried)
        if cost is not None and (best is None or base_cost + cost < best[0]):
            best = (base_cost + cost, tried)
    if best is None:
        return False
    tried = best[1]
    canvas.line(tried.dot_mm, tried.end_mm, Pen.NARROW)
    canvas.dot(tried.dot_mm)
    canvas.text(tried.text.at_mm, tried.text.content, anchor=tried.text.anchor)
    return True


class _Around:
    """Texts and lines near a part, lines with their boxes, so that most are put aside by a few comparisons."""

    def __init__(self, canvas: Canvas, near_mm: AreaMm) -> None:
        self.texts = [area for area in canvas.text_areas if meets(area, near_mm)]
        self.lines = [(box, segment) for segment in canvas.segments if meets(box := _box_of(segment), near_mm)]

    def cost_of(self, tried: _Try) -> float | None:
        """What a leader crosses; None when it runs into a text, or its text into a line."""
        text, leader = grow(tried.area_mm, 0.35), (tried.dot_mm, tried.end_mm)
        box = _box_of(leader)
        if any(meets(text, area) or (meets(box, area) and passes_through(leader, area)) for area in self.texts):
            return None
        if any(passes_through(segment, text) for _, segment in self._near(text)):
            return None
        crossed = sum(1 for _, segment in self._near(box) if _cross(leader, segment))
        return _CROSSING_COST * max(crossed - 1, 0)  # its own outline once

    def _near(self, area_mm: AreaMm) -> Iterator[tuple[AreaMm, Segment]]:
        left, low, right, high = area_mm
        return ((box, line) for box, line in self.lines if box[0] < right and left < box[2] and box[1] < high and low < box[3])


def _box_of(segment: Segment) -> AreaMm:
    """Box of a line, a little larger, so that level and upright lines have one too."""
    (x0, y0), (x1, y1) = segment
    return (min(x0, x1) - 0.01, min(y0, y1) - 0.01, max(x0, x1) + 0.01, max(y0, y1) + 0.01)


def _tries(wanted: Wanted) -> Iterator[tuple[float, _Try]]:
    """Leaders from the cheapest on."""
    left, low, right, high = wanted.area_mm
    upright = high - low > right - left
    for radius, rank in _ORDER:
        along, across = _ANCHORS[rank]
        share = (across, along) if upright else (along, across)
        dot = (left + (right - left) * share[0], low + (high - low) * share[1])
        for cosine, sine in _ANGLES:
            end = (dot[0] + radius * cosine, dot[1] + radius * sine)
            text = _text_at(wanted.mark, end, cosine, sine)
            yield radius + rank / 2, _Try(dot_mm=dot, end_mm=end, text=text, area_mm=text_area_mm(text))


def _text_at(mark: str, end_mm: PointMm, cosine: float, sine: float) -> Text:
    x, y = end_mm
    if abs(cosine) < abs(sine) / 10:  # straight up or down
        at, anchor = (x, y + 0.5 if sine > 0 else y - 0.5 - HEIGHT_MM), Anchor.MIDDLE
    elif cosine > 0:
        at, anchor = (x + 0.5, y - HEIGHT_MM / 2), Anchor.START
    else:
        at, anchor = (x - 0.5, y - HEIGHT_MM / 2), Anchor.END
    return Text(at_mm=at, content=mark, height_mm=HEIGHT_MM, anchor=anchor)


def _cross(first: Segment, second: Segment) -> bool:
    """Whether two lines cross, each at an inner point."""
    return _side(first, second[0]) * _side(first, second[1]) < 0 and _side(second, first[0]) * _side(second, first[1]) < 0


def _side(line: Segment, point_mm: PointMm) -> float:
    (x0, y0), (x1, y1) = line
    return (x1 - x0) * (point_mm[1] - y0) - (y1 - y0) * (point_mm[0] - x0)
