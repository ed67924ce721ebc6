"""Screen bearers under a flat bracket: weight and pull-out, about both axes, for years (structure.md, 5.4)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from service.checks.amounts import eurocode_5, force, length, moment, newton_metres, ratio
from service.checks.bearer_load import ARM, BearerLoad, bearer_load
from service.checks.check import Check, Skipped
from service.checks.timber import Beam, bent_ratio, shear_resistance_n, solid_timber, stronger_classes
from service.engineering import beams, bending, deflection
from service.rules import LoadDuration

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

BENDING: Final = "structure.bearer_bending"
SHEAR: Final = "structure.bearer_shear"
SAG: Final = "structure.bearer_sag"
NO_SCREEN: Final = "no screen hangs on the frame"
ONE_BEARER: Final = (
    "one bearer takes both rows of the bracket: the turning of the screen goes into the backboard, which is not calculated"
)
PERMANENT: Final = LoadDuration.PERMANENT
DEEPER_STEP_MM: Final = 5


def bearer_checks(ground: Ground) -> tuple[Result, ...]:
    """The top bearer, which takes all of the weight and of the pull-out."""
    load = bearer_load(ground)
    if load is None:
        return tuple(Skipped(code=code, why=NO_SCREEN) for code in (BENDING, SHEAR, SAG))
    if ground.job.bracket is not None and ground.job.bracket.kind == ARM:
        why = "the arm is checked with a hand and an accident on it"
        return (Skipped(code=BENDING, why=why), _shear(load, ground), _sag(load, ground))
    return _bending(load, ground), _shear(load, ground), _sag(load, ground)


def bearer_moments_n_mm(load: BearerLoad, *, screen_n: float, pull_n: float, uniform_n: float) -> tuple[float, float]:
    """Upright and level moment at mid span, design: screen and pull as points, the rest uniform."""
    span_mm = load.span_mm
    down = beams.point_moment_n_mm(screen_n, span_mm, span_mm / 2) + beams.uniform_moment_n_mm(uniform_n / span_mm, span_mm)
    return down, beams.point_moment_n_mm(pull_n, span_mm, span_mm / 2)


def biaxial_ratio(beam: Beam, moments_n_mm: tuple[float, float], duration: LoadDuration, ground: Ground) -> float:
    """(6.11) and (6.12), the larger."""
    flat = beam._replace(width_mm=beam.depth_mm, depth_mm=beam.width_mm)
    down, level = moments_n_mm
    return bending.bending_ratio(bent_ratio(beam, down, duration, ground), bent_ratio(flat, level, duration, ground))


def stronger_bearer(beam: Beam, moments_n_mm: tuple[float, float], duration: LoadDuration, ground: Ground) -> str:
    """The weakest class, else the least depth, that passes."""
    if biaxial_ratio(beam, moments_n_mm, duration, ground) <= 1.0:
        return ""
    for stronger in stronger_classes(beam.strength, ground):
        if biaxial_ratio(beam._replace(strength=stronger), moments_n_mm, duration, ground) <= 1.0:
            return f"bearers of {stronger.name}"
    deeper = beam
    while biaxial_ratio(deeper, moments_n_mm, duration, ground) > 1.0:
        deeper = deeper._replace(depth_mm=deeper.depth_mm + DEEPER_STEP_MM)
    return f"bearers {math.ceil(deeper.depth_mm)} mm deep, or a third bearer"


def _permanent_moments(load: BearerLoad, ground: Ground) -> tuple[float, float]:
    permanent = ground.rules.partial.permanent_ratio
    screen_n = permanent * load.screen_n
    return bearer_moments_n_mm(
        load, screen_n=load.share_ratio * screen_n, pull_n=load.pull_n(screen_n), uniform_n=permanent * load.uniform_n
    )


def _bending(load: BearerLoad, ground: Ground) -> Check:
    moments, alone = _permanent_moments(load, ground), load.bearer_count == 1
    apart_mm = load.beam.depth_mm + DEEPER_STEP_MM
    return Check(
        code=BENDING,
        subject=load.mark,
        says=f"{newton_metres(moments[0])} down and {newton_metres(moments[1])} outward at mid span, under the screen for years",
        demand=ratio("u", biaxial_ratio(load.beam, moments, PERMANENT, ground)),
        resistance=ratio("limit", 1.0),
        clause=eurocode_5("6.1.6, (6.11) and (6.12)"),
        inputs=(
            force("W", load.screen_n), length("e", load.lever_mm), length("z", load.rows_mm), force("uniform", load.uniform_n),
            moment("M_y,d", moments[0]), moment("M_z,d", moments[1]), length("L", load.span_mm),
        ),
        unverified=load.assumed or (ONE_BEARER if alone else ""),
        remedy=stronger_bearer(load.beam, moments, PERMANENT, ground)
        or (f"a bracket whose rows are at least {apart_mm:g} mm apart" if alone else ""),
    )  # fmt: skip


def _shear(load: BearerLoad, ground: Ground) -> Check:
    demand = ground.rules.partial.permanent_ratio * (load.share_ratio * load.screen_n + load.uniform_n) / 2
    resistance = shear_resistance_n(load.beam, PERMANENT, ground)
    return Check(
        code=SHEAR,
        subject=load.mark,
        says=f"{demand:.0f} N of {resistance:.0f} N in shear at its ends",
        demand=force("V_d", demand),
        resistance=force("V_Rd", resistance),
        clause=eurocode_5("6.1.7"),
        inputs=(force("W", load.screen_n), force("uniform", load.uniform_n)),
        unverified=load.assumed,
        remedy="" if demand <= resistance else "deeper bearers, or a third bearer",
    )


def _sag(load: BearerLoad, ground: Ground) -> Check:
    stiffness = load.beam.stiffness_n_mm2
    at_once_mm = deflection.point_sag_mm(load.share_ratio * load.screen_n, load.span_mm, load.span_mm / 2, stiffness)
    at_once_mm += deflection.uniform_sag_mm(load.uniform_n / load.span_mm, load.span_mm, stiffness)
    sag_mm = deflection.final_sag_mm(at_once_mm, 0.0, creep_ratio=solid_timber(ground).creep_ratio, quasi_permanent_ratio=0.0)
    limit_mm = load.span_mm / ground.rules.members.span_over_sag_bare_ratio
    deep_mm = math.ceil(load.beam.depth_mm * math.cbrt(sag_mm / limit_mm)) if sag_mm > limit_mm else 0
    return Check(
        code=SAG,
        subject=load.mark,
        says=f"sags {sag_mm:.2f} mm under the screen in the end, of {limit_mm:.2f} mm",
        demand=length("w_fin", sag_mm),
        resistance=length("w_max", limit_mm),
        clause=eurocode_5("2.2.3 and 7.2, Table 7.2"),
        inputs=(length("w_inst", at_once_mm), length("L", load.span_mm)),
        unverified=load.assumed,
        remedy=f"bearers at least {deep_mm} mm deep" if deep_mm else "",
    )
