"""Sag of single spans, creep and slip: elementary beam theory; EN 1995-1-1, 2.2.3 and 7.1.

The service value of a sag is its bending part; the shear part is a formula of its own.
"""

from __future__ import annotations

import math

SHEAR_SHAPE = 1.2  # of a rectangle: energy of its parabola of shear stress over that of a constant one
SCREW_SLIP_DIVISOR = 23.0
NAIL_SLIP_DIVISOR = 30.0


def uniform_sag_mm(load_n_per_mm: float, span_mm: float, stiffness_n_mm2: float) -> float:
    """Sag at mid span under a uniform load.

    Args:
        load_n_per_mm: line load, N/mm.
        span_mm: span, mm.
        stiffness_n_mm2: E I with the mean modulus, N mm2.

    Returns:
        Sag, mm.

    Source: elementary beam theory, 5 q L^4 / (384 E I).
    """
    return 5.0 * load_n_per_mm * span_mm**4 / (384.0 * stiffness_n_mm2)


def point_sag_mm(load_n: float, span_mm: float, from_support_mm: float, stiffness_n_mm2: float) -> float:
    """Greatest sag of a span under a point load; it lies between the load and mid span.

    Args:
        load_n: load, N.
        span_mm: span, mm.
        from_support_mm: distance of the load from one support, mm.
        stiffness_n_mm2: E I with the mean modulus, N mm2.

    Returns:
        Sag, mm.

    Source: elementary beam theory, F b (L^2 - b^2)^1.5 / (9 sqrt(3) L E I), b the shorter part.
    """
    shorter_mm = min(from_support_mm, span_mm - from_support_mm)
    shape_mm3 = shorter_mm * math.pow(span_mm**2 - shorter_mm**2, 1.5) / span_mm
    return load_n * shape_mm3 / (9.0 * math.sqrt(3.0) * stiffness_n_mm2)


def two_point_sag_mm(load_n: float, span_mm: float, from_support_mm: float, stiffness_n_mm2: float) -> float:
    """Sag at mid span under two equal loads, each as far from its support.

    Args:
        load_n: one load, N.
        span_mm: span, mm.
        from_support_mm: distance of each load from its support, mm.
        stiffness_n_mm2: E I with the mean modulus, N mm2.

    Returns:
        Sag, mm.

    Source: elementary beam theory, F a (3 L^2 - 4 a^2) / (24 E I).
    """
    return load_n * from_support_mm * (3.0 * span_mm**2 - 4.0 * from_support_mm**2) / (24.0 * stiffness_n_mm2)


def cantilever_sag_mm(load_n: float, lever_mm: float, stiffness_n_mm2: float) -> float:
    """Sag of the loaded tip of a cantilever.

    Args:
        load_n: load at the tip, N.
        lever_mm: length, mm.
        stiffness_n_mm2: E I, N mm2.

    Returns:
        Sag, mm.

    Source: elementary beam theory, F e^3 / (3 E I).
    """
    return load_n * lever_mm**3 / (3.0 * stiffness_n_mm2)


def shear_sag_mm(moment_n_mm: float, shear_modulus_mpa: float, area_mm2: float) -> float:
    """Shear part of the sag of a rectangle under that load: the same for a uniform and a mid-span load.

    Args:
        moment_n_mm: moment at mid span of the simple beam, N mm.
        shear_modulus_mpa: mean shear modulus, MPa.
        area_mm2: section, mm2.

    Returns:
        Sag, mm.

    Source: elementary beam theory, 1.2 M / (G A): 1.2 q L^2 / (8 G A), 1.2 F L / (4 G A).
    """
    return SHEAR_SHAPE * moment_n_mm / (shear_modulus_mpa * area_mm2)


def final_sag_mm(permanent_mm: float, variable_mm: float, *, creep_ratio: float, quasi_permanent_ratio: float) -> float:
    """Sag with creep.

    Args:
        permanent_mm: instantaneous sag under permanent load, mm.
        variable_mm: instantaneous sag under the variable load, mm.
        creep_ratio: k_def.
        quasi_permanent_ratio: psi_2: share of the variable load that stays.

    Returns:
        w_fin, mm.

    Source: EN 1995-1-1, 2004, 2.2.3(5), (2.3) to (2.5).
    """
    return permanent_mm * (1.0 + creep_ratio) + variable_mm * (1.0 + quasi_permanent_ratio * creep_ratio)


def span_for_uniform_sag_mm(
    load_n_per_mm: float, stiffness_n_mm2: float, *, growth_ratio: float, span_over_sag_ratio: float
) -> float:
    """Greatest span whose sag under a uniform load stays within a part of the span.

    Args:
        load_n_per_mm: line load, N/mm.
        stiffness_n_mm2: E I with the mean modulus, N mm2.
        growth_ratio: final over instantaneous sag, 1 + k_def for a permanent load.
        span_over_sag_ratio: span over allowed sag, such as 250.

    Returns:
        Span, mm.

    Source: elementary beam theory, 5 q L^4 / (384 E I) = L / n turned round; EN 1995-1-1, 2004, 7.2.
    """
    return math.cbrt(384.0 * stiffness_n_mm2 / (5.0 * load_n_per_mm * growth_ratio * span_over_sag_ratio))


def screw_slip_n_per_mm(density_kg_m3: float, diameter_mm: float) -> float:
    """Slip modulus of a screw, or of a nail in a drilled hole, for each shear plane.

    Args:
        density_kg_m3: mean density, kg/m3.
        diameter_mm: outer diameter, mm.

    Returns:
        K_ser, N/mm.

    Source: EN 1995-1-1, 2004, 7.1, Table 7.1.
    """
    return math.pow(density_kg_m3, 1.5) * diameter_mm / SCREW_SLIP_DIVISOR


def nail_slip_n_per_mm(density_kg_m3: float, diameter_mm: float) -> float:
    """Slip modulus of a nail that is not predrilled, for each shear plane.

    Args:
        density_kg_m3: mean density, kg/m3.
        diameter_mm: diameter, mm.

    Returns:
        K_ser, N/mm.

    Source: EN 1995-1-1, 2004, 7.1, Table 7.1.
    """
    return math.pow(density_kg_m3, 1.5) * math.pow(diameter_mm, 0.8) / NAIL_SLIP_DIVISOR


def pair_density_kg_m3(first_kg_m3: float, second_kg_m3: float) -> float:
    """Density from which the slip of two different timbers follows.

    Args:
        first_kg_m3: mean density of one, kg/m3.
        second_kg_m3: mean density of the other, kg/m3.

    Returns:
        rho_m, kg/m3.

    Source: EN 1995-1-1, 2004, 7.1(2), from memory.
    """
    return math.sqrt(first_kg_m3 * second_kg_m3)


def slip_mm(force_n: float, slip_n_per_mm: float) -> float:
    """Slip of a joint as it is loaded.

    Args:
        force_n: force on one fastener and shear plane, N.
        slip_n_per_mm: slip modulus, N/mm.

    Returns:
        u_inst, mm; it grows by `final_sag_mm` with k_def of the joint.

    Source: EN 1995-1-1, 2004, 2.2.3(3) and 7.1.
    """
    return force_n / slip_n_per_mm
