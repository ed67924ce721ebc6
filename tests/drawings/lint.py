"""Lint of drawings, on the primitives as they go to a writer; geometry done again here, another way than in the service."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING

from service.drawings.primitives import Circle, Line, Polygon, Text
from service.drawings.text_widths import text_area_mm

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.drawings.primitives import AreaMm, Drawing, PointMm, Primitive

TOUCH_MM = 0.01


def primitives(drawing: Drawing) -> Iterator[Primitive]:
    for group in drawing.groups:
        yield from group.parts


def texts(drawing: Drawing) -> list[Text]:
    return [part for part in primitives(drawing) if isinstance(part, Text)]


def words(drawing: Drawing) -> list[str]:
    return [text.content for text in texts(drawing)]


def lint(drawing: Drawing) -> list[str]:
    """Everything that makes a drawing hard to read."""
    return [*_texts_that_meet(drawing), *_lines_through_texts(drawing), *_outside(drawing), *_off_series(drawing)]


def _texts_that_meet(drawing: Drawing) -> list[str]:
    boxes = [(text, text_area_mm(text)) for text in texts(drawing)]
    return [f"{one.content!r} meets {other.content!r}" for (one, a), (other, b) in combinations(boxes, 2) if _shared(a, b)]


def _shared(a: AreaMm, b: AreaMm) -> bool:
    wide, tall = min(a[2], b[2]) - max(a[0], b[0]), min(a[3], b[3]) - max(a[1], b[1])
    return wide > TOUCH_MM and tall > TOUCH_MM


def _lines_through_texts(drawing: Drawing) -> list[str]:
    """A line runs through a text if it crosses a diagonal of the text's box or an end of it lies inside."""
    parts = list(primitives(drawing))
    faults = []
    for at, text in enumerate(parts):
        if not isinstance(text, Text):
            continue
        box = text_area_mm(text)
        for number, part in enumerate(parts):
            if text.backing is not None and number < at:
                continue  # interrupted by the patch under the text
            faults += [
                f"{text.content!r} is crossed by {start} {end}" for start, end in _segments(part) if _through(box, start, end)
            ]
    return faults


def _segments(part: Primitive) -> list[tuple[PointMm, PointMm]]:
    match part:
        case Line():
            return [(part.start_mm, part.end_mm)]
        case Polygon() if part.pen is not None:
            return list(zip(part.points_mm, (*part.points_mm[1:], part.points_mm[0]), strict=True))
        case _:
            return []


def _through(box: AreaMm, start: PointMm, end: PointMm) -> bool:
    left, low, right, high = box[0] + TOUCH_MM, box[1] + TOUCH_MM, box[2] - TOUCH_MM, box[3] - TOUCH_MM
    if any(left < x < right and low < y < high for x, y in (start, end)):
        return True
    diagonals = (((left, low), (right, high)), ((left, high), (right, low)))
    return any(
        _turn(start, end, a) * _turn(start, end, b) < 0 and _turn(a, b, start) * _turn(a, b, end) < 0 for a, b in diagonals
    )


def _turn(a: PointMm, b: PointMm, c: PointMm) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _outside(drawing: Drawing) -> list[str]:
    left, low, right, high = drawing.area_mm
    faults = []
    for part in primitives(drawing):
        match part:
            case Text():
                box = text_area_mm(part)
                points = [(box[0], box[1]), (box[2], box[3])]
            case Circle():
                points = [part.centre_mm]
            case _:
                points = [point for segment in _segments(part) for point in segment]
        if any(not (left <= x <= right and low <= y <= high) for x, y in points):
            faults.append(f"{part} lies outside the sheet")
    return faults


def _off_series(drawing: Drawing) -> list[str]:
    """Heights of letters: ISO 3098 (secondary): 1.8 2.5 3.5 5 7 10 14 20 mm."""
    return [
        f"{text.content!r} is {text.height_mm} high"
        for text in texts(drawing)
        if text.height_mm not in {1.8, 2.5, 3.5, 5, 7, 10, 14, 20}
    ]
