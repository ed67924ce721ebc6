"""Warm air that climbs a wall above an outlet without a fan: an order of magnitude, an upper bound for a jet thrown forward."""

from __future__ import annotations

import math

from service.engineering.cavity import HEAT_PER_FLOW_J_M3_K, ROOM_K
from service.units import STANDARD_GRAVITY_M_S2

PLANE_PLUME = 2.6  # 2.4 to 2.6: Chen and Rodi, 1980, from memory
WALL_FACTOR = 2.0  # a plume stuck to a wall is half of a free one of twice its power


def wall_plume_rise_k(power_w: float, width_m: float, height_m: float, room_k: float = ROOM_K) -> float:
    """Hottest rise in a plume at a height above its source.

    Args:
        power_w: heat that climbs, W.
        width_m: width of the source along the wall, m.
        height_m: above the source, m.
        room_k: temperature of the room, K.

    Returns:
        Rise, K; it falls as 1 / height.

    Source: Chen and Rodi, 1980, plane plume, from memory: 2.6 (2 B)^(2/3) / x T / g.
    """
    buoyancy_m3_per_s3 = STANDARD_GRAVITY_M_S2 * power_w / width_m / (HEAT_PER_FLOW_J_M3_K * room_k)
    return PLANE_PLUME * math.cbrt(WALL_FACTOR * buoyancy_m3_per_s3) ** 2 / height_m * room_k / STANDARD_GRAVITY_M_S2
