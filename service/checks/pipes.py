"""Wall fixings and the pipes that were told (`knowledge/survey.md`, section 7)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from service.checks.check import Check, Quantity, Skipped
from service.rules import Source
from service.survey.services import Services

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground
    from service.survey.services import Pipe

PIPES = "fixings.pipes"

KEEP_OFF: Final = Source(document="common practice, no source", clause="no drilling near pipes")


def pipe_checks(ground: Ground) -> tuple[Result, ...]:
    """How near a wall fixing comes to a pipe; every fixing is drilled, counted or not."""
    pipes = (ground.job.survey.services or Services()).pipes or ()
    fixings = ground.frame.wall_fixings
    if not pipes or not fixings:
        return (Skipped(code=PIPES, why="no pipe was told in this wall" if fixings else "nothing is fixed to this wall"),)
    left_mm = (ground.job.wall_centre_tenth_mm - ground.frame.sizes.frame_width_tenth_mm / 2) / 10
    places = [(left_mm + one.x_tenth_mm / 10, one.z_tenth_mm / 10) for one in fixings]
    near_mm = [min(distance_mm(x, z, pipe) for pipe in pipes) for x, z in places]
    asked_mm, there_mm = ground.rules.walls.pipe_clear_mm, min(near_mm)
    count = sum(1 for each in near_mm if each < asked_mm)
    return (
        Check(
            code=PIPES, subject="wall fixings", clause=KEEP_OFF,
            says=f"the nearest wall fixing is {there_mm:.0f} mm from a pipe",
            demand=Quantity(symbol="asked", value=asked_mm, unit="mm"),
            resistance=Quantity(symbol="nearest", value=there_mm, unit="mm"),
            remedy=f"move the pipe, or the breast: {count} fixings are nearer than {asked_mm:g} mm" if count else "",
        ),
    )  # fmt: skip


def distance_mm(x_mm: float, z_mm: float, pipe: Pipe) -> float:
    """From a point of the wall to the run of a pipe: the foot on the line between its ends, or the nearer end."""
    along_mm, up_mm = pipe.x1_mm - pipe.x0_mm, pipe.z1_mm - pipe.z0_mm
    length_mm2 = along_mm**2 + up_mm**2
    share = ((x_mm - pipe.x0_mm) * along_mm + (z_mm - pipe.z0_mm) * up_mm) / length_mm2 if length_mm2 else 0.0
    share = min(max(share, 0.0), 1.0)
    return math.hypot(x_mm - pipe.x0_mm - share * along_mm, z_mm - pipe.z0_mm - share * up_mm)
