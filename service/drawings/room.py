"""Floor, wall and ceiling round a view, with their words."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from service.drawings.primitives import Anchor, Fill, Pen
from service.frame import off_at
from service.survey.floor import LowEnd
from service.units import tenths, text_mm

if TYPE_CHECKING:
    from service.brief import Job, Spot
    from service.drawings.canvas import Canvas
    from service.frame import Frame

_OVER_MM: Final = 6.0  # how far floor and ceiling go past the frame
_WORD_MM: Final = 13.0  # how far they go at the left, under their words
_OFF_STROKE_MM: Final = 2.0  # above a line: clear of the strokes of the dimension chains on it

_WALL_OVER_TENTH_MM: Final = 1500  # how much of the wall is shown over a lid
_OVER_WORD_MM: Final = 4.9
_OFF_WALL_MM: Final = 5.0  # clear of the edge of a board that is scribed off
_DRAWN_LEAN_MM: Final = 10.0  # the scribe of framing.md, section 1
_HATCH_MM: Final = 2.0
_HATCH_PITCH_MM: Final = 3.0


def draw_floor_front(canvas: Canvas, frame: Frame, job: Job, ends_mm: tuple[float, float]) -> None:
    """The floor under an elevation, falling to its low end, and the packers under the stations; ends: of the outline."""
    width = frame.sizes.frame_width_tenth_mm
    left = floor_at(job, 0, width)
    _surface(canvas, [(x, floor_at(job, x, width)) for x in _places(job.floor_front, width)], ends_mm)
    canvas.text((ends_mm[0] - 1.8, canvas.mm(left) - 3.8), "floor", anchor=Anchor.END)
    thickness = job.timber.thickness_tenth_mm
    for station in frame.stations:
        packer = station.front_packer_tenth_mm
        if packer and (job.floor_front or job.low_end in {LowEnd.LEFT, LowEnd.RIGHT, LowEnd.FRONT}):
            x0, x1 = canvas.mm(station.x_tenth_mm), canvas.mm(station.x_tenth_mm + thickness)
            canvas.rectangle((x0, canvas.mm(-packer), x1, 0.0), None, Fill.SOLID)


def floor_at(job: Job, x_tenth_mm: int, width_tenth_mm: int) -> int:
    """Level of the floor along the front, below the highest point: as measured, else by a straight line to its low end."""
    if job.floor_front:
        return -off_at(job.floor_front, x_tenth_mm)
    if job.low_end is LowEnd.RIGHT:
        return -job.fall_tenth_mm * x_tenth_mm // width_tenth_mm
    if job.low_end is LowEnd.LEFT:
        return -job.fall_tenth_mm * (width_tenth_mm - x_tenth_mm) // width_tenth_mm
    return -job.fall_tenth_mm if job.low_end is LowEnd.FRONT else 0


def fall_words(job: Job) -> str:
    """How the floor falls, as a sentence."""
    if job.floor_front:
        return f"the floor is uneven, up to {text_mm(job.fall_tenth_mm)} below its highest point"
    if job.low_end is LowEnd.UNKNOWN:
        return f"the floor falls by {text_mm(job.fall_tenth_mm)}; to which side was not said"
    return f"the floor falls by {text_mm(job.fall_tenth_mm)} to the {job.low_end.value}"


def draw_ceiling_front(canvas: Canvas, frame: Frame, job: Job, ends_mm: tuple[float, float]) -> None:
    """The ceiling over an elevation of a breast that goes up to it, as it is over the front of the frame."""
    places = _places(job.ceiling_front, frame.sizes.frame_width_tenth_mm)
    line = [(x, job.clear_height_tenth_mm + off_at(job.ceiling_front, x)) for x in places]
    _surface(canvas, line, ends_mm)
    height = canvas.mm(line[0][1])
    canvas.text((ends_mm[0] - 1.8, height + _OFF_STROKE_MM), "ceiling", anchor=Anchor.END)


def _places(spots: tuple[Spot, ...], width_tenth_mm: int) -> list[int]:
    """The ends of the frame and the points measured between them."""
    return [0, *(spot.x_tenth_mm for spot in spots if 0 < spot.x_tenth_mm < width_tenth_mm), width_tenth_mm]


def _surface(canvas: Canvas, line_tenth_mm: list[tuple[int, int]], ends_mm: tuple[float, float]) -> None:
    """A floor or ceiling through points, level beyond the frame."""
    points = [(canvas.mm(x), canvas.mm(z)) for x, z in line_tenth_mm]
    first_mm, last_mm = points[0][1], points[-1][1]
    if len({z for _x, z in points}) == 1:
        points = []
    points = [(ends_mm[0] - _WORD_MM, first_mm), *points, (ends_mm[1] + _OVER_MM, last_mm)]
    for first, second in pairwise(points):
        canvas.line(first, second, Pen.GROUND)


def highest_ceiling(frame: Frame, job: Job) -> int:
    """The highest that an elevation shows of the ceiling; the top of the frame in part height."""
    if not frame.full_height:
        return frame.levels.upper_top_tenth_mm
    return job.clear_height_tenth_mm + max((spot.off_tenth_mm for spot in job.ceiling_front), default=0)


def draw_side_walls_front(canvas: Canvas, frame: Frame, job: Job) -> None:
    """The side walls that the breast stands against, on an elevation."""
    width, sizes = frame.sizes.frame_width_tenth_mm, frame.sizes
    for against, x, side in (
        (frame.left_wall, -sizes.beside_left_tenth_mm, -1.0),
        (frame.right_wall, width + sizes.beside_right_tenth_mm, 1.0),
    ):
        if not against:
            continue
        low, face = canvas.mm(floor_at(job, max(0, min(x, width)), width)), canvas.mm(x)
        ceiling = job.clear_height_tenth_mm + off_at(job.ceiling_front, x)
        top = canvas.mm(ceiling if frame.full_height else frame.levels.finished_top_tenth_mm)
        canvas.line((face, low), (face, top), Pen.GROUND)
        for step in range(int((top - low - _HATCH_MM) // _HATCH_PITCH_MM) + 1):
            y = low + step * _HATCH_PITCH_MM
            canvas.line((face, y + _HATCH_MM), (face + side * _HATCH_MM, y), Pen.NARROW)
        over = _OVER_WORD_MM if side < 0 and frame.full_height else 1.1  # the word of the ceiling stands at the left
        canvas.text((face + side * _OFF_WALL_MM, top + over), "side wall", anchor=Anchor.START if side > 0 else Anchor.END)


def draw_room_section(canvas: Canvas, frame: Frame, job: Job, plane_tenth_mm: int) -> None:
    """Wall at the left, floor, and the ceiling over a breast that goes up to it."""
    depth = frame.sizes.finished_depth_tenth_mm
    at_wall, at_front = _floor_section(job, plane_tenth_mm, frame.sizes.frame_width_tenth_mm)
    shown = job.clear_height_tenth_mm if frame.full_height else frame.levels.finished_top_tenth_mm + _WALL_OVER_TENTH_MM
    top = min(job.clear_height_tenth_mm, shown)
    over = (off_at(job.ceiling_rear, plane_tenth_mm), off_at(job.ceiling_front, plane_tenth_mm)) if frame.full_height else (0, 0)
    top += over[0]
    foot_mm, head_mm = _lean(canvas, job)
    canvas.line((foot_mm, canvas.mm(at_wall)), (head_mm, canvas.mm(top)), Pen.GROUND)
    _hatch_wall(canvas, (foot_mm, canvas.mm(at_wall)), (head_mm, canvas.mm(top)))
    canvas.line((foot_mm, canvas.mm(at_wall)), (canvas.mm(depth) + _OVER_MM, canvas.mm(at_front)), Pen.GROUND)
    canvas.text((-_HATCH_MM - 1.0, canvas.mm(at_wall) - 3.6), "floor", anchor=Anchor.END)
    if frame.full_height:
        canvas.line((head_mm, canvas.mm(top)), (canvas.mm(depth) + _OVER_MM, canvas.mm(top + over[1] - over[0])), Pen.GROUND)
        canvas.text((2.0, canvas.mm(max(top, top + over[1] - over[0])) + 1.1), "ceiling", anchor=Anchor.START)
    canvas.text((-1.0, canvas.mm(top) + 1.1), "wall", anchor=Anchor.END)


def _floor_section(job: Job, plane_tenth_mm: int, width_tenth_mm: int) -> tuple[int, int]:
    """Level of the floor at the wall and at the front."""
    if job.floor_rear:
        return -off_at(job.floor_rear, plane_tenth_mm), -off_at(job.floor_front, plane_tenth_mm)
    if job.low_end is LowEnd.BACK:
        return -job.fall_tenth_mm, 0
    if job.low_end is LowEnd.FRONT:
        return 0, -job.fall_tenth_mm
    level = floor_at(job, plane_tenth_mm, width_tenth_mm)
    return level, level


def _lean(canvas: Canvas, job: Job) -> tuple[float, float]:
    """Where the wall stands at its foot and at its top, from a plumb line; a lean that the scribe takes is not drawn."""
    back_mm = -canvas.mm(tenths(job.lean_mm)) if job.lean_mm > _DRAWN_LEAN_MM else 0.0
    return (back_mm, 0.0) if job.leans_in else (0.0, back_mm)


def _hatch_wall(canvas: Canvas, foot_mm: tuple[float, float], head_mm: tuple[float, float]) -> None:
    """Short strokes at 45 degrees behind the face of the wall."""
    (x, low), (head, high) = foot_mm, head_mm
    lean = (head - x) / (high - low)
    count = int((high - low - _HATCH_MM) // _HATCH_PITCH_MM)
    for step in range(count + 1):
        up = step * _HATCH_PITCH_MM
        end = x + lean * (up + _HATCH_MM)
        canvas.line((end - _HATCH_MM, low + up), (end, low + up + _HATCH_MM), Pen.NARROW)
