"""Limits of the checks that are not structural (`limits.toml`)."""

from __future__ import annotations

import msgspec


class HeatRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Heat and damp in and behind a breast (`knowledge/heat.md`)."""

    cavity_share_ratio: float
    cavity_least_w: float
    screen_share_ratio: float
    design_room_deg_c: float
    uncertainty_ratio: float
    discharge_ratio: float
    grille_free_ratio: float
    screen_deg_c: float
    electronics_deg_c: float
    cable_deg_c: float
    plasterboard_deg_c: float
    board_warn_deg_c: float
    board_fail_deg_c: float
    filler_deg_c: float
    touch_deg_c: float
    hot_jet_k: float
    least_stack_mm: float
    damp_room_deg_c: float
    damp_outside_deg_c: float
    damp_humidity_ratio: float
    mould_ratio: float
    leaf_mm: float
    lining_most_m2: float
    lining_floor_ratio: float
    solid_wall_mm: float
    outlet_to_screen_usual_mm: float
    inside_film_m2_k_per_w: float
    outside_film_m2_k_per_w: float
    void_m2_k_per_w: float
    brick_w_per_m_k: float
    plaster_w_per_m_k: float
    plasterboard_w_per_m_k: float
    mdf_w_per_m_k: float
    timber_w_per_m_k: float
    mineral_wool_w_per_m_k: float


class PowerRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Currents, zones of cables, alarms (`knowledge/services.md`)."""

    supply_v: float
    plug_a: float
    double_socket_a: float
    ring_a: float
    radial_a: float
    conductor_deg_c: float
    access_short_mm: float
    access_long_mm: float
    socket_plate_mm: float
    cable_depth_mm: float
    accessory_zone_mm: float
    thin_wall_mm: float
    alarm_from_wall_mm: float


class ViewingRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Angles and heights of a screen: advice (`knowledge/viewing.md`)."""

    aspect_width_ratio: float
    aspect_height_ratio: float
    least_seat_diagonal_ratio: float
    greatest_seat_diagonal_ratio: float
    small_angle_deg: float
    wanted_angle_deg: float
    close_angle_deg: float
    too_close_angle_deg: float
    off_axis_deg: float
    good_rise_deg: float
    comfort_rise_deg: float
    high_rise_deg: float
    top_rise_deg: float
    preferred_rise_deg: float
    child_below_mm: float
    plate_zone_mm: float
    hidden_window_mm: float
    flame_centre_mm: float


class AccessRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Ways in, tilting up, turning with a load (`knowledge/handling.md`)."""

    corner_margin_mm: float
    door_margin_mm: float
    stair_margin_mm: float
    tilt_clearance_mm: float
    platform_height_mm: float
    turned_45_ratio: float
    turned_90_ratio: float


class LiftZone(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Masses of the lift filter with the hands in one zone: `above_shoulder`."""

    name: str
    man_close_kg: float
    man_far_kg: float
    woman_close_kg: float
    woman_far_kg: float
