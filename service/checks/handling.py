"""Handling: masses, who lifts what, whether a frame can be tilted up. A filter, not a limit.

Rules: `knowledge/handling.md`, sections 1 and 4; `knowledge/labour.md`, section 2.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.engineering import lifting, passing
from service.frame import Layer, Unit

if TYPE_CHECKING:
    from service.brief import Board, Job
    from service.frame import Frame, Panel
    from service.rules import RuleSet

TENTHS3_PER_M3 = 1e12
TENTHS2_PER_M2 = 1e8
TENTHS_PER_M = 1e4
WAIST, SHOULDER = "waist", "shoulder"
ZONES = {WAIST: "elbow_to_knuckle", SHOULDER: "shoulder_to_elbow"}  # of the lift filter
EASY_TO_GRASP = 1.0
FRAMES = frozenset({"base frame", "upper frame"})


class Lift(msgspec.Struct, frozen=True, kw_only=True):
    """One thing to be lifted, and what it takes."""

    what: str
    mass_kg: float
    zone: str  # waist, shoulder
    one_person_kg: float
    two_people_kg: float
    three_people_kg: float
    help: str  # none: the crew of two at most; third_person; lifter


def unit_mass_kg(frame: Frame, unit: Unit, rules: RuleSet) -> float:
    """Mass of the timber of one unit as it is lifted."""
    members = [member for member in frame.members if member.unit is unit]
    volume = sum(member.thickness_tenth_mm * member.width_tenth_mm * member.length_tenth_mm for member in members)
    return volume / TENTHS3_PER_M3 * rules.handling.timber_density_kg_m3


def count_lifts(frame: Frame, job: Job, rules: RuleSet) -> tuple[Lift, ...]:
    """Every heavy thing of the job: base, upper frame, fire, screen."""
    hung = frame.left_open or frame.right_open
    awkward = rules.handling.awkward_load_ratio
    base = [("base frame", unit_mass_kg(frame, Unit.BASE, rules), WAIST, awkward)] if frame.stations else []
    screen = [("screen", job.screen.mass_kg, SHOULDER, EASY_TO_GRASP)] if job.screen else []
    things = (
        *base,
        ("upper frame", unit_mass_kg(frame, Unit.UPPER, rules), SHOULDER if hung else WAIST, awkward),
        ("fire", job.appliance.mass_kg, WAIST, EASY_TO_GRASP),
        *screen,
    )
    return tuple(_lift((what, zone), mass_kg, grasp_ratio, rules) for what, mass_kg, zone, grasp_ratio in things)


def lifter_days(lifts: tuple[Lift, ...]) -> int:
    """Days of hire: frames are lifted on one day, fire and screen on a later one."""
    lifted = {lift.what for lift in lifts if lift.help == "lifter"}
    return bool(lifted & FRAMES) + bool(lifted - FRAMES)


def boards_for_two(frame: Frame, job: Job, rules: RuleSet) -> tuple[str, ...]:
    """Marks of the facing boards and lids that two people carry and fix (`knowledge/handling.md`, section 1)."""
    boards = {Layer.FACING: job.board, Layer.LID: job.lid}
    return tuple(
        panel.mark for panel in frame.panels if panel.layer in boards and _wants_two(panel, boards[panel.layer], rules)
    )  # fmt: skip


def may_be_tilted(frame: Frame, job: Job, rules: RuleSet) -> bool:
    """Whether the upper frame, built lying down, can be raised whole under the ceiling (`knowledge/handling.md`, section 4)."""
    return not frame.full_height or tilt_reach_mm(frame) <= tilt_room_mm(job, rules)


def tilt_reach_mm(frame: Frame) -> float:
    """How high the far corner of the upper frame comes while it is raised about its lower edge."""
    foot = frame.levels.appliance_top_tenth_mm if frame.left_open and frame.right_open else frame.levels.platform_tenth_mm
    return passing.swing_reach_mm((frame.levels.upper_top_tenth_mm - foot) / 10, frame.sizes.frame_depth_tenth_mm / 10)


def tilt_room_mm(job: Job, rules: RuleSet) -> float:
    """Height of the room that a frame may be raised in."""
    return job.clear_height_tenth_mm / 10 - rules.access.tilt_clearance_mm


def one_person_kg(zone: str, rules: RuleSet) -> float:
    """What one of a mixed crew lifts with the hands in a zone of the lift filter, close to the body."""
    row = rules.lift_zone(zone)
    return lifting.mixed_mass_kg(row.man_close_kg, row.woman_close_kg)


def _lift(named: tuple[str, str], mass_kg: float, grasp_ratio: float, rules: RuleSet) -> Lift:
    what, zone = named
    one_kg = one_person_kg(ZONES[zone], rules) * grasp_ratio
    two_kg, three_kg = lifting.team_mass_kg((one_kg,) * 2), lifting.team_mass_kg((one_kg,) * 3)
    needs = "lifter" if mass_kg > three_kg else "third_person"
    return Lift(
        what=what,
        mass_kg=round(mass_kg, 1),
        zone=zone,
        one_person_kg=round(one_kg, 1),
        two_people_kg=round(two_kg, 1),
        three_people_kg=round(three_kg, 1),
        help="none" if mass_kg <= two_kg else needs,
    )


def _wants_two(panel: Panel, board: Board, rules: RuleSet) -> bool:
    """Over an area, long and heavy, or above what one person lifts to the shoulder; cut-outs are out before it is lifted."""
    at = rules.handling
    area_m2 = panel.width_tenth_mm * panel.height_tenth_mm / TENTHS2_PER_M2
    holes_m2 = sum(hole.width_tenth_mm * hole.height_tenth_mm for hole in panel.cut_outs) / TENTHS2_PER_M2
    mass_kg = (area_m2 - holes_m2) * board.mass_kg_m2
    long_m = max(panel.width_tenth_mm, panel.height_tenth_mm) / TENTHS_PER_M
    heavy = mass_kg > one_person_kg(ZONES[SHOULDER], rules) * at.awkward_load_ratio
    return area_m2 > at.two_person_board_m2 or heavy or (long_m > at.two_person_length_m and mass_kg > at.two_person_mass_kg)
