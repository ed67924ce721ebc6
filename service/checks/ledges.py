"""What people stand and lean on: sill, rail at the upstand, shelves and beams on the face (structure.md, 5.3 and 5.6)."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING, Final, NamedTuple

from service.checks.amounts import count, eurocode_5, force, house, length, moment, newton_metres
from service.checks.check import Check, Skipped
from service.checks.hung_weight import ON_THE_FRONT
from service.checks.timber import (
    Beam,
    bent,
    ends_of,
    moment_resistance_n_mm,
    of_roles,
    shear_resistance_n,
    stronger_classes,
)
from service.engineering import beams, deflection, fixing_groups
from service.frame import Axis, Role
from service.rules import LoadDuration
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground
    from service.frame import Member
    from service.survey.wishes import Extra

SILL: Final = "structure.sill_bending"
SILL_SHEAR: Final = "structure.sill_shear"
SILL_SAG: Final = "structure.sill_sag"
NOT_COUNTED: Final = "the wall fixings of this rail do not count yet: find the studs, or scan for cables"
SHELF: Final = "fixings.shelf_pull"
ON_STUDS: Final = "what holds it to the studs is not chosen: its brackets need a declared pull"
STANDING_ROLES: Final = frozenset({Role.CRIPPLE_BELOW, Role.FRONT_STUD, Role.JAMB_STUD, Role.CRIPPLE_ABOVE})
SHORT: Final = LoadDuration.SHORT
UNKNOWN_SHELF_MM: Final = 300.0  # taken where a shelf says no depth: house choice
UNKNOWN_LEVER_MM: Final = 40.0  # taken where it says no height: house choice, the thickness of a thick board
LEAST_STUDS: Final = 2


class Ledge(NamedTuple):
    """A rail that a person stands on between two things that hold it."""

    mark: str
    beam: Beam
    bay_mm: float
    load_n: float  # a person, characteristic
    unverified: str = ""


def ledge_checks(ground: Ground) -> tuple[Result, ...]:
    """Sill of the recess, or the rail at the upstand, between the cripples under it."""
    results: list[Result] = []
    for rail in of_roles(ground, Role.SILL_RAIL, Role.UPSTAND_RAIL):
        ledge = ledge_of(rail, ground.rules.actions.person_n, ground)
        results += [bend_ledge(SILL, ledge, ground), shear_ledge(SILL_SHEAR, ledge, ground), sag_ledge(SILL_SAG, ledge, ground)]
    return tuple(results)


def shelf_checks(ground: Ground) -> tuple[Result, ...]:
    """Shelves and beams that stand out of the face: the pull on their top fixings under a person at their edge."""
    extras = [one for one in ground.job.survey.brief.extras or () if one.kind in ON_THE_FRONT]
    if not extras:
        return (Skipped(code=SHELF, why="no shelf and no beam stands out of the face"),)
    return tuple(_shelf(extra, number, ground) for number, extra in enumerate(extras, 1))


def _shelf(extra: Extra, number: int, ground: Ground) -> Check:
    """A cantilever on a fixing at every stud that it crosses; its own height is the lever of these."""
    over_mm, lever_mm = extra.depth_mm or UNKNOWN_SHELF_MM, extra.height_mm or UNKNOWN_LEVER_MM
    width_mm, pitch_mm = extra.width_mm or 0.0, millimetres(ground.job.board.stud_pitch_tenth_mm)
    laid = next((ledge for ledge in ground.frame.ledges if ledge.kind == extra.kind.value), None)
    studs = laid.fixings_count if laid else max(LEAST_STUDS, math.floor(width_mm / pitch_mm) + 1)
    load_n = ground.rules.partial.variable_ratio * ground.rules.actions.person_n
    pull_n = fixing_groups.prying_tension_n(load_n, over_mm, lever_mm, studs)
    return Check(
        code=SHELF,
        subject=f"{extra.kind.value} {number}",
        says=f"{pull_n:.0f} N pull each of {studs} top fixings, a person at its edge {over_mm:.0f} mm before the face",
        demand=force("T_d", pull_n),
        resistance=None,
        clause=house("a person at the edge of a shelf"),
        inputs=(force("Q_k", ground.rules.actions.person_n), length("a", over_mm), length("z", lever_mm), count("n", studs)),
        unverified=ON_STUDS,
        remedy=f"brackets at {studs} studs with at least {math.ceil(pull_n)} N of pull each",
    )


def ledge_of(rail: Member, load_n: float, ground: Ground) -> Ledge:
    """A rail in its widest bay: a rear one between its wall fixings, a front one between what stands under it.

    Fixings that do not hold for certain (studs not found, cables not looked for) still say where the rail would be held.
    """
    if rail.box.y0_tenth_mm > 0:
        return Ledge(rail.mark, bent(rail, Axis.Z, ground), _widest_mm(rail, _standing_mm(rail, ground)), load_n)
    fixings = [one for one in ground.frame.wall_fixings if one.through == rail.mark]
    certain = [one for one in fixings if one.counted] or fixings
    places = [millimetres(one.x_tenth_mm) for one in certain]
    unverified = "" if all(one.counted for one in certain) else NOT_COUNTED
    return Ledge(rail.mark, bent(rail, Axis.Z, ground), _widest_mm(rail, places), load_n, unverified)


def _widest_mm(rail: Member, held_mm: list[float]) -> float:
    ends = ends_of(rail.box, Axis.X)
    places = sorted({ends[0], *(x for x in held_mm if ends[0] < x < ends[1]), ends[1]})
    return max(right - left for left, right in pairwise(places))


def _standing_mm(rail: Member, ground: Ground) -> list[float]:
    """Middles of the studs that end under a front rail."""
    under = [one for one in ground.frame.members if one.role in STANDING_ROLES and one.box.z1_tenth_mm == rail.box.z0_tenth_mm]
    return [sum(ends_of(one.box, Axis.X)) / 2 for one in under]


def bend_ledge(code: str, ledge: Ledge, ground: Ground) -> Check:
    """A person at mid bay; the rail's own weight is below 1 percent."""
    load_n = ground.rules.partial.variable_ratio * ledge.load_n
    demand = beams.point_moment_n_mm(load_n, ledge.bay_mm, ledge.bay_mm / 2)
    resistance = moment_resistance_n_mm(ledge.beam, SHORT, ground)
    return Check(
        code=code,
        subject=ledge.mark,
        says=f"{newton_metres(demand)} of {newton_metres(resistance)} under a person over {ledge.bay_mm:.1f} mm",
        demand=moment("M_d", demand),
        resistance=moment("M_Rd", resistance),
        clause=eurocode_5("6.1.6"),
        inputs=(
            length("bay", ledge.bay_mm), force("Q_k", ledge.load_n), length("b", ledge.beam.width_mm),
            length("h", ledge.beam.depth_mm),
        ),
        unverified=ledge.unverified,
        remedy=_closer(ledge, demand, resistance, ground),
    )  # fmt: skip


