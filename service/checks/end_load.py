"""What the ends of rails, plies and bearers hand over, up or down and level (structure.md, 5.2 to 5.7; framing.md, 10.1).

Noggins, cripples, studs, jambs, head and upstand rail are secondary: the boards screwed all round hold them, and what they carry
is counted on the members here.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from service.checks.bearer_load import ARM, bearer_load
from service.checks.ground import hangs_ladders
from service.checks.hung_weight import hung_load
from service.checks.lid import lid_load_n
from service.checks.masses import member_kg, weight_n
from service.checks.paths import hangs
from service.checks.situations import main_situations
from service.checks.timber import of_roles
from service.checks.trimmer_load import trimmer_of
from service.checks.wall_rows import held_fixings, hung_action, pivot_mm, weight_count
from service.engineering import actions, fixing_groups, load_paths
from service.frame import Role
from service.rules import LoadDuration
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.ground import Ground
    from service.frame import Member

REAR_RAILS: Final = (Role.REAR_BOTTOM_RAIL, Role.REAR_MID_RAIL, Role.EXTRA_REAR_RAIL, Role.TOP_RAIL_REAR)
SHORT, PERMANENT, ACCIDENT = LoadDuration.SHORT, LoadDuration.PERMANENT, LoadDuration.INSTANTANEOUS


class Case(NamedTuple):
    """Design forces of one combination on one end."""

    down_n: float
    level_n: float
    duration: LoadDuration


class EndLoad(NamedTuple):
    """A member whose ends carry something."""

    member: Member
    cases: tuple[Case, ...]


def end_loads(ground: Ground) -> tuple[EndLoad, ...]:
    """Trimmer, one of its plies, sill, top rails, rear rails of a frame that hangs, and the top bearer."""
    return (*_trimmer(ground), *_sill(ground), *_lid_rails(ground), *_hung_rails(ground), *_bearer(ground))


def _with_person(permanent_n: float, person_n: float, ground: Ground) -> tuple[Case, ...]:
    partial = ground.rules.partial
    alone_n = partial.permanent_ratio * permanent_n
    return Case(alone_n, 0.0, PERMANENT), Case(alone_n + partial.variable_ratio * person_n, 0.0, SHORT)


def _own_end_n(member: Member, ground: Ground) -> float:
    return weight_n(member_kg(member, ground.rules.actions.hung_timber_kg_m3)) / 2


def _trimmer(ground: Ground) -> list[EndLoad]:
    trimmer = trimmer_of(ground)
    parts = [(of_roles(ground, Role.TRIMMER)[0], trimmer.flat_share_ratio)]
    parts += [(ply, trimmer.ply_share_ratio) for ply in of_roles(ground, Role.TRIMMER_PLY)[:1]]
    return [
        EndLoad(member, _with_person(share * trimmer.permanent_end_n, share * trimmer.person_n, ground))
        for member, share in parts
    ]


def _sill(ground: Ground) -> list[EndLoad]:
    """A person beside the ladder."""
    person_n = ground.rules.actions.person_n
    return [EndLoad(sill, _with_person(_own_end_n(sill, ground), person_n, ground)) for sill in of_roles(ground, Role.SILL_RAIL)]


def _lid_rails(ground: Ground) -> list[EndLoad]:
    """A person on the lid beside the ladder; under a ceiling the front top rail hangs on its row of screws."""
    if ground.frame.full_height:
        front = of_roles(ground, Role.TOP_RAIL_FRONT) if hangs(ground) else ()
        return [EndLoad(rail, _with_person(_own_end_n(rail, ground) + _front_row_n(ground) / 2, 0.0, ground)) for rail in front]
    person_n = lid_load_n(ground)
    rails = of_roles(ground, Role.TOP_RAIL_FRONT, Role.TOP_RAIL_REAR)
    return [EndLoad(rail, _with_person(_own_end_n(rail, ground), person_n, ground)) for rail in rails]


def _front_row_n(ground: Ground) -> float:
    """Of all the weight on the ceiling alone, what its front row takes; nothing where no screws hold."""
    places_mm = sorted({millimetres(one.y_tenth_mm) for one in ground.frame.ceiling_screws})
    if len(places_mm) < 2:  # noqa: PLR2004 - two rows
        return 0.0
    load = hung_load(ground)
    front_n = load_paths.front_row_n(load.weight_n, lever_mm=load.from_wall_mm, rear_mm=places_mm[0], front_mm=places_mm[-1])
    return min(max(front_n, 0.0), load.weight_n)


def _hung_rails(ground: Ground) -> list[EndLoad]:
    """Weight and pull of a rear rail's own fixings; where uprights take the weight (structure.md, 5.13 g) the pull alone.

    The rail under a lid has a person on it, which is more, and is taken there.
    """
    if not hangs(ground):
        return []
    listed = [rail for rail in of_roles(ground, *REAR_RAILS) if ground.frame.full_height or rail.role is not Role.TOP_RAIL_REAR]
    share = _wall_share(ground)
    return [EndLoad(rail, _rear_cases(rail, share, ground)) for rail in listed]


class WallShare(NamedTuple):
    """What one wall fixing takes of the whole frame in each combination."""

    pivot_mm: float
    pull_n_per_mm: tuple[float, ...]  # of height above the pivot
    down_n: tuple[float, ...]  # 0 where the uprights' fixings take the weight
    durations: tuple[LoadDuration, ...]


def _wall_share(ground: Ground) -> WallShare:
    held, load, situations = held_fixings(ground), hung_load(ground), main_situations(ground.rules)
    squares_mm2 = fixing_groups.sum_of_squares_mm2(tuple(one.above_mm for one in held)) or math.inf
    done = [hung_action(ground, load, situation) for situation in situations]
    count = max(weight_count(held, ground), 1.0)
    return WallShare(
        pivot_mm=pivot_mm(ground),
        pull_n_per_mm=tuple(fixing_groups.pulled_share_n(one.moment_n_mm, 1.0, squares_mm2) for one in done),
        down_n=tuple(0.0 if hangs_ladders(ground) else one.shear_n / count for one in done),
        durations=tuple(SHORT if one.person_ratio or one.push_ratio else PERMANENT for one in situations),
    )


def _rear_cases(rail: Member, share: WallShare, ground: Ground) -> tuple[Case, ...]:
    """Half of the rail's fixings on each end; where these take no weight the rail still has its own."""
    in_rail = sum(1 for one in ground.frame.wall_fixings if one.through == rail.mark and one.counted) / 2
    above_mm = max(0.0, (rail.box.z0_tenth_mm + rail.box.z1_tenth_mm) / 20 - share.pivot_mm)
    own_n = ground.rules.partial.permanent_ratio * _own_end_n(rail, ground) if hangs_ladders(ground) else 0.0
    return tuple(
        Case(own_n + down_n * in_rail, pull_n_per_mm * above_mm * in_rail, duration)
        for pull_n_per_mm, down_n, duration in zip(share.pull_n_per_mm, share.down_n, share.durations, strict=True)
    )


