"""The plane of section A-A: just off the middle, through the rails and not along a stud; its ends on the elevations.

Two short wide strokes outside the outline, with arrow and letter: ISO 128-3:2022 (from memory).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.drawings.hidden_lines import subtract
from service.drawings.primitives import Fill, Pen
from service.frame import Axis

if TYPE_CHECKING:
    from service.drawings.canvas import Canvas
    from service.frame import Frame

_STROKE_MM: Final = 6.0
_ARROW_MM: Final = 3.2
_LETTER_HEIGHT_MM: Final = 3.5
_OFF_STUD_TENTH_MM: Final = 200  # clear of the nearest stud, where there is that much room


def find_plane(frame: Frame) -> int:
    """Place of the plane along x, in tenths of a millimetre: in the gap between studs nearest to the middle of the frame."""
    width = frame.sizes.frame_width_tenth_mm
    studs = [(member.box.x0_tenth_mm, member.box.x1_tenth_mm) for member in frame.members if member.along is not Axis.X]
    joints = [(panel.box.x0_tenth_mm - 1, panel.box.x0_tenth_mm + 1) for panel in frame.panels if panel.joint_left]
    gaps = subtract((0, width), [*studs, *joints])[0]
    places = [_in_gap(gap, width // 2) for gap in gaps]
    return min(places, key=lambda place: (abs(place - width // 2), place))


def _in_gap(gap_tenth_mm: tuple[int, int], wanted_tenth_mm: int) -> int:
    low, high = gap_tenth_mm
    room = min(_OFF_STUD_TENTH_MM, (high - low) // 2)
    return min(max(wanted_tenth_mm, low + room), high - room)


def draw_plane_ends(canvas: Canvas, plane_tenth_mm: int, ends_mm: tuple[float, float]) -> None:
    """Strokes below and above all dimensions, arrows in the direction of sight: to the right."""
    x = canvas.mm(plane_tenth_mm)
    for end, sign in ((ends_mm[0], -1.0), (ends_mm[1], 1.0)):
        outer = end + sign * _STROKE_MM
        canvas.line((x, end), (x, outer), Pen.PLANE)
        canvas.line((x, outer), (x + 4.0, outer), Pen.NARROW)
        tip = x + 4.0 + _ARROW_MM
        canvas.polygon(((x + 4.0, outer - 1.0), (tip, outer), (x + 4.0, outer + 1.0)), None, Fill.SOLID)
        canvas.text((tip + 3.0, outer - _LETTER_HEIGHT_MM / 2), "A", height_mm=_LETTER_HEIGHT_MM)
