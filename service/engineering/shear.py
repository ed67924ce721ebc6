"""Shear, notched ends and splitting: EN 1995-1-1, 6.1.7, 6.5.2 and 8.1.4."""

from __future__ import annotations

import math

NOTCH_TIMBER = 5.0  # k_n of solid timber: EN 1995-1-1, 6.5.2(2), (6.63)
SPLITTING_N_PER_MM15 = 14.0  # of softwood: EN 1995-1-1, 8.1.4(3), (8.4)


def shear_stress_mpa(shear_n: float, width_mm: float, depth_mm: float, crack_ratio: float) -> float:
    """Greatest shear stress in a rectangle with cracks.

    Args:
        shear_n: shear force, N.
        width_mm: breadth, mm.
        depth_mm: depth, mm.
        crack_ratio: k_cr: the width that cracks leave.

    Returns:
        Stress, MPa.

    Source: EN 1995-1-1, 2004 + A1, 6.1.7, (6.13) and (6.13a).
    """
    return 1.5 * shear_n / (crack_ratio * width_mm * depth_mm)


def shear_resistance_n(strength_mpa: float, area_mm2: float, crack_ratio: float) -> float:
    """Shear force that a rectangle with cracks resists.

    Args:
        strength_mpa: design shear strength, MPa.
        area_mm2: section, mm2.
        crack_ratio: k_cr.

    Returns:
        V_Rd, N.

    Source: EN 1995-1-1, 2004 + A1, 6.1.7, (6.13) and (6.13a) turned round.
    """
    return 2.0 / 3.0 * strength_mpa * crack_ratio * area_mm2


def notch_ratio(depth_mm: float, left_depth_mm: float, corner_mm: float) -> float:
    """k_v: what a square notch on the loaded side of an end leaves of the shear strength of the depth that is left.

    Args:
        depth_mm: depth of the member, mm.
        left_depth_mm: depth at the notch, mm.
        corner_mm: distance from the line of the support to the corner of the notch, mm.

    Returns:
        k_v, 0 to 1.

    Source: EN 1995-1-1, 2004, 6.5.2, (6.62), from memory.
    """
    left_ratio = left_depth_mm / depth_mm
    step = math.sqrt(left_ratio * (1.0 - left_ratio))
    reach = 0.8 * corner_mm / depth_mm * math.sqrt(1.0 / left_ratio - left_ratio**2)
    weakening = math.sqrt(depth_mm) * (step + reach)
    return 1.0 if weakening <= NOTCH_TIMBER else NOTCH_TIMBER / weakening


def splitting_resistance_n(width_mm: float, depth_mm: float, loaded_depth_mm: float) -> float:
    """Shear force beside a load hung from below the middle at which a member splits, fasteners other than nail plates.

    Args:
        width_mm: breadth, mm.
        depth_mm: depth, mm.
        loaded_depth_mm: from the loaded edge to the furthest fastener, mm; less than the depth.

    Returns:
        F_90,Rk, N.

    Source: EN 1995-1-1, 2004, 8.1.4(3), (8.4).
    """
    return SPLITTING_N_PER_MM15 * width_mm * math.sqrt(loaded_depth_mm / (1.0 - loaded_depth_mm / depth_mm))
