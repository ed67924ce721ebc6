"""Air and heat in the void behind the face: a balance of buoyancy and power.

Fair for a rise of 1 to 40 K, openings low and high, a mixed void, within 30 percent at best (`knowledge/heat.md`, section 4).
"""

from __future__ import annotations

import math

from service.units import STANDARD_GRAVITY_M_S2

AIR_DENSITY_KG_M3 = 1.204  # at 20 degC and 101 325 Pa, from memory
AIR_HEAT_J_KG_K = 1_006.0  # specific heat at constant pressure, from memory
ROOM_K = 294.15
HEAT_PER_FLOW_J_M3_K = AIR_DENSITY_KG_M3 * AIR_HEAT_J_KG_K


def opening_in_series_m2(inlet_m2: float, outlet_m2: float) -> float:
    """One opening that lets through as much as an inlet and an outlet one after the other.

    Args:
        inlet_m2: free area low, m2.
        outlet_m2: free area high, m2.

    Returns:
        A_eff, m2; 0 where one of them is closed.

    Source: CIBSE AM10 and BS 5925, from memory: 1 / A^2 = 1 / A_in^2 + 1 / A_out^2.
    """
    return inlet_m2 * outlet_m2 / math.hypot(inlet_m2, outlet_m2) if inlet_m2 or outlet_m2 else 0.0


def flow_per_root_rise_m3_per_s(opening_m2: float, stack_m: float, *, discharge_ratio: float, room_k: float = ROOM_K) -> float:
    """Stack flow at a rise of 1 K; it goes with the root of the rise.

    Args:
        opening_m2: openings in series, m2.
        stack_m: between the middles of inlet and outlet, m.
        discharge_ratio: C_d of the openings.
        room_k: temperature of the room, K.

    Returns:
        Flow, m3/s.

    Source: CIBSE AM10 and BS 5925, from memory: Q = C_d A sqrt(2 g H dT / T).
    """
    return discharge_ratio * opening_m2 * math.sqrt(2.0 * STANDARD_GRAVITY_M_S2 * stack_m / room_k)


def cavity_flow_m3_per_s(flow_per_root_rise_m3_per_s: float, rise_k: float) -> float:
    """Flow through the void at a rise.

    Args:
        flow_per_root_rise_m3_per_s: at a rise of 1 K, m3/s.
        rise_k: void over room, K.

    Returns:
        Flow, m3/s.

    Source: CIBSE AM10 and BS 5925, from memory.
    """
    return flow_per_root_rise_m3_per_s * math.sqrt(rise_k)


def cavity_rise_k(power_w: float, flow_per_root_rise_m3_per_s: float, loss_w_per_k: float) -> float:
    """How much warmer than the room the void gets.

    Args:
        power_w: heat given to the void, W.
        flow_per_root_rise_m3_per_s: stack flow at a rise of 1 K, m3/s.
        loss_w_per_k: through the faces of the void to the room, W/K.

    Returns:
        Rise, K; infinite where heat has no way out.

    Source: energy balance, rho c_p Q dT + UA dT = P: a cubic in 1 / sqrt(dT), whose one positive root is taken.
    """
    if power_w <= 0.0:
        return 0.0
    k = HEAT_PER_FLOW_J_M3_K * flow_per_root_rise_m3_per_s
    if loss_w_per_k <= 0.0:
        return math.cbrt(power_w / k) ** 2 if k > 0.0 else math.inf
    reach = math.sqrt(loss_w_per_k / (3.0 * power_w))
    bend = k / (2.0 * power_w * reach**3)
    turn = math.cos(math.acos(bend) / 3.0) if bend <= 1.0 else math.cosh(math.acosh(bend) / 3.0)
    return 1.0 / (2.0 * reach * turn) ** 2


def opening_for_rise_m2(
    power_w: float, rise_k: float, stack_m: float, *, discharge_ratio: float, room_k: float = ROOM_K
) -> float:
    """Openings in series that keep the void within a rise, losses through its faces left out.

    Args:
        power_w: heat given to the void, W.
        rise_k: wanted rise, K.
        stack_m: between the middles of inlet and outlet, m.
        discharge_ratio: C_d of the openings.
        room_k: temperature of the room, K.

    Returns:
        A_eff, m2; each of two equal grilles has sqrt(2) of it.

    Source: energy balance and stack flow turned round.
    """
    one_m2 = flow_per_root_rise_m3_per_s(1.0, stack_m, discharge_ratio=discharge_ratio, room_k=room_k)
    return power_w / (HEAT_PER_FLOW_J_M3_K * rise_k * cavity_flow_m3_per_s(one_m2, rise_k))


def equal_grille_m2(opening_m2: float) -> float:
    """Free area of each of two equal grilles.

    Args:
        opening_m2: openings in series, m2.

    Returns:
        Free area of one, m2.

    Source: CIBSE AM10 and BS 5925, from memory: 1 / A^2 = 2 / A_each^2.
    """
    return math.sqrt(2.0) * opening_m2


def cavity_power_w(rated_w: float, *, share_ratio: float, least_w: float) -> float:
    """Heat that an appliance gives to the void.

    Args:
        rated_w: rated power with the heater on, W.
        share_ratio: share of it that the case gives off.
        least_w: least power reckoned with, W.

    Returns:
        Power, W.

    Source: house choice: no maker publishes the share.
    """
    return max(share_ratio * rated_w, least_w)


def outlet_rise_k(power_w: float, flow_m3_per_s: float) -> float:
    """Mean rise of the air at a fire's outlet.

    Args:
        power_w: heat given to the air, W.
        flow_m3_per_s: the maker's flow, m3/s.

    Returns:
        Rise, K.

    Source: energy balance, P / (rho c_p V).
    """
    return power_w / (HEAT_PER_FLOW_J_M3_K * flow_m3_per_s)
