"""Screws of joints as the bill buys them: grip, room to edges, drilling first, splitting (`knowledge/fixings.md`, 1.4 to 1.7)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from service.checks.amounts import eurocode_5, force, length
from service.checks.bearer_load import bearer_load
from service.checks.check import Check, Skipped
from service.checks.pulled_screws import diameter_of
from service.checks.timber import Beam, bent, joint_n, of_roles
from service.checks.trimmer_load import trimmer_of
from service.checks.trimmer_slip import on_jacks
from service.engineering import shear, spacing
from service.frame import Axis, Role
from service.rules import LoadDuration
from service.units import millimetres

if TYPE_CHECKING:
    from service.catalogue import Material
    from service.checks.check import Result
    from service.checks.ground import Ground

GRIP: Final = "fixings.screw_grip"
DISTANCES: Final = "fixings.screw_distances"
SPLITTING: Final = "fixings.splitting"
NOT_SOLD: Final = "no screw that is sold passes it and grips behind it"
ACROSS_DEG: Final = 90.0
DRILL_FIRST: Final = "drill first"


class Joint(NamedTuple):
    """A kind of joint: what its screws pass, and how near they come to an edge."""

    name: str
    screw: Material | None
    passed_mm: float
    edge_mm: float | None  # None: not driven beside an edge
    carries: bool  # False: it places things that something else holds


def joint_screw_checks(ground: Ground) -> tuple[Result, ...]:
    """Every kind of joint screw, then what may split where a load hangs."""
    joints = _joints(ground)
    return (
        *(_grip(joint, ground) for joint in joints),
        *(_distance(joint, ground) for joint in joints if joint.edge_mm is not None and joint.screw is not None),
        *_over_jacks(ground),
        *_splitting(ground),
    )


def _joints(ground: Ground) -> tuple[Joint, ...]:
    """Pairs through the narrow side stand at quarters of the wide one; through the wide side they stand on its middle line."""
    bought = ground.hardware
    b_mm, d_mm = millimetres(ground.job.timber.thickness_tenth_mm), millimetres(ground.job.timber.width_tenth_mm)
    plate_mm = (bought.bracket.thickness_mm if bought.bracket else None) or 0.0
    listed = [
        Joint(f"joints through {b_mm:g} mm", bought.narrow_screw, b_mm, d_mm / 4, carries=False),
        Joint(f"joints through {d_mm:g} mm", bought.wide_screw, d_mm, b_mm / 2, carries=False),
        Joint("brackets", bought.bracket_screw, plate_mm, None, carries=True),
    ]
    if ground.frame.ply_count:
        listed.append(Joint("plies", bought.laminating_screw, b_mm, None, carries=False))
    return tuple(listed)


def _grip(joint: Joint, ground: Ground) -> Check:
    """Plies are glued besides, so that short screws there are told and not refused."""
    glued = joint.name == "plies"
    if joint.screw is None:
        return Check(
            code=GRIP, subject=joint.name, says=f"{joint.name}: {NOT_SOLD}", demand=length("grip", 0.0), resistance=None,
            clause=eurocode_5("8.7.2(3)"), binding=not glued, unverified=NOT_SOLD,
            remedy=f"sell a screw longer than {joint.passed_mm:g} mm by six times its diameter",
        )  # fmt: skip
    wanted_mm = ground.rules.screws.point_over_diameter_ratio * diameter_of(joint.screw)
    there_mm = max(0.0, (joint.screw.length_mm or 0.0) - joint.passed_mm)
    return Check(
        code=GRIP,
        subject=joint.name,
        says=f"{joint.screw.description} grips {there_mm:g} mm behind {joint.passed_mm:g} mm, at least {wanted_mm:g} mm asked",
        demand=length("l_2", wanted_mm),
        resistance=length("l", there_mm),
        clause=eurocode_5("8.3.1.2(2), 8.7.2(3)"),
        inputs=(length("d", diameter_of(joint.screw)), length("t_1", joint.passed_mm)),
        binding=not glued,
        remedy="" if wanted_mm <= there_mm else f"screws of at least {math.ceil(joint.passed_mm + wanted_mm)} mm",
    )


def _distance(joint: Joint, ground: Ground) -> Check:
    """Room to the edge of the timber under the head; less than the plain distance asks for a drilled hole."""
    diameter_mm = diameter_of(joint.screw) if joint.screw else 0.0
    there_mm = joint.edge_mm or 0.0
    asked_mm = spacing.free_edge_mm(diameter_mm, predrilled=True)
    first = _drilled_first(joint, there_mm, ground)
    return Check(
        code=DISTANCES,
        subject=joint.name,
        says=f"screws of {diameter_mm:g} mm stand {there_mm:g} mm from the edge, at least {asked_mm:g} mm asked in a drilled hole"
        + (f": {DRILL_FIRST}" if first else ""),
        demand=length("a_4,c", asked_mm),
        resistance=length("there", there_mm),
        clause=eurocode_5("8.3.1.2(5), Table 8.2, and (8.18)"),
        inputs=(length("d", diameter_mm), length("a_4,c plain", spacing.free_edge_mm(diameter_mm, predrilled=False))),
        binding=joint.carries,
        remedy=""
        if asked_mm <= there_mm
        else f"screws of at most {math.floor(10 * there_mm / asked_mm * diameter_mm) / 10:g} mm",
    )


def _thinner_mm(diameter_mm: float, room_ratio: float) -> float:
    """The distance grows with the diameter; to a tenth of a millimetre."""
    return math.floor(10 * room_ratio * diameter_mm) / 10


def _drilled_first(joint: Joint, there_mm: float, ground: Ground) -> bool:
    diameter_mm = diameter_of(joint.screw) if joint.screw else 0.0
    density = ground.rules.strength_class(ground.job.timber.strength_class).density_kg_m3
    thick = spacing.must_be_predrilled(diameter_mm, density, joint.passed_mm)
    return thick or there_mm < spacing.free_edge_mm(diameter_mm, predrilled=False)


def _over_jacks(ground: Ground) -> tuple[Result, ...]:
    """Screws that hand a ply's share to the rail over a jack: its upper edge is the loaded one, its lower one is pressed."""
    plies, screw = of_roles(ground, Role.TRIMMER_PLY), ground.hardware.narrow_screw
    if not plies or screw is None or not on_jacks(ground):
        return ()
    diameter_mm = diameter_of(screw)
    there_mm = bent(plies[0], Axis.Z, ground).depth_mm - _screw_height_mm(ground)
    asked_mm = spacing.loaded_edge_mm(diameter_mm, ACROSS_DEG, predrilled=True)
    return (
        Check(
            code=DISTANCES,
            subject=plies[0].mark,
            says=f"screws at the jack stand {there_mm:g} mm under the upper edge of the ply, at least {asked_mm:g} mm asked: "
            f"{DRILL_FIRST}",
            demand=length("a_4,t", asked_mm),
            resistance=length("there", there_mm),
            clause=eurocode_5("8.3.1.2(5), Table 8.2"),
            inputs=(length("d", diameter_mm), length("h", bent(plies[0], Axis.Z, ground).depth_mm)),
            remedy="" if asked_mm <= there_mm else "plies of a deeper section, or brackets at the jacks",
        ),
    )


