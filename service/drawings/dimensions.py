"""Dimensions outside an outline: chains, overall sizes and running sizes, stacked outwards on one side.

Kinds, and values above the line read from below or from the right: ISO 129-1:2018; distances are our own choice,
judged by eye (`drawings.md`, sections 2 and 4).
"""

from __future__ import annotations

from enum import StrEnum
from itertools import pairwise
from typing import TYPE_CHECKING, Final

import msgspec

from service.drawings.canvas import DIMENSION_HEIGHT_MM as HEIGHT_MM
from service.drawings.canvas import write_in_clear
from service.drawings.primitives import Anchor, Pen
from service.drawings.spreading import spread
from service.drawings.text_widths import text_reach_mm, text_width_mm
from service.units import text_mm

if TYPE_CHECKING:
    from collections.abc import Sequence

    from service.drawings.canvas import Canvas
    from service.drawings.primitives import PointMm

FIRST_MM: Final = 9.0  # outline to first dimension line
NEXT_MM: Final = 8.0  # dimension line to the next
_GAP_MM: Final = 1.2  # outline to extension line
_OVERSHOOT_MM: Final = 1.6
_STROKE_MM: Final = 1.0  # half of an oblique stroke, along each axis
_ABOVE_MM: Final = 1.15  # line to the value above it: clear of the strokes
_ROOM_MM: Final = 1.4  # what a segment must have beyond its value
_LABEL_GAP_MM: Final = 0.9  # between labels in a row
_JOG_MM: Final = 2.5  # over which a leader goes to its label
_RING_MM: Final = 0.8
_RUNNING_OVER_MM: Final = 0.8


class Side(StrEnum):
    """Where a stack of dimensions stands."""

    BELOW = "below"
    ABOVE = "above"
    LEFT = "left"
    RIGHT = "right"


_FAR_MM: Final = 500.0
type Span = tuple[float, float]
_LEVEL: Final = frozenset({Side.BELOW, Side.ABOVE})
_INNER_VALUES: Final = frozenset({Side.BELOW, Side.RIGHT})  # above the line is towards the outline there


class Running(msgspec.Struct, frozen=True, kw_only=True):
    """One value of a running dimension."""

    at_tenth_mm: int
    words: str = ""  # stand behind the value


