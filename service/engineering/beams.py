"""Moments and shear forces of single spans: elementary statics."""

from __future__ import annotations

import math


def uniform_moment_n_mm(load_n_per_mm: float, span_mm: float) -> float:
    """Greatest moment of a span under a uniform load.

    Args:
        load_n_per_mm: line load, N/mm.
        span_mm: span, mm.

    Returns:
        Moment at mid span, N mm.

    Source: elementary beam theory, q L^2 / 8.
    """
    return load_n_per_mm * span_mm**2 / 8.0


def uniform_shear_n(load_n_per_mm: float, span_mm: float) -> float:
    """Greatest shear force of a span under a uniform load.

    Args:
        load_n_per_mm: line load, N/mm.
        span_mm: span, mm.

    Returns:
        Shear force at the support, N.

    Source: elementary beam theory, q L / 2.
    """
    return load_n_per_mm * span_mm / 2.0


def point_moment_n_mm(load_n: float, span_mm: float, from_support_mm: float) -> float:
    """Greatest moment of a span under a point load.

    Args:
        load_n: load, N.
        span_mm: span, mm.
        from_support_mm: distance of the load from one support, mm.

    Returns:
        Moment under the load, N mm.

    Source: elementary beam theory, F a b / L.
    """
    return load_n * from_support_mm * (span_mm - from_support_mm) / span_mm


def point_shear_n(load_n: float, span_mm: float, from_support_mm: float) -> float:
    """Greatest shear force of a span under a point load: a load that can stand anywhere is put at the support.

    Args:
        load_n: load, N.
        span_mm: span, mm.
        from_support_mm: distance of the load from one support, mm.

    Returns:
        Reaction of the nearer support, N.

    Source: elementary beam theory, F max(a, b) / L.
    """
    return load_n * max(from_support_mm, span_mm - from_support_mm) / span_mm


def two_point_moment_n_mm(load_n: float, from_support_mm: float) -> float:
    """Greatest moment of a span under two equal loads, each as far from its support.

    Args:
        load_n: one load, N.
        from_support_mm: distance of each load from its support, mm.

    Returns:
        Moment between the loads, N mm.

    Source: elementary beam theory, F a.
    """
    return load_n * from_support_mm


def cantilever_moment_n_mm(load_n: float, lever_mm: float) -> float:
    """Moment at the root of a cantilever.

    Args:
        load_n: load, N.
        lever_mm: distance of the load from the root, mm.

    Returns:
        Moment, N mm.

    Source: elementary beam theory, F e.
    """
    return load_n * lever_mm


def span_for_moment_mm(load_n_per_mm: float, moment_n_mm: float) -> float:
    """Greatest span whose moment under a uniform load stays within a resistance.

    Args:
        load_n_per_mm: line load, N/mm.
        moment_n_mm: moment that the member resists, N mm.

    Returns:
        Span, mm.

    Source: elementary beam theory, q L^2 / 8 turned round.
    """
    return math.sqrt(8.0 * moment_n_mm / load_n_per_mm)
