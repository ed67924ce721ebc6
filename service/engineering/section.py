"""Geometry of a rectangular section: `width_mm` across the plane of bending, `depth_mm` in it."""

from __future__ import annotations

import math


def area_mm2(width_mm: float, depth_mm: float) -> float:
    """Area of a rectangle.

    Args:
        width_mm: breadth, mm.
        depth_mm: depth, mm.

    Returns:
        Area, mm2.

    Source: geometry.
    """
    return width_mm * depth_mm


def section_modulus_mm3(width_mm: float, depth_mm: float) -> float:
    """Elastic section modulus of a rectangle.

    Args:
        width_mm: breadth across the plane of bending, mm.
        depth_mm: depth in the plane of bending, mm.

    Returns:
        W, mm3.

    Source: elementary beam theory, W = b h^2 / 6.
    """
    return width_mm * depth_mm**2 / 6.0


def second_moment_mm4(width_mm: float, depth_mm: float) -> float:
    """Second moment of area of a rectangle.

    Args:
        width_mm: breadth across the plane of bending, mm.
        depth_mm: depth in the plane of bending, mm.

    Returns:
        I, mm4.

    Source: elementary beam theory, I = b h^3 / 12.
    """
    return width_mm * depth_mm**3 / 12.0


def gyration_radius_mm(depth_mm: float) -> float:
    """Radius of gyration of a rectangle in one direction.

    Args:
        depth_mm: side in the direction of buckling, mm.

    Returns:
        i, mm.

    Source: elementary beam theory, i = h / sqrt(12).
    """
    return depth_mm / math.sqrt(12.0)


def stiffness_n_mm2(modulus_mpa: float, second_moment_mm4: float) -> float:
    """Bending stiffness.

    Args:
        modulus_mpa: mean modulus of elasticity along the grain, MPa.
        second_moment_mm4: second moment of area, mm4.

    Returns:
        E I, N mm2.

    Source: elementary beam theory, E I.
    """
    return modulus_mpa * second_moment_mm4


def stiffness_share_ratio(stiffness_n_mm2: float, total_stiffness_n_mm2: float) -> float:
    """Share of a load that one of several members screwed side by side takes.

    Args:
        stiffness_n_mm2: E I of the member, N mm2.
        total_stiffness_n_mm2: E I of all of them together, N mm2.

    Returns:
        Share of load, moment and shear, 0 to 1.

    Source: elasticity, equal sag of all members: q_i = q E_i I_i / sum(E I).
    """
    return stiffness_n_mm2 / total_stiffness_n_mm2
