"""Studs, jambs, jacks and ladder uprights under a hand on the face, and as columns (structure.md, 3.4 and 5.12).

One person action at a time: a hand against the face, or a person on the trimmer over a jack.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING, Final, NamedTuple

from service.checks.amounts import eurocode_5, force, house, length, moment, newton_metres, ratio
from service.checks.check import Check, Skipped
from service.checks.hung_weight import hung_load
from service.checks.timber import (
    Beam,
    bent,
    bent_ratio,
    column_resistance_n,
    ends_of,
    moment_resistance_n_mm,
    of_roles,
    stronger_classes,
)
from service.checks.trimmer_load import trimmer_of
from service.engineering import beams, columns, deflection
from service.frame import Axis, Role, overlap_tenth_mm
from service.rules import LoadDuration

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground
    from service.frame import Member

BENDING: Final = "structure.stud_bending"
SAG: Final = "structure.stud_sag"
SIDEWAYS: Final = "structure.ladder_sideways"
COLUMN: Final = "structure.upright_column"
STUDS: Final = (
    Role.JAMB_STUD, Role.CRIPPLE_BELOW, Role.CRIPPLE_ABOVE, Role.FRONT_STUD, Role.JACK_STUD, Role.CHEEK_STUD, Role.UPRIGHT,
)  # fmt: skip
SHORT: Final = LoadDuration.SHORT


class Pushed(NamedTuple):
    """A stretch of an upright with a hand where it does most."""

    mark: str
    beam: Beam
    span_mm: float
    at_mm: float  # of the hand, from one end

    def moment_n_mm(self, load_n: float) -> float:
        """Under a force."""
        return beams.point_moment_n_mm(load_n, self.span_mm, self.at_mm)


def upright_checks(ground: Ground) -> tuple[Result, ...]:
    """The worst of every kind of stud, the front uprights of the ladders both ways, and what stands under a load."""
    pushed = [found for role in STUDS if (found := _worst(_studs(role, ground)))]
    ladder, aside = _worst(_stretches(ground, Axis.Y)), _worst(_stretches(ground, Axis.X))
    towards = [*pushed, *([ladder] if ladder else [])]
    return (
        *(_bending(BENDING, one, ground) for one in towards),
        *(_sag(one, ground) for one in towards),
        *((_bending(SIDEWAYS, aside, ground),) if aside else (Skipped(code=SIDEWAYS, why="no front upright is within reach"),)),
        *_columns(ground),
    )


def _worst(pushed: list[Pushed]) -> Pushed | None:
    """The one that a hand bends most."""
    return max(pushed, key=lambda one: one.moment_n_mm(1.0) / one.beam.depth_mm**2 / one.beam.width_mm, default=None)


def _pushed(mark: str, beam: Beam, stretch: tuple[float, float], ground: Ground) -> list[Pushed]:
    """A hand at mid height, or as high as hands reach; nothing above that."""
    low_mm, high_mm = stretch
    at_mm = min((high_mm - low_mm) / 2, ground.rules.actions.hand_height_mm - low_mm)
    return [Pushed(mark, beam, high_mm - low_mm, at_mm)] if at_mm > 0 else []


def _studs(role: Role, ground: Ground) -> list[Pushed]:
    """Studs of the front, held at their ends; a push on the face bends them on edge."""
    front = [member for member in of_roles(ground, role) if member.box.y0_tenth_mm > 0]
    return [one for stud in front for one in _pushed(stud.mark, bent(stud, Axis.Y, ground), ends_of(stud.box, Axis.Z), ground)]


def _stretches(ground: Ground, towards: Axis) -> list[Pushed]:
    """Stretches of the front ladder uprights between what holds them in the direction of a push on face or return."""
    return [
        one
        for upright in _front_uprights(ground)
        for stretch in _between(upright, towards, ground)
        for one in _pushed(upright.mark, bent(upright, towards, ground), stretch, ground)
    ]


def _front_uprights(ground: Ground) -> list[Member]:
    return [member for member in of_roles(ground, Role.LADDER_UPRIGHT) if member.box.y0_tenth_mm > 0]


def _between(upright: Member, towards: Axis, ground: Ground) -> list[tuple[float, float]]:
    """From the middle of one member that butts against an upright along an axis to the next, its own ends included."""
    low_mm, high_mm = ends_of(upright.box, Axis.Z)
    inside = [middle for middle in _held_mm(upright, towards, ground) if low_mm < middle < high_mm]
    return list(pairwise(sorted({low_mm, *inside, high_mm})))


def _held_mm(upright: Member, towards: Axis, ground: Ground) -> list[float]:
    """Levels of the members that end on an upright and run along an axis."""
    return [
        sum(ends_of(other.box, Axis.Z)) / 2
        for other in ground.frame.members
        if other.along is towards and other.mark != upright.mark and _touch(upright, other, towards)
    ]


def _touch(upright: Member, other: Member, towards: Axis) -> bool:
    """Whether a member ends on a face of an upright, within its width."""
    x, y, _z = overlap_tenth_mm(upright.box, other.box)
    return x == 0 < y if towards is Axis.X else y == 0 < x


def _bending(code: str, pushed: Pushed, ground: Ground) -> Check:
    demand = pushed.moment_n_mm(ground.rules.partial.variable_ratio * ground.rules.actions.hand_n)
    resistance = moment_resistance_n_mm(pushed.beam, SHORT, ground)
    return Check(
        code=code,
        subject=pushed.mark,
        says=f"{newton_metres(demand)} of {newton_metres(resistance)} under a hand over {pushed.span_mm:.0f} mm",
        demand=moment("M_d", demand),
        resistance=moment("M_Rd", resistance),
        clause=eurocode_5("6.1.6"),
        inputs=(
            length("L", pushed.span_mm), length("a", pushed.at_mm), force("H_k", ground.rules.actions.hand_n),
            length("b", pushed.beam.width_mm), length("h", pushed.beam.depth_mm),
        ),
        remedy=_stiffer(pushed, demand, ground),
    )  # fmt: skip


def _stiffer(pushed: Pushed, demand: float, ground: Ground) -> str:
    """The weakest class that passes, else how many beside each other."""
    resistance = moment_resistance_n_mm(pushed.beam, SHORT, ground)
    if demand <= resistance:
        return ""
    for stronger in stronger_classes(pushed.beam.strength, ground):
        if moment_resistance_n_mm(pushed.beam._replace(strength=stronger), SHORT, ground) >= demand:
            return f"timber of {stronger.name}, or a second member beside it"
    return f"{math.ceil(demand / resistance)} members beside each other"


def _sag(pushed: Pushed, ground: Ground) -> Check:
    sag_mm = deflection.point_sag_mm(ground.rules.actions.hand_n, pushed.span_mm, pushed.at_mm, pushed.beam.stiffness_n_mm2)
    limit_mm = pushed.span_mm / ground.rules.members.span_over_sag_hand_ratio
    return Check(
        code=SAG,
        subject=pushed.mark,
        says=f"gives {sag_mm:.2f} mm under a hand, of {limit_mm:.2f} mm",
        demand=length("w_inst", sag_mm),
        resistance=length("w_max", limit_mm),
        clause=house("a hand bends a stud by less than span over 200"),
        inputs=(length("L", pushed.span_mm), length("a", pushed.at_mm), force("H_k", ground.rules.actions.hand_n)),
        remedy="" if sag_mm <= limit_mm else f"{math.ceil(sag_mm / limit_mm)} members beside each other, or a deeper section",
    )


class Stood(NamedTuple):
    """An upright under a load along it."""

    member: Member
    permanent_n: float  # characteristic
    person_n: float


def _columns(ground: Ground) -> tuple[Result, ...]:
    """Jacks under the ends of the trimmer, and front uprights that stand on the base."""
    trimmer = trimmer_of(ground)
    jacks = [Stood(jack, trimmer.permanent_end_n, trimmer.person_n) for jack in of_roles(ground, Role.JACK_STUD)]
    hung_n = hung_load(ground).weight_n / 2
    opening_top = ground.frame.levels.appliance_top_tenth_mm
    standing = [one for one in _front_uprights(ground) if one.box.z0_tenth_mm < opening_top]
    uprights = [Stood(one, hung_n, trimmer.person_n) for one in standing]
    if not jacks and not uprights:
        return (Skipped(code=COLUMN, why="both ends are open: the upper frame hangs and stands on nothing"),)
    return tuple(_column(stood, ground) for stood in (*jacks, *uprights))


def _column(stood: Stood, ground: Ground) -> Check:
    """The worse of a person over it, and of a hand on the face beside the weight: (6.23) and (6.24)."""
    partial = ground.rules.partial
    strong, weak = (bent(stood.member, axis, ground) for axis in (Axis.Y, Axis.X))
    lengths = [max(high - low for low, high in _between(stood.member, axis, ground)) for axis in (Axis.Y, Axis.X)]
    resists = [column_resistance_n(one, held, SHORT, ground) for one, held in zip((strong, weak), lengths, strict=True)]
    weight_n = partial.permanent_ratio * stood.permanent_n
    over_n = weight_n + partial.variable_ratio * stood.person_n
    hand_ratio = _hand_ratio(stood, ground)
    with_hand = max(
        columns.column_bending_ratio(weight_n / resists[0], hand_ratio, 0.0),
        columns.column_bending_ratio(weight_n / resists[1], 0.0, hand_ratio),
    )
    worst_ratio = max(over_n / min(resists), with_hand)
    return Check(
        code=COLUMN,
        subject=stood.member.mark,
        says=f"{over_n:.0f} N with a person over it, or {weight_n:.0f} N and a hand on the face; bears {min(resists):.0f} N",
        demand=ratio("u", worst_ratio),
        resistance=ratio("limit", 1.0),
        clause=eurocode_5("6.3.2, (6.23) and (6.24)"),
        inputs=(
            force("N_d", over_n), force("N_G,d", weight_n), force("N_Rd,y", resists[0]), force("N_Rd,z", resists[1]),
            length("L_y", lengths[0]), length("L_z", lengths[1]), ratio("M/M_Rd", hand_ratio),
        ),
        remedy="" if worst_ratio <= 1.0 else "a noggin at half its height, or a second member beside it",
    )  # fmt: skip


def _hand_ratio(stood: Stood, ground: Ground) -> float:
    """Bending of a hand on the face over its resistance, in the worst stretch of the member."""
    load_n = ground.rules.partial.variable_ratio * ground.rules.actions.hand_n
    found = [
        bent_ratio(one.beam, one.moment_n_mm(load_n), SHORT, ground)
        for stretch in _between(stood.member, Axis.Y, ground)
        for one in _pushed(stood.member.mark, bent(stood.member, Axis.Y, ground), stretch, ground)
    ]
    return max(found, default=0.0)
