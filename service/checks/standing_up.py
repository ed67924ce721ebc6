"""A breast that stands on its base, held by its top fixings; how it stands without them (`knowledge/structure.md`, 5.8, 5.9)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from service.checks.amounts import count, force, house, length, moment
from service.checks.cable_zones import counted_fixings
from service.checks.check import Check, Skipped
from service.checks.host import host_of
from service.checks.hung_weight import ON_THE_FRONT, standing_load
from service.checks.paths import hangs
from service.checks.situations import push
from service.checks.wall_values import fixing_value
from service.engineering import actions, load_paths
from service.rules import Source
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.check import Quantity, Result
    from service.checks.ground import Ground

ROW: Final = "fixings.standing_top_row"
LOOSE: Final = "structure.standing_loose"
TOP_BAND_MM: Final = 100.0  # fixings this near the highest one make the top row: house choice (structure.md, 5.8)
HANGS: Final = "an end is open: the upper frame hangs, and the wall path is its check"
FACE: Final = Source(document="EN 1991-1-1", edition="2002", clause="6.4")


class Tipping(NamedTuple):
    """Moments about the front edge of the foot."""

    push_n: float  # characteristic
    push_mm: float
    over_mm: float  # of a shelf beyond the front edge
    toppling_n_mm: float
    righting_n_mm: float
    weight_n: float
    centre_mm: float


def standing_checks(ground: Ground) -> tuple[Result, ...]:
    """Top row of a breast that stands, and how it stands before it is fixed."""
    if hangs(ground):
        return (Skipped(code=ROW, why=HANGS), Skipped(code=LOOSE, why=HANGS))
    tipping = _tipping(ground)
    return (_top_row(tipping, ground), _loose(tipping))


def _tipping(ground: Ground) -> Tipping:
    """The line load on the face, or a person on a shelf that stands out: the worse of the two."""
    rules, sizes = ground.rules, ground.frame.sizes
    load, depth_mm = standing_load(ground), millimetres(sizes.finished_depth_tenth_mm)
    push_n = actions.face_force_n(rules.actions.face_line_n_per_m, millimetres(sizes.finished_width_tenth_mm))
    push_mm = actions.face_force_height_mm(
        rules.actions.face_line_height_mm, millimetres(ground.frame.levels.finished_top_tenth_mm)
    )
    over_mm = max((one.depth_mm or 0.0 for one in ground.job.survey.brief.extras or () if one.kind in ON_THE_FRONT), default=0.0)
    factor = rules.partial.variable_ratio
    by_push = load_paths.toppling_n_mm(factor * push_n, push_mm, load_n=0.0, over_toe_mm=0.0)
    by_person = load_paths.toppling_n_mm(0.0, 0.0, load_n=factor * rules.actions.person_n, over_toe_mm=over_mm)
    return Tipping(
        push_n, push_mm, over_mm, max(by_push, by_person),
        load_paths.righting_n_mm(rules.partial.stabilising_ratio * load.weight_n, depth_mm, load.from_wall_mm),
        load.weight_n, load.from_wall_mm,
    )  # fmt: skip


def _top_row(tipping: Tipping, ground: Ground) -> Result:
    host, counted = host_of(ground), counted_fixings(ground)
    if host.nothing or not counted:
        return Check(
            code=ROW, subject="top row of wall fixings", says="no fixing into the wall counts, and the breast may be pulled over",
            demand=moment("M_d", tipping.toppling_n_mm), resistance=moment("M_R", 0.0), clause=FACE, inputs=_inputs(tipping),
            remedy=f"{host.nothing or 'fixings clear of cables'}: another fixing, a pattress, or the base bolted to the floor",
        )  # fmt: skip
    highest = max(one.z_tenth_mm for one in counted)
    row = [one for one in counted if millimetres(highest - one.z_tenth_mm) <= TOP_BAND_MM]
    height_mm = millimetres(min(one.z_tenth_mm for one in row))
    whole_n = load_paths.held_back_n(tipping.toppling_n_mm, tipping.righting_n_mm, height_mm)
    value = fixing_value(ground, push(ground.rules), host)
    bears_n, each_n = value.tension_n, whole_n / len(row)
    return Check(
        code=ROW,
        subject="top row of wall fixings",
        says=f"a pull on the face draws {each_n:.0f} N at each of {len(row)} fixings {height_mm:.0f} mm above the floor",
        demand=force("T_1", each_n),
        resistance=None if host.unknown else force("T_Rd", bears_n),
        clause=FACE,
        inputs=(*_inputs(tipping), force("T", whole_n), count("n", len(row)), length("z_t", height_mm)),
        unverified=f"not verified: {host.unknown}" if host.unknown else value.assumed,
        remedy=_more(whole_n, bears_n, len(row), host.unknown),
    )


def _more(whole_n: float, bears_n: float, there: int, unknown: str) -> str:
    if unknown:
        return "find out what the wall is: a drill hole, a photo, its studs"
    if whole_n <= bears_n * there:
        return ""
    if bears_n <= 0:
        return "a fixing that is declared for this wall, or the base bolted to the floor"
    more = math.ceil(whole_n / bears_n) - there
    return f"needs {more} more fixings within {TOP_BAND_MM:g} mm of the top row, or the base bolted to the floor"


def _loose(tipping: Tipping) -> Check:
    """Advice only: it never takes fixings away."""
    stands = load_paths.standing_ratio(tipping.toppling_n_mm, tipping.righting_n_mm)
    return Check(
        code=LOOSE,
        subject="breast before it is fixed",
        says=f"its own weight holds {stands:.2f} of a pull on its face"
        + (": it stands only because it is fixed" if stands < 1 else ""),
        demand=moment("M_d", tipping.toppling_n_mm),
        resistance=moment("M_stab", tipping.righting_n_mm),
        clause=house("5.9: overturning about the front edge, set EQU of EN 1990"),
        inputs=_inputs(tipping),
        binding=False,
        remedy="prop it until it is fixed" if stands < 1 else "",
    )


def _inputs(tipping: Tipping) -> tuple[Quantity, ...]:
    return (
        force("H", tipping.push_n), length("y_H", tipping.push_mm), length("x_over", tipping.over_mm),
        force("G", tipping.weight_n), length("x_cg", tipping.centre_mm), moment("M_stab", tipping.righting_n_mm),
    )  # fmt: skip
