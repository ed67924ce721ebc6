"""Fasteners in shear between two timbers: the failure modes of EN 1995-1-1, 8.2.2, with the part that a rope takes.

Forces are characteristic, for one fastener and one shear plane. 1 is the head side, 2 the point side.
"""

from __future__ import annotations

import math

ONE_HINGE_RATIO = 1.05  # for one plastic hinge, as k_mod and gamma_M are not of the steel: EN 1995-1-1, 8.2.2
TWO_HINGES_RATIO = 1.15
ROPE_SHARE = 0.25  # of the axial resistance: EN 1995-1-1, 8.2.2(1), F_ax,Rk / 4
SINGLE_MODES = "abcdef"  # (8.6)
DOUBLE_MODES = "ghjk"  # (8.7)


def crushing_n(embedment_mpa: float, length_mm: float, diameter_mm: float) -> float:
    """Crushing of one timber along the whole length of the fastener in it.

    Args:
        embedment_mpa: embedment strength, MPa.
        length_mm: length in that timber, mm.
        diameter_mm: effective diameter, mm.

    Returns:
        Force, N.

    Source: EN 1995-1-1, 2004, 8.2.2, (8.6a), (8.6b), (8.7g); (8.7h) is half of it for the middle timber.
    """
    return embedment_mpa * length_mm * diameter_mm


def tilting_n(head_n: float, point_n: float, embedment_ratio: float) -> float:
    """A stiff fastener that tilts in both timbers.

    Args:
        head_n: crushing of the head side, f_h,1 t_1 d, N.
        point_n: crushing of the point side, f_h,2 t_2 d, N.
        embedment_ratio: beta = f_h,2 / f_h,1.

    Returns:
        Force, N.

    Source: EN 1995-1-1, 2004, 8.2.2, (8.6c).
    """
    beta, ratio = embedment_ratio, point_n / (embedment_ratio * head_n)
    root = math.sqrt(beta + 2.0 * beta**2 * (1.0 + ratio + ratio**2) + beta**3 * ratio**2)
    return head_n / (1.0 + beta) * (root - beta * (1.0 + ratio))


def hinge_in_point_n(head_n: float, *, embedment_ratio: float, yield_n_mm: float, length_mm: float) -> float:
    """One hinge in the point side, the fastener stiff in the head side.

    Args:
        head_n: crushing of the head side, f_h,1 t_1 d, N.
        embedment_ratio: beta = f_h,2 / f_h,1.
        yield_n_mm: yield moment, N mm.
        length_mm: length in the head side, t_1, mm.

    Returns:
        Force, N, without the factor 1.05.

    Source: EN 1995-1-1, 2004, 8.2.2, (8.6d) and (8.7j).
    """
    beta = embedment_ratio
    bend = 4.0 * beta * (2.0 + beta) * yield_n_mm / (head_n * length_mm)
    return head_n / (2.0 + beta) * (math.sqrt(2.0 * beta * (1.0 + beta) + bend) - beta)


def hinge_in_head_n(point_n: float, *, embedment_ratio: float, yield_n_mm: float, length_mm: float) -> float:
    """One hinge in the head side, the fastener stiff in the point side: the mirror of `hinge_in_point_n`.

    Args:
        point_n: crushing of the point side, f_h,2 t_2 d, N.
        embedment_ratio: beta = f_h,2 / f_h,1.
        yield_n_mm: yield moment, N mm.
        length_mm: length in the point side, t_2, mm.

    Returns:
        Force, N, without the factor 1.05.

    Source: EN 1995-1-1, 2004, 8.2.2, (8.6e).
    """
    return hinge_in_point_n(point_n, embedment_ratio=1.0 / embedment_ratio, yield_n_mm=yield_n_mm, length_mm=length_mm)


def two_hinges_n(embedment_mpa: float, diameter_mm: float, *, embedment_ratio: float, yield_n_mm: float) -> float:
    """A hinge in each timber: what a slender fastener comes to.

    Args:
        embedment_mpa: embedment strength of the head side, MPa.
        diameter_mm: effective diameter, mm.
        embedment_ratio: beta = f_h,2 / f_h,1.
        yield_n_mm: yield moment, N mm.

    Returns:
        Force, N, without the factor 1.15.

    Source: EN 1995-1-1, 2004, 8.2.2, (8.6f) and (8.7k).
    """
    beta = embedment_ratio
    return math.sqrt(2.0 * beta / (1.0 + beta)) * math.sqrt(2.0 * yield_n_mm * embedment_mpa * diameter_mm)


