"""The lines under a view: what it is, its scale, how its sizes are meant, and lists."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.drawings.canvas import DIMENSION_HEIGHT_MM, TITLE_HEIGHT_MM
from service.drawings.primitives import Anchor
from service.drawings.text_widths import wrap

if TYPE_CHECKING:
    from collections.abc import Sequence

    from service.drawings.canvas import Canvas

type Note = str | tuple[str, ...]  # a sentence, or a heading and its entries

_PITCH_MM: Final = 4.4
_LEAST_WIDTH_MM: Final = 95.0


def write_caption(canvas: Canvas, title: str, notes: Sequence[Note]) -> None:
    """Title with scale, then notes, under everything drawn so far, no wider than the view; entries keep together."""
    canvas.group("caption")
    left, low, right, _ = canvas.area()
    left += 3.0
    width = max(right - left - 3.0, _LEAST_WIDTH_MM)
    y = low - 5.0
    for line in _fold(title.upper(), TITLE_HEIGHT_MM, width):
        canvas.text((left, y), line, anchor=Anchor.START, height_mm=TITLE_HEIGHT_MM)
        y -= _PITCH_MM + 1.2
    for note in (f"SCALE 1:{canvas.scale_ratio}, dimensions in mm", *notes):
        for line in _fold(note, DIMENSION_HEIGHT_MM, width):
            canvas.text((left, y), line, anchor=Anchor.START)
            y -= _PITCH_MM


def _fold(note: Note, height_mm: float, width_mm: float) -> list[str]:
    if isinstance(note, str):
        return wrap(note.split(" "), height_mm, width_mm)
    head, *entries = note
    listed = [head, *(f"{entry};" for entry in entries[:-1]), *entries[-1:]]
    return [line for entry in wrap(listed, height_mm, width_mm) for line in wrap(entry.split(" "), height_mm, width_mm)]
