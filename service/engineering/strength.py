"""From a characteristic value to a design value: EN 1995-1-1 sections 2 and 3."""

from __future__ import annotations

import math

SIZE_REFERENCE_MM = 150.0
SIZE_EXPONENT = 0.2
SIZE_GREATEST_RATIO = 1.3


def design_strength_mpa(characteristic_mpa: float, k_mod_ratio: float, gamma_m_ratio: float) -> float:
    """Design strength of a material.

    Args:
        characteristic_mpa: characteristic strength, with k_h and k_sys where they apply, MPa.
        k_mod_ratio: modification for load duration and service class.
        gamma_m_ratio: partial factor of the material.

    Returns:
        Design strength, MPa.

    Source: EN 1995-1-1, 2004, 2.4.1, (2.14).
    """
    return k_mod_ratio * characteristic_mpa / gamma_m_ratio


def design_resistance_n(characteristic_n: float, k_mod_ratio: float, gamma_m_ratio: float) -> float:
    """Design resistance of a connection.

    Args:
        characteristic_n: characteristic load-carrying capacity, N.
        k_mod_ratio: modification for load duration and service class.
        gamma_m_ratio: partial factor of connections.

    Returns:
        Design resistance, N.

    Source: EN 1995-1-1, 2004, 2.4.3, (2.17).
    """
    return k_mod_ratio * characteristic_n / gamma_m_ratio


def size_factor_ratio(depth_mm: float) -> float:
    """k_h of solid timber: small sections are stronger in bending and tension.

    Args:
        depth_mm: depth in the direction of bending, or the larger side in tension, mm.

    Returns:
        k_h, 1.0 to 1.3.

    Source: EN 1995-1-1, 2004, 3.2(3), (3.1).
    """
    return max(1.0, min(math.pow(SIZE_REFERENCE_MM / depth_mm, SIZE_EXPONENT), SIZE_GREATEST_RATIO))


def pair_k_mod_ratio(first_ratio: float, second_ratio: float) -> float:
    """k_mod of a connection between two materials.

    Args:
        first_ratio: k_mod of one member.
        second_ratio: k_mod of the other.

    Returns:
        k_mod of the connection.

    Source: EN 1995-1-1, 2004, 2.3.2.1(2), (2.6), from memory.
    """
    return math.sqrt(first_ratio * second_ratio)


def pair_creep_ratio(first_ratio: float, second_ratio: float) -> float:
    """k_def of a connection: twice that of the timber, or of the mean of two materials.

    Args:
        first_ratio: k_def of one member.
        second_ratio: k_def of the other.

    Returns:
        k_def of the connection.

    Source: EN 1995-1-1, 2004, 2.3.2.2(3)-(4), (2.13), from memory.
    """
    return 2.0 * math.sqrt(first_ratio * second_ratio)
