"""The side ladders at open ends as statics sees them: what the front upright asks of what joins it to the rear one.

Symbols and cases: `knowledge/structure.md`, 5.13. Half of the hung weight is taken for each ladder, and all of the person.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import msgspec

from service.checks.ground import class_of
from service.checks.situations import lost, person, weight
from service.engineering import hung_ladder
from service.frame import Role
from service.rules import StrengthClass
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.ground import Ground
    from service.checks.hung_weight import Load
    from service.checks.paths import Paths
    from service.checks.situations import Situation
    from service.frame import Member

LADDER_SHARE = 0.5  # of the hung weight: house choice (structure.md, 5.13)


class Ladder(msgspec.Struct, frozen=True, kw_only=True):
    """One side ladder at an open end."""

    left: bool
    weight_n: float  # G_s
    lever_mm: float  # e, from the wall
    person_n: float
    person_mm: float  # y_Q, from the wall
    thickness_mm: float  # b
    depth_mm: float  # d, of uprights and noggins
    clear_mm: float  # n, of the noggins
    levels_mm: tuple[float, ...]  # middles of all noggins that stand on edge, rising
    bracketed_mm: tuple[float, ...]  # of those with a bracket at both ends
    noggin: StrengthClass
    upright: StrengthClass

    @property
    def side(self) -> str:
        """In a sentence."""
        return "left" if self.left else "right"

    @property
    def reach_mm(self) -> float:
        """a, from middle to middle of the uprights."""
        return self.clear_mm + self.depth_mm


class Asked(NamedTuple):
    """What a situation asks of the joints, design values."""

    force_n: float  # that the front hands to the rear
    racking_n_mm: float
    couple_n_mm: float


class Case(NamedTuple):
    """A situation and the utilisation that it may show."""

    situation: Situation
    limit_ratio: float


def open_ladders(ground: Ground, load: Load) -> tuple[Ladder, ...]:
    """The ladders at open ends that have noggins."""
    ends = ((True, ground.frame.left_open), (False, ground.frame.right_open))
    return tuple(ladder_at(ground, load, left=left) for left, is_open in ends if is_open and _noggins(ground, left=left))


def ladder_at(ground: Ground, load: Load, *, left: bool) -> Ladder:
    """One ladder as it stands in the frame."""
    noggins, sizes, timber = _noggins(ground, left=left), ground.frame.sizes, ground.job.timber
    upright = next(one for one in ground.frame.members if one.role is Role.LADDER_UPRIGHT)
    joined = [one for one in noggins if one.start_joint.bracket_count and one.end_joint.bracket_count]
    return Ladder(
        left=left, weight_n=load.weight_n * LADDER_SHARE, lever_mm=load.from_wall_mm, person_n=ground.rules.actions.person_n,
        person_mm=millimetres(sizes.finished_depth_tenth_mm), thickness_mm=millimetres(timber.thickness_tenth_mm),
        depth_mm=millimetres(timber.width_tenth_mm), clear_mm=millimetres(sizes.cross_noggin_length_tenth_mm),
        levels_mm=tuple(sorted(_level_mm(one) for one in noggins)),
        bracketed_mm=tuple(sorted(_level_mm(one) for one in joined)),
        noggin=class_of(noggins[0], ground), upright=class_of(upright, ground),
    )  # fmt: skip


def asked_of(ladder: Ladder, situation: Situation) -> Asked:
    """Statics of the ladder in one situation."""
    weight_n, person_n = situation.weight_ratio * ladder.weight_n, situation.person_ratio * ladder.person_n
    lever_mm, depth_mm, clear_mm = ladder.lever_mm, ladder.depth_mm, ladder.clear_mm
    return Asked(
        hung_ladder.corner_force_n(weight_n, lever_mm, depth_mm, ladder.reach_mm) + person_n,
        hung_ladder.racking_moment_n_mm(weight_n, lever_mm, depth_mm=depth_mm, person_n=person_n, clear_mm=clear_mm),
        hung_ladder.front_couple_n_mm(
            weight_n, lever_mm, depth_mm=depth_mm, person_n=person_n,
            person_lever_mm=ladder.person_mm - depth_mm - clear_mm / 2,
        ),
    )  # fmt: skip


def cases_of(paths: Paths, ground: Ground) -> tuple[Case, ...]:
    """The cases by which a hung ladder is judged; without a ceiling path one corner may take all of a person."""
    rules = ground.rules
    if paths.main == "ceiling":
        return (Case(lost(rules), 1.0),)
    if not paths.ceiling_stands:
        return (Case(weight(rules), rules.members.single_path_ratio), Case(person(rules), 1.0))
    return (Case(lost(rules), 1.0), Case(weight(rules), 1.0), Case(person(rules), 1.0))


def half_way_mm(ladder: Ladder, leg_mm: float) -> tuple[float, ...]:
    """All noggins and one more half way in every bay with room for the brackets of both."""
    least_mm = ladder.depth_mm + leg_mm
    found = list(ladder.levels_mm)
    for low, high in zip(ladder.levels_mm, ladder.levels_mm[1:], strict=False):
        if high - low >= 2 * least_mm:
            found.append((low + high) / 2)
    return tuple(sorted(found))


def _noggins(ground: Ground, *, left: bool) -> tuple[Member, ...]:
    """Noggins of a ladder that stand on edge; one that lies flat joins nothing."""
    middle = ground.frame.sizes.frame_width_tenth_mm / 2
    return tuple(
        one
        for one in ground.frame.members
        if one.role is Role.LADDER_NOGGIN
        and (one.box.x0_tenth_mm < middle) is left
        and one.box.z1_tenth_mm - one.box.z0_tenth_mm > one.box.x1_tenth_mm - one.box.x0_tenth_mm
    )


def _level_mm(noggin: Member) -> float:
    return millimetres(noggin.box.z0_tenth_mm + noggin.box.z1_tenth_mm) / 2
