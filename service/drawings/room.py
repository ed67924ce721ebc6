"""Floor, wall and ceiling round a view, with their words."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.drawings.primitives import Anchor, Fill, Pen
from service.survey.floor import LowEnd

if TYPE_CHECKING:
    from service.brief import Job
    from service.drawings.canvas import Canvas
    from service.frame import Frame

_OVER_MM: Final = 6.0  # how far floor and ceiling go past the frame
_WORD_MM: Final = 12.5  # room for their words, at the left


def draw_floor_front(canvas: Canvas, frame: Frame, job: Job) -> None:
    """The floor under the front of the frame, falling to its low end, and the packers under the stations."""
    width = frame.sizes.frame_width_tenth_mm
    left, right = floor_at(job, 0, width), floor_at(job, width, width)
    canvas.line((-_WORD_MM, canvas.mm(left)), (canvas.mm(width) + _OVER_MM, canvas.mm(right)), Pen.GROUND)
    canvas.text((-2.0, canvas.mm(left) - 3.6), "floor", anchor=Anchor.END)
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


def draw_ceiling(canvas: Canvas, job: Job, width_tenth_mm: int) -> None:
    """The lowest point of the ceiling, over a breast that goes up to it."""
    height = canvas.mm(job.clear_height_tenth_mm)
    canvas.line((-_WORD_MM, height), (canvas.mm(width_tenth_mm) + _OVER_MM, height), Pen.GROUND)
    canvas.text((-2.0, height + 1.1), "ceiling", anchor=Anchor.END)
