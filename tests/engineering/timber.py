"""Timber and factors that the worked checks use, from the rule set with the recommended values.

Rows A1 to I6 are those of `worked-checks.md`: input, expected value to five digits, tolerance, source of the check. "Published"
values were compared there with: Koželuh, Worked examples to Eurocode 5, part I, 2016 [K]; Benoit, Legrand, Tastet, Calcul de
structures en bois, 2008 [B]; Stamatopoulos, NTNU TKT4211, examples C1 and C2 [N1] [N2]; Schneider, Bautabellen für Ingenieure
[S]; a timber manual's tables of nails [V]. LP is a plastic limit load found by linear programming; FE a finite-element model.
"""

from __future__ import annotations

from service.engineering import section, strength
from service.rules import LoadDuration, StrengthClass, load_rules

RULES = load_rules("recommended-2026.1")
C16, C24 = RULES.strength_class("C16"), RULES.strength_class("C24")
DRY = RULES.duration_factors("solid_timber_1")
PERMANENT, MEDIUM, SHORT = (
    DRY.k_mod_ratio(duration) for duration in (LoadDuration.PERMANENT, LoadDuration.MEDIUM, LoadDuration.SHORT)
)
GAMMA_M = RULES.partial.solid_timber_ratio
GAMMA_G, GAMMA_Q = RULES.partial.permanent_ratio, RULES.partial.variable_ratio
CREEP = DRY.creep_ratio

TENTH_PERCENT, HUNDREDTH_PERCENT = 1e-3, 1e-4


def bending_design_mpa(timber: StrengthClass, k_mod_ratio: float, depth_mm: float) -> float:
    """f_m,d with k_h of the depth in the direction of bending."""
    characteristic_mpa = strength.size_factor_ratio(depth_mm) * timber.bending_mpa
    return strength.design_strength_mpa(characteristic_mpa, k_mod_ratio, GAMMA_M)


def bending_stiffness_n_mm2(timber: StrengthClass, width_mm: float, depth_mm: float) -> float:
    """E I with the mean modulus."""
    return section.stiffness_n_mm2(timber.modulus_mpa, section.second_moment_mm4(width_mm, depth_mm))
