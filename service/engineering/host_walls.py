"""Fixings in masonry: safety format, and a screw that bridges a lining as a cantilever: ETAG 020, EN 1992-4."""

from __future__ import annotations

import math

STEEL_MODULUS_MPA = 210_000.0  # EN 1993-1-1, 3.2.6(1)
ELASTIC_BENDING_RATIO = 1.2  # EN 1992-4, 7.2.2.3: M_Rk,s = 1.2 W_el f_uk, from memory
FREE_HOLD_DIAMETERS = 0.5  # a_3: EN 1992-4, 6.2.2.3, from memory


def plug_design_kn(characteristic_kn: float, gamma_m_ratio: float) -> float:
    """Design resistance of a plug or concrete screw in one direction.

    Args:
        characteristic_kn: declared resistance, kN.
        gamma_m_ratio: partial factor of the wall's material.

    Returns:
        F_Rd, kN.

    Source: ETAG 020, annex C, from memory.
    """
    return characteristic_kn / gamma_m_ratio


def plug_working_kn(design_kn: float, working_ratio: float) -> float:
    """Recommended load of a plug, for comparison with actions without factors.

    Args:
        design_kn: design resistance, kN.
        working_ratio: design over recommended load.

    Returns:
        Working load, kN.

    Source: ETAG 020, annex C, from memory.
    """
    return design_kn / working_ratio


def design_from_working_kn(working_kn: float, working_ratio: float) -> float:
    """Design resistance of a fixing whose working load is declared.

    Args:
        working_kn: working load, kN.
        working_ratio: design over recommended load.

    Returns:
        F_Rd, kN.

    Source: ETAG 020, annex C, from memory, turned round.
    """
    return working_kn * working_ratio


def stand_off_lever_mm(lining_mm: float, gap_mm: float, diameter_mm: float) -> float:
    """Free length of a screw between the timber and the point in the masonry where it is held.

    Args:
        lining_mm: thickness of the board that bears nothing, mm.
        gap_mm: void or dabs behind it, mm.
        diameter_mm: outer diameter, mm.

    Returns:
        Lever arm, mm.

    Source: EN 1992-4, 6.2.2.3, from memory: a_3 = 0.5 d.
    """
    return lining_mm + gap_mm + FREE_HOLD_DIAMETERS * diameter_mm


def elastic_moment_n_mm(steel_mpa: float, root_mm: float) -> float:
    """Bending resistance of a screw as EN 1992-4 takes it; some 0.55 of the plastic one of EN 1995.

    Args:
        steel_mpa: tensile strength of the steel, MPa.
        root_mm: root diameter, mm.

    Returns:
        M_Rk, N mm.

    Source: EN 1992-4, 7.2.2.3, from memory: 1.2 W_el f_u with W_el = pi d^3 / 32.
    """
    return ELASTIC_BENDING_RATIO * math.pi * root_mm**3 / 32.0 * steel_mpa


def stand_off_shear_n(moment_n_mm: float, lever_mm: float, held_ends_ratio: float) -> float:
    """Shear that bends a screw to its resistance.

    Args:
        moment_n_mm: bending resistance, N mm.
        lever_mm: free length, mm.
        held_ends_ratio: alpha_M: 1 where the timber can turn, 2 where both ends are held.

    Returns:
        V_Rk,M, N.

    Source: EN 1992-4, 7.2.2.3, from memory.
    """
    return held_ends_ratio * moment_n_mm / lever_mm


def round_second_moment_mm4(diameter_mm: float) -> float:
    """Second moment of area of a round bar.

    Args:
        diameter_mm: diameter, mm.

    Returns:
        I, mm4.

    Source: elementary beam theory, pi d^4 / 64.
    """
    return math.pi * diameter_mm**4 / 64.0


def stand_off_sag_mm(shear_n: float, lever_mm: float, root_mm: float) -> float:
    """Sag of the timber on a screw that bridges a lining.

    Args:
        shear_n: shear on one screw, without factors, N.
        lever_mm: free length, mm.
        root_mm: root diameter, mm.

    Returns:
        Sag, mm.

    Source: elementary beam theory, V l^3 / (3 E I).
    """
    return shear_n * lever_mm**3 / (3.0 * STEEL_MODULUS_MPA * round_second_moment_mm4(root_mm))


def plug_timber_ratio(width_mm: float, diameter_mm: float, *, full_diameters_ratio: float, least_ratio: float) -> float:
    """What a narrow upright leaves of the resistance of a plug screw in it.

    Args:
        width_mm: width of the upright across the screw, mm.
        diameter_mm: outer diameter of the screw, mm.
        full_diameters_ratio: width in diameters from which nothing is lost.
        least_ratio: below this share the screw does not count.

    Returns:
        Share; 0 where the upright is too narrow.

    Source: house choice: half of the room at each side that EN 1995-1-1, Table 8.4 asks of a loaded edge.
    """
    share = min(1.0, width_mm / (full_diameters_ratio * diameter_mm))
    return share if share >= least_ratio else 0.0
