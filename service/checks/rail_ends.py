"""Ends of rails, plies and bearers: brackets as declared, bearing on a jack, screws beside one; end grain counts for little."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from service.checks.amounts import eurocode_5, force, ratio
from service.checks.check import Check, Skipped
from service.checks.end_load import EndLoad, end_loads
from service.checks.pulled_screws import diameter_of
from service.checks.sheared_screws import in_end_grain_n, sheared_screw, under_plate_n
from service.checks.timber import across_resistance_n, bent, ends_of, extent_mm, joint_n, length_mm, of_roles
from service.checks.trimmer_slip import on_jacks
from service.engineering import rows
from service.frame import Axis, EndJoint, Role
from service.rules import LoadDuration

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.catalogue import Material
    from service.checks.check import Result
    from service.checks.end_load import Case
    from service.checks.ground import Ground
    from service.frame import Member
    from service.rules import Source

END: Final = "structure.end_joint"
SECONDARY: Final = "structure.secondary_ends"
HELD_BY_BOARDS: Final = (
    "noggins, cripples, studs, jambs, head and upstand rail are secondary: screws in their end grain place them, and the boards "
    "screwed all round hold them (common practice, no source)"
)
BRACKET_RULE: Final = eurocode_5("2.4.3; R_1 and R_2,3 as the maker of the bracket declares")
NOTHING_RATIO: Final = 1e6  # stands for an end that nothing holds


class Hold(NamedTuple):
    """Characteristic resistances of what holds one end; bearing across the grain has design values by duration."""

    name: str
    down_n: float
    level_n: float
    clause: Source
    assumed: str = ""
    load_ratio: float = 1.0  # of the member's load that comes to this end: all plies' where one holds them all


class Judged(NamedTuple):
    """An end in its worst combination."""

    hold: Hold
    case: Case
    down_n: float  # design resistances
    level_n: float

    @property
    def utilisation_ratio(self) -> float:
        """Sum of down and level; infinite where nothing holds."""
        return rows.linear_interaction_ratio(
            _ratio(self.hold.load_ratio * self.case.down_n, self.down_n), _ratio(self.case.level_n, self.level_n)
        )


def rail_end_checks(ground: Ground) -> tuple[Result, ...]:
    """The worse end of every member that carries something, in its worst combination."""
    return (*(_check(one, ground) for one in end_loads(ground)), Skipped(code=SECONDARY, why=HELD_BY_BOARDS))


def _check(load: EndLoad, ground: Ground) -> Check:
    worst = max(_judged(load, ground), key=lambda one: (one.utilisation_ratio, one.case.down_n))
    case, hold = worst.case, worst.hold
    down_n = hold.load_ratio * case.down_n
    alone = case.level_n <= 0
    return Check(
        code=END,
        subject=load.member.mark,
        says=f"{down_n:.0f} N of {worst.down_n:.0f} N down"
        + ("" if alone else f" and {case.level_n:.0f} N of {worst.level_n:.0f} N level")
        + f" at an end held by {hold.name}",
        demand=force("V_d", down_n) if alone else ratio("u", min(worst.utilisation_ratio, NOTHING_RATIO)),
        resistance=force("R_d", worst.down_n) if alone else ratio("limit", 1.0),
        clause=hold.clause,
        inputs=(force("V_d", down_n), force("H_d", case.level_n), force("R_1,d", worst.down_n), force("R_2,3,d", worst.level_n)),
        unverified=hold.assumed,
        remedy=_remedy(worst, ground),
    )


def _judged(load: EndLoad, ground: Ground) -> Iterator[Judged]:
    for hold in _holds(load.member, ground):
        for case in load.cases:
            design = [joint_n(value_n, case.duration, ground) for value_n in (hold.down_n, hold.level_n)]
            yield Judged(hold, case, *design)


def _ratio(asked_n: float, resistance_n: float) -> float:
    if asked_n <= 0:
        return 0.0
    return asked_n / resistance_n if resistance_n > 0 else math.inf


def _holds(member: Member, ground: Ground) -> tuple[Hold, ...]:
    """What holds both ends."""
    if member.role is Role.TRIMMER_PLY and on_jacks(ground):
        rail = of_roles(ground, Role.TRIMMER)[0]
        pairs = ((rail.start_joint, member.start_joint), (rail.end_joint, member.end_joint))
        return tuple(
            _beside_jack(member, ground) if of_rail is EndJoint.BEARING else _hold(own, member, ground) for of_rail, own in pairs
        )
    return tuple(_hold(joint, member, ground) for joint in (member.start_joint, member.end_joint))


def _hold(joint: EndJoint, member: Member, ground: Ground) -> Hold:
    if joint.bracket_count:
        return _bracket(joint, member, ground)
    if joint is EndJoint.BEARING:
        return _bearing(member, ground)
    return _end_grain(member, ground)


def _bracket(joint: EndJoint, member: Member, ground: Ground) -> Hold:
    """As its maker declares, else by the screws of one leg under its plate."""
    bought, heavy = ground.hardware, joint is EndJoint.HEAVY_BRACKET
    bracket, screw = (bought.heavy_bracket, bought.heavy_bracket_screw) if heavy else (bought.bracket, bought.bracket_screw)
    name = {EndJoint.HEAVY_BRACKET: "a heavy bracket", EndJoint.BRACKET_PAIR: "two brackets"}.get(joint, "a bracket")
    if bracket is None:
        return Hold("no bracket: none is sold", 0.0, 0.0, BRACKET_RULE)
    fallback_n = _leg_n(bracket, screw, member, ground)
    up_n, side_n = bracket.bracket_up_n, bracket.bracket_side_n
    assumed = "" if up_n and side_n else f"assumed resistance of bracket {bracket.code}: its maker declares none"
    count = joint.bracket_count
    return Hold(name, count * (up_n or fallback_n), count * (side_n or fallback_n), BRACKET_RULE, assumed)


def _leg_n(bracket: Material, screw: Material | None, member: Member, ground: Ground) -> float:
    if screw is None:
        return 0.0
    timber = bent(member, Axis.Z, ground).strength
    return (bracket.leg_screw_count or 0) * under_plate_n(screw, bracket.thickness_mm or 0.0, timber, ground.rules)


def _bearing(member: Member, ground: Ground) -> Hold:
    """On the head of a jack, across the grain of the rail; turned back into a characteristic value as for a joint."""
    beam = bent(member, Axis.Z, ground)
    contact_mm = min((extent_mm(jack.box, Axis.X) for jack in of_roles(ground, Role.JACK_STUD)), default=0.0)
    free_mm = _beside_jacks_mm(member, ground)
    short_n = across_resistance_n(beam, LoadDuration.SHORT, ground, contact_mm=contact_mm, free_mm=(free_mm, length_mm(member)))
    return Hold("the jack stud under it", short_n / joint_n(1.0, LoadDuration.SHORT, ground), 0.0, eurocode_5("6.1.5"))


def _beside_jacks_mm(member: Member, ground: Ground) -> float:
    """Rail beyond the jack that stands nearest to its end."""
    low_mm, high_mm = ends_of(member.box, Axis.X)
    jacks = [ends_of(jack.box, Axis.X) for jack in of_roles(ground, Role.JACK_STUD)]
    return max(0.0, min((min(left - low_mm, high_mm - right) for left, right in jacks), default=0.0))


def _beside_jack(member: Member, ground: Ground) -> Hold:
    """Screws through the ply into the rail over the jack; the first ply hands over what all plies carry."""
    screw, count = ground.hardware.narrow_screw, ground.rules.take_off.ply_end_screw_count
    if screw is None:
        return Hold("no screw: none is sold", 0.0, 0.0, eurocode_5("8.2.2"))
    beam = bent(member, Axis.Z, ground)
    one = sheared_screw(screw, beam.width_mm, beam.strength, ground.rules)
    name = f"{count} screws {screw.diameter_mm:.1f} x {screw.length_mm:.0f}" + (f", mode {one.mode}" if one.mode else "")
    return Hold(name, count * one.each_n, 0.0, eurocode_5("8.2.2, (8.6)"), load_ratio=float(ground.frame.ply_count))


def _end_grain(member: Member, ground: Ground) -> Hold:
    """Screws through a ladder upright into the end of the rail: nothing below three that reach ten diameters."""
    screw, count = ground.hardware.narrow_screw, ground.rules.take_off.joint_screw_count
    value_n = 0.0
    if screw is not None:
        passed_mm = ground.job.timber.thickness_tenth_mm / 10
        value_n = in_end_grain_n(screw, passed_mm, bent(member, Axis.Z, ground).strength, ground.rules, count=count)
    return Hold(f"{count} screws in its end grain", value_n, 0.0, eurocode_5("8.3.1.2(3) and (4)"))


def _remedy(worst: Judged, ground: Ground) -> str:
    """Brackets declared for what is asked, or as many screws."""
    if worst.utilisation_ratio <= 1.0:
        return ""
    asked_n = worst.hold.load_ratio * worst.case.down_n
    unit_n = joint_n(1.0, worst.case.duration, ground)
    of_level = f" and {math.ceil(worst.case.level_n / unit_n)} N sideways" if worst.case.level_n > 0 else ""
    wanted = f"a bracket declared for at least {math.ceil(asked_n / unit_n)} N up{of_level}"
    screw = ground.hardware.narrow_screw
    if "screws" not in worst.hold.name or screw is None or "end grain" in worst.hold.name or worst.down_n <= 0:
        return wanted
    each_n = worst.down_n / ground.rules.take_off.ply_end_screw_count
    return f"{math.ceil(asked_n / each_n)} screws {diameter_of(screw):.1f} mm there, or {wanted}"
