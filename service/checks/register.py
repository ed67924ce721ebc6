"""Every check, in the order of the report. A check takes the ground and yields its results; one that does not apply says why."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.arm import arm_checks
from service.checks.bearers import bearer_checks
from service.checks.board_joints import board_joint_checks
from service.checks.check import Check, Skipped
from service.checks.clearances import clearance_checks, zone_checks
from service.checks.cold_wall import damp_checks
from service.checks.floor_load import floor_checks
from service.checks.handling_checks import lifting_checks, replacement_checks, way_in_checks
from service.checks.hanging import hanging_checks
from service.checks.heavy_things import mass_checks
from service.checks.joint_screws import joint_screw_checks
from service.checks.ledges import ledge_checks, shelf_checks
from service.checks.lid import lid_checks
from service.checks.linings import lining_checks
from service.checks.pipes import pipe_checks
from service.checks.platform import platform_checks
from service.checks.rail_ends import rail_end_checks
from service.checks.report import Report
from service.checks.standing_up import standing_checks
from service.checks.supply import cable_checks, load_checks
from service.checks.trimmer import trimmer_checks
from service.checks.uprights import upright_checks
from service.checks.viewing import viewing_checks
from service.checks.void_heat import recess_checks, void_checks
from service.checks.wall_distances import wall_distance_checks

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.checks.check import Result
    from service.checks.ground import Ground

REGISTER: Final[tuple[Callable[[Ground], tuple[Result, ...]], ...]] = (
    platform_checks,
    trimmer_checks,
    bearer_checks,
    arm_checks,
    upright_checks,
    ledge_checks,
    lid_checks,
    rail_end_checks,
    joint_screw_checks,
    hanging_checks,
    wall_distance_checks,
    standing_checks,
    shelf_checks,
    board_joint_checks,
    floor_checks,
    mass_checks,
    pipe_checks,
    clearance_checks,
    zone_checks,
    void_checks,
    recess_checks,
    damp_checks,
    lining_checks,
    load_checks,
    cable_checks,
    viewing_checks,
    way_in_checks,
    lifting_checks,
    replacement_checks,
)


def check(ground: Ground) -> Report:
    """Run every check of the register on one design."""
    results = [result for run in REGISTER for result in run(ground)]
    return Report(
        checks=tuple(one for one in results if isinstance(one, Check)),
        skipped=tuple(one for one in results if isinstance(one, Skipped)),
    )
