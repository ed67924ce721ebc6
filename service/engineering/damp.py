"""Cold faces and dew: EN ISO 6946, EN ISO 13788, and the Magnus form of the saturation pressure."""

from __future__ import annotations

import math

MAGNUS_RATIO, MAGNUS_DEG_C = 17.62, 243.12  # over water: WMO No. 8, from memory
MAGNUS_PA = 611.2


def layer_m2_k_per_w(thickness_mm: float, conductivity_w_per_m_k: float) -> float:
    """Thermal resistance of a layer.

    Args:
        thickness_mm: thickness, mm.
        conductivity_w_per_m_k: conductivity, W/(m K).

    Returns:
        R, m2 K/W.

    Source: EN ISO 6946, sum of layers, t / lambda.
    """
    return thickness_mm / 1_000.0 / conductivity_w_per_m_k


def face_loss_w_per_k(area_m2: float, resistance_m2_k_per_w: float) -> float:
    """Heat through a face by degree.

    Args:
        area_m2: area, m2.
        resistance_m2_k_per_w: of films and layers from air to air, m2 K/W.

    Returns:
        U A, W/K.

    Source: EN ISO 6946, U = 1 / R.
    """
    return area_m2 / resistance_m2_k_per_w


def transmittance_w_per_m2_k(total_m2_k_per_w: float) -> float:
    """U-value of a wall.

    Args:
        total_m2_k_per_w: films and layers together, m2 K/W.

    Returns:
        U, W/(m2 K).

    Source: EN ISO 6946, U = 1 / R.
    """
    return 1.0 / total_m2_k_per_w


def face_deg_c(inside_deg_c: float, outside_deg_c: float, *, before_m2_k_per_w: float, total_m2_k_per_w: float) -> float:
    """Temperature of a face in a wall.

    Args:
        inside_deg_c: air of the room, degC.
        outside_deg_c: air outside, degC.
        before_m2_k_per_w: resistance between the room and that face, m2 K/W.
        total_m2_k_per_w: resistance of all, m2 K/W.

    Returns:
        Temperature, degC.

    Source: EN ISO 13788, steady state through layers.
    """
    return inside_deg_c - (inside_deg_c - outside_deg_c) * before_m2_k_per_w / total_m2_k_per_w


def surface_factor_ratio(before_m2_k_per_w: float, total_m2_k_per_w: float) -> float:
    """f_Rsi: how near to the room's temperature a face stays.

    Args:
        before_m2_k_per_w: resistance between the room and that face, m2 K/W.
        total_m2_k_per_w: resistance of all, m2 K/W.

    Returns:
        Factor, 0 to 1.

    Source: EN ISO 13788, temperature factor at the surface.
    """
    return 1.0 - before_m2_k_per_w / total_m2_k_per_w


def saturation_pa(temperature_deg_c: float) -> float:
    """Pressure of saturated water vapour.

    Args:
        temperature_deg_c: temperature, degC.

    Returns:
        Pressure, Pa.

    Source: WMO No. 8, Magnus form over water, from memory.
    """
    return MAGNUS_PA * math.exp(MAGNUS_RATIO * temperature_deg_c / (MAGNUS_DEG_C + temperature_deg_c))


def dew_point_deg_c(temperature_deg_c: float, humidity_ratio: float) -> float:
    """Temperature at which air begins to give off water.

    Args:
        temperature_deg_c: of the air, degC.
        humidity_ratio: relative humidity, above 0 to 1.

    Returns:
        Dew point, degC.

    Source: WMO No. 8, Magnus form over water turned round, from memory.
    """
    gamma = math.log(humidity_ratio) + MAGNUS_RATIO * temperature_deg_c / (MAGNUS_DEG_C + temperature_deg_c)
    return MAGNUS_DEG_C * gamma / (MAGNUS_RATIO - gamma)


def face_humidity_ratio(room_deg_c: float, room_humidity_ratio: float, face_deg_c: float) -> float:
    """Relative humidity of room air at a face.

    Args:
        room_deg_c: air of the room, degC.
        room_humidity_ratio: its relative humidity.
        face_deg_c: temperature of the face, degC.

    Returns:
        Relative humidity; above 1 the face gets wet.

    Source: EN ISO 13788: vapour pressure of the room over the saturation pressure at the face.
    """
    return room_humidity_ratio * saturation_pa(room_deg_c) / saturation_pa(face_deg_c)