def _closer(ledge: Ledge, demand: float, resistance: float, ground: Ground) -> str:
    if demand <= resistance:
        return ""
    bay_mm = math.floor(ledge.bay_mm * resistance / demand)
    for stronger in stronger_classes(ledge.beam.strength, ground):
        if moment_resistance_n_mm(ledge.beam._replace(strength=stronger), SHORT, ground) >= demand:
            return f"held every {bay_mm} mm, or of {stronger.name}"
    return f"held every {bay_mm} mm"


def shear_ledge(code: str, ledge: Ledge, ground: Ground) -> Check:
    """A person beside a support."""
    demand = ground.rules.partial.variable_ratio * ledge.load_n
    resistance = shear_resistance_n(ledge.beam, SHORT, ground)
    return Check(
        code=code,
        subject=ledge.mark,
        says=f"{demand:.0f} N of {resistance:.0f} N in shear under a person beside a support",
        demand=force("V_d", demand),
        resistance=force("V_Rd", resistance),
        clause=eurocode_5("6.1.7"),
        inputs=(force("Q_k", ledge.load_n), length("b", ledge.beam.width_mm), length("h", ledge.beam.depth_mm)),
        unverified=ledge.unverified,
        remedy="" if demand <= resistance else "a thicker rail",
    )


def sag_ledge(code: str, ledge: Ledge, ground: Ground) -> Check:
    """A person at mid bay, for a short time."""
    sag_mm = deflection.point_sag_mm(ledge.load_n, ledge.bay_mm, ledge.bay_mm / 2, ledge.beam.stiffness_n_mm2)
    limit_mm = ledge.bay_mm / ground.rules.members.span_over_sag_hand_ratio
    bay_mm = math.floor(ledge.bay_mm * math.sqrt(limit_mm / sag_mm))
    return Check(
        code=code,
        subject=ledge.mark,
        says=f"sags {sag_mm:.2f} mm under a person, of {limit_mm:.2f} mm",
        demand=length("w_inst", sag_mm),
        resistance=length("w_max", limit_mm),
        clause=eurocode_5("7.2, Table 7.2"),
        inputs=(length("bay", ledge.bay_mm), force("Q_k", ledge.load_n)),
        unverified=ledge.unverified,
        remedy="" if sag_mm <= limit_mm else f"held every {bay_mm} mm",
    )
