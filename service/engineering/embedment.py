"""What a fastener pressed sideways into wood meets, and what bends it: EN 1995-1-1, section 8.

`diameter_mm` is the effective diameter d_ef of a screw (`effective_diameter_mm`), the full one of nails, bolts, dowels.
"""

from __future__ import annotations

import math

THREAD_RATIO = 1.1  # d_ef of a thread over its root: EN 1995-1-1, 8.7.1(3)
SMOOTH_SHANK_DIAMETERS = 4.0


def effective_diameter_mm(root_mm: float, shank_mm: float, shank_in_point_mm: float) -> float:
    """Diameter that counts for embedment and yield moment of a screw.

    Args:
        root_mm: root diameter, mm.
        shank_mm: diameter of the smooth shank, mm; 0 where there is none.
        shank_in_point_mm: length of smooth shank in the point side, mm.

    Returns:
        d_ef, mm.

    Source: EN 1995-1-1, 2004, 8.7.1(2)-(3).
    """
    if shank_mm > 0.0 and shank_in_point_mm >= SMOOTH_SHANK_DIAMETERS * shank_mm:
        return shank_mm
    return THREAD_RATIO * root_mm


def plain_embedment_mpa(density_kg_m3: float, diameter_mm: float) -> float:
    """Embedment strength of timber for nails and screws up to 6 mm that are not predrilled.

    Args:
        density_kg_m3: characteristic density, kg/m3.
        diameter_mm: effective diameter, mm.

    Returns:
        f_h,k, MPa.

    Source: EN 1995-1-1, 2004, 8.3.1.1(5), (8.15).
    """
    return 0.082 * density_kg_m3 / math.pow(diameter_mm, 0.3)


def drilled_embedment_mpa(density_kg_m3: float, diameter_mm: float) -> float:
    """Embedment strength of timber along the grain for predrilled nails and screws, bolts and dowels.

    Args:
        density_kg_m3: characteristic density, kg/m3.
        diameter_mm: effective diameter, mm.

    Returns:
        f_h,k or f_h,0,k, MPa.

    Source: EN 1995-1-1, 2004, 8.3.1.1(5), (8.16), and 8.5.1.1(2), (8.32).
    """
    return 0.082 * (1.0 - 0.01 * diameter_mm) * density_kg_m3


def angled_embedment_mpa(along_mpa: float, diameter_mm: float, angle_deg: float) -> float:
    """Embedment strength of softwood for bolts, dowels and screws over 6 mm at an angle to the grain.

    Args:
        along_mpa: strength along the grain, MPa.
        diameter_mm: effective diameter, mm.
        angle_deg: between force and grain.

    Returns:
        f_h,alpha,k, MPa.

    Source: EN 1995-1-1, 2004, 8.5.1.1(2), (8.31) and (8.33).
    """
    angle = math.radians(angle_deg)
    across_ratio = 1.35 + 0.015 * diameter_mm
    return along_mpa / (across_ratio * math.sin(angle) ** 2 + math.cos(angle) ** 2)


def plywood_embedment_mpa(density_kg_m3: float, diameter_mm: float) -> float:
    """Embedment strength of plywood for nails and screws up to 6 mm with a head of twice the diameter.

    Args:
        density_kg_m3: characteristic density, kg/m3.
        diameter_mm: effective diameter, mm.

    Returns:
        f_h,k, MPa.

    Source: EN 1995-1-1, 2004, 8.3.1.3(3), (8.20).
    """
    return 0.11 * density_kg_m3 / math.pow(diameter_mm, 0.3)


def particleboard_embedment_mpa(thickness_mm: float, diameter_mm: float) -> float:
    """Embedment strength of particleboard and OSB for nails and screws up to 6 mm; of MDF the standard gives none.

    Args:
        thickness_mm: thickness of the board, mm.
        diameter_mm: effective diameter, mm.

    Returns:
        f_h,k, MPa.

    Source: EN 1995-1-1, 2004, 8.3.1.3(3), (8.22).
    """
    return 65.0 / math.pow(diameter_mm, 0.7) * math.pow(thickness_mm, 0.1)


def yield_moment_n_mm(steel_mpa: float, diameter_mm: float) -> float:
    """Yield moment of a round nail, screw, bolt or dowel.

    Args:
        steel_mpa: tensile strength of the steel, MPa.
        diameter_mm: effective diameter, mm.

    Returns:
        M_y,Rk, N mm.

    Source: EN 1995-1-1, 2004, 8.3.1.1(4), (8.14), and 8.5.1.1(1), (8.30).
    """
    return 0.3 * steel_mpa * math.pow(diameter_mm, 2.6)
