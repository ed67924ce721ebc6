"""Fasteners in single shear between a steel plate and timber: EN 1995-1-1, 8.2.3.

Forces are characteristic, for one fastener, without the rope's part (`lateral.roped_modes_n`).
"""

from __future__ import annotations

import math

from service.engineering.lateral import TWO_HINGES_RATIO, crushing_n

THIN_RATIO, THICK_RATIO = 0.5, 1.0  # plate over diameter: EN 1995-1-1, 8.2.3(1)
THIN_MODES, THICK_MODES = "ab", "cde"  # (8.9), (8.10)
PINNED_SHARE = 0.4  # (8.9a)


def thin_plate_modes_n(embedment_mpa: float, length_mm: float, *, diameter_mm: float, yield_n_mm: float) -> tuple[float, float]:
    """A plate that lets the head turn: crushing, or one hinge in the timber.

    Args:
        embedment_mpa: embedment strength of the timber, MPa.
        length_mm: length in the timber, mm.
        diameter_mm: effective diameter, mm.
        yield_n_mm: yield moment, N mm.

    Returns:
        Forces of the modes a and b, N; b may have a rope.

    Source: EN 1995-1-1, 2004, 8.2.3(3), (8.9).
    """
    hinge_n = math.sqrt(2.0 * yield_n_mm * embedment_mpa * diameter_mm)
    return PINNED_SHARE * crushing_n(embedment_mpa, length_mm, diameter_mm), TWO_HINGES_RATIO * hinge_n


def thick_plate_modes_n(
    embedment_mpa: float, length_mm: float, *, diameter_mm: float, yield_n_mm: float
) -> tuple[float, float, float]:
    """A plate that holds the head: crushing, a hinge at the plate, or two hinges.

    Args:
        embedment_mpa: embedment strength of the timber, MPa.
        length_mm: length in the timber, mm.
        diameter_mm: effective diameter, mm.
        yield_n_mm: yield moment, N mm.

    Returns:
        Forces of the modes c, d and e, N; d and e may have a rope.

    Source: EN 1995-1-1, 2004, 8.2.3(3), (8.10).
    """
    crush_n = crushing_n(embedment_mpa, length_mm, diameter_mm)
    one_hinge = math.sqrt(2.0 + 4.0 * yield_n_mm / (crush_n * length_mm)) - 1.0
    return crush_n, crush_n * one_hinge, 2.3 * math.sqrt(yield_n_mm * embedment_mpa * diameter_mm)


def plate_resistance_n(thin_n: float, thick_n: float, plate_mm: float, diameter_mm: float) -> float:
    """Resistance with a plate of any thickness: a straight line between thin and thick.

    Args:
        thin_n: resistance with a thin plate, N.
        thick_n: resistance with a thick plate, N.
        plate_mm: thickness of the plate, mm.
        diameter_mm: diameter of the fastener, mm.

    Returns:
        F_v,Rk, N.

    Source: EN 1995-1-1, 2004, 8.2.3(1).
    """
    along_ratio = (plate_mm / diameter_mm - THIN_RATIO) / (THICK_RATIO - THIN_RATIO)
    return thin_n + (thick_n - thin_n) * min(1.0, max(0.0, along_ratio))
