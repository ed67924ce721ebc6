"""A view while it is being drawn: its primitives, and where texts and lines already are."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.drawings.primitives import Anchor, AreaMm, Circle, Drawing, Fill, Group, Line, Pen, PointMm, Polygon, Primitive, Text
from service.drawings.text_widths import text_area_mm
from service.units import TENTHS_PER_MM

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

type Segment = tuple[PointMm, PointMm]

DIMENSION_HEIGHT_MM = 2.5  # of texts at 1:10 on A3 (`drawings.md`, section 3)
TITLE_HEIGHT_MM = 3.5
DOT_RADIUS_MM = 0.45
_MARGIN_MM = 3.0
_CLEAR_MM = 0.35  # least distance of texts from each other


class Canvas:
    """Collects what is drawn, in paper mm, and answers where there is room."""

    def __init__(self, scale_ratio: int) -> None:
        """Start an empty view at a scale, 10 for 1:10."""
        self.scale_ratio = scale_ratio
        self.text_areas: list[AreaMm] = []
        self.segments: list[Segment] = []
        self._groups: dict[str, list[Primitive]] = {}
        self._parts: list[Primitive] = self.group("view")

    def group(self, name: str) -> list[Primitive]:
        """Everything from now on belongs to this group."""
        self._parts = self._groups.setdefault(name, [])
        return self._parts

    def mm(self, length_tenth_mm: int) -> float:
        """A real length on the paper."""
        return length_tenth_mm / (TENTHS_PER_MM * self.scale_ratio)

    def line(self, start_mm: PointMm, end_mm: PointMm, pen: Pen) -> None:
        """Draw a line; texts will keep off it."""
        self._parts.append(Line(start_mm=start_mm, end_mm=end_mm, pen=pen))
        self.segments.append((start_mm, end_mm))

    def rectangle(self, area_mm: AreaMm, pen: Pen | None, fill: Fill | None = None) -> None:
        """Draw a rectangle; texts keep off its outline if it has one."""
        left, low, right, high = area_mm
        self.polygon(((left, low), (right, low), (right, high), (left, high)), pen, fill)

    def polygon(self, points_mm: tuple[PointMm, ...], pen: Pen | None, fill: Fill | None = None) -> None:
        """Draw a closed shape."""
        self._parts.append(Polygon(points_mm=points_mm, pen=pen, fill=fill))
        if pen is not None or fill is Fill.SOLID:
            self.segments += zip(points_mm, (*points_mm[1:], points_mm[0]), strict=True)

    def dot(self, centre_mm: PointMm) -> None:
        """End a leader inside an outline; texts, leaders and other dots will keep off it."""
        self._parts.append(Circle(centre_mm=centre_mm, radius_mm=DOT_RADIUS_MM, fill=Fill.SOLID))
        self.text_areas.append(grow((*centre_mm, *centre_mm), DOT_RADIUS_MM))

    def ring(self, centre_mm: PointMm, radius_mm: float) -> None:
        """Draw the origin of running sizes."""
        self._parts.append(Circle(centre_mm=centre_mm, radius_mm=radius_mm, pen=Pen.NARROW, fill=Fill.PAPER))

    def text(
        self,
        at_mm: PointMm,
        content: str,
        *,
        anchor: Anchor = Anchor.MIDDLE,
        height_mm: float = DIMENSION_HEIGHT_MM,
        turned: bool = False,
        backing: Fill | None = None,
    ) -> AreaMm:
        """Write a text and take its place."""
        text = Text(at_mm=at_mm, content=content, height_mm=height_mm, anchor=anchor, turned=turned, backing=backing)
        self._parts.append(text)
        area = text_area_mm(text)
        self.text_areas.append(area)
        return area

    def is_free(self, area_mm: AreaMm) -> bool:
        """Whether no text stands there."""
        grown = grow(area_mm, _CLEAR_MM)
        return not any(meets(grown, other) for other in self.text_areas)

    def crossing_count(self, area_mm: AreaMm, segments: Iterable[Segment] | None = None) -> int:
        """How many lines run through an area."""
        return sum(1 for segment in (self.segments if segments is None else segments) if passes_through(segment, area_mm))

    def area(self) -> AreaMm:
        """Box of all that is drawn, with a margin."""
        boxes = [_box(part) for parts in self._groups.values() for part in parts]
        return (
            min(box[0] for box in boxes) - _MARGIN_MM,
            min(box[1] for box in boxes) - _MARGIN_MM,
            max(box[2] for box in boxes) + _MARGIN_MM,
            max(box[3] for box in boxes) + _MARGIN_MM,
        )

    def finish(self, name: str, title: str, description: str) -> Drawing:
        """The view as a value."""
        groups = tuple(Group(name=group, parts=tuple(parts)) for group, parts in self._groups.items() if parts)
        area = self.area()
        return Drawing(name=name, title=title, description=description, scale_ratio=self.scale_ratio, area_mm=area, groups=groups)


def write_in_clear(canvas: Canvas, words: str, points_mm: Sequence[PointMm]) -> None:
    """Write words about the first of some points where nothing stands in their way, else about the first, on a patch of paper."""
    for at in points_mm:
        area = text_area_mm(Text(at_mm=at, content=words, height_mm=DIMENSION_HEIGHT_MM, anchor=Anchor.MIDDLE))
        if canvas.is_free(area) and not canvas.crossing_count(grow(area, 0.3)):
            canvas.text(at, words)
            return
    canvas.text(points_mm[0], words, backing=Fill.PAPER)


def grow(area_mm: AreaMm, by_mm: float) -> AreaMm:
    """An area with a margin on all sides."""
    return (area_mm[0] - by_mm, area_mm[1] - by_mm, area_mm[2] + by_mm, area_mm[3] + by_mm)


def meets(first_mm: AreaMm, second_mm: AreaMm) -> bool:
    """Whether two areas share more than an edge."""
    return first_mm[0] < second_mm[2] and second_mm[0] < first_mm[2] and first_mm[1] < second_mm[3] and second_mm[1] < first_mm[3]


def passes_through(segment_mm: Segment, area_mm: AreaMm) -> bool:
    """Whether a line has a piece of some length inside an area (clipping by Liang and Barsky, from memory)."""
    (x0, y0), (x1, y1) = segment_mm
    left, low, right, high = area_mm
    if max(x0, x1) <= left or min(x0, x1) >= right or max(y0, y1) <= low or min(y0, y1) >= high:
        return False
    start, end = 0.0, 1.0
    for step, room_back, room_ahead in ((x1 - x0, x0 - left, right - x0), (y1 - y0, y0 - low, high - y0)):
        if step == 0:
            continue
        enter, leave = sorted((-room_back / step, room_ahead / step))
        start, end = max(start, enter), min(end, leave)
    return start < end


def _box(part: Primitive) -> AreaMm:
    if isinstance(part, Text):
        return text_area_mm(part)
    if isinstance(part, Circle):
        return grow((*part.centre_mm, *part.centre_mm), part.radius_mm)
    points = (part.start_mm, part.end_mm) if isinstance(part, Line) else part.points_mm
    return (min(x for x, _ in points), min(y for _, y in points), max(x for x, _ in points), max(y for _, y in points))
