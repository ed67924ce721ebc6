"""Dimetric pictures: the finished breast for a customer, the timber frame for a fitter.

Axes at 7 and 42 degrees, 1:1:1/2 (ISO 5456-3:1996, dimetric axonometry, from memory), seen from the left, the front and above.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from service.drawings.canvas import Canvas
from service.drawings.painter import Projection, paint_order
from service.drawings.primitives import Fill, Pen
from service.drawings.solids import Side, Stuff, boards, bodies, ceiling_cap, timbers
from service.units import TENTHS_PER_MM, text_mm

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from service.brief import Job
    from service.drawings.primitives import Drawing, PointMm
    from service.drawings.solids import Solid
    from service.frame import Frame

FLAT_DEG, STEEP_DEG, STEEP_RATIO = 7.0, 42.0, 0.5  # ISO 5456-3:1996, from memory
ROOM_TENTH_MM: Final = 3_000  # of the room's edge beside the breast
LOOKS: Final = {  # front, side, top
    Stuff.BASE: (Fill.BASE, Fill.BASE_SIDE, Fill.BASE_TOP),
    Stuff.UPPER: (Fill.UPPER, Fill.UPPER_SIDE, Fill.UPPER_TOP),
    Stuff.BOARD: (Fill.BOARD, Fill.BOARD_SIDE, Fill.BOARD_TOP),
    Stuff.INSIDE: (Fill.BEHIND, Fill.BOARD_SIDE, Fill.BOARD_SIDE),
    Stuff.FIRE: (Fill.GLASS, Fill.GLASS_SIDE, Fill.GLASS_SIDE),
    Stuff.SCREEN: (Fill.GLASS, Fill.GLASS_SIDE, Fill.GLASS_SIDE),
    Stuff.CEILING: (Fill.PAPER, Fill.PAPER, Fill.PAPER),
}


def dimetric(scale_ratio: int) -> Projection:
    """The projection at a scale."""
    each = 1 / (TENTHS_PER_MM * scale_ratio)
    flat, steep = math.radians(FLAT_DEG), math.radians(STEEP_DEG)
    return Projection(
        x_mm=(each * math.cos(flat), each * math.sin(flat)),
        y_mm=(each * STEEP_RATIO * math.cos(steep), -each * STEEP_RATIO * math.sin(steep)),
        z_mm=(0.0, each),
        nearer=(-1, 1, 1),
    )


def draw_picture(frame: Frame, job: Job, scale_ratio: int) -> Drawing:
    """The breast as the customer will see it."""
    sizes, levels = frame.sizes, frame.levels
    size = f"{text_mm(sizes.finished_width_tenth_mm)} wide, {text_mm(levels.finished_top_tenth_mm)} high"
    words = f"False chimney breast, {size}, {text_mm(sizes.finished_depth_tenth_mm)} deep; fire {_body(job)}{_screen(job)}."
    solids = (*boards(frame), *bodies(frame, job), *ceiling_cap(frame))
    return _picture(solids, scale_ratio, ("picture", "The finished breast", words))


def draw_frame_picture(frame: Frame, job: Job, scale_ratio: int) -> Drawing:
    """The timber frame without its boards."""
    sizes = frame.sizes
    words = (
        f"Timber frame, {text_mm(sizes.frame_width_tenth_mm)} wide, {text_mm(frame.levels.upper_top_tenth_mm)} high: "
        f"{len(frame.members)} timbers, around a fire {_body(job)}."
    )
    return _picture(timbers(frame), scale_ratio, ("frame-picture", "The timber frame", words))


def _picture(solids: Sequence[Solid], scale_ratio: int, named: tuple[str, str, str]) -> Drawing:
    view = dimetric(scale_ratio)
    canvas = Canvas(scale_ratio)
    canvas.group("room")
    left, right = min(one.box.x0_tenth_mm for one in solids), max(one.box.x1_tenth_mm for one in solids)
    for start, end in ((left - ROOM_TENTH_MM, left), (right, right + ROOM_TENTH_MM)):
        canvas.line(view.point_mm(start, 0, 0), view.point_mm(end, 0, 0), Pen.VISIBLE)  # where wall and floor meet
    canvas.group("solids")
    paint(canvas, paint_order(solids, view), view)
    return canvas.finish(*named)


def paint(canvas: Canvas, solids: Iterable[Solid], view: Projection) -> None:
    """Paint boxes in their order: the three faces that are seen, each with the edges where nothing goes on."""
    for solid in solids:
        front, side, top = LOOKS[solid.stuff]
        for corners, fill, edges in _faces(solid, view, (front, side, top)):
            canvas.polygon(corners, None, fill)
            for start, end, drawn in edges:
                if drawn:
                    canvas.line(start, end, Pen.NARROW)


type _Face = tuple[tuple[PointMm, ...], Fill, tuple[tuple[PointMm, PointMm, bool], ...]]


def _faces(solid: Solid, view: Projection, fills: tuple[Fill, Fill, Fill]) -> list[_Face]:
    at, joined = solid.box, solid.joined
    x, y, z = (at.x0_tenth_mm, at.x1_tenth_mm), (at.y0_tenth_mm, at.y1_tenth_mm), (at.z0_tenth_mm, at.z1_tenth_mm)
    point = view.point_mm
    front = (point(x[0], y[1], z[0]), point(x[1], y[1], z[0]), point(x[1], y[1], z[1]), point(x[0], y[1], z[1]))
    faces = [_face(front, fills[0], joined, (Side.LOW, Side.RIGHT, Side.HIGH, Side.LEFT))]
    if Side.LEFT not in joined:
        left = (point(x[0], y[0], z[0]), point(x[0], y[1], z[0]), point(x[0], y[1], z[1]), point(x[0], y[0], z[1]))
        faces.append(_face(left, fills[1], joined, (Side.LOW, None, Side.HIGH, None)))
    if Side.HIGH not in joined:
        top = (point(x[0], y[1], z[1]), point(x[1], y[1], z[1]), point(x[1], y[0], z[1]), point(x[0], y[0], z[1]))
        faces.append(_face(top, fills[2], joined, (None, Side.RIGHT, None, Side.LEFT)))
    return faces


def _face(corners: tuple[PointMm, ...], fill: Fill, joined: frozenset[Side], sides: tuple[Side | None, ...]) -> _Face:
    ends = (*corners[1:], corners[0])
    edges = tuple((start, end, side not in joined) for start, end, side in zip(corners, ends, sides, strict=True))
    return corners, fill, edges


def _body(job: Job) -> str:
    return f"{job.appliance.body_width_mm:g} x {job.appliance.body_height_mm:g}"


def _screen(job: Job) -> str:
    return f", screen {job.screen.diagonal_in:g} in" if job.screen else ""
