"""Cutting diagram of bars: each bar with its pieces and where the saw stops, as a person works from the left end.

Lengths are to scale, heights are not. Pieces that are cut after measuring stand at the right of their bar with a star.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.drawings.canvas import DIMENSION_HEIGHT_MM, Canvas
from service.drawings.captions import Note, write_caption
from service.drawings.primitives import Anchor, Fill, Pen
from service.drawings.spreading import spread
from service.drawings.text_widths import text_width_mm
from service.units import text_mm

if TYPE_CHECKING:
    from service.cutting import BarCut, BarGroup, BarPlan, FramePlan
    from service.drawings.primitives import AreaMm, Drawing, PointMm

SCALE: Final = 20
HEIGHT_MM: Final = 10.0  # of a bar on the paper
PITCH_MM: Final = 27.0  # from bar to bar
NAME_MM: Final = 4.0  # off the left end
HATCH_MM: Final = 3.0
LABEL_GAP_MM: Final = 0.8
SMALL_MM: Final = 1.8  # smallest text that still prints at A4 (`drawings.md`, section 3)
KEPT_TENTH_MM: Final = 1_000  # shorter rests are not written


def draw_bar_cuts(plan: FramePlan) -> Drawing:
    """The diagram of all bars of a job, longest stock first."""
    view = _Bars(Canvas(SCALE))
    for bars in (plan.bars, *(other.plan for other in plan.other_bars)):
        view.add(bars)
    view.caption(plan)
    words = f"{plan.bars_count} bars with the pieces cut from each, in the order of the saw; lengths in mm."
    return view.canvas.finish("bar-cuts", "Cutting diagram, bars", words)


class _Bars:
    """Draws one bar under the other."""

    def __init__(self, canvas: Canvas) -> None:
        self.canvas = canvas
        self.y_mm = 0.0
        self.unmarked: list[str] = []

    def add(self, bars: BarPlan) -> None:
        for group in sorted(bars.groups, key=lambda one: (-one.length_tenth_mm, one.name)):
            for number, labels in enumerate(group.labels, start=1):
                self._bar(group, number, labels)

    def _bar(self, group: BarGroup, number: int, labels: tuple[str, ...]) -> None:
        canvas, y = self.canvas, self.y_mm
        name = f"{group.name}.{number}" if group.bars_count > 1 else group.name
        canvas.group("bars")
        length = canvas.mm(group.length_tenth_mm)
        what = "offcut" if group.offcut else group.code or "bar"
        canvas.text((-NAME_MM, y + HEIGHT_MM / 2 + 0.4), f"{name}  {text_mm(group.length_tenth_mm)}", anchor=Anchor.END)
        canvas.text((-NAME_MM, y + HEIGHT_MM / 2 - 3.8), what, anchor=Anchor.END)
        last = 0
        for cut, label in zip(group.cuts, labels, strict=True):
            area = (canvas.mm(cut.start_tenth_mm), y, canvas.mm(cut.end_tenth_mm), y + HEIGHT_MM)
            canvas.rectangle(area, Pen.VISIBLE, Fill.BASE if cut.after_measure else Fill.UPPER)
            self._label(area, cut, label, name)
            last = cut.end_tenth_mm
        if group.length_tenth_mm > last:
            self._rest((canvas.mm(last), y, length, y + HEIGHT_MM), group)
        self._stops(group)
        self.y_mm -= PITCH_MM

    def _label(self, area_mm: AreaMm, cut: BarCut, label: str, bar: str) -> None:
        """Mark and length inside the piece: level, on two lines, or turned; else in the list under the diagram."""
        canvas = self.canvas
        left, low, right, high = area_mm
        mark, size = f"{label}{'*' if cut.after_measure else ''}", text_mm(cut.length_tenth_mm)
        middle = (left + right) / 2
        room = right - left - 1.0
        if text_width_mm(f"{mark}  {size}", DIMENSION_HEIGHT_MM) <= room:
            canvas.text((middle, low + HEIGHT_MM / 2 - 1.2), f"{mark}  {size}")
        elif max(text_width_mm(mark, DIMENSION_HEIGHT_MM), text_width_mm(size, DIMENSION_HEIGHT_MM)) <= room:
            canvas.text((middle, low + HEIGHT_MM / 2 + 0.6), mark)
            canvas.text((middle, low + HEIGHT_MM / 2 - 3.6), size)
        elif not self._turned((middle, (low + high) / 2), mark, room, high - low - 0.8):
            self.unmarked.append(f"{bar}: {mark} {size}")

    def _turned(self, middle_mm: PointMm, mark: str, room_mm: float, along_mm: float) -> bool:
        """The mark read from the right, smaller where it must be; False: there is no room."""
        for height in (DIMENSION_HEIGHT_MM, SMALL_MM):
            if height * 1.3 <= room_mm and text_width_mm(mark, height) <= along_mm:
                self.canvas.text((middle_mm[0] + height / 2, middle_mm[1]), mark, height_mm=height, turned=True)
                return True
        return False

    def _rest(self, area_mm: AreaMm, group: BarGroup) -> None:
        """What is left: hatched, its length beside the bar."""
        canvas = self.canvas
        left, low, right, _high = area_mm
        canvas.rectangle(area_mm, Pen.NARROW)
        x = left + HATCH_MM
        while x < right + HEIGHT_MM:
            start = (max(x - HEIGHT_MM, left), low + max(0.0, left - (x - HEIGHT_MM)))
            end = (min(x, right), low + HEIGHT_MM - max(0.0, x - right))
            if start[0] < end[0]:
                canvas.line(start, end, Pen.NARROW)
            x += HATCH_MM
        if group.rest_tenth_mm >= KEPT_TENTH_MM or group.keep:
            words = f"{'keep' if group.keep else 'rest'} {text_mm(group.rest_tenth_mm)}"
            canvas.text((canvas.mm(group.length_tenth_mm) + 2.0, low + HEIGHT_MM / 2 - 1.2), words, anchor=Anchor.START)

    def _stops(self, group: BarGroup) -> None:
        """Running positions of the far ends of the pieces, kerfs included, turned above the bar."""
        canvas, top = self.canvas, self.y_mm + HEIGHT_MM
        places = [canvas.mm(cut.end_tenth_mm) for cut in group.cuts]
        size = DIMENSION_HEIGHT_MM * 1.1
        bounds = (-20.0, canvas.mm(group.length_tenth_mm) + 20.0)
        centres = spread(places, [size] * len(places), LABEL_GAP_MM, bounds)
        for cut, place, centre in zip(group.cuts, places, centres, strict=True):
            canvas.line((place, top), (place, top + 1.2), Pen.NARROW)
            canvas.line((place, top + 1.2), (centre, top + 3.0), Pen.NARROW)
            words = text_mm(cut.end_tenth_mm)
            middle = top + 3.4 + text_width_mm(words, DIMENSION_HEIGHT_MM) / 2
            canvas.text((centre + DIMENSION_HEIGHT_MM / 2, middle), words, turned=True)

    def caption(self, plan: FramePlan) -> None:
        notes: list[Note] = ["figures over a bar: stops from the left end, saw cuts included; heights not to scale"]
        if plan.allowance_mm:
            notes.append(f"* cut after measuring; {plan.allowance_mm} longer here")
        stock = [
            f"{one.taken_count} x {one.code or 'custom'}{' (offcut)' if one.offcut else ''}"
            for bars in (plan.bars, *(other.plan for other in plan.other_bars))
            for one in bars.stock
        ]
        notes.append(("take:", *stock))
        if self.unmarked:
            notes.append(("too small to mark above:", *self.unmarked))
        write_caption(self.canvas, "Cutting diagram, bars", notes)
