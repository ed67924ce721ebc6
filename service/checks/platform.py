"""Platform under the fire: rails under feet and jacks, uprights, what presses across the grain (structure.md, 5.3)."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from service.checks.amounts import eurocode_5, force, length, moment, newton_metres, ratio
from service.checks.check import Check, Skipped
from service.checks.platform_load import LAID_FLAT, Platform, Post, platform_of
from service.checks.timber import (
    Asked,
    Beam,
    across_resistance_n,
    column_resistance_n,
    governing,
    moment_resistance_n_mm,
    shear_resistance_n,
    solid_timber,
    stronger_classes,
)
from service.engineering import beams, deflection
from service.rules import LoadDuration

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

BENDING: Final = "structure.platform_rail_bending"
JACK: Final = "structure.platform_rail_jack"
SHEAR: Final = "structure.platform_rail_shear"
SAG: Final = "structure.platform_rail_sag"
BEARING: Final = "structure.platform_bearing"
UPRIGHT: Final = "structure.platform_upright"
SHORT, PERMANENT = LoadDuration.SHORT, LoadDuration.PERMANENT


def platform_checks(ground: Ground) -> tuple[Result, ...]:
    """Rails, uprights and bearings of the base; a base that lies on the floor bends nowhere."""
    platform = platform_of(ground)
    if platform is None:
        return tuple(Skipped(code=code, why=LAID_FLAT) for code in (BENDING, JACK, SHEAR, SAG, BEARING, UPRIGHT))
    jacks = [post for post in platform.posts if post.above]
    return (
        _bending(platform, ground),
        *(_jack(platform, post, ground) for post in jacks),
        *(() if jacks else (Skipped(code=JACK, why="no jack stud stands on the platform"),)),
        _shear(platform, ground),
        _sag(platform, ground),
        *(_bearing(platform, post, ground) for post in platform.posts),
        *(_upright(post, ground) for post in platform.posts if not post.above),
    )


def _bent(platform: Platform, beam: Beam, bay_mm: float, ground: Ground) -> Asked:
    """A foot of the fire and a person at mid bay; the rail's own weight is below 1 percent."""
    partial = ground.rules.partial
    foot_n = partial.permanent_ratio * platform.foot_n
    pairs = ((foot_n, PERMANENT), (foot_n + partial.variable_ratio * platform.person_n, SHORT))
    return governing(
        Asked(beams.point_moment_n_mm(load_n, bay_mm, bay_mm / 2), moment_resistance_n_mm(beam, duration, ground), duration)
        for load_n, duration in pairs
    )


def _bending(platform: Platform, ground: Ground) -> Check:
    bay_mm, beam = platform.bay_mm, platform.rail
    asked = _bent(platform, beam, bay_mm, ground)
    return Check(
        code=BENDING,
        subject=platform.mark,
        says=f"{newton_metres(asked.demand)} of {newton_metres(asked.resistance)} over {bay_mm:.1f} mm between uprights, a foot "
        "of the fire and a person between them",
        demand=moment("M_d", asked.demand),
        resistance=moment("M_Rd", asked.resistance),
        clause=eurocode_5("6.1.6"),
        inputs=(
            length("bay", bay_mm), force("F_foot", platform.foot_n), ratio("front share", platform.front_ratio),
            force("Q_k", platform.person_n), length("b", beam.width_mm), length("h", beam.depth_mm),
        ),
        remedy=_closer(platform, ground, asked),
    )  # fmt: skip


def _closer(platform: Platform, ground: Ground, asked: Asked) -> str:
    """The widest bay that passes: the moment grows with the bay."""
    if asked.utilisation_ratio <= 1.0:
        return ""
    bay_mm = math.floor(platform.bay_mm / asked.utilisation_ratio)
    for stronger in stronger_classes(platform.rail.strength, ground):
        if _bent(platform, platform.rail._replace(strength=stronger), platform.bay_mm, ground).utilisation_ratio <= 1.0:
            return f"uprights at most {bay_mm} mm apart, or rails of {stronger.name}"
    return f"uprights at most {bay_mm} mm apart"


def _jack(platform: Platform, post: Post, ground: Ground) -> Check:
    """The end of the trimmer comes down between two uprights, with a foot of the fire at mid bay."""
    near_mm, bay_mm = _bay_of(platform, post.x_mm)
    foot_n = ground.rules.partial.permanent_ratio * platform.foot_n
    demand = beams.point_moment_n_mm(post.load_n, bay_mm, near_mm) + beams.point_moment_n_mm(foot_n, bay_mm, bay_mm / 2)
    resistance = moment_resistance_n_mm(platform.rail, SHORT, ground)
    return Check(
        code=JACK,
        subject=post.mark,
        says=f"{newton_metres(demand)} of {newton_metres(resistance)} in the rail under it, {near_mm:.0f} mm from an upright",
        demand=moment("M_d", demand),
        resistance=moment("M_Rd", resistance),
        clause=eurocode_5("6.1.6"),
        inputs=(
            force("N_d", post.load_n),
            length("from upright", near_mm),
            length("bay", bay_mm),
            force("F_foot", platform.foot_n),
        ),
        remedy="" if demand <= resistance else "an upright under the jack stud",
    )  # fmt: skip


