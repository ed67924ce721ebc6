"""Cutting diagrams of sheets: each sheet with its pieces as they lie, what is left, and the saw's settings in their order."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.cutting import PartKind
from service.drawings.canvas import DIMENSION_HEIGHT_MM, Canvas
from service.drawings.captions import Note, write_caption
from service.drawings.primitives import Anchor, Fill, Pen
from service.drawings.text_widths import text_width_mm
from service.units import text_mm

if TYPE_CHECKING:
    from service.cutting import BoardCuts, FramePlan, SheetGroup
    from service.drawings.primitives import AreaMm, Drawing

SCALE: Final = 25
ACROSS_COUNT: Final = 2
GAP_MM: Final = 16.0
HEAD_MM: Final = 6.0
HATCH_MM: Final = 3.0  # between hatch lines (`drawings.md`, section 4)
SMALL_MM: Final = 1.8  # smallest text that still prints at A4 (`drawings.md`, section 3)


def draw_sheet_cuts(plan: FramePlan) -> Drawing:
    """The diagrams of all sheets of a job, board by board."""
    view = _Sheets(Canvas(SCALE))
    sheets = [
        (board, group, number)
        for board in plan.boards
        for group in board.plan.groups
        for number in range(group.sheets_count)
    ]  # fmt: skip
    for first in range(0, len(sheets), ACROSS_COUNT):
        view.row(sheets[first : first + ACROSS_COUNT])
    view.caption(plan)
    return view.canvas.finish(
        "sheet-cuts", "Cutting diagram, sheets",
        f"{len(sheets)} sheets with the pieces cut from each; sizes in mm. Scale 1:{SCALE}.",
    )  # fmt: skip


class _Sheets:
    """Draws sheets in rows from the top down."""

    def __init__(self, canvas: Canvas) -> None:
        self.canvas = canvas
        self.top_mm = 0.0
        self.unmarked: list[str] = []

    def row(self, sheets: list[tuple[BoardCuts, SheetGroup, int]]) -> None:
        canvas = self.canvas
        heights = [canvas.mm(group.height_tenth_mm) for _board, group, _number in sheets]
        left = 0.0
        for board, group, number in sheets:
            self._sheet(board, group, number, left)
            left += canvas.mm(group.width_tenth_mm) + GAP_MM
        self.top_mm -= max(heights) + HEAD_MM + GAP_MM

    def _sheet(self, board: BoardCuts, group: SheetGroup, number: int, left_mm: float) -> None:
        canvas = self.canvas
        width, height = canvas.mm(group.width_tenth_mm), canvas.mm(group.height_tenth_mm)
        low = self.top_mm - HEAD_MM - height
        name = f"{group.name}.{number + 1}" if group.sheets_count > 1 else group.name
        canvas.group("sheets")
        size = f"{text_mm(group.width_tenth_mm)} x {text_mm(group.height_tenth_mm)}"
        canvas.text((left_mm, self.top_mm - 4.0), f"{name}  {board.code or 'custom'}  {size}", anchor=Anchor.START)
        self._waste(group, left_mm, low)
        for piece, label in zip(group.pieces, group.labels[number], strict=True):
            area = (
                left_mm + canvas.mm(piece.x_tenth_mm), low + canvas.mm(piece.y_tenth_mm),
                left_mm + canvas.mm(piece.x_tenth_mm + piece.width_tenth_mm),
                low + canvas.mm(piece.y_tenth_mm + piece.height_tenth_mm),
            )  # fmt: skip
            canvas.rectangle(area, Pen.VISIBLE, Fill.BOARD)
            sizes = f"{text_mm(piece.width_tenth_mm)} x {text_mm(piece.height_tenth_mm)}"
            self._label(area, f"{label}{'*' if piece.after_measure else ''}", sizes, name)
        canvas.rectangle((left_mm, low, left_mm + width, low + height), Pen.CUT)

    def _waste(self, group: SheetGroup, left_mm: float, low_mm: float) -> None:
        canvas = self.canvas
        for part in group.parts:
            if part.kind not in {PartKind.WASTE, PartKind.LEFTOVER}:
                continue
            area = (
                left_mm + canvas.mm(part.x_tenth_mm), low_mm + canvas.mm(part.y_tenth_mm),
                left_mm + canvas.mm(part.x_tenth_mm + part.width_tenth_mm),
                low_mm + canvas.mm(part.y_tenth_mm + part.height_tenth_mm),
            )  # fmt: skip
            canvas.rectangle(area, Pen.NARROW)
            if part.kind is PartKind.WASTE:
                self._hatch(area)
            else:
                self._label(area, "keep", f"{text_mm(part.width_tenth_mm)} x {text_mm(part.height_tenth_mm)}", "")

    def _hatch(self, area_mm: AreaMm) -> None:
        """Lines at 45 degrees inside an area."""
        left, low, right, high = area_mm
        width, height = right - left, high - low
        off = HATCH_MM
        while off < width + height:
            start = (left + max(0.0, off - height), low + min(off, height))
            end = (left + min(off, width), low + max(0.0, off - width))
            self.canvas.line(start, end, Pen.NARROW)
            off += HATCH_MM

    def _label(self, area_mm: AreaMm, mark: str, size: str, sheet: str) -> None:
        """Mark over size, as large as fits, level or turned; else in the list under the diagram."""
        for height in (DIMENSION_HEIGHT_MM, SMALL_MM):
            for lines in ((mark, size), (f"{mark}  {size}",)):
                if self._written(area_mm, lines, height):
                    return
        if sheet:
            self.unmarked.append(f"{sheet}: {mark} {size}")

    def _written(self, area_mm: AreaMm, lines: tuple[str, ...], height_mm: float) -> bool:
        """Lines in the middle of an area, level if they fit so, else turned; False: there is no room."""
        left, low, right, high = area_mm
        long = max(text_width_mm(line, height_mm) for line in lines) + 1.0
        deep = 1.7 * height_mm * len(lines)
        turned = not (long <= right - left and deep <= high - low)
        if turned and not (long <= high - low and deep <= right - left):
            return False
        for place, line in enumerate(lines):
            off = ((len(lines) - 1) / 2 - place) * 1.7 * height_mm - height_mm / 2
            at = ((left + right) / 2 - off, (low + high) / 2) if turned else ((left + right) / 2, (low + high) / 2 + off)
            self.canvas.text(at, line, height_mm=height_mm, turned=turned)
        return True

    def caption(self, plan: FramePlan) -> None:
        notes: list[Note] = ["first corner at the lower left as the sheet lies, long side along; hatched: waste"]
        if any(piece.after_measure for board in plan.boards for group in board.plan.groups for piece in group.pieces):
            notes.append("* cut after measuring: saw it last")
        notes.append(
            ("take:", *(f"{one.taken_count} x {one.code or 'custom'}" for board in plan.boards for one in board.plan.stock))
        )  # fmt: skip
        if self.unmarked:
            notes.append(("too small to mark above:", *self.unmarked))
        write_caption(self.canvas, "Cutting diagram, sheets", notes)
