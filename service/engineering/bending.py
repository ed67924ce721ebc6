"""Bending and sideways buckling of rectangular members: EN 1995-1-1, 6.1.6 and 6.3.3."""

from __future__ import annotations

import math

STOCKY_RATIO, SLENDER_RATIO = 0.75, 1.4  # bounds of (6.34)
RECTANGLE_RATIO = 0.7  # k_m of rectangles of solid timber: EN 1995-1-1, 6.1.6(2)


def bending_stress_mpa(moment_n_mm: float, width_mm: float, depth_mm: float) -> float:
    """Largest bending stress in a rectangular member.

    Args:
        moment_n_mm: bending moment, N mm.
        width_mm: breadth across the plane of bending, mm.
        depth_mm: depth in the plane of bending, mm.

    Returns:
        Stress at the extreme fibre, MPa.

    Source: elementary beam theory, M / W with W = b h^2 / 6.
    """
    return 6.0 * moment_n_mm / (width_mm * depth_mm**2)


def biaxial_bending_ratio(full_ratio: float, reduced_ratio: float) -> float:
    """One of the two sums of bending about both axes; the larger of the two governs.

    Args:
        full_ratio: stress over strength about the axis that counts in full.
        reduced_ratio: stress over strength about the other axis.

    Returns:
        Utilisation.

    Source: EN 1995-1-1, 2004, 6.1.6, (6.11) and (6.12).
    """
    return full_ratio + RECTANGLE_RATIO * reduced_ratio


def bending_ratio(strong_ratio: float, weak_ratio: float) -> float:
    """Utilisation of a rectangle in bending about both axes.

    Args:
        strong_ratio: stress over strength about the strong axis.
        weak_ratio: stress over strength about the weak axis.

    Returns:
        The larger of both sums.

    Source: EN 1995-1-1, 2004, 6.1.6, (6.11) and (6.12).
    """
    return max(biaxial_bending_ratio(strong_ratio, weak_ratio), biaxial_bending_ratio(weak_ratio, strong_ratio))


def lateral_length_mm(span_mm: float, depth_mm: float, *, span_ratio: float, edge_depth_ratio: float) -> float:
    """Effective length for sideways buckling.

    Args:
        span_mm: span, mm.
        depth_mm: depth of the member, mm.
        span_ratio: 0.9 uniform load, 0.8 load at mid span, 1.0 constant moment.
        edge_depth_ratio: 2 loaded on top, 0 at the middle, -0.5 hung below, in depths.

    Returns:
        l_ef, mm.

    Source: EN 1995-1-1, 2004, 6.3.3, Table 6.1.
    """
    return span_ratio * span_mm + edge_depth_ratio * depth_mm


def critical_bending_stress_mpa(width_mm: float, depth_mm: float, *, length_mm: float, modulus_low_mpa: float) -> float:
    """Bending stress at which a softwood rectangle buckles sideways.

    Args:
        width_mm: breadth, mm.
        depth_mm: depth, mm.
        length_mm: effective length, mm.
        modulus_low_mpa: 5 percent modulus, MPa.

    Returns:
        sigma_m,crit, MPa; some 7 percent above the full formula (6.31) with the torsion constant.

    Source: EN 1995-1-1, 2004, 6.3.3, (6.32).
    """
    return 0.78 * width_mm**2 * modulus_low_mpa / (depth_mm * length_mm)


def bending_slenderness_ratio(bending_mpa: float, critical_mpa: float) -> float:
    """Relative slenderness for bending.

    Args:
        bending_mpa: characteristic bending strength, MPa.
        critical_mpa: critical bending stress, MPa.

    Returns:
        lambda_rel,m.

    Source: EN 1995-1-1, 2004, 6.3.3, (6.30).
    """
    return math.sqrt(bending_mpa / critical_mpa)


def lateral_buckling_ratio(slenderness_ratio: float) -> float:
    """k_crit: what sideways buckling leaves of the bending strength; 1 for a rail with board screwed along it.

    Args:
        slenderness_ratio: relative slenderness for bending.

    Returns:
        k_crit, 0 to 1.

    Source: EN 1995-1-1, 2004, 6.3.3, (6.34).
    """
    if slenderness_ratio <= STOCKY_RATIO:
        return 1.0
    if slenderness_ratio <= SLENDER_RATIO:
        return 1.56 - 0.75 * slenderness_ratio
    return 1.0 / slenderness_ratio**2
