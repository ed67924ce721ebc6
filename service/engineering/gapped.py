"""A screw between two timbers with a gap, such as plasterboard, that bears nothing.

Plastic limit of (8.6) with a gap g: statics of the piece of the fastener between the timbers; with g = 0 these are the modes c to
f of EN 1995-1-1, 8.2.2, without the factors 1.05 and 1.15. 1 is the head side, 2 the point side.
"""

from __future__ import annotations

import math
from typing import NamedTuple


class _Side(NamedTuple):
    """Moment that one side gives at the edge of its timber under a force V: constant + linear V + square V^2."""

    constant_n_mm: float
    linear_mm: float
    square_per_n: float


def gapped_modes_n(
    *,
    head_n_per_mm: float,
    point_n_per_mm: float,
    head_length_mm: float,
    point_length_mm: float,
    gap_mm: float,
    yield_n_mm: float,
) -> tuple[float, float, float, float, float, float]:
    """Resistance of one fastener in single shear over a gap, in each mode.

    Args:
        head_n_per_mm: f_h,1 d, N/mm.
        point_n_per_mm: f_h,2 d, N/mm.
        head_length_mm: t_1, mm.
        point_length_mm: t_2, mm.
        gap_mm: g, of all between the timbers, mm.
        yield_n_mm: yield moment, N mm.

    Returns:
        Forces of the modes a to f, N; the least governs.

    Source: lower-bound theorem of plasticity, derived here; EN 1995-1-1, 2004, 8.2.2(1), (8.6) for no gap.
    """
    stiff_head, stiff_point = _stiff(head_n_per_mm, head_length_mm), _stiff(point_n_per_mm, point_length_mm)
    bent_head, bent_point = _hinged(head_n_per_mm, yield_n_mm), _hinged(point_n_per_mm, yield_n_mm)
    return (
        head_n_per_mm * head_length_mm,
        point_n_per_mm * point_length_mm,
        _force_n(stiff_head, stiff_point, gap_mm),
        _force_n(stiff_head, bent_point, gap_mm),
        _force_n(bent_head, stiff_point, gap_mm),
        _force_n(bent_head, bent_point, gap_mm),
    )


def _hinged(bearing_n_per_mm: float, yield_n_mm: float) -> _Side:
    """A hinge in the timber: M_y - V^2 / (2 f)."""
    return _Side(yield_n_mm, 0.0, -0.5 / bearing_n_per_mm)


def _stiff(bearing_n_per_mm: float, length_mm: float) -> _Side:
    """The fastener turns in the timber: f t^2 / 4 - V t / 2 - V^2 / (4 f)."""
    return _Side(bearing_n_per_mm * length_mm**2 / 4.0, -length_mm / 2.0, -0.25 / bearing_n_per_mm)


def _force_n(head: _Side, point: _Side, gap_mm: float) -> float:
    """Root of M_1(V) + M_2(V) = V g."""
    square = -(head.square_per_n + point.square_per_n)
    linear = gap_mm - head.linear_mm - point.linear_mm
    constant = head.constant_n_mm + point.constant_n_mm
    return (math.sqrt(linear**2 + 4.0 * square * constant) - linear) / (2.0 * square)
