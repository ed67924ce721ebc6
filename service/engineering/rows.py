"""Several fasteners: in a row, in end grain, pulled and pushed at once: EN 1995-1-1, section 8."""

from __future__ import annotations

import math
from itertools import pairwise

END_GRAIN_SHARE = 1.0 / 3.0  # EN 1995-1-1, 8.3.1.2(4)
# k_ef by spacing in diameters, from Table 8.1; the first only for drilled holes.
ROW_EXPONENTS = ((4.0, 0.5), (7.0, 0.7), (10.0, 0.85), (14.0, 1.0))


def row_exponent_ratio(spacing_ratio: float, *, predrilled: bool) -> float:
    """k_ef of nails and screws up to 6 mm in a row along the grain.

    Args:
        spacing_ratio: spacing in the row over diameter.
        predrilled: whether the holes are drilled.

    Returns:
        k_ef; 1 where they are staggered or the force runs across the grain is the caller's to say.

    Raises:
        ValueError: nearer than the table allows.

    Source: EN 1995-1-1, 2004, 8.3.1.1(8), Table 8.1.
    """
    rows = ROW_EXPONENTS if predrilled else ROW_EXPONENTS[1:]
    if spacing_ratio < rows[0][0]:
        message = f"a spacing of {spacing_ratio} diameters is less than Table 8.1 allows"
        raise ValueError(message)
    for (near, low), (far, high) in pairwise(rows):
        if spacing_ratio <= far:
            return low + (high - low) * (spacing_ratio - near) / (far - near)
    return 1.0


def row_count(count: float, exponent_ratio: float) -> float:
    """How many nails or screws of a row along the grain act.

    Args:
        count: fasteners in the row.
        exponent_ratio: k_ef.

    Returns:
        n_ef.

    Source: EN 1995-1-1, 2004, 8.3.1.1(8), (8.17).
    """
    return math.pow(count, exponent_ratio)


def bolt_row_count(count: float, spacing_mm: float, diameter_mm: float) -> float:
    """How many bolts, dowels or screws over 6 mm of a row along the grain act.

    Args:
        count: fasteners in the row.
        spacing_mm: spacing along the grain, mm.
        diameter_mm: diameter, mm.

    Returns:
        n_ef, not above their number.

    Source: EN 1995-1-1, 2004, 8.5.1.1(4), (8.34).
    """
    return min(count, math.pow(count, 0.9) * math.pow(spacing_mm / (13.0 * diameter_mm), 0.25))


def end_grain_n(lateral_n: float) -> float:
    """Lateral resistance of a fastener driven into end grain, of secondary parts only; withdrawal is none.

    Args:
        lateral_n: lateral resistance in side grain, N.

    Returns:
        Resistance, N.

    Source: EN 1995-1-1, 2004, 8.3.1.2(4), from memory: one third; a national choice.
    """
    return END_GRAIN_SHARE * lateral_n


def pulled_and_sheared_ratio(axial_ratio: float, lateral_ratio: float) -> float:
    """Utilisation of a screw that is pulled and sheared at once.

    Args:
        axial_ratio: axial force over axial resistance.
        lateral_ratio: lateral force over lateral resistance.

    Returns:
        Utilisation.

    Source: EN 1995-1-1, 2004, 8.3.3(2), (8.28), for screws by 8.7.3.
    """
    return axial_ratio**2 + lateral_ratio**2


def linear_interaction_ratio(tension_ratio: float, shear_ratio: float) -> float:
    """Utilisation of a fixing in masonry, or of an angle bracket, in tension and shear at once.

    Args:
        tension_ratio: tension over its resistance.
        shear_ratio: shear over its resistance.

    Returns:
        Utilisation.

    Source: house choice: the plain sum, safer than the bound of 1.2 of some guides.
    """
    return tension_ratio + shear_ratio
