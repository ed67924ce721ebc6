"""Which views there are, and the one door that draws them."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING, Final

from service.drawings.board_elevation import draw_board_elevation
from service.drawings.front_elevation import draw_front_elevation
from service.drawings.picture import draw_frame_picture, draw_picture
from service.drawings.plan_view import draw_plan
from service.drawings.section import draw_section
from service.drawings.svg import write_svg
from service.units import TENTHS_PER_MM

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.brief import Job
    from service.drawings.primitives import Drawing
    from service.frame import Frame


class View(StrEnum):
    """The views of a frame."""

    FRONT_ELEVATION = "front_elevation"
    BOARD_ELEVATION = "board_elevation"
    SECTION = "section"
    PLAN = "plan"
    PICTURE = "picture"  # of the finished breast
    FRAME_PICTURE = "frame_picture"


VIEWS: Final[dict[View, Callable[[Frame, Job, int], Drawing]]] = {
    View.FRONT_ELEVATION: draw_front_elevation,
    View.BOARD_ELEVATION: draw_board_elevation,
    View.SECTION: draw_section,
    View.PLAN: draw_plan,
    View.PICTURE: draw_picture,
    View.FRAME_PICTURE: draw_frame_picture,
}
SCALES: Final = (10, 20)  # ISO 5455:1979, 5.1, those that a frame is drawn at
_SHEET_MM: Final = (277, 390)  # room inside the border of an A3 sheet, upright or lying (ISO 5457:1999, clause 4, from memory)
_ROUND_MM: Final = 60  # what dimensions and captions take beside the outline


def draw(frame: Frame, job: Job, view: View, *, scale_ratio: int | None = None, prefix: str = "") -> str:
    """One view of a frame as an SVG document, cropped to what it shows.

    Args:
        frame: as laid out.
        job: what the frame was laid out from; the fire, the screen and the room are drawn from it.
        view: which one.
        scale_ratio: 10 for 1:10; left out, 1:10 where the view then fits A3, else 1:20.
        prefix: goes before every id, for pages that embed several drawings.
    """
    return write_svg(VIEWS[view](frame, job, scale_ratio or fitting_scale(frame)), prefix=prefix)


def fitting_scale(frame: Frame) -> int:
    """The first scale at which an elevation fits A3; the last one if none does."""
    width, height = frame.sizes.frame_width_tenth_mm, frame.levels.finished_top_tenth_mm
    for scale in SCALES:
        sides = sorted(length / (TENTHS_PER_MM * scale) + _ROUND_MM for length in (width, height))
        if all(side <= room for side, room in zip(sides, _SHEET_MM, strict=True)):
            return scale
    return SCALES[-1]
