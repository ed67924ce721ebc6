"""What stands beside the frame and is no part of it: the body of the fire and of the screen."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.drawings.canvas import write_in_clear
from service.drawings.primitives import Pen
from service.drawings.projection import area_of, seen_from_front
from service.frame import Box
from service.units import tenths, text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.drawings.canvas import Canvas
    from service.frame import Frame

_SHARES: Final = (0.6, 0.68, 0.52, 0.76, 0.44, 0.84, 0.36, 0.9, 0.28)  # of the height of a body, where its words are tried


def fire_box(frame: Frame, job: Job) -> Box:
    """The fire's body: on the platform, its front in the finished face (`knowledge/framing.md`, sections 2, 6 and 9)."""
    opening = next(opening for opening in frame.openings if opening.kind == "fire")
    width = tenths(job.appliance.body_width_mm)
    left = -job.inset_tenth_mm if frame.left_open else opening.x0_tenth_mm + job.gap_beside_tenth_mm
    return Box(
        x0_tenth_mm=left, x1_tenth_mm=left + width,
        y0_tenth_mm=job.depth_tenth_mm - tenths(job.appliance.body_depth_mm), y1_tenth_mm=job.depth_tenth_mm,
        z0_tenth_mm=opening.z0_tenth_mm, z1_tenth_mm=opening.z0_tenth_mm + tenths(job.appliance.body_height_mm),
    )  # fmt: skip


def screen_box(frame: Frame, job: Job) -> Box | None:
    """The screen's body in its recess; None without a screen that hangs in one."""
    opening = next((opening for opening in frame.openings if opening.kind == "recess"), None)
    if opening is None or job.screen is None:
        return None
    screen = job.screen
    width, height, depth = tenths(screen.body_width_mm), tenths(screen.body_height_mm), tenths(screen.body_depth_mm)
    left = (opening.x0_tenth_mm + opening.x1_tenth_mm - width) // 2
    low = opening.z0_tenth_mm + job.lining.thickness_tenth_mm + job.gaps.bottom_tenth_mm
    front = job.depth_tenth_mm - job.set_back_tenth_mm
    return Box(
        x0_tenth_mm=left, x1_tenth_mm=left + width, y0_tenth_mm=front - depth, y1_tenth_mm=front,
        z0_tenth_mm=low, z1_tenth_mm=low + height,
    )  # fmt: skip


def draw_neighbours_front(canvas: Canvas, frame: Frame, job: Job) -> None:
    """Both bodies as outlines on an elevation, with their words where no line runs."""
    ledges = [(ledge.box, ledge.kind) for ledge in frame.ledges]
    for box, words in ((fire_box(frame, job), fire_words(job)), (screen_box(frame, job), screen_words(job)), *ledges):
        if box is None:
            continue
        left, low, right, high = area_of(canvas, seen_from_front("", box))
        canvas.rectangle((left, low, right, high), Pen.NEIGHBOUR)
        write_in_clear(canvas, words, [((left + right) / 2, low + share * (high - low)) for share in _SHARES])


def fire_words(job: Job) -> str:
    """The fire in a few words."""
    return f"fire {_size(job.appliance.body_width_mm, job.appliance.body_height_mm)}"


def screen_words(job: Job) -> str:
    """The screen in a few words; empty without one."""
    return f"screen {_size(job.screen.body_width_mm, job.screen.body_height_mm)}" if job.screen else ""


def _size(width_mm: float, height_mm: float) -> str:
    return f"{text_mm(tenths(width_mm))} x {text_mm(tenths(height_mm))}"
