"""Handling: masses, who lifts what, whether a frame can be tilted up. A filter, not a limit.

Rules: `knowledge/handling.md`, sections 1 and 4; `knowledge/labour.md`, section 2.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.frame import Unit

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame import Frame
    from service.rules import RuleSet

TENTHS3_PER_M3 = 1e12
TILT_CLEARANCE_MM = 15.0  # project choice (knowledge/handling.md, section 4)


class Lift(msgspec.Struct, frozen=True, kw_only=True):
    """One thing to be lifted, and what it takes."""

    what: str
    mass_kg: float
    zone: str  # waist, shoulder
    two_people_kg: float
    three_people_kg: float
    help: str  # none, third_person, lifter


def unit_mass_kg(frame: Frame, unit: Unit, rules: RuleSet) -> float:
    """Mass of the timber of one unit as it is lifted."""
    volume = sum(
        member.thickness_tenth_mm * member.width_tenth_mm * member.length_tenth_mm for member in frame.members if member.unit is unit
    )
    return volume / TENTHS3_PER_M3 * rules.handling.timber_density_kg_m3


def count_lifts(frame: Frame, job: Job, rules: RuleSet) -> tuple[Lift, ...]:
    """Every heavy thing of the job: base, upper frame, fire, screen."""
    hung = frame.left_open or frame.right_open
    lifts = []
    if frame.stations:
        lifts.append(_lift("base frame", unit_mass_kg(frame, Unit.BASE, rules), "waist", rules.handling.awkward_load_ratio, rules))
    lifts.append(_lift("upper frame", unit_mass_kg(frame, Unit.UPPER, rules), "shoulder" if hung else "waist", rules.handling.awkward_load_ratio, rules))
    lifts.append(_lift("fire", job.appliance.mass_kg, "waist", 1.0, rules))
    if job.screen:
        lifts.append(_lift("screen", job.screen.mass_kg, "shoulder", 1.0, rules))
    return tuple(lifts)


def _lift(what: str, mass_kg: float, zone: str, grasp_ratio: float, rules: RuleSet) -> Lift:  # noqa: PLR0913, PLR0917 - five facts of a lift
    at = rules.handling
    pair = (at.lift_shoulder_man_kg, at.lift_shoulder_woman_kg) if zone == "shoulder" else (at.lift_waist_man_kg, at.lift_waist_woman_kg)
    one_kg = sum(pair) / 2 * grasp_ratio
    two_kg, three_kg = one_kg * 2 * at.two_people_ratio, one_kg * 3 * at.three_people_ratio
    if mass_kg <= two_kg:
        needs = "none"
    else:
        needs = "third_person" if mass_kg <= three_kg else "lifter"
    return Lift(
        what=what, mass_kg=round(mass_kg, 1), zone=zone, two_people_kg=round(two_kg, 1), three_people_kg=round(three_kg, 1), help=needs
    )


def may_be_tilted(frame: Frame, job: Job) -> bool:
    """Whether the upper frame, built lying down, can be raised whole under the ceiling (`knowledge/handling.md`, section 4)."""
    if not frame.full_height:
        return True
    foot = frame.levels.appliance_top_tenth_mm if frame.left_open and frame.right_open else frame.levels.platform_tenth_mm
    height_mm = (frame.levels.upper_top_tenth_mm - foot) / 10
    depth_mm = frame.sizes.frame_depth_tenth_mm / 10
    room_mm = job.clear_height_tenth_mm / 10 - TILT_CLEARANCE_MM
    return height_mm**2 + depth_mm**2 <= room_mm**2
