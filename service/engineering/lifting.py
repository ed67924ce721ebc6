"""Masses and who lifts them: the lift filter of HSE L23, a screen and not a limit."""

from __future__ import annotations

from service.engineering.actions import MM3_PER_M3

# What a team lifts of the sum of its single values, by its number: HSE L23, from memory.
TEAM_SHARES = {1: 1.0, 2: 2.0 / 3.0, 3: 0.5}


def piece_mass_kg(length_mm: float, width_mm: float, thickness_mm: float, density_kg_m3: float) -> float:
    """Mass of a board or a timber.

    Args:
        length_mm: length, mm.
        width_mm: width, mm.
        thickness_mm: thickness, mm.
        density_kg_m3: density, kg/m3.

    Returns:
        Mass, kg.

    Source: geometry.
    """
    return length_mm * width_mm * thickness_mm * density_kg_m3 / MM3_PER_M3


def team_mass_kg(singles_kg: tuple[float, ...]) -> float:
    """What a team of up to three lifts together.

    Args:
        singles_kg: single value of each person in the zone, kg.

    Returns:
        Mass, kg.

    Raises:
        KeyError: more than three: that wants a lifter.

    Source: HSE L23, from memory: two thirds of the sum for two, half for three.
    """
    return TEAM_SHARES[len(singles_kg)] * sum(singles_kg)


def mixed_mass_kg(man_kg: float, woman_kg: float) -> float:
    """Single value of a person of a crew whose make-up the firm does not state.

    Args:
        man_kg: value of the man's column, kg.
        woman_kg: value of the woman's column, kg.

    Returns:
        Mass, kg.

    Source: house choice: the mean of both columns.
    """
    return (man_kg + woman_kg) / 2.0


def end_mass_kg(mass_kg: float) -> float:
    """What is lifted first when a uniform frame or board is raised by one end; it falls to nothing upright.

    Args:
        mass_kg: mass of the whole, kg.

    Returns:
        Mass, kg.

    Source: statics, m / 2.
    """
    return mass_kg / 2.0
