"""How a group of fixings shares a force and a moment: a stiff part stretches equal fixings in proportion to their distance."""

from __future__ import annotations

import math


def sum_of_squares_mm2(distances_mm: tuple[float, ...]) -> float:
    """Sum over fixings of the square of their distance from the pivot; those at or below it count nothing.

    Args:
        distances_mm: of every fixing, above the pivot, mm.

    Returns:
        Sum, mm2.

    Source: statics of a stiff part on equal springs.
    """
    return sum(max(0.0, distance_mm) ** 2 for distance_mm in distances_mm)


def pulled_share_n(moment_n_mm: float, distance_mm: float, sum_of_squares_mm2: float) -> float:
    """Pull on one fixing of a part that turns about its lowest bearing.

    Args:
        moment_n_mm: moment about the pivot, N mm.
        distance_mm: of the fixing above the pivot, mm; below it there is no pull.
        sum_of_squares_mm2: over all fixings, mm2.

    Returns:
        Tension, N.

    Source: statics of a stiff part on equal springs, M y / sum(y^2).
    """
    return moment_n_mm * max(0.0, distance_mm) / sum_of_squares_mm2


def centred_squares_mm2(positions_mm: tuple[float, ...]) -> float:
    """Sum over fixings of the square of their distance from their own middle.

    Args:
        positions_mm: of every fixing along one line, mm.

    Returns:
        Sum, mm2.

    Source: statics of a stiff part on equal springs.
    """
    middle_mm = sum(positions_mm) / len(positions_mm)
    return sum((position_mm - middle_mm) ** 2 for position_mm in positions_mm)


def turned_share_n(moment_n_mm: float, positions_mm: tuple[float, ...]) -> float:
    """Greatest force on a fixing of a line that a couple turns about its own middle.

    Args:
        moment_n_mm: couple, N mm.
        positions_mm: of every fixing along the line, mm; two of them at least differ.

    Returns:
        Force square to the line, N.

    Source: statics of a stiff part on equal springs, M max|y - y_m| / sum(y - y_m)^2.
    """
    middle_mm = sum(positions_mm) / len(positions_mm)
    furthest_mm = max(abs(position_mm - middle_mm) for position_mm in positions_mm)
    return moment_n_mm * furthest_mm / centred_squares_mm2(positions_mm)


def eccentric_line_n(force_n: float, moment_n_mm: float, positions_mm: tuple[float, ...]) -> float:
    """Greatest force on a fixing of a line that carries a force along it and a couple.

    Args:
        force_n: force along the line, N.
        moment_n_mm: couple in the plane of the joint, N mm.
        positions_mm: of every fixing along the line, mm.

    Returns:
        Resultant force, N.

    Source: statics of a stiff part on equal springs.
    """
    return math.hypot(force_n / len(positions_mm), turned_share_n(moment_n_mm, positions_mm))


def prying_tension_n(force_n: float, lever_mm: float, arm_mm: float, count: float) -> float:
    """Pull on each fixing of a bracket or angle that a force in front of it prys off.

    Args:
        force_n: force, N.
        lever_mm: distance of the force from the plane of the fixings, mm.
        arm_mm: from the pulled fixings to where the plate presses, or to the lower fixings, mm.
        count: fixings that are pulled.

    Returns:
        Tension of one, N.

    Source: statics, F e / (z n).
    """
    return force_n * lever_mm / (arm_mm * count)