def single_shear_modes_n(
    *,
    head_embedment_mpa: float,
    point_embedment_mpa: float,
    head_length_mm: float,
    point_length_mm: float,
    diameter_mm: float,
    yield_n_mm: float,
) -> tuple[float, float, float, float, float, float]:
    """Resistance of one fastener in single shear in each mode, without the rope's part.

    Args:
        head_embedment_mpa: f_h,1, MPa.
        point_embedment_mpa: f_h,2, MPa.
        head_length_mm: t_1, mm.
        point_length_mm: t_2, mm.
        diameter_mm: effective diameter, mm.
        yield_n_mm: yield moment, N mm.

    Returns:
        Forces of the modes a to f (`SINGLE_MODES`), N; the least governs.

    Source: EN 1995-1-1, 2004, 8.2.2(1), (8.6).
    """
    beta = point_embedment_mpa / head_embedment_mpa
    head_n = crushing_n(head_embedment_mpa, head_length_mm, diameter_mm)
    point_n = crushing_n(point_embedment_mpa, point_length_mm, diameter_mm)
    in_point_n = hinge_in_point_n(head_n, embedment_ratio=beta, yield_n_mm=yield_n_mm, length_mm=head_length_mm)
    in_head_n = hinge_in_head_n(point_n, embedment_ratio=beta, yield_n_mm=yield_n_mm, length_mm=point_length_mm)
    both_n = two_hinges_n(head_embedment_mpa, diameter_mm, embedment_ratio=beta, yield_n_mm=yield_n_mm)
    return (
        head_n,
        point_n,
        tilting_n(head_n, point_n, beta),
        ONE_HINGE_RATIO * in_point_n,
        ONE_HINGE_RATIO * in_head_n,
        TWO_HINGES_RATIO * both_n,
    )


def double_shear_modes_n(
    *,
    side_embedment_mpa: float,
    middle_embedment_mpa: float,
    side_length_mm: float,
    middle_length_mm: float,
    diameter_mm: float,
    yield_n_mm: float,
) -> tuple[float, float, float, float]:
    """Resistance of one plane of a fastener in double shear in each mode, without the rope's part.

    Args:
        side_embedment_mpa: f_h,1 of the side timbers, MPa.
        middle_embedment_mpa: f_h,2 of the middle timber, MPa.
        side_length_mm: t_1, mm.
        middle_length_mm: t_2, mm.
        diameter_mm: effective diameter, mm.
        yield_n_mm: yield moment, N mm.

    Returns:
        Forces of the modes g, h, j, k (`DOUBLE_MODES`) for each shear plane, N; the least governs.

    Source: EN 1995-1-1, 2004, 8.2.2(1), (8.7).
    """
    beta = middle_embedment_mpa / side_embedment_mpa
    side_n = crushing_n(side_embedment_mpa, side_length_mm, diameter_mm)
    hinge_n = hinge_in_point_n(side_n, embedment_ratio=beta, yield_n_mm=yield_n_mm, length_mm=side_length_mm)
    both_n = two_hinges_n(side_embedment_mpa, diameter_mm, embedment_ratio=beta, yield_n_mm=yield_n_mm)
    return (
        side_n,
        0.5 * crushing_n(middle_embedment_mpa, middle_length_mm, diameter_mm),
        ONE_HINGE_RATIO * hinge_n,
        TWO_HINGES_RATIO * both_n,
    )


def roped_n(johansen_n: float, axial_n: float, rope_ratio: float) -> float:
    """A mode with tilt or hinges, and what the fastener adds as a rope.

    Args:
        johansen_n: force of the mode, N.
        axial_n: axial resistance of the fastener, F_ax,Rk, N; 0 leaves the rope out.
        rope_ratio: greatest rope part over the mode's force: screws 1, bolts 0.25, round nails 0.15, dowels 0.

    Returns:
        Force, N.

    Source: EN 1995-1-1, 2004, 8.2.2(1)-(2).
    """
    return johansen_n + min(ROPE_SHARE * axial_n, rope_ratio * johansen_n)


def roped_modes_n(modes_n: tuple[float, ...], plain_count: int, axial_n: float, rope_ratio: float) -> tuple[float, ...]:
    """The modes of a fastener with the rope's part in those that have one.

    Args:
        modes_n: forces of the modes in the order of the standard, N.
        plain_count: modes at the front that crush only and have no rope: 2 of timber to timber, 1 of a steel plate.
        axial_n: axial resistance of the fastener, N; 0 leaves the rope out.
        rope_ratio: greatest rope part over the mode's force.

    Returns:
        Forces, N; the least is F_v,Rk.

    Source: EN 1995-1-1, 2004, 8.2.2(1)-(2), (8.6), (8.7), and 8.2.3(3), (8.9), (8.10).
    """
    return modes_n[:plain_count] + tuple(roped_n(mode_n, axial_n, rope_ratio) for mode_n in modes_n[plain_count:])


def governing_mode(modes_n: tuple[float, ...], letters: str) -> str:
    """The mode in which a fastener fails.

    Args:
        modes_n: forces of the modes in the order of the standard, N.
        letters: their letters: `SINGLE_MODES`, `DOUBLE_MODES`, or those of the steel plates.

    Returns:
        The letter of the least, the first of equals.

    Source: EN 1995-1-1, 2004, 8.2.2 and 8.2.3.
    """
    return letters[modes_n.index(min(modes_n))]