def _screw_height_mm(ground: Ground) -> float:
    """Of the screws over the jack: the middle of the flat rail."""
    return bent(of_roles(ground, Role.TRIMMER)[0], Axis.Z, ground).depth_mm / 2


def _splitting(ground: Ground) -> tuple[Result, ...]:
    """Bearers under the rows of the bracket, and plies beside a jack."""
    found: list[Result] = []
    load, partial = bearer_load(ground), ground.rules.partial
    if load is not None:
        beside_n = partial.permanent_ratio * load.share_ratio * load.screen_n / 2
        found.append(_split((load.mark, load.beam), load.beam.depth_mm / 2, (beside_n, LoadDuration.PERMANENT), ground))
    plies = of_roles(ground, Role.TRIMMER_PLY)
    if plies and on_jacks(ground):
        trimmer, beam = trimmer_of(ground), bent(plies[0], Axis.Z, ground)
        end_n = partial.permanent_ratio * trimmer.permanent_end_n + partial.variable_ratio * trimmer.person_n
        loaded_mm = beam.depth_mm - _screw_height_mm(ground)
        share_n = trimmer.ply_count * trimmer.ply_share_ratio * end_n
        found.append(_split((plies[0].mark, beam), loaded_mm, (share_n, LoadDuration.SHORT), ground))
    return tuple(found) or (Skipped(code=SPLITTING, why="no load hangs on screws in the side of a member"),)


def _split(of: tuple[str, Beam], loaded_mm: float, asked: tuple[float, LoadDuration], ground: Ground) -> Check:
    """Force across the grain on one side of the screws."""
    (mark, beam), (asked_n, duration) = of, asked
    resistance_n = joint_n(shear.splitting_resistance_n(beam.width_mm, beam.depth_mm, loaded_mm), duration, ground)
    return Check(
        code=SPLITTING,
        subject=mark,
        says=f"{asked_n:.0f} N of {resistance_n:.0f} N before it splits at screws {loaded_mm:g} mm from its loaded edge",
        demand=force("F_v,Ed", asked_n),
        resistance=force("F_90,Rd", resistance_n),
        clause=eurocode_5("8.1.4, (8.4)"),
        inputs=(length("b", beam.width_mm), length("h", beam.depth_mm), length("h_e", loaded_mm)),
        remedy="" if asked_n <= resistance_n else "screws further from the loaded edge: above 0.7 of the depth",
    )
