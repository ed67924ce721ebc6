"""Compression across the grain: EN 1995-1-1 with A1, 6.1.5."""

from __future__ import annotations

SPREAD_MM = 30.0  # EN 1995-1-1 + A1, 6.1.5(1)
CONTINUOUS_SUPPORT_RATIO = 1.25  # k_c,90 of softwood: EN 1995-1-1 + A1, 6.1.5(3)
SEPARATE_SUPPORTS_RATIO = 1.5  # k_c,90 of softwood: EN 1995-1-1 + A1, 6.1.5(4)


def spread_length_mm(contact_mm: float, before_mm: float, after_mm: float) -> float:
    """Length along the grain over which a load presses: contact and what the grain beside it helps.

    Args:
        contact_mm: length of contact along the grain, mm.
        before_mm: free length on one side, mm: to the end of the member, or half of that to the next load.
        after_mm: free length on the other side, mm, likewise.

    Returns:
        l_ef, mm.

    Source: EN 1995-1-1, 2004 + A1, 6.1.5(1).
    """
    return contact_mm + sum(min(SPREAD_MM, contact_mm, free_mm) for free_mm in (before_mm, after_mm))


def bearing_factor_ratio(clear_mm: float, depth_mm: float, *, continuous: bool) -> float:
    """k_c,90 of a softwood rail.

    Args:
        clear_mm: clear distance to the next load, mm.
        depth_mm: depth of the rail, mm.
        continuous: whether it lies on its support all along, or on separate ones.

    Returns:
        k_c,90: 1 where the loads stand nearer than twice the depth.

    Source: EN 1995-1-1, 2004 + A1, 6.1.5(2) to (4).
    """
    if clear_mm < 2.0 * depth_mm:
        return 1.0
    return CONTINUOUS_SUPPORT_RATIO if continuous else SEPARATE_SUPPORTS_RATIO


def bearing_stress_mpa(force_n: float, width_mm: float, length_mm: float) -> float:
    """Pressure across the grain.

    Args:
        force_n: force, N.
        width_mm: width of contact across the grain, mm; a packer's own where one lies between.
        length_mm: effective length along the grain, mm.

    Returns:
        sigma_c,90, MPa.

    Source: EN 1995-1-1, 2004 + A1, 6.1.5(1), (6.4).
    """
    return force_n / (width_mm * length_mm)


def bearing_resistance_n(strength_mpa: float, width_mm: float, length_mm: float, factor_ratio: float) -> float:
    """Force that a bearing across the grain resists.

    Args:
        strength_mpa: design strength across the grain, MPa.
        width_mm: width of contact across the grain, mm.
        length_mm: effective length along the grain, mm.
        factor_ratio: k_c,90.

    Returns:
        F_c,90,Rd, N.

    Source: EN 1995-1-1, 2004 + A1, 6.1.5(1), (6.3) turned round.
    """
    return factor_ratio * strength_mpa * width_mm * length_mm