def _bearer(ground: Ground) -> list[EndLoad]:
    """Weight and pull-out of the screen; under an arm with a hand, or an accident, at its tip."""
    load, job, rules = bearer_load(ground), ground.job, ground.rules
    if load is None:
        return []
    permanent = rules.partial.permanent_ratio

    def case(screen_n: float, uniform_n: float, duration: LoadDuration) -> Case:
        return Case((load.share_ratio * screen_n + uniform_n) / 2, load.pull_n(screen_n) / 2, duration)

    cases = [case(permanent * load.screen_n, permanent * load.uniform_n, PERMANENT)]
    if job.bracket is not None and job.bracket.kind == ARM:
        hand_n = rules.partial.variable_ratio * rules.actions.arm_hand_n
        pull_n = actions.arm_pull_n(
            load.screen_n, pull_ratio=rules.actions.arm_pull_ratio, least_n=rules.actions.arm_pull_least_n
        )
        cases.append(case(permanent * load.screen_n + hand_n, permanent * load.uniform_n, SHORT))
        cases.append(case(load.screen_n + pull_n, load.uniform_n, ACCIDENT))
    top = max(of_roles(ground, Role.SCREEN_BEARER), key=lambda member: member.box.z0_tenth_mm)
    return [EndLoad(top, tuple(cases))]
