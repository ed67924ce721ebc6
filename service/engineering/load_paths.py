"""How a breast gets its weight and its knocks into the house: statics of `knowledge/structure.md`, section 5."""

from __future__ import annotations

import math


def hung_moment_n_mm(weight_n: float, lever_mm: float, push_n: float, push_lever_mm: float) -> float:
    """Moment that a hung part puts on its wall fixings.

    Args:
        weight_n: design weight, N.
        lever_mm: of the centre of gravity from the wall, mm.
        push_n: design force of one person, down or outward, N.
        push_lever_mm: of that force about the pivot: from the wall if down, above the pivot if outward, mm.

    Returns:
        Moment about the lowest bearing of the rear rail, N mm.

    Source: statics, G e + Q x.
    """
    return weight_n * lever_mm + push_n * push_lever_mm


def front_row_n(weight_n: float, *, lever_mm: float, rear_mm: float, front_mm: float) -> float:
    """What the front row of ceiling fixings holds of a part hung from two rows.

    Args:
        weight_n: design weight, N.
        lever_mm: of the centre of gravity from the wall, mm.
        rear_mm: of the rear row from the wall, mm.
        front_mm: of the front row from the wall, mm.

    Returns:
        Force, N: below 0 or above the weight one of the rows lifts.

    Source: statics, G (e - x_r) / (x_f - x_r).
    """
    return weight_n * (lever_mm - rear_mm) / (front_mm - rear_mm)


def row_lifts(lever_mm: float, rear_mm: float, front_mm: float) -> bool:
    """Whether a row of ceiling fixings would be pushed instead of pulled.

    Args:
        lever_mm: of the centre of gravity from the wall, mm.
        rear_mm: of the rear row from the wall, mm.
        front_mm: of the front row from the wall, mm.

    Returns:
        Truth.

    Source: statics.
    """
    return not rear_mm <= lever_mm <= front_mm


def row_change_n(push_n: float, *, below_ceiling_mm: float, rear_mm: float, front_mm: float) -> float:
    """What a push or pull on the face adds to one row of ceiling fixings and takes from the other.

    Args:
        push_n: design force, N.
        below_ceiling_mm: of the force under the ceiling, mm.
        rear_mm: of the rear row from the wall, mm.
        front_mm: of the front row from the wall, mm.

    Returns:
        Force, N.

    Source: statics, H (z_c - y_H) / (x_f - x_r).
    """
    return push_n * below_ceiling_mm / (front_mm - rear_mm)


def toppling_n_mm(push_n: float, push_height_mm: float, *, load_n: float, over_toe_mm: float) -> float:
    """Moment that topples a part-height breast about the front edge of its foot.

    Args:
        push_n: design force outward, N.
        push_height_mm: above the floor, mm.
        load_n: design load of a person beyond the front edge, N.
        over_toe_mm: of that load beyond the front edge, mm.

    Returns:
        Moment, N mm.

    Source: statics.
    """
    return push_n * push_height_mm + load_n * over_toe_mm


def righting_n_mm(weight_n: float, depth_mm: float, lever_mm: float) -> float:
    """Moment of the weight against toppling about the front edge of the foot.

    Args:
        weight_n: weight with the factor of what stabilises, without the fire, N.
        depth_mm: of the breast, mm.
        lever_mm: of the centre of gravity from the wall, mm.

    Returns:
        Moment, N mm.

    Source: statics, G (D - x_cg).
    """
    return weight_n * (depth_mm - lever_mm)


def held_back_n(toppling_n_mm: float, righting_n_mm: float, height_mm: float) -> float:
    """Pull on the wall fixings of a part-height breast.

    Args:
        toppling_n_mm: moment that topples, N mm.
        righting_n_mm: moment of the weight, N mm.
        height_mm: of the top fixings above the floor, mm.

    Returns:
        Tension of the whole row, N; 0 where the weight is enough.

    Source: statics.
    """
    return max(0.0, toppling_n_mm - righting_n_mm) / height_mm


def standing_ratio(toppling_n_mm: float, righting_n_mm: float) -> float:
    """How far the weight alone keeps a breast standing: below 1 it stands only because it is fixed.

    Args:
        toppling_n_mm: moment that topples, N mm.
        righting_n_mm: moment of the weight, N mm.

    Returns:
        Ratio.

    Source: statics.
    """
    return righting_n_mm / toppling_n_mm


def front_feet_ratio(rails_mm: float, centre_mm: float) -> float:
    """Share of a fire's weight that its front feet put on the front rail.

    Args:
        rails_mm: from centre to centre of front and rear rail, mm.
        centre_mm: of the fire's centre of gravity behind the front rail's centre, mm.

    Returns:
        Share, 0 to 1.

    Source: statics, (s - c) / s.
    """
    return (rails_mm - centre_mm) / rails_mm


def ladder_strut_n(force_n: float, reach_mm: float, rise_mm: float) -> float:
    """Force in a diagonal that carries a force over a bay.

    Args:
        force_n: force along the rise, N.
        reach_mm: of the bay across the force, mm.
        rise_mm: clear height of the bay, mm.

    Returns:
        Compression, N.

    Source: statics, F sqrt(a^2 + h^2) / h.
    """
    return force_n * math.hypot(reach_mm, rise_mm) / rise_mm


def ladder_tie_n(force_n: float, reach_mm: float, rise_mm: float) -> float:
    """Force in the noggin that ties a diagonal back.

    Args:
        force_n: force along the rise, N.
        reach_mm: of the bay across the force, mm.
        rise_mm: clear height of the bay, mm.

    Returns:
        Tension, N.

    Source: statics, F a / h.
    """
    return force_n * reach_mm / rise_mm
