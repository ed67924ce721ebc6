"""What hangs on the screen bearers: screen and bracket, and the backboard itself (structure.md, 5.4 and 5.5).

Of two bearers the top one takes all of the weight and of the pull-out; with a third one half way the two upper ones share the
weight, and the pull in proportion to their height over the lowest: project choice.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.checks.hung_weight import SIZE_CLASS
from service.checks.masses import member_kg, panel_kg, weight_n
from service.checks.timber import Beam, bent, length_mm, of_roles
from service.engineering import fixing_groups
from service.frame import Axis, Layer, Role
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.ground import Ground
    from service.frame import Member

ARM: Final = "arm"
MM2_PER_M2: Final = 1e6
PAIR: Final = 2


class BearerLoad(msgspec.Struct, frozen=True, kw_only=True):
    """The top bearer and what it carries; forces are characteristic."""

    mark: str
    beam: Beam
    bearer_count: int
    span_mm: float
    rows_mm: float  # z: from lowest to top bearer, or between the hole rows of the bracket where one bearer takes both
    share_ratio: float  # of the weight of the screen on the top bearer
    pull_ratio: float  # of the pull-out on it
    lever_mm: float  # e: face of the bearer to the centre of gravity of the screen, an arm out
    screen_n: float  # screen and bracket
    uniform_n: float  # the bearer itself and its share of the backboard
    assumed: str = ""

    def pull_n(self, load_n: float) -> float:
        """Pull-out on the top bearer by a load at the screen."""
        return self.pull_ratio * load_n * self.lever_mm / self.rows_mm


def bearer_load(ground: Ground) -> BearerLoad | None:
    """None without a screen on the frame."""
    bearers = sorted(of_roles(ground, Role.SCREEN_BEARER), key=lambda member: member.box.z0_tenth_mm)
    job = ground.job
    if not bearers or job.screen is None or job.bracket is None:
        return None
    top = bearers[-1]
    board_kg = sum(panel_kg(panel, job) for panel in ground.frame.panels if panel.layer is Layer.BACKBOARD)
    own_kg = member_kg(top, ground.rules.actions.hung_timber_kg_m3)
    screen_kg, assumed = _screen_kg(ground)
    rows_mm = _rows_mm(bearers, ground)
    return BearerLoad(
        mark=top.mark,
        beam=bent(top, Axis.Z, ground),
        bearer_count=len(bearers),
        span_mm=length_mm(top),
        rows_mm=rows_mm[-1],
        share_ratio=1.0 if len(bearers) <= PAIR else 1.0 / (len(bearers) - 1),
        pull_ratio=rows_mm[-1] ** 2 / fixing_groups.sum_of_squares_mm2(rows_mm),
        lever_mm=millimetres(job.backboard.thickness_tenth_mm) + job.bracket.reach_mm + job.screen.body_depth_mm / 2,
        screen_n=weight_n(screen_kg),
        uniform_n=weight_n(own_kg + board_kg / len(bearers)),
        assumed=assumed,
    )


def _rows_mm(bearers: list[Member], ground: Ground) -> tuple[float, ...]:
    """Heights of the bearers over the lowest; of a single one the rows of the bracket."""
    if len(bearers) == 1:
        return (ground.job.bracket.plate_hole_height_mm if ground.job.bracket else 0.0,)
    middles = [(one.box.z0_tenth_mm + one.box.z1_tenth_mm) / 20 for one in bearers]
    return tuple(middle - middles[0] for middle in middles[1:])


def _screen_kg(ground: Ground) -> tuple[float, str]:
    """Screen and bracket; a screen that is known by its size only is taken by its area."""
    screen, bracket = ground.job.screen, ground.job.bracket
    declared_kg = (screen.mass_kg if screen else 0.0) + (bracket.mass_kg if bracket else 0.0)
    if screen is None or ground.job.screen_standing != SIZE_CLASS:
        return declared_kg, ""
    by_area_kg = ground.rules.actions.unknown_screen_kg_m2 * screen.body_width_mm * screen.body_height_mm / MM2_PER_M2
    return max(declared_kg, by_area_kg), "assumed mass of a screen that is known by its size only"
