"""What makers of wall fixings ask besides their values: points, the loss of one, spacing (`knowledge/fixings.md`, 2.2, 2.3)."""

from __future__ import annotations

import math
from itertools import combinations
from typing import TYPE_CHECKING, Final

from service.checks.amounts import count, force, house, length, ratio
from service.checks.cable_zones import counted_fixings
from service.checks.check import Check, Skipped
from service.checks.host import host_of, masonry_of
from service.checks.hung_weight import hung_load
from service.checks.paths import hangs
from service.checks.situations import lost
from service.checks.wall_rows import held_fixings, hung_action, worst_fixing
from service.checks.wall_values import fixing_value
from service.rules import Source
from service.survey.wall import WallConstruction
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

POINTS: Final = "fixings.wall_points"
ONE_LOST: Final = "fixings.wall_one_lost"
SPACING: Final = "fixings.wall_spacing"
MULTIPLE: Final = Source(document="ETAG 020", clause="part 5: plugs for multiple use, from memory")
FOR_EACH: Final = "only plugs that are declared for multiple use ask it"


def wall_distance_checks(ground: Ground) -> tuple[Result, ...]:
    """Spacing of wall fixings; points and the loss of one where the plug is declared for multiple use only."""
    load = ground.hardware.wall_load
    multiple = masonry_of(ground) is WallConstruction.AERATED_BLOCK or (load is not None and load.multiple_use_only)
    if not multiple:
        return (_spacing(ground), Skipped(code=POINTS, why=FOR_EACH), Skipped(code=ONE_LOST, why=FOR_EACH))
    if not hangs(ground):
        return (_spacing(ground), _points(ground), Skipped(code=ONE_LOST, why="the frame stands and does not hang on them"))
    return (_spacing(ground), _points(ground), _one_lost(ground))


def _spacing(ground: Ground) -> Result:
    """Between any two fixings of the upper frame."""
    places = [(millimetres(one.x_tenth_mm), millimetres(one.z_tenth_mm)) for one in ground.frame.wall_fixings]
    least_mm = min((math.dist(first, second) for first, second in combinations(places, 2)), default=None)
    if least_mm is None:
        return Skipped(code=SPACING, why="fewer than two fixings go into the wall")
    load = ground.hardware.wall_load
    asked_mm = (load.least_spacing_mm if load else None) or ground.rules.walls.fixing_spacing_mm
    return Check(
        code=SPACING,
        subject="wall fixings",
        says=f"the nearest two wall fixings are {least_mm:.0f} mm apart; {asked_mm:g} mm are asked",
        demand=length("s_min", asked_mm),
        resistance=length("s", least_mm),
        clause=house("spacing of fixings in the wall, or what the maker declares"),
        remedy=f"fixings at least {asked_mm:g} mm apart" if least_mm < asked_mm else "",
    )


def _points(ground: Ground) -> Check:
    asked, there = ground.rules.walls.multiple_use_least_count, len(counted_fixings(ground))
    return Check(
        code=POINTS,
        subject="wall fixings",
        says=f"plugs for multiple use need at least {asked} points; {there} count",
        demand=count("n_min", asked),
        resistance=count("n", there),
        clause=MULTIPLE,
        remedy=f"needs {asked - there} more fixings" if there < asked else "",
    )


def _one_lost(ground: Ground) -> Result:
    """The frame without its highest fixing, under its own weight."""
    host, held = host_of(ground), held_fixings(ground)
    if host.unknown or host.nothing or not held:
        return Skipped(code=ONE_LOST, why=host.unknown or host.nothing or "no fixing into the wall counts")
    top = max(held)
    rest = tuple(one for index, one in enumerate(held) if index != held.index(top))
    situation = lost(ground.rules)
    value = fixing_value(ground, situation, host)
    worst = worst_fixing(rest, hung_action(ground, hung_load(ground), situation), value, ground)
    bears = math.isfinite(worst.utilisation_ratio)
    return Check(
        code=ONE_LOST,
        subject="wall fixings",
        says="plugs for multiple use: the frame also hangs without the fixing that is asked most",
        demand=ratio("T/T_Rd + V/V_Rd", worst.utilisation_ratio) if bears else force("G", hung_load(ground).weight_n),
        resistance=ratio("limit", 1.0) if bears else force("R_d", 0.0),
        clause=MULTIPLE,
        inputs=(count("n", len(rest)), force("T_Rd", value.tension_n), force("V_Rd", value.shear_n)),
        unverified=value.assumed,
        remedy="" if worst.utilisation_ratio <= 1 else "more fixings in the top row",
    )
