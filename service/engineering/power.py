"""Currents of what is plugged in: screens and electronics are taken as heaters are, by their power."""

from __future__ import annotations

import math


def current_a(power_w: float, supply_v: float) -> float:
    """Current of a load.

    Args:
        power_w: power, W.
        supply_v: voltage, V.

    Returns:
        Current, A.

    Source: Ohm's law, P / U, power factor 1.
    """
    return power_w / supply_v


def plug_power_w(fuse_a: float, supply_v: float) -> float:
    """Largest load of a fused plug.

    Args:
        fuse_a: fuse, A.
        supply_v: voltage, V.

    Returns:
        Power, W.

    Source: Ohm's law, U I, power factor 1.
    """
    return fuse_a * supply_v


def total_w(powers_w: tuple[float, ...]) -> float:
    """All that is plugged into one lead, socket or circuit, at once.

    Args:
        powers_w: of each thing, W.

    Returns:
        Sum, W.

    Source: house choice: no diversity is taken.
    """
    return sum(powers_w)


def shared_w(power_w: float, share_ratio: float) -> float:
    """Part of a thing's power that warms one void.

    Args:
        power_w: power, W.
        share_ratio: share of it.

    Returns:
        Power, W.

    Source: house choice: half of a screen's power goes into its recess.
    """
    return share_ratio * power_w


def warm_cable_ratio(ambient_deg_c: float, *, rated_deg_c: float, conductor_deg_c: float) -> float:
    """Share of its rating that a cable keeps in warm air.

    Args:
        ambient_deg_c: air round the cable, degC.
        rated_deg_c: air that its rating is for, degC.
        conductor_deg_c: its conductor at full load, degC.

    Returns:
        Share; 1 up to the rated air, 0 where the air is as warm as the conductor.

    Source: BS 7671 Table 4B1, from memory: 0.87 at 40 and 0.71 at 50 for 30 and 70, the root of the drop that is left.
    """
    left = (conductor_deg_c - ambient_deg_c) / (conductor_deg_c - rated_deg_c)
    return math.sqrt(min(max(left, 0.0), 1.0))
