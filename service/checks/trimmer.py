"""Trimmer over the fire: bending both ways, shear, sag, and the gap that must stay over the fire (structure.md, 3.7 and 5.2)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from service.checks.amounts import eurocode_5, force, house, length, moment, newton_metres, ratio, stress
from service.checks.check import Check
from service.checks.ground import hangs_ladders
from service.checks.hung_ladder import front_sag_mm
from service.checks.timber import (
    Asked,
    bending_mpa,
    bent_ratio,
    governing,
    moment_resistance_n_mm,
    shear_resistance_n,
    solid_timber,
)
from service.checks.trimmer_load import LEAST_SPAN_MM, Trimmer, classes_above, greatest_ply_count, trimmer_of
from service.checks.trimmer_slip import end_slip
from service.engineering import beams, bending, deflection
from service.rules import LoadDuration
from service.units import millimetres

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.checks.check import Result
    from service.checks.ground import Ground
    from service.checks.timber import Beam

BENDING: Final = "structure.trimmer_bending"
SIDEWAYS: Final = "structure.trimmer_sideways"
SHEAR: Final = "structure.trimmer_shear"
SAG: Final = "structure.trimmer_sag"
GAP: Final = "structure.trimmer_gap"
PLASTERBOARD: Final = "plasterboard"
HALVINGS: Final = 40


def trimmer_checks(ground: Ground) -> tuple[Result, ...]:
    """Rail and plies of the trimmer, each alone, then what both do together."""
    trimmer = trimmer_of(ground)
    parts = _parts(trimmer)
    return (
        *(_bending(trimmer, part, ground) for part in parts),
        _sideways(trimmer, ground),
        *(_shear(trimmer, part, ground) for part in parts),
        _sag(trimmer, ground),
        _gap(trimmer, ground),
    )


type Part = tuple[str, Beam, float]  # mark, beam, share of the load


def _parts(trimmer: Trimmer) -> tuple[Part, ...]:
    """The flat rail, and one of the plies, which are all alike."""
    rail = (trimmer.mark, trimmer.flat, trimmer.flat_share_ratio)
    return (rail, (trimmer.ply_mark, trimmer.ply, trimmer.ply_share_ratio)) if trimmer.ply_count else (rail,)


def plastered(ground: Ground) -> bool:
    """Whether a sag shows as a crack."""
    return ground.job.skim_tenth_mm > 0 or ground.job.board.board_kind == PLASTERBOARD


def sag_limit_mm(span_mm: float, ground: Ground) -> float:
    """Greatest final sag of a member behind the face."""
    members = ground.rules.members
    return span_mm / (members.span_over_sag_plastered_ratio if plastered(ground) else members.span_over_sag_bare_ratio)


def _factored(permanent: float, person: float, ground: Ground) -> tuple[tuple[float, LoadDuration], ...]:
    """The weight alone for years, and with a person for a short time."""
    partial = ground.rules.partial
    alone = partial.permanent_ratio * permanent
    return (alone, LoadDuration.PERMANENT), (alone + partial.variable_ratio * person, LoadDuration.SHORT)


def _bent(trimmer: Trimmer, part: Part, ground: Ground) -> Asked:
    _mark, beam, share = part
    demands = _factored(trimmer.permanent_moment_n_mm, trimmer.person_moment_n_mm, ground)
    return governing(
        Asked(share * demand, moment_resistance_n_mm(beam, duration, ground), duration) for demand, duration in demands
    )


def _bending(trimmer: Trimmer, part: Part, ground: Ground) -> Check:
    mark, beam, share = part
    asked = _bent(trimmer, part, ground)
    return Check(
        code=BENDING,
        subject=mark,
        says=f"{newton_metres(asked.demand)} of {newton_metres(asked.resistance)} in bending over {trimmer.span_mm:.0f} mm, "
        f"{share:.0%} of the load on it",
        demand=moment("M_d", asked.demand),
        resistance=moment("M_Rd", asked.resistance),
        clause=eurocode_5("6.1.6"),
        inputs=(
            length("L", trimmer.span_mm), length("b", beam.width_mm), length("h", beam.depth_mm), ratio("share", share),
            force("G_k per end", trimmer.permanent_end_n), force("Q_k", trimmer.person_n),
            stress("f_m,d", bending_mpa(beam, asked.duration, ground)),
            ratio("k_mod", solid_timber(ground).k_mod_ratio(asked.duration)),
        ),
        remedy=_remedy(trimmer, ground, lambda made: _worst(made, ground, _bent)),
    )  # fmt: skip


def _sheared(trimmer: Trimmer, part: Part, ground: Ground) -> Asked:
    """The person stands at the support."""
    _mark, beam, share = part
    demands = _factored(trimmer.permanent_end_n, trimmer.person_n, ground)
    return governing(Asked(share * demand, shear_resistance_n(beam, duration, ground), duration) for demand, duration in demands)


def _shear(trimmer: Trimmer, part: Part, ground: Ground) -> Check:
    mark, beam, share = part
    asked = _sheared(trimmer, part, ground)
    return Check(
        code=SHEAR,
        subject=mark,
        says=f"{asked.demand:.0f} N of {asked.resistance:.0f} N in shear at the support",
        demand=force("V_d", asked.demand),
        resistance=force("V_Rd", asked.resistance),
        clause=eurocode_5("6.1.7"),
        inputs=(
            length("b", beam.width_mm), length("h", beam.depth_mm), ratio("share", share),
            ratio("k_cr", ground.rules.members.crack_timber_ratio),
            ratio("k_mod", solid_timber(ground).k_mod_ratio(asked.duration)),
        ),
        remedy=_remedy(trimmer, ground, lambda made: _worst(made, ground, _sheared)),
    )  # fmt: skip


def _worst(trimmer: Trimmer, ground: Ground, asked_of: Callable[[Trimmer, Part, Ground], Asked]) -> float:
    return max(asked_of(trimmer, part, ground).utilisation_ratio for part in _parts(trimmer))


def _sideways(trimmer: Trimmer, ground: Ground) -> Check:
    """A push on the face bends the flat rail on its strong axis while the weight bends it on the weak one."""
    partial, beam = ground.rules.partial, trimmer.flat
    pushed_n_mm = partial.variable_ratio * _push_moment_n_mm(trimmer, ground)
    weight_n_mm = partial.permanent_ratio * trimmer.permanent_moment_n_mm * trimmer.flat_share_ratio
    on_edge = beam._replace(width_mm=beam.depth_mm, depth_mm=beam.width_mm)
    strong_ratio = bent_ratio(on_edge, pushed_n_mm, LoadDuration.SHORT, ground)
    weak_ratio = bent_ratio(beam, weight_n_mm, LoadDuration.SHORT, ground)
    return Check(
        code=SIDEWAYS,
        subject=trimmer.mark,
        says=f"{newton_metres(pushed_n_mm)} of a push on the face with {newton_metres(weight_n_mm)} of weight on the flat rail",
        demand=ratio("u", bending.bending_ratio(strong_ratio, weak_ratio)),
        resistance=ratio("limit", 1.0),
        clause=eurocode_5("6.1.6, (6.11) and (6.12)"),
        inputs=(moment("M_z,d", pushed_n_mm), moment("M_y,d", weight_n_mm), length("L", trimmer.span_mm)),
        remedy="a wider section, or a shorter opening",
    )


def _push_moment_n_mm(trimmer: Trimmer, ground: Ground) -> float:
    """Of a hand at mid span or of the line load on all of the face, whichever is more; both in full on this rail."""
    actions = ground.rules.actions
    low_mm = millimetres(ground.frame.levels.appliance_top_tenth_mm)
    hand_n = actions.hand_n if low_mm <= actions.hand_height_mm else 0.0
    line_n_per_mm = actions.face_line_n_per_m / 1000
    return max(
        beams.point_moment_n_mm(hand_n, trimmer.span_mm, trimmer.span_mm / 2),
        beams.uniform_moment_n_mm(line_n_per_mm, trimmer.span_mm),
    )


def final_sag_mm(trimmer: Trimmer, ground: Ground) -> float:
    """With creep under the weight; a person does not stay."""
    return deflection.final_sag_mm(
        trimmer.permanent_sag_mm, trimmer.person_sag_mm, creep_ratio=solid_timber(ground).creep_ratio,
        quasi_permanent_ratio=ground.rules.partial.quasi_person_ratio,
    )  # fmt: skip


def _sag(trimmer: Trimmer, ground: Ground) -> Check:
    sag_mm, limit_mm = final_sag_mm(trimmer, ground), sag_limit_mm(trimmer.span_mm, ground)
    return Check(
        code=SAG,
        subject=trimmer.mark,
        says=f"sags {sag_mm:.2f} mm in the end with a person on it, of {limit_mm:.2f} mm",
        demand=length("w_fin", sag_mm),
        resistance=length("w_max", limit_mm),
        clause=eurocode_5("2.2.3 and 7.2, Table 7.2"),
        inputs=(
            length("w_inst,G", trimmer.permanent_sag_mm), length("w_inst,Q", trimmer.person_sag_mm),
            length("L", trimmer.span_mm), ratio("k_def", solid_timber(ground).creep_ratio),
        ),
        remedy=_remedy(trimmer, ground, lambda made: final_sag_mm(made, ground) / sag_limit_mm(made.span_mm, ground)),
    )  # fmt: skip


def _gap(trimmer: Trimmer, ground: Ground) -> Check:
    """Never waived: where it fails the breast comes to rest on the fire."""
    front_mm = front_sag_mm(ground) + ground.rules.members.wall_yield_mm if hangs_ladders(ground) else 0.0
    sag_mm, slip = final_sag_mm(trimmer, ground), end_slip(trimmer, ground)
    reserve_mm = ground.rules.members.sag_reserve_mm
    asked_mm, gap_mm = sag_mm + slip.slip_mm + front_mm + reserve_mm, millimetres(ground.job.gap_over_tenth_mm)
    return Check(
        code=GAP,
        subject=trimmer.mark,
        says=f"comes down {sag_mm:.2f} mm by sag, {slip.slip_mm:.2f} mm by slip of its ends"
        + (f", {front_mm:.2f} mm with the front of the side ladders" if front_mm else "")
        + f"; {reserve_mm:g} mm more are kept of the {gap_mm:g} mm over the fire",
        demand=length("w", asked_mm),
        resistance=length("c_a", gap_mm),
        clause=house("final sag, slip and a reserve stay within the gap over the fire"),
        inputs=(
            length("w_fin", sag_mm),
            length("u_slip", slip.slip_mm),
            length("w_front", front_mm),
            length("reserve", reserve_mm),
        ),
        unverified=slip.unverified,
        remedy=_wider_gap(asked_mm, gap_mm, trimmer, ground),
    )


def _wider_gap(asked_mm: float, gap_mm: float, trimmer: Trimmer, ground: Ground) -> str:
    if asked_mm <= gap_mm:
        return ""
    room = trimmer.ply_count < greatest_ply_count(ground)
    stiffer = f"{_plies(trimmer.ply_count + 1)} behind the trimmer" if room else "a deeper section"
    return f"a gap over the fire of at least {math.ceil(asked_mm)} mm, or {stiffer}"


def _plies(ply_count: int) -> str:
    return "one ply on edge" if ply_count == 1 else f"{ply_count} plies on edge"


def _remedy(trimmer: Trimmer, ground: Ground, ratio_of: Callable[[Trimmer], float]) -> str:
    """What would pass: the fewest plies, else the weakest class, and the longest opening as it is."""
    if ratio_of(trimmer) <= 1.0:
        return ""
    span_mm = _longest_span_mm(trimmer, ratio_of)
    shorter = f"an opening that spans at most {math.floor(span_mm)} mm"
    for ply_count in range(trimmer.ply_count + 1, greatest_ply_count(ground) + 1):
        if ratio_of(trimmer.with_plies(ply_count)) <= 1.0:
            return f"{_plies(ply_count)} behind the trimmer, or {shorter}"
    for stronger in classes_above(trimmer, ground):
        if ratio_of(trimmer.of_class(stronger)) <= 1.0:
            return f"trimmer and plies of {stronger.name}, or {shorter}"
    return f"a deeper section, or {shorter}"


def _longest_span_mm(trimmer: Trimmer, ratio_of: Callable[[Trimmer], float]) -> float:
    """By halving: a longer span never lowers a utilisation."""
    low_mm, high_mm = LEAST_SPAN_MM, trimmer.span_mm
    for _halving in range(HALVINGS):
        middle_mm = (low_mm + high_mm) / 2
        if ratio_of(trimmer.over(middle_mm)) <= 1.0:
            low_mm = middle_mm
        else:
            high_mm = middle_mm
    return low_mm
