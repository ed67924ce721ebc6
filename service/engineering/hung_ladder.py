"""The hung side ladder at an open end: its front upright hangs from its rear one (`knowledge/structure.md`, 5.13).

Derived from statics: any distribution in equilibrium that exceeds no resistance is safe if the joints yield. Symbols: a from
middle to middle of the uprights, n clear length and d depth of the noggins, k noggins, e lever of the weight from the wall.
"""

from __future__ import annotations


def corner_force_n(weight_n: float, lever_mm: float, depth_mm: float, reach_mm: float) -> float:
    """Force that the front upright hands to the rear one under a weight.

    Args:
        weight_n: weight of the ladder's share, N.
        lever_mm: of its centre of gravity from the wall, mm.
        depth_mm: depth of the rear upright, mm.
        reach_mm: from middle to middle of the uprights, mm.

    Returns:
        Force, N.

    Source: statics, G (e - d/2) / a.
    """
    return weight_n * (lever_mm - depth_mm / 2.0) / reach_mm


def racking_moment_n_mm(weight_n: float, lever_mm: float, *, depth_mm: float, person_n: float, clear_mm: float) -> float:
    """Moment that the noggins' joints share.

    Args:
        weight_n: design weight of the ladder's share, N.
        lever_mm: of its centre of gravity from the wall, mm.
        depth_mm: depth of the rear upright, mm.
        person_n: design load of a person at the front, N.
        clear_mm: clear length of the noggins, mm.

    Returns:
        Moment, N mm; the weight's part is on the safe side.

    Source: statics, G (e - d/2) + Q n.
    """
    return weight_n * (lever_mm - depth_mm / 2.0) + person_n * clear_mm


def front_couple_n_mm(weight_n: float, lever_mm: float, *, depth_mm: float, person_n: float, person_lever_mm: float) -> float:
    """Couple that pulls the top noggin of the ladder and presses the lowest.

    Args:
        weight_n: design weight of the ladder's share, N.
        lever_mm: of its centre of gravity from the wall, mm.
        depth_mm: depth of the rear upright, mm.
        person_n: design load of a person at the front, N.
        person_lever_mm: of that load from the middle of the noggins, mm.

    Returns:
        Couple, N mm.

    Source: statics, G (e - d/2) / 2 + Q (y_Q - d - n/2).
    """
    return weight_n * (lever_mm - depth_mm / 2.0) / 2.0 + person_n * person_lever_mm


def noggin_pull_n(couple_n_mm: float, levels_mm: tuple[float, ...]) -> float:
    """Tension of the highest noggin.

    Args:
        couple_n_mm: couple at the front, N mm.
        levels_mm: of all noggins, mm; two of them at least differ.

    Returns:
        Tension, N; the lowest is pressed, which its contact bears.

    Source: statics of a stiff upright on equal springs.
    """
    middle_mm = sum(levels_mm) / len(levels_mm)
    squares_mm2 = sum((level_mm - middle_mm) ** 2 for level_mm in levels_mm)
    return couple_n_mm * (max(levels_mm) - middle_mm) / squares_mm2


def joint_moment_n_mm(racking_n_mm: float, noggin_count: int) -> float:
    """Moment of each of the two joints of a noggin.

    Args:
        racking_n_mm: racking moment, N mm.
        noggin_count: noggins that have a bracket at both ends.

    Returns:
        Moment, N mm.

    Source: statics, M_s / (2 k).
    """
    return racking_n_mm / (2.0 * noggin_count)


def bracket_pull_n(moment_n_mm: float, lever_mm: float, pull_n: float) -> float:
    """Pull on a bracket over or under a noggin.

    Args:
        moment_n_mm: moment of the joint, N mm.
        lever_mm: from the bracket to the middle of the contact, mm.
        pull_n: tension of the noggin, N, of which the bracket takes half.

    Returns:
        Pull, N.

    Source: statics, M_j / z + N / 2.
    """
    return moment_n_mm / lever_mm + pull_n / 2.0


def joint_stiffness_n_mm(screw_count: int, slip_n_per_mm: float, lever_mm: float) -> float:
    """Stiffness of a bracketed joint against turning.

    Args:
        screw_count: screws of each leg of the bracket.
        slip_n_per_mm: slip modulus of one, N/mm.
        lever_mm: from the bracket to the middle of the contact, mm.

    Returns:
        Moment by radian, N mm: two legs in series.

    Source: statics, (m K / 2) z^2.
    """
    return screw_count * slip_n_per_mm / 2.0 * lever_mm**2


def noggin_bending_mm(force_n: float, clear_mm: float, stiffness_n_mm2: float, noggin_count: int) -> float:
    """How far the front drops as the noggins bend, both ends held.

    Args:
        force_n: at the front, N.
        clear_mm: clear length of the noggins, mm.
        stiffness_n_mm2: E I of one, N mm2.
        noggin_count: noggins that have a bracket at both ends.

    Returns:
        Drop, mm.

    Source: elementary beam theory, F n^3 / (12 E I k).
    """
    return force_n * clear_mm**3 / (12.0 * stiffness_n_mm2 * noggin_count)


def bracket_drop_mm(force_n: float, clear_mm: float, *, joint_n_mm: float, leg_n_per_mm: float, noggin_count: int) -> float:
    """How far the front drops as the brackets give.

    Args:
        force_n: at the front, N.
        clear_mm: clear length of the noggins, mm.
        joint_n_mm: stiffness of a joint against turning, N mm.
        leg_n_per_mm: slip modulus of the screws of one leg, m K, N/mm.
        noggin_count: noggins that have a bracket at both ends.

    Returns:
        Drop, mm.

    Source: statics, F (n^2 / (2 K_th) + 2 / (m K)) / k.
    """
    return force_n * (clear_mm**2 / (2.0 * joint_n_mm) + 2.0 / leg_n_per_mm) / noggin_count


def board_drop_mm(force_n: float, reach_mm: float, *, line_n_per_mm: float, turning_n_mm: float) -> float:
    """How far the front drops as the screws of a plywood return give.

    Args:
        force_n: at the front, N.
        reach_mm: from middle to middle of the uprights, mm.
        line_n_per_mm: slip modulus of the screws of one line, m K, N/mm.
        turning_n_mm: K sum((y - y_m)^2) of that line, N mm.

    Returns:
        Drop, mm.

    Source: statics, F (2 / (m K) + a^2 / (K sum y^2)).
    """
    return force_n * (2.0 / line_n_per_mm + reach_mm**2 / turning_n_mm)


def racking_resistance_n(fixing_n: float, height_mm: float, spacing_mm: float, slender_ratio: float) -> float:
    """Racking resistance of a board screwed all round, method A turned by a right angle.

    Args:
        fixing_n: design lateral resistance of one fixing, N.
        height_mm: side of the board along the force, mm.
        spacing_mm: of the fixings, mm.
        slender_ratio: c: 1 for a side of half of the other one or more.

    Returns:
        F_Rd, N.

    Source: EN 1995-1-1, 2004, 9.2.4.2(3), (9.21), from memory.
    """
    return fixing_n * height_mm * slender_ratio / spacing_mm
