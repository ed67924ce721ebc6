"""Mark and cut size on each board of the face."""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING, Final

from service.drawings.canvas import DIMENSION_HEIGHT_MM as HEIGHT_MM
from service.drawings.canvas import grow
from service.drawings.marks import Wanted, write_marks
from service.drawings.primitives import Fill
from service.drawings.text_widths import text_width_mm

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from service.drawings.canvas import Canvas
    from service.drawings.primitives import AreaMm
    from service.frame import Panel

_PITCH_MM: Final = HEIGHT_MM * 1.7  # baseline to baseline of the two lines
_SHARES: Final = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9)


def size_words(panel: Panel) -> str:
    """Cut size, width along the wall or out of it first."""
    return f"{panel.cut_width_mm} x {panel.cut_height_mm}"


def write_panel_words(canvas: Canvas, wanted: Sequence[tuple[Panel, AreaMm]]) -> tuple[str, ...]:
    """Write mark and size on two lines in the clear area of each board, upright where it is narrow, else by a leader.

    Returns:
        Mark and size of the boards that found no place.
    """
    tight = [(panel, area) for panel, area in wanted if not _two_lines(canvas, panel, area)]
    return write_marks(canvas, [Wanted(mark=f"{panel.mark} {size_words(panel)}", area_mm=area) for panel, area in tight])


def _two_lines(canvas: Canvas, panel: Panel, area_mm: AreaMm) -> bool:
    lines = (panel.mark, size_words(panel))
    for clear in (True, False):
        for turned in (False, True):
            for box in _boxes(lines, area_mm, turned=turned):
                if canvas.is_free(grow(box, 0.6)) and not (clear and canvas.crossing_count(grow(box, 0.3))):
                    _write(canvas, lines, box, turned=turned, backing=None if clear else Fill.BOARD)
                    return True
    return False


def _boxes(lines: tuple[str, str], area_mm: AreaMm, *, turned: bool) -> Iterator[AreaMm]:
    """Where both lines may stand in an area, from its middle outwards."""
    long, deep = max(text_width_mm(line, HEIGHT_MM) for line in lines), HEIGHT_MM + _PITCH_MM
    wide, tall = (deep, long) if turned else (long, deep)
    left, low, right, high = grow(area_mm, -1.0)
    if wide <= right - left and tall <= high - low:
        for across, up in sorted(product(_SHARES, _SHARES), key=lambda at: (abs(at[0] - 0.5) + abs(at[1] - 0.5), at)):
            x, y = left + (right - left - wide) * across, low + (high - low - tall) * up
            yield (x, y, x + wide, y + tall)


def _write(canvas: Canvas, lines: tuple[str, str], box_mm: AreaMm, *, turned: bool, backing: Fill | None) -> None:
    left, low, right, high = box_mm
    for number, line in enumerate(lines):
        if turned:
            at = (left + HEIGHT_MM + number * _PITCH_MM, (low + high) / 2)
        else:
            at = ((left + right) / 2, high - HEIGHT_MM - number * _PITCH_MM)
        canvas.text(at, line, turned=turned, backing=backing)
