"""Screws pulled along their axis: thread, head and shank: EN 1995-1-1 with A1 and A2, 8.7.2.

Values of one screw; `acting_count` tells how many act when several pull together.
"""

from __future__ import annotations

import math

LEAST_DIAMETER_MM, GREATEST_DIAMETER_MM = 6.0, 12.0  # of (8.38) and (8.39): EN 1995-1-1 + A1, 8.7.2(4)
LEAST_ROOT_RATIO, GREATEST_ROOT_RATIO = 0.6, 0.75
ACTING_EXPONENT = 0.9  # EN 1995-1-1:2004+A2:2014, (8.41)
DENSITY_EXPONENT = 0.8  # EN 1995-1-1:2004+A2:2014, (8.39) and (8.40)
NET_TENSION_SHARE = 0.9  # of the tension strength of the root


def formula_withdrawal_mpa(diameter_mm: float, root_mm: float, *, length_mm: float, density_kg_m3: float) -> float:
    """Withdrawal strength of a screw that declares none.

    Args:
        diameter_mm: outer diameter, mm.
        root_mm: root diameter, mm.
        length_mm: threaded length in the point side, mm.
        density_kg_m3: characteristic density of the point side, kg/m3.

    Returns:
        f_ax,k, MPa.

    Raises:
        ValueError: a screw outside the formula's range: thin frame screws need a declared value or the fall-back.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(4)-(5), (8.39), from memory.
    """
    thick = LEAST_DIAMETER_MM <= diameter_mm <= GREATEST_DIAMETER_MM
    if not thick or not LEAST_ROOT_RATIO <= root_mm / diameter_mm <= GREATEST_ROOT_RATIO:
        message = f"(8.39) does not hold for a screw of {diameter_mm} mm with a root of {root_mm} mm"
        raise ValueError(message)
    return 0.52 / math.sqrt(diameter_mm) / math.pow(length_mm, 0.1) * math.pow(density_kg_m3, DENSITY_EXPONENT)


def formula_withdrawal_n(withdrawal_mpa: float, diameter_mm: float, length_mm: float, angle_deg: float) -> float:
    """Withdrawal of one screw whose strength comes from the formula.

    Args:
        withdrawal_mpa: strength from `formula_withdrawal_mpa`, MPa.
        diameter_mm: outer diameter, mm.
        length_mm: threaded length in the point side, mm.
        angle_deg: between screw and grain, 90 in side grain, 30 at least.

    Returns:
        F_ax,Rk, N.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(4), (8.38) and (8.40), from memory.
    """
    thin_ratio = min(diameter_mm / 8.0, 1.0)
    return withdrawal_mpa * diameter_mm * length_mm * thin_ratio * grain_angle_ratio(angle_deg)


def withdrawal_n(withdrawal_mpa: float, diameter_mm: float, length_mm: float, density_ratio: float) -> float:
    """Withdrawal of one screw of declared strength, square to the grain.

    Args:
        withdrawal_mpa: declared strength at its declared density, MPa.
        diameter_mm: outer diameter, mm.
        length_mm: threaded length in the point side, mm.
        density_ratio: characteristic density of the point side over the declared one.

    Returns:
        F_ax,Rk, N; a skew screw has `grain_angle_ratio` of it, one in end grain none.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(6), (8.40a), from memory.
    """
    return withdrawal_mpa * diameter_mm * length_mm * math.pow(density_ratio, DENSITY_EXPONENT)


def grain_angle_ratio(angle_deg: float) -> float:
    """Withdrawal of a skew screw over that of one square to the grain.

    Args:
        angle_deg: between screw and grain, 30 at least.

    Returns:
        Share, up to 1.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2, (8.38) and (8.40a), from memory.
    """
    angle = math.radians(angle_deg)
    return 1.0 / (1.2 * math.cos(angle) ** 2 + math.sin(angle) ** 2)


def smooth_nail_withdrawal_n_per_mm(density_kg_m3: float, diameter_mm: float) -> float:
    """Withdrawal of a smooth nail by length in the point side.

    Args:
        density_kg_m3: characteristic density, kg/m3.
        diameter_mm: diameter, mm.

    Returns:
        f_ax,k d, N/mm.

    Source: EN 1995-1-1, 2004, 8.3.2(6), (8.25) with (8.24).
    """
    return 20e-6 * density_kg_m3**2 * diameter_mm


