"""Wall fixings where they are, and how they share what hangs on them (`knowledge/structure.md`, 5.1 and 5.13 f and g).

A stiff frame turns about the lowest bearing of its rear rails and stretches equal fixings in proportion to their height.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from service.checks.cable_zones import counted_fixings
from service.checks.ground import hangs_ladders
from service.engineering import actions, fixing_groups, load_paths, rows
from service.frame import Role
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.ground import Ground
    from service.checks.hung_weight import Load
    from service.checks.situations import Situation
    from service.checks.wall_values import FixingValue


class Held(NamedTuple):
    """One counted fixing of the upper frame."""

    above_mm: float  # above the pivot; below it nothing is pulled
    through_upright: bool
    share: float = 1.0  # of a rail's fixing that a side ladder alone may count on


class Action(NamedTuple):
    """What a part puts on its wall fixings, design values."""

    moment_n_mm: float
    shear_n: float


class Worst(NamedTuple):
    """The fixing that is asked most."""

    tension_n: float
    shear_n: float
    utilisation_ratio: float  # infinite where nothing bears


def pivot_mm(ground: Ground) -> float:
    """The lowest bearing of the rear rails above the floor."""
    return millimetres(min(one.box.z0_tenth_mm for one in ground.frame.members if one.role is Role.REAR_BOTTOM_RAIL))


def held_fixings(ground: Ground) -> tuple[Held, ...]:
    """All counted fixings of the upper frame."""
    uprights, pivot = _upright_marks(ground), pivot_mm(ground)
    return tuple(Held(max(0.0, millimetres(one.z_tenth_mm) - pivot), one.through in uprights) for one in counted_fixings(ground))


def ladder_fixings(ground: Ground, *, left: bool) -> tuple[Held, ...]:
    """Fixings of one side ladder alone: its upright's, and half of each rail's."""
    uprights, pivot = _upright_marks(ground), pivot_mm(ground)
    middle = ground.frame.sizes.frame_width_tenth_mm / 2
    found = []
    for one in counted_fixings(ground):
        in_upright = one.through in uprights
        if not in_upright or (one.x_tenth_mm < middle) is left:
            above_mm = max(0.0, millimetres(one.z_tenth_mm) - pivot)
            found.append(Held(above_mm, in_upright, 1.0 if in_upright else 0.5))
    return tuple(found)


def hung_action(ground: Ground, load: Load, situation: Situation, share: float = 1.0) -> Action:
    """Moment and shear of the frame, or of a share of its weight with all of the person."""
    rules, sizes = ground.rules, ground.frame.sizes
    weight_n = situation.weight_ratio * load.weight_n * share
    person_n = situation.person_ratio * rules.actions.person_n
    depth_mm = millimetres(sizes.finished_depth_tenth_mm)
    push_n = situation.push_ratio * actions.face_force_n(
        rules.actions.face_line_n_per_m, millimetres(sizes.finished_width_tenth_mm)
    )
    top_mm = millimetres(ground.frame.levels.finished_top_tenth_mm)
    above_mm = actions.face_force_height_mm(rules.actions.face_line_height_mm, top_mm) - pivot_mm(ground)
    of_person = load_paths.hung_moment_n_mm(weight_n, load.from_wall_mm, person_n, depth_mm)
    return Action(of_person + push_n * max(0.0, above_mm), weight_n + person_n)


def weight_count(held: tuple[Held, ...], ground: Ground) -> float:
    """Fixings that take the weight: those of the uprights only where structure.md 5.13 g is on, else all."""
    uprights_only = hangs_ladders(ground)
    return sum(one.share for one in held if one.through_upright or not uprights_only)


def worst_fixing(held: tuple[Held, ...], action: Action, value: FixingValue, ground: Ground) -> Worst:
    """The counted fixing with the greatest utilisation, tension and shear together."""
    squares_mm2 = sum(
        share * fixing_groups.sum_of_squares_mm2(tuple(one.above_mm for one in held if one.share == share))
        for share in {one.share for one in held}
    )
    count = weight_count(held, ground)
    if squares_mm2 <= 0 or count <= 0:
        return Worst(math.inf, math.inf, math.inf)
    asked = [
        (
            fixing_groups.pulled_share_n(action.moment_n_mm, one.above_mm, squares_mm2),
            action.shear_n / count if _bears(one, ground) else 0.0,
        )
        for one in _extremes(held)
    ]
    return max((_worst(tension_n, shear_n, value) for tension_n, shear_n in asked), key=lambda one: one.utilisation_ratio)


def _extremes(held: tuple[Held, ...]) -> tuple[Held, ...]:
    """The highest fixings through a rail and through an upright: all others are asked less."""
    kinds = {through: max((one for one in held if one.through_upright is through), default=None) for through in (True, False)}
    return tuple(one for one in kinds.values() if one is not None)


def _bears(one: Held, ground: Ground) -> bool:
    return one.through_upright or not hangs_ladders(ground)


def _worst(tension_n: float, shear_n: float, value: FixingValue) -> Worst:
    parts = (_ratio(tension_n, value.tension_n), _ratio(shear_n, value.shear_n))
    return Worst(tension_n, shear_n, rows.linear_interaction_ratio(*parts))


def _ratio(asked_n: float, resistance_n: float) -> float:
    if asked_n <= 0:
        return 0.0
    return asked_n / resistance_n if resistance_n > 0 else math.inf


def _upright_marks(ground: Ground) -> frozenset[str]:
    return frozenset(one.mark for one in ground.frame.members if one.role is Role.LADDER_UPRIGHT)
