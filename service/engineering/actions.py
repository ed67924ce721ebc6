"""Weights and combinations of actions: EN 1990, EN 1991-1-1."""

from __future__ import annotations

import math

from service.units import STANDARD_GRAVITY_M_S2

MM_PER_M = 1_000.0
MM3_PER_M3 = 1e9


def weight_n(mass_kg: float) -> float:
    """Weight of a mass.

    Args:
        mass_kg: mass, kg.

    Returns:
        Weight, N.

    Source: ISO 80000-3, 2019, item 3-11.2, standard gravity.
    """
    return mass_kg * STANDARD_GRAVITY_M_S2


def timber_weight_n_per_mm(density_kg_m3: float, area_mm2: float) -> float:
    """Weight of a length of timber.

    Args:
        density_kg_m3: density taken for this combination, kg/m3.
        area_mm2: section, mm2.

    Returns:
        Line load, N/mm.

    Source: EN 1991-1-1, 2002, 2.1: self weight from density and nominal size.
    """
    return weight_n(density_kg_m3 * area_mm2 / MM3_PER_M3)


def board_weight_n_per_mm(area_mass_kg_m2: float, height_mm: float) -> float:
    """Weight of a board, a strip of it at a time.

    Args:
        area_mass_kg_m2: mass of board and finish by area, kg/m2.
        height_mm: height of board that the member carries, mm.

    Returns:
        Line load along the member, N/mm.

    Source: EN 1991-1-1, 2002, 2.1: self weight from density and nominal size.
    """
    return weight_n(area_mass_kg_m2 * height_mm / MM_PER_M) / MM_PER_M


def combined_n(permanent_n: float, leading_n: float, *, permanent_ratio: float, variable_ratio: float) -> float:
    """Effect of permanent actions with one variable action.

    Args:
        permanent_n: sum of permanent actions, characteristic, N.
        leading_n: leading variable action, characteristic, N; 0 where it helps.
        permanent_ratio: gamma_G: 1.35 against, 1.0 or 0.9 where the weight helps.
        variable_ratio: gamma_Q.

    Returns:
        Design action, N.

    Source: EN 1990, 2002, 6.4.3.2, (6.10).
    """
    return permanent_ratio * permanent_n + variable_ratio * leading_n


def accompanied_n(combined_n: float, accompanying_n: float, *, variable_ratio: float, accompanying_ratio: float) -> float:
    """A combination with one more variable action beside the leading one.

    Args:
        combined_n: permanent actions and the leading one, design, N.
        accompanying_n: the other variable action, characteristic, N.
        variable_ratio: gamma_Q.
        accompanying_ratio: psi_0.

    Returns:
        Design action, N.

    Source: EN 1990, 2002, 6.4.3.2, (6.10).
    """
    return combined_n + variable_ratio * accompanying_ratio * accompanying_n


def accidental_n(permanent_n: float, accidental_n: float) -> float:
    """Effect of permanent actions with an accidental one: all factors are 1.

    Args:
        permanent_n: sum of permanent actions, characteristic, N.
        accidental_n: A_d, N.

    Returns:
        Design action, N.

    Source: EN 1990, 2002, 6.4.3.3, (6.11b).
    """
    return permanent_n + accidental_n


def arm_pull_n(screen_weight_n: float, *, pull_ratio: float, least_n: float) -> float:
    """Accidental pull on the tip of an arm bracket, beside the weight of the screen.

    Args:
        screen_weight_n: weight of the screen, N.
        pull_ratio: times the weight.
        least_n: a child that hangs on it, N.

    Returns:
        A_d, N.

    Source: IEC 62368-1, 8.7 for the ratio; the least is a house choice.
    """
    return max(pull_ratio * screen_weight_n, least_n)


def face_force_n(line_n_per_m: float, width_mm: float) -> float:
    """Horizontal force of a line load on the face of a breast.

    Args:
        line_n_per_m: line load, N/m.
        width_mm: width of the face, mm.

    Returns:
        Force, N.

    Source: EN 1991-1-1, 2002, 6.4.
    """
    return line_n_per_m * width_mm / MM_PER_M


def face_force_height_mm(line_height_mm: float, top_mm: float) -> float:
    """Height at which the line load acts.

    Args:
        line_height_mm: height of the line load, mm.
        top_mm: top of the breast above the floor, mm.

    Returns:
        Height above the floor, mm.

    Source: EN 1991-1-1, 2002, 6.4.
    """
    return min(line_height_mm, top_mm)


def floor_line_n_per_m(mass_kg: float, width_mm: float) -> float:
    """What a breast puts on the floor along the wall.

    Args:
        mass_kg: mass that stands on the floor, kg.
        width_mm: width of the breast, mm.

    Returns:
        Line load, N/m.

    Source: EN 1991-1-1, 2002, 6.3.1.2(8), from memory: as the weight of a movable partition.
    """
    return weight_n(mass_kg) / width_mm * MM_PER_M


def partition_load_kn_m2(line_n_per_m: float, greatest_n_per_m: tuple[float, ...], floors_kn_m2: tuple[float, ...]) -> float:
    """Floor load that a line load along a wall counts as.

    Args:
        line_n_per_m: line load, N/m.
        greatest_n_per_m: greatest line load of each class, the lightest first, N/m.
        floors_kn_m2: floor load of each class, kN/m2.

    Returns:
        Floor load, kN/m2; infinite above the heaviest class.

    Source: EN 1991-1-1, 2002, 6.3.1.2(8), from memory.
    """
    classes = zip(greatest_n_per_m, floors_kn_m2, strict=True)
    return next((floor_kn_m2 for bound_n_per_m, floor_kn_m2 in classes if line_n_per_m <= bound_n_per_m), math.inf)
