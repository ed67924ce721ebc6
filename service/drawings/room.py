"""Floor, wall and ceiling round a view, with their words."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.drawings.primitives import Anchor, Fill, Pen
from service.survey.floor import LowEnd
from service.units import text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.drawings.canvas import Canvas
    from service.frame import Frame

_OVER_MM: Final = 6.0  # how far floor and ceiling go past the frame
_WORD_MM: Final = 13.0  # how far they go at the left, under their words
_OFF_STROKE_MM: Final = 2.0  # above a line: clear of the strokes of the dimension chains on it

_WALL_OVER_TENTH_MM: Final = 1500  # how much of the wall is shown over a lid
_HATCH_MM: Final = 2.0
_HATCH_PITCH_MM: Final = 3.0


def draw_floor_front(canvas: Canvas, frame: Frame, job: Job, ends_mm: tuple[float, float]) -> None:
    """The floor under an elevation, falling to its low end, and the packers under the stations; ends: of the outline."""
    width = frame.sizes.frame_width_tenth_mm
    left, right = floor_at(job, 0, width), floor_at(job, width, width)
    canvas.line((ends_mm[0] - _WORD_MM, canvas.mm(left)), (ends_mm[1] + _OVER_MM, canvas.mm(right)), Pen.GROUND)
    canvas.text((ends_mm[0] - 1.8, canvas.mm(left) - 3.8), "floor", anchor=Anchor.END)
    thickness = job.timber.thickness_tenth_mm
    for station in frame.stations:
        if station.packer_tenth_mm and job.low_end in {LowEnd.LEFT, LowEnd.RIGHT, LowEnd.FRONT}:
            x0, x1 = canvas.mm(station.x_tenth_mm), canvas.mm(station.x_tenth_mm + thickness)
            canvas.rectangle((x0, canvas.mm(-station.packer_tenth_mm), x1, 0.0), None, Fill.SOLID)


def floor_at(job: Job, x_tenth_mm: int, width_tenth_mm: int) -> int:
    """Level of the floor along the front, below the highest point, as a straight line to its low end."""
    if job.low_end is LowEnd.RIGHT:
        return -job.fall_tenth_mm * x_tenth_mm // width_tenth_mm
    if job.low_end is LowEnd.LEFT:
        return -job.fall_tenth_mm * (width_tenth_mm - x_tenth_mm) // width_tenth_mm
    return -job.fall_tenth_mm if job.low_end is LowEnd.FRONT else 0


def fall_words(job: Job) -> str:
    """How the floor falls, as a sentence."""
    if job.low_end is LowEnd.UNKNOWN:
        return f"the floor falls by {text_mm(job.fall_tenth_mm)}; to which side was not said"
    return f"the floor falls by {text_mm(job.fall_tenth_mm)} to the {job.low_end.value}"


def draw_ceiling_front(canvas: Canvas, job: Job, ends_mm: tuple[float, float]) -> None:
    """The lowest point of the ceiling, over an elevation of a breast that goes up to it."""
    height = canvas.mm(job.clear_height_tenth_mm)
    canvas.line((ends_mm[0] - _WORD_MM, height), (ends_mm[1] + _OVER_MM, height), Pen.GROUND)
    canvas.text((ends_mm[0] - 1.8, height + _OFF_STROKE_MM), "ceiling", anchor=Anchor.END)


def draw_side_walls_front(canvas: Canvas, frame: Frame, job: Job) -> None:
    """The side walls that the breast stands against, on an elevation."""
    width, sizes = frame.sizes.frame_width_tenth_mm, frame.sizes
    top = canvas.mm(job.clear_height_tenth_mm if frame.full_height else frame.levels.finished_top_tenth_mm)
    for against, x, side in (
        (frame.left_wall, -sizes.beside_left_tenth_mm, -1.0),
        (frame.right_wall, width + sizes.beside_right_tenth_mm, 1.0),
    ):
        if not against:
            continue
        low, face = canvas.mm(floor_at(job, max(0, min(x, width)), width)), canvas.mm(x)
        canvas.line((face, low), (face, top), Pen.GROUND)
        for step in range(int((top - low - _HATCH_MM) // _HATCH_PITCH_MM) + 1):
            y = low + step * _HATCH_PITCH_MM
            canvas.line((face, y + _HATCH_MM), (face + side * _HATCH_MM, y), Pen.NARROW)
        canvas.text((face + side * 1.0, top + 1.1), "side wall", anchor=Anchor.START if side > 0 else Anchor.END)


def draw_room_section(canvas: Canvas, frame: Frame, job: Job, plane_tenth_mm: int) -> None:
    """Wall at the left, floor, and the ceiling over a breast that goes up to it."""
    depth = frame.sizes.finished_depth_tenth_mm
    at_wall, at_front = _floor_section(job, plane_tenth_mm, frame.sizes.frame_width_tenth_mm)
    shown = job.clear_height_tenth_mm if frame.full_height else frame.levels.finished_top_tenth_mm + _WALL_OVER_TENTH_MM
    top = min(job.clear_height_tenth_mm, shown)
    canvas.line((0.0, canvas.mm(at_wall)), (0.0, canvas.mm(top)), Pen.GROUND)
    _hatch_wall(canvas, canvas.mm(at_wall), canvas.mm(top))
    canvas.line((0.0, canvas.mm(at_wall)), (canvas.mm(depth) + _OVER_MM, canvas.mm(at_front)), Pen.GROUND)
    canvas.text((-_HATCH_MM - 1.0, canvas.mm(at_wall) - 3.6), "floor", anchor=Anchor.END)
    if frame.full_height:
        canvas.line((0.0, canvas.mm(top)), (canvas.mm(depth) + _OVER_MM, canvas.mm(top)), Pen.GROUND)
        canvas.text((2.0, canvas.mm(top) + 1.1), "ceiling", anchor=Anchor.START)
    canvas.text((-1.0, canvas.mm(top) + 1.1), "wall", anchor=Anchor.END)


def _floor_section(job: Job, plane_tenth_mm: int, width_tenth_mm: int) -> tuple[int, int]:
    """Level of the floor at the wall and at the front."""
    if job.low_end is LowEnd.BACK:
        return -job.fall_tenth_mm, 0
    if job.low_end is LowEnd.FRONT:
        return 0, -job.fall_tenth_mm
    level = floor_at(job, plane_tenth_mm, width_tenth_mm)
    return level, level


def _hatch_wall(canvas: Canvas, low_mm: float, high_mm: float) -> None:
    """Short strokes at 45 degrees behind the face of the wall."""
    count = int((high_mm - low_mm - _HATCH_MM) // _HATCH_PITCH_MM)
    for step in range(count + 1):
        y = low_mm + step * _HATCH_PITCH_MM
        canvas.line((-_HATCH_MM, y), (0.0, y + _HATCH_MM), Pen.NARROW)
