"""Spacings, distances to ends and edges, predrilling: EN 1995-1-1, Tables 8.2, 8.4, 8.6; 8.3.1.2.

Nails and screws up to 6 mm in timber up to 420 kg/m3 by Table 8.2; thicker ones as bolts by Table 8.4; pulled ones by Table
8.6. `angle_deg` is the one between force and grain; loaded means that the force points at that end or edge.
"""

from __future__ import annotations

import math

THICK_MM = 5.0  # from this diameter on, plain nails and screws need more room: EN 1995-1-1, Table 8.2
STEEL_RATIO, PANEL_RATIO = 0.7, 0.85  # of a1 and a2: EN 1995-1-1, 8.3.1.4(1) and 8.3.1.3(1), the second from memory
LEAST_BOLT_END_MM = 80.0  # EN 1995-1-1:2004+A2:2014, Table 8.4, loaded end; from memory
DENSE_KG_M3, GREATEST_PLAIN_DIAMETER_MM = 500.0, 6.0  # EN 1995-1-1, 8.3.1.1(2), the diameter from memory


def along_grain_mm(diameter_mm: float, angle_deg: float, *, predrilled: bool) -> float:
    """a1: spacing in a row along the grain.

    Args:
        diameter_mm: outer diameter, mm.
        angle_deg: between force and grain.
        predrilled: whether the holes are drilled.

    Returns:
        Least spacing, mm.

    Source: EN 1995-1-1, 2004, 8.3.1.2(5), Table 8.2.
    """
    along = _along(angle_deg)
    if predrilled:
        return (4.0 + along) * diameter_mm
    return (5.0 + (7.0 if diameter_mm >= THICK_MM else 5.0) * along) * diameter_mm


def across_grain_mm(diameter_mm: float, angle_deg: float, *, predrilled: bool) -> float:
    """a2: spacing of rows across the grain.

    Args:
        diameter_mm: outer diameter, mm.
        angle_deg: between force and grain.
        predrilled: whether the holes are drilled.

    Returns:
        Least spacing, mm.

    Source: EN 1995-1-1, 2004, 8.3.1.2(5), Table 8.2.
    """
    return (3.0 + _across(angle_deg) if predrilled else 5.0) * diameter_mm


def loaded_end_mm(diameter_mm: float, angle_deg: float, *, predrilled: bool) -> float:
    """a3,t: distance to an end that the force points at.

    Args:
        diameter_mm: outer diameter, mm.
        angle_deg: between force and grain.
        predrilled: whether the holes are drilled.

    Returns:
        Least distance, mm.

    Source: EN 1995-1-1, 2004, 8.3.1.2(5), Table 8.2.
    """
    return ((7.0 if predrilled else 10.0) + 5.0 * _along(angle_deg)) * diameter_mm


def free_end_mm(diameter_mm: float, *, predrilled: bool) -> float:
    """a3,c: distance to an end that the force does not point at.

    Args:
        diameter_mm: outer diameter, mm.
        predrilled: whether the holes are drilled.

    Returns:
        Least distance, mm.

    Source: EN 1995-1-1, 2004, 8.3.1.2(5), Table 8.2.
    """
    return (7.0 if predrilled else 10.0) * diameter_mm


def loaded_edge_mm(diameter_mm: float, angle_deg: float, *, predrilled: bool) -> float:
    """a4,t: distance to an edge that the force points at.

    Args:
        diameter_mm: outer diameter, mm.
        angle_deg: between force and grain.
        predrilled: whether the holes are drilled.

    Returns:
        Least distance, mm.

    Source: EN 1995-1-1, 2004, 8.3.1.2(5), Table 8.2.
    """
    thick = diameter_mm >= THICK_MM
    if predrilled:
        return (3.0 + (4.0 if thick else 2.0) * _across(angle_deg)) * diameter_mm
    return (5.0 + (5.0 if thick else 2.0) * _across(angle_deg)) * diameter_mm


def free_edge_mm(diameter_mm: float, *, predrilled: bool) -> float:
    """a4,c: distance to an edge that the force does not point at.

    Args:
        diameter_mm: outer diameter, mm.
        predrilled: whether the holes are drilled.

    Returns:
        Least distance, mm.

    Source: EN 1995-1-1, 2004, 8.3.1.2(5), Table 8.2.
    """
    return (3.0 if predrilled else 5.0) * diameter_mm


def bolt_along_grain_mm(diameter_mm: float, angle_deg: float) -> float:
    """a1 of bolts and of screws over 6 mm.

    Args:
        diameter_mm: diameter, mm.
        angle_deg: between force and grain.

    Returns:
        Least spacing, mm.

    Source: EN 1995-1-1, 2004, 8.5.1.1(3), Table 8.4, from memory.
    """
    return (4.0 + _along(angle_deg)) * diameter_mm


def bolt_across_grain_mm(diameter_mm: float) -> float:
    """a2 of bolts and of screws over 6 mm.

    Args:
        diameter_mm: diameter, mm.

    Returns:
        Least spacing, mm.

    Source: EN 1995-1-1, 2004, 8.5.1.1(3), Table 8.4, from memory.
    """
    return 4.0 * diameter_mm