class Stack:
    """Dimensions on one side of an outline, each further out than the last."""

    def __init__(self, canvas: Canvas, side: Side, outline_mm: float, first_mm: float = FIRST_MM) -> None:
        """Start at an outline: its y for a level stack, its x for an upright one."""
        self.canvas, self.side, self.outline_mm = canvas, side, outline_mm
        self.out_mm = first_mm  # where the next dimension line goes
        self._from_mm = _GAP_MM  # where its extension lines start
        self._reach_mm = 0.0  # how far out anything was drawn

    @property
    def end_mm(self) -> float:
        """Paper coordinate just outside all that was stacked."""
        return self.outline_mm + self._sign * (self._reach_mm + 1.5)

    def chain(self, places_tenth_mm: Sequence[int]) -> None:
        """A chain through places on the frame; each segment carries its length, so the values sum to the whole."""
        places = sorted(set(places_tenth_mm))
        along = [self.canvas.mm(place) for place in places]
        self._extend(along)
        self._draw((along[0], self.out_mm), (along[-1], self.out_mm))
        for place in along:
            self._stroke(place)
        values = [text_mm(second - first) for first, second in pairwise(places)]
        deepest = self._values(list(pairwise(along)), values)
        on_line = 0.0 if self.side in _INNER_VALUES else _ABOVE_MM + HEIGHT_MM
        self._step(max(_OVERSHOOT_MM, deepest, on_line), max(NEXT_MM, deepest + 4.0))

    def running(self, values: Sequence[Running], ends_tenth_mm: tuple[int, int]) -> None:
        """Running sizes along an outline, from its one end, marked by a ring, to its other."""
        origin, end = (self.canvas.mm(place) for place in ends_tenth_mm)
        found = {value.at_tenth_mm: value for value in values if value.at_tenth_mm > ends_tenth_mm[0] or value.words}
        labels = {
            self.canvas.mm(place): f"{text_mm(place - ends_tenth_mm[0])} {value.words}".rstrip()
            for place, value in sorted(found.items())
        }
        along = list(labels)
        self._extend([origin, *along], over_mm=_RUNNING_OVER_MM)
        self._draw((origin, self.out_mm), (end, self.out_mm))
        for place in along:
            if place > origin:
                self._stroke(place)
        self._origin(origin, named=origin in labels)
        bounds = (origin + 0.6, end - 0.6)
        far = self.out_mm + _RUNNING_OVER_MM + _JOG_MM
        sizes = [sum(text_reach_mm(label, HEIGHT_MM)) for label in labels.values()]
        for place, centre in zip(along, spread(along, sizes, _LABEL_GAP_MM, bounds), strict=True):
            self._draw((place, self.out_mm + _RUNNING_OVER_MM), (centre, far))
            self._running_label(centre, far + 0.5, labels[place])
        longest = max((text_width_mm(label, HEIGHT_MM) for label in labels.values()), default=0.0)
        reach = far + 0.5 - self.out_mm + longest
        self._step(reach, reach + 5.5)

    def _values(self, segments: list[Span], values: list[str]) -> float:
        """Write the values of a chain; the distance that those written outside take."""
        widths = [text_width_mm(value, HEIGHT_MM) for value in values]
        narrow = [index for index, (low, high) in enumerate(segments) if high - low < widths[index] + _ROOM_MM]
        for index, (low, high) in enumerate(segments):
            if index not in narrow:
                self._value_on_line((low + high) / 2, values[index])
        if not narrow:
            return 0.0
        centres = _beside(segments, widths, narrow)
        for index, centre in sorted(centres.items()):
            self._value_outside(sum(segments[index]) / 2, centre, values[index])
        return self._outside_mm + HEIGHT_MM

    @property
    def _outside_mm(self) -> float:
        """Dimension line to the near edge of values written outside."""
        return _JOG_MM if self.side in _INNER_VALUES else _ABOVE_MM + HEIGHT_MM + 0.6 + _JOG_MM

    @property
    def _sign(self) -> float:
        return -1.0 if self.side in {Side.BELOW, Side.LEFT} else 1.0

    def _point(self, along_mm: float, out_mm: float) -> PointMm:
        across = self.outline_mm + self._sign * out_mm
        return (along_mm, across) if self.side in _LEVEL else (across, along_mm)

    def _draw(self, start_mm: PointMm, end_mm: PointMm) -> None:
        self.canvas.line(self._point(*start_mm), self._point(*end_mm), Pen.NARROW)

    def _extend(self, along_mm: Sequence[float], over_mm: float = _OVERSHOOT_MM) -> None:
        for place in along_mm:
            self._draw((place, self._from_mm), (place, self.out_mm + over_mm))

    def _stroke(self, along_mm: float) -> None:
        x, y = self._point(along_mm, self.out_mm)
        self.canvas.line((x - _STROKE_MM, y - _STROKE_MM), (x + _STROKE_MM, y + _STROKE_MM), Pen.NARROW)

    def _step(self, reach_mm: float, depth_mm: float) -> None:
        """Go out to the next dimension line."""
        self._reach_mm = self.out_mm + reach_mm
        self._from_mm = self.out_mm
        self.out_mm += depth_mm

    def _origin(self, along_mm: float, *, named: bool) -> None:
        """A ring and, where no label stands for it, a nought."""
        x, y = self._point(along_mm, self.out_mm)
        self.canvas.ring((x, y), _RING_MM)
        if named:
            return
        if self.side in _LEVEL:
            self.canvas.text((x - 1.6, y - HEIGHT_MM / 2), "0", anchor=Anchor.END)
        else:
            self.canvas.text((x, y - 1.6 - HEIGHT_MM), "0")

    def _value_on_line(self, along_mm: float, value: str) -> None:
        x, y = self._point(along_mm, self.out_mm)
        if self.side in _LEVEL:
            self.canvas.text((x, y + _ABOVE_MM), value)
        else:
            self.canvas.text((x - _ABOVE_MM, y), value, turned=True)

    def _value_outside(self, from_mm: float, along_mm: float, value: str) -> None:
        bend = self._outside_mm - _JOG_MM
        if bend > 0:
            self._draw((from_mm, self.out_mm), (from_mm, self.out_mm + bend))
        self._draw((from_mm, self.out_mm + bend), (along_mm, self.out_mm + self._outside_mm - 0.3))
        near = self.out_mm + self._outside_mm
        baseline = near + (HEIGHT_MM if self.side in _INNER_VALUES else 0.0)
        point = self._point(along_mm, baseline)
        self.canvas.text(point, value, turned=self.side not in _LEVEL)

    def _running_label(self, along_mm: float, near_mm: float, label: str) -> None:
        x, y = self._point(along_mm, near_mm)
        below, above = text_reach_mm(label, HEIGHT_MM)
        off = (above - below) / 2  # baseline to the middle of the letters
        anchor = Anchor.START if self.side in {Side.ABOVE, Side.RIGHT} else Anchor.END
        if self.side in _LEVEL:
            self.canvas.text((x + off, y), label, anchor=anchor, turned=True)
        else:
            self.canvas.text((x, y - off), label, anchor=anchor)


def _beside(segments: Sequence[Span], widths: Sequence[float], narrow: Sequence[int]) -> dict[int, float]:
    """Where the values of narrow segments stand, in a row beside the chain: between its ends, those that find no room past them.

    The extension lines of the next chain out run at the ends, so that no value may lie there.
    """
    start, end = segments[0][0], segments[-1][1]
    before = [index for index in narrow if index == 0]
    after = [index for index in narrow if index == len(segments) - 1 and index > 0]
    between = [index for index in narrow if index not in (*before, *after)]
    while between and sum(widths[index] + _LABEL_GAP_MM for index in between) > end - start - _ROOM_MM:
        if segments[between[0]][0] - start <= end - segments[between[-1]][1]:
            before.append(between.pop(0))
        else:
            after.insert(0, between.pop())
    rows = ((before, (start - _FAR_MM, start - 1.0)), (between, (start + 0.7, end - 0.7)), (after, (end + 1.0, end + _FAR_MM)))
    centres: dict[int, float] = {}
    for row, bounds in rows:
        want, sizes = [sum(segments[index]) / 2 for index in row], [widths[index] for index in row]
        centres |= zip(row, spread(want, sizes, _LABEL_GAP_MM, bounds), strict=True)
    return centres


def inside_level(canvas: Canvas, ends_tenth_mm: tuple[int, int], y_mm: float) -> None:
    """A size inside an opening: a level line from edge to edge, the value above it where no other line runs."""
    start, end = ((canvas.mm(place), y_mm) for place in ends_tenth_mm)
    canvas.line(start, end, Pen.NARROW)
    for x, y in (start, end):
        canvas.line((x - _STROKE_MM, y - _STROKE_MM), (x + _STROKE_MM, y + _STROKE_MM), Pen.NARROW)
    value = text_mm(ends_tenth_mm[1] - ends_tenth_mm[0])
    tries = [start[0] + (end[0] - start[0]) * share for share in (0.5, 0.4, 0.6, 0.3, 0.7)]
    write_in_clear(canvas, value, [(x, y_mm + _ABOVE_MM) for x in tries])
