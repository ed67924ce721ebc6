"""Force along the grain, alone and with bending: EN 1995-1-1, 6.1.2, 6.2.3 and 6.3.2."""

from __future__ import annotations

import math

from service.engineering.bending import bending_ratio, biaxial_bending_ratio

STRAIGHTNESS = 0.2  # beta_c of solid timber: EN 1995-1-1, 6.3.2(3), (6.29)
STOCKY_RATIO = 0.3  # no buckling up to this relative slenderness: EN 1995-1-1, 6.3.2(2)


def axial_stress_mpa(force_n: float, area_mm2: float) -> float:
    """Stress along the grain.

    Args:
        force_n: force, N.
        area_mm2: section, less holes, mm2.

    Returns:
        Stress, MPa.

    Source: EN 1995-1-1, 2004, 6.1.2 and 6.1.4.
    """
    return force_n / area_mm2


def column_slenderness_ratio(length_mm: float, gyration_mm: float, *, compression_mpa: float, modulus_low_mpa: float) -> float:
    """Relative slenderness of a column in one direction.

    Args:
        length_mm: distance between points held in that direction, mm.
        gyration_mm: radius of gyration in that direction, mm.
        compression_mpa: characteristic strength along the grain, MPa.
        modulus_low_mpa: 5 percent modulus, MPa.

    Returns:
        lambda_rel.

    Source: EN 1995-1-1, 2004, 6.3.2(1), (6.21) and (6.22).
    """
    return length_mm / gyration_mm / math.pi * math.sqrt(compression_mpa / modulus_low_mpa)


def buckling_ratio(slenderness_ratio: float) -> float:
    """k_c: what buckling leaves of the strength along the grain.

    Args:
        slenderness_ratio: relative slenderness.

    Returns:
        k_c, 0 to 1: the smaller root of (1 - x)(1 - x lambda^2) = 0.2 (lambda - 0.3) x.

    Source: EN 1995-1-1, 2004, 6.3.2(3), (6.25) to (6.29).
    """
    if slenderness_ratio <= STOCKY_RATIO:
        return 1.0
    k = 0.5 * (1.0 + STRAIGHTNESS * (slenderness_ratio - STOCKY_RATIO) + slenderness_ratio**2)
    return 1.0 / (k + math.sqrt(k**2 - slenderness_ratio**2))


def column_resistance_n(strength_mpa: float, area_mm2: float, buckling_ratio: float) -> float:
    """Force that a column resists.

    Args:
        strength_mpa: design strength along the grain, MPa.
        area_mm2: section, mm2.
        buckling_ratio: k_c.

    Returns:
        N_Rd, N.

    Source: EN 1995-1-1, 2004, 6.3.2(3), (6.23) without bending.
    """
    return buckling_ratio * strength_mpa * area_mm2


def column_bending_ratio(compression_ratio: float, full_ratio: float, reduced_ratio: float) -> float:
    """One of the two sums of a slender member in compression and bending; the larger of the two governs.

    Args:
        compression_ratio: stress over k_c times strength, with k_c of the axis that counts in full.
        full_ratio: bending stress over strength about that axis.
        reduced_ratio: bending stress over strength about the other axis.

    Returns:
        Utilisation.

    Source: EN 1995-1-1, 2004, 6.3.2(3), (6.23) and (6.24).
    """
    return compression_ratio + biaxial_bending_ratio(full_ratio, reduced_ratio)


def stocky_bending_ratio(compression_ratio: float, full_ratio: float, reduced_ratio: float) -> float:
    """One of the two sums of a stocky member, both slendernesses up to 0.3, in compression and bending.

    Args:
        compression_ratio: stress over strength along the grain.
        full_ratio: bending stress over strength about the axis that counts in full.
        reduced_ratio: bending stress over strength about the other axis.

    Returns:
        Utilisation.

    Source: EN 1995-1-1, 2004, 6.2.4, (6.19) and (6.20), from memory.
    """
    return compression_ratio**2 + biaxial_bending_ratio(full_ratio, reduced_ratio)


def tension_bending_ratio(tension_ratio: float, strong_ratio: float, weak_ratio: float) -> float:
    """Utilisation of a member in tension and bending.

    Args:
        tension_ratio: stress over strength along the grain.
        strong_ratio: bending stress over strength about the strong axis.
        weak_ratio: bending stress over strength about the weak axis.

    Returns:
        The larger of both sums.

    Source: EN 1995-1-1, 2004, 6.2.3, (6.17) and (6.18), from memory.
    """
    return tension_ratio + bending_ratio(strong_ratio, weak_ratio)