def bolt_loaded_end_mm(diameter_mm: float) -> float:
    """a3,t of bolts and of screws over 6 mm.

    Args:
        diameter_mm: diameter, mm.

    Returns:
        Least distance, mm.

    Source: EN 1995-1-1, 2004, 8.5.1.1(3), Table 8.4, from memory.
    """
    return max(7.0 * diameter_mm, LEAST_BOLT_END_MM)


def bolt_free_end_mm(diameter_mm: float, angle_deg: float) -> float:
    """a3,c of bolts and of screws over 6 mm.

    Args:
        diameter_mm: diameter, mm.
        angle_deg: between force and grain.

    Returns:
        Least distance, mm; along the grain 4 d are enough.

    Source: EN 1995-1-1, 2004, 8.5.1.1(3), Table 8.4, from memory.
    """
    return max((1.0 + 6.0 * _across(angle_deg)) * diameter_mm, 4.0 * diameter_mm)


def bolt_loaded_edge_mm(diameter_mm: float, angle_deg: float) -> float:
    """a4,t of bolts and of screws over 6 mm.

    Args:
        diameter_mm: diameter, mm.
        angle_deg: between force and grain.

    Returns:
        Least distance, mm.

    Source: EN 1995-1-1, 2004, 8.5.1.1(3), Table 8.4, from memory.
    """
    return max(2.0 + 2.0 * _across(angle_deg), 3.0) * diameter_mm


def bolt_free_edge_mm(diameter_mm: float) -> float:
    """a4,c of bolts and of screws over 6 mm.

    Args:
        diameter_mm: diameter, mm.

    Returns:
        Least distance, mm.

    Source: EN 1995-1-1, 2004, 8.5.1.1(3), Table 8.4, from memory.
    """
    return 3.0 * diameter_mm


def pulled_along_grain_mm(diameter_mm: float) -> float:
    """a1 of pulled screws.

    Args:
        diameter_mm: outer diameter, mm.

    Returns:
        Least spacing, mm.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(2), Table 8.6.
    """
    return 7.0 * diameter_mm


def pulled_across_grain_mm(diameter_mm: float) -> float:
    """a2 of pulled screws.

    Args:
        diameter_mm: outer diameter, mm.

    Returns:
        Least spacing, mm.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(2), Table 8.6.
    """
    return 5.0 * diameter_mm


def pulled_end_mm(diameter_mm: float) -> float:
    """a1,CG: end of the member to the middle of a pulled thread.

    Args:
        diameter_mm: outer diameter, mm.

    Returns:
        Least distance, mm.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(2), Table 8.6.
    """
    return 10.0 * diameter_mm


def pulled_edge_mm(diameter_mm: float) -> float:
    """a2,CG: edge of the member to the middle of a pulled thread.

    Args:
        diameter_mm: outer diameter, mm.

    Returns:
        Least distance, mm.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(2), Table 8.6.
    """
    return 4.0 * diameter_mm


def pulled_thickness_mm(diameter_mm: float) -> float:
    """Least thickness of a timber for which the distances of pulled screws hold.

    Args:
        diameter_mm: outer diameter, mm.

    Returns:
        Thickness, mm.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(2).
    """
    return 12.0 * diameter_mm


def plain_thickness_mm(diameter_mm: float, density_kg_m3: float) -> float:
    """Thickness below which timber must be predrilled.

    Args:
        diameter_mm: outer diameter, mm.
        density_kg_m3: characteristic density, kg/m3.

    Returns:
        Thickness, mm.

    Source: EN 1995-1-1, 2004, 8.3.1.2(6), (8.18).
    """
    return max(7.0 * diameter_mm, (13.0 * diameter_mm - 30.0) * density_kg_m3 / 400.0)


def easily_split_thickness_mm(diameter_mm: float, density_kg_m3: float) -> float:
    """Thickness below which a wood that splits easily must be predrilled.

    Args:
        diameter_mm: outer diameter, mm.
        density_kg_m3: characteristic density, kg/m3.

    Returns:
        Thickness, mm.

    Source: EN 1995-1-1, 2004, 8.3.1.2(7), (8.19).
    """
    return max(14.0 * diameter_mm, (13.0 * diameter_mm - 30.0) * density_kg_m3 / 200.0)


def must_be_predrilled(diameter_mm: float, density_kg_m3: float, thickness_mm: float) -> bool:
    """Whether a fastener needs a drilled hole for reasons other than its distances.

    Args:
        diameter_mm: outer diameter, mm.
        density_kg_m3: characteristic density, kg/m3.
        thickness_mm: thickness of the timber, mm.

    Returns:
        Truth.

    Source: EN 1995-1-1, 2004, 8.3.1.1(2), from memory, and 8.3.1.2(6), (8.18).
    """
    if density_kg_m3 > DENSE_KG_M3 or diameter_mm > GREATEST_PLAIN_DIAMETER_MM:
        return True
    return thickness_mm < plain_thickness_mm(diameter_mm, density_kg_m3)


def _along(angle_deg: float) -> float:
    return abs(math.cos(math.radians(angle_deg)))


def _across(angle_deg: float) -> float:
    return abs(math.sin(math.radians(angle_deg)))
