"""Noggins of a hung ladder that angle brackets hold at both ends: `knowledge/structure.md`, 5.13 b and e."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from service.checks.ladder_parts import asked_of
from service.engineering import bearing, bending, deflection, hung_ladder, rows, section, shear, strength

if TYPE_CHECKING:
    from service.catalogue import Material
    from service.checks.ground import Ground
    from service.checks.ladder_parts import Ladder
    from service.checks.situations import Situation
    from service.rules import RuleSet

LEAST_NOGGINS: Final = 2  # one alone takes no couple
UNDECLARED: Final = "not verified: the maker of the angle bracket declares no pull or no upward load"


def declared(bracket: Material | None) -> bool:
    """Whether the maker declares what the check needs."""
    return bracket is not None and bool(bracket.bracket_pull_n) and bool(bracket.bracket_up_n)


def bracket_ratio(ladder: Ladder, levels_mm: tuple[float, ...], situation: Situation, ground: Ground) -> float:
    """Utilisation of the bracket that is asked most; infinite where too few noggins are held."""
    bracket = ground.hardware.bracket
    if bracket is None or not declared(bracket) or len(levels_mm) < LEAST_NOGGINS:
        return math.inf
    asked = asked_of(ladder, situation)
    moment_n_mm = hung_ladder.joint_moment_n_mm(asked.racking_n_mm, len(levels_mm))
    pull_n = hung_ladder.bracket_pull_n(moment_n_mm, _lever_mm(ladder, ground.rules), top_pull_n(ladder, levels_mm, situation))
    resists = (
        strength.design_resistance_n(characteristic_n or 0.0, situation.k_mod_ratio, situation.gamma_m_ratio)
        for characteristic_n in (bracket.bracket_pull_n, bracket.bracket_up_n)
    )
    asked_n = (pull_n, asked.force_n / len(levels_mm))
    return rows.linear_interaction_ratio(*(one_n / resistance_n for one_n, resistance_n in zip(asked_n, resists, strict=True)))


def top_pull_n(ladder: Ladder, levels_mm: tuple[float, ...], situation: Situation) -> float:
    """Tension of the highest noggin."""
    return hung_ladder.noggin_pull_n(asked_of(ladder, situation).couple_n_mm, levels_mm)


def timber_ratios(ladder: Ladder, situation: Situation, ground: Ground, free_mm: float) -> dict[str, float]:
    """Utilisation of the timber at the brackets: noggin in bending and shear, its contact, the rear upright between fixings.

    Args:
        ladder: with at least two bracketed noggins.
        situation: of loads.
        ground: rules.
        free_mm: longest way of the rear upright between two wall fixings.
    """
    b_mm, d_mm, levels_mm = ladder.thickness_mm, ladder.depth_mm, ladder.bracketed_mm
    asked = asked_of(ladder, situation)
    moment_n_mm = hung_ladder.joint_moment_n_mm(asked.racking_n_mm, len(levels_mm))
    pressed_n = moment_n_mm / _lever_mm(ladder, ground.rules)
    bent_n_mm = max(0.0, top_pull_n(ladder, levels_mm, situation)) * free_mm / 4
    size = strength.size_factor_ratio(d_mm)
    noggin_mpa = _design_mpa(size * ladder.noggin.bending_mpa, situation)
    shear_n = shear.shear_resistance_n(
        _design_mpa(ladder.noggin.shear_mpa, situation), section.area_mm2(b_mm, d_mm), ground.rules.members.crack_timber_ratio
    )
    contact_mm = ground.rules.screws.bracket_contact_ratio * d_mm
    contact_n = bearing.bearing_resistance_n(
        _design_mpa(ladder.upright.compression_across_mpa, situation), b_mm, contact_mm,
        ground.rules.members.least_bearing_factor_ratio,
    )  # fmt: skip
    upright_mpa = _design_mpa(size * ladder.upright.bending_mpa, situation)
    return {
        "the noggins in bending": bending.bending_stress_mpa(moment_n_mm, b_mm, d_mm) / noggin_mpa,
        "the noggins in shear": asked.force_n / len(levels_mm) / shear_n,
        "the noggins pressing on the upright": pressed_n / contact_n,
        "the rear upright between its wall fixings": bending.bending_stress_mpa(bent_n_mm, b_mm, d_mm) / upright_mpa,
    }


def bracketed_sag_mm(ladder: Ladder, ground: Ground, creep_ratio: float) -> float:
    """How far the front comes down for good: the weight with creep, and a person."""
    bracket, screw = ground.hardware.bracket, ground.hardware.bracket_screw
    k = len(ladder.bracketed_mm)
    if bracket is None or screw is None or k < LEAST_NOGGINS:
        return 0.0
    slip_n_per_mm = deflection.screw_slip_n_per_mm(ladder.upright.density_mean_kg_m3, screw.diameter_mm or 0.0)
    leg_n_per_mm = (bracket.leg_screw_count or 0) * slip_n_per_mm
    joint_n_mm = hung_ladder.joint_stiffness_n_mm(bracket.leg_screw_count or 0, slip_n_per_mm, _lever_mm(ladder, ground.rules))
    moment_mm4 = section.second_moment_mm4(ladder.thickness_mm, ladder.depth_mm)
    stiff_n_mm2 = section.stiffness_n_mm2(ladder.noggin.modulus_mpa, moment_mm4)
    bends_mm = hung_ladder.noggin_bending_mm(1.0, ladder.clear_mm, stiff_n_mm2, k)
    gives_mm = hung_ladder.bracket_drop_mm(1.0, ladder.clear_mm, joint_n_mm=joint_n_mm, leg_n_per_mm=leg_n_per_mm, noggin_count=k)
    corner_n = hung_ladder.corner_force_n(ladder.weight_n, ladder.lever_mm, ladder.depth_mm, ladder.reach_mm)
    joint_creep = strength.pair_creep_ratio(creep_ratio, creep_ratio)
    for_good_mm = corner_n * ((1 + creep_ratio) * bends_mm + (1 + joint_creep) * gives_mm)
    return for_good_mm + ladder.person_n * (bends_mm + gives_mm)


def _lever_mm(ladder: Ladder, rules: RuleSet) -> float:
    return rules.screws.bracket_lever_ratio * ladder.depth_mm


def _design_mpa(characteristic_mpa: float, situation: Situation) -> float:
    return strength.design_strength_mpa(characteristic_mpa, situation.k_mod_ratio, situation.gamma_m_ratio)