def _bay_of(platform: Platform, x_mm: float) -> tuple[float, float]:
    """Distance of a place from the nearer upright, and the bay that it lies in."""
    for left_mm, right_mm in pairwise(platform.stations_mm):
        if left_mm <= x_mm <= right_mm:
            return min(x_mm - left_mm, right_mm - x_mm), right_mm - left_mm
    return 0.0, platform.bay_mm


def _shear(platform: Platform, ground: Ground) -> Check:
    """The person, or a jack, at the support with a foot of the fire."""
    partial = ground.rules.partial
    foot_n = partial.permanent_ratio * platform.foot_n
    short_n = foot_n + max(
        partial.variable_ratio * platform.person_n, *(post.load_n for post in platform.posts if post.above), 0.0
    )
    asked = governing(
        Asked(load_n, shear_resistance_n(platform.rail, duration, ground), duration)
        for load_n, duration in ((foot_n, PERMANENT), (short_n, SHORT))
    )
    return Check(
        code=SHEAR,
        subject=platform.mark,
        says=f"{asked.demand:.0f} N of {asked.resistance:.0f} N in shear beside an upright",
        demand=force("V_d", asked.demand),
        resistance=force("V_Rd", asked.resistance),
        clause=eurocode_5("6.1.7"),
        inputs=(length("b", platform.rail.width_mm), length("h", platform.rail.depth_mm)),
        remedy="" if asked.utilisation_ratio <= 1.0 else "a thicker rail, or an upright under each foot of the fire",
    )


def _sag(platform: Platform, ground: Ground) -> Check:
    bay_mm, stiffness = platform.bay_mm, platform.rail.stiffness_n_mm2
    sag_mm = deflection.final_sag_mm(
        deflection.point_sag_mm(platform.foot_n, bay_mm, bay_mm / 2, stiffness),
        deflection.point_sag_mm(platform.person_n, bay_mm, bay_mm / 2, stiffness),
        creep_ratio=solid_timber(ground).creep_ratio, quasi_permanent_ratio=ground.rules.partial.quasi_person_ratio,
    )  # fmt: skip
    limit_mm = bay_mm / ground.rules.members.span_over_sag_bare_ratio
    closest_mm = math.floor(bay_mm * math.sqrt(limit_mm / sag_mm)) if sag_mm > limit_mm else 0
    return Check(
        code=SAG,
        subject=platform.mark,
        says=f"sags {sag_mm:.2f} mm under a foot of the fire and a person, of {limit_mm:.2f} mm",
        demand=length("w_fin", sag_mm),
        resistance=length("w_max", limit_mm),
        clause=eurocode_5("2.2.3 and 7.2, Table 7.2"),
        inputs=(length("bay", bay_mm), force("F_foot", platform.foot_n), force("Q_k", platform.person_n)),
        remedy=f"uprights at most {closest_mm} mm apart" if closest_mm else "",
    )


def _bearing(platform: Platform, post: Post, ground: Ground) -> Check:
    """What stands on a rail, or a rail on its packer, presses across the grain."""
    resistance_n = across_resistance_n(platform.rail, SHORT, ground, contact_mm=post.contact_mm, free_mm=post.free_mm)
    return Check(
        code=BEARING,
        subject=post.mark,
        says=f"{post.load_n:.0f} N of {resistance_n:.0f} N across the grain of the rail on {post.contact_mm:.0f} x "
        f"{platform.rail.width_mm:.0f} mm",
        demand=force("F_c,90,d", post.load_n),
        resistance=force("F_c,90,Rd", resistance_n),
        clause=eurocode_5("6.1.5"),
        inputs=(
            length("contact", post.contact_mm), length("width", platform.rail.width_mm),
            length("free", min(post.free_mm)), ratio("k_c,90", ground.rules.members.least_bearing_factor_ratio),
        ),
        remedy=_longer_contact(post, resistance_n),
    )  # fmt: skip


def _longer_contact(post: Post, resistance_n: float) -> str:
    """The contact that passes where nothing but itself is counted, on the safe side."""
    if post.load_n <= resistance_n:
        return ""
    contact_mm = math.ceil(post.contact_mm * post.load_n / resistance_n)
    return f"a contact of at least {contact_mm} mm along the rail: a packer or a second upright as wide as the rail"


def _upright(post: Post, ground: Ground) -> Check:
    """A short column, pinned at both ends, that buckles the weaker way."""
    weak = min(post.section.width_mm, post.section.depth_mm)
    wide = max(post.section.width_mm, post.section.depth_mm)
    resistance_n = column_resistance_n(post.section._replace(width_mm=wide, depth_mm=weak), post.height_mm, SHORT, ground)
    return Check(
        code=UPRIGHT,
        subject=post.mark,
        says=f"{post.load_n:.0f} N of {resistance_n:.0f} N as a column {post.height_mm:.0f} mm long",
        demand=force("N_d", post.load_n),
        resistance=force("N_Rd", resistance_n),
        clause=eurocode_5("6.3.2"),
        inputs=(length("L", post.height_mm), length("b", weak), length("h", wide)),
        remedy="" if post.load_n <= resistance_n else "a second upright beside it",
    )