def thread_in_point_mm(length_mm: float, before_mm: float, thread_mm: float, tip_mm: float) -> float:
    """Threaded length that holds in the point side.

    Args:
        length_mm: length of the screw, mm.
        before_mm: all that lies before the point side: rail, packing, board, skim, mm.
        thread_mm: thread with its tip, mm.
        tip_mm: tip, which holds nothing: one diameter unless the declared strength counts it, mm.

    Returns:
        l_ef, mm, not below 0.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2, l_ef; boards and gaps hold nothing.
    """
    return max(0.0, min(length_mm - before_mm, thread_mm) - tip_mm)


def head_pull_n(head_pull_mpa: float, head_mm: float, density_ratio: float) -> float:
    """Force that pulls the head of one screw through the head side.

    Args:
        head_pull_mpa: declared strength at its declared density, MPa.
        head_mm: diameter of head or washer, mm.
        density_ratio: characteristic density of the head side over the declared one.

    Returns:
        F_ax,Rk, N.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(6), (8.40b), from memory.
    """
    return head_pull_mpa * head_mm**2 * math.pow(density_ratio, DENSITY_EXPONENT)


def shank_tension_n(steel_mpa: float, root_mm: float) -> float:
    """Tension strength of one screw that declares none; a declared one takes its place.

    Args:
        steel_mpa: tensile strength of the steel, MPa.
        root_mm: root diameter, mm.

    Returns:
        f_tens,k, N.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(6), (8.40c); the value by EN 1993-1-8, Table 3.4: 0.9 f_u A.
    """
    return NET_TENSION_SHARE * steel_mpa * math.pi * root_mm**2 / 4.0


def acting_count(count: float) -> float:
    """How many of several screws act when they are pulled together.

    Args:
        count: screws that pull together.

    Returns:
        n_ef.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(8), (8.41).
    """
    return math.pow(count, ACTING_EXPONENT)


def axial_resistance_n(thread_n: float, head_n: float, shank_n: float, acting_count: float) -> float:
    """Characteristic resistance of screws pulled together.

    Args:
        thread_n: withdrawal of one, N.
        head_n: head pull-through of one, N.
        shank_n: tension strength of one, N.
        acting_count: effective number; 1 for the value of one.

    Returns:
        F_ax,Rk, N: the weakest of the three governs.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(1).
    """
    return acting_count * min(thread_n, head_n, shank_n)


def thread_for_force_mm(force_n: float, withdrawal_mpa: float, diameter_mm: float, density_ratio: float) -> float:
    """Threaded length that holds a force on one screw.

    Args:
        force_n: characteristic force that is wanted of one screw, N.
        withdrawal_mpa: declared strength at its declared density, MPa.
        diameter_mm: outer diameter, mm.
        density_ratio: characteristic density of the point side over the declared one.

    Returns:
        l_ef, mm.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(6), (8.40a) turned round.
    """
    return force_n / withdrawal_n(withdrawal_mpa, diameter_mm, 1.0, density_ratio)


def head_for_force_mm(force_n: float, head_pull_mpa: float, density_ratio: float) -> float:
    """Diameter of a head or washer that holds a force on one screw.

    Args:
        force_n: characteristic force that is wanted of one screw, N.
        head_pull_mpa: declared strength at its declared density, MPa.
        density_ratio: characteristic density of the head side over the declared one.

    Returns:
        Diameter, mm.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(6), (8.40b) turned round.
    """
    return math.sqrt(force_n / head_pull_n(head_pull_mpa, 1.0, density_ratio))


def count_for_force_count(force_n: float, single_n: float) -> float:
    """Number of screws, not yet whole, that hold a force when they are pulled together.

    Args:
        force_n: force on all of them, N.
        single_n: resistance of one, N.

    Returns:
        n with n^0.9 times one equal to the force.

    Source: EN 1995-1-1, 2004 + A1, 8.7.2(8), (8.41) turned round.
    """
    return math.pow(force_n / single_n, 1.0 / ACTING_EXPONENT)
