"""Models that a shop sells or knows: electric fires, screens, screen brackets.

Fields: `knowledge/heat.md`, section 2 and `knowledge/viewing.md`, section 5. Null: the maker does not state it.
"""

from __future__ import annotations

import msgspec


class Appliance(msgspec.Struct, frozen=True, kw_only=True):
    """One inset electric fire."""

    model: str
    name: str
    open_ends_count: int  # 0 one-sided, 1 two-sided, 2 three-sided glass
    open_end: str | None = None  # left, right, either: only with one open end
    body_width_mm: float
    body_height_mm: float
    body_depth_mm: float
    mass_kg: float
    heat_output_w: float
    flame_w: float | None = None
    current_a: float | None = None
    outlet_position: str
    outlet_height_mm: float | None = None
    clear_above_mm: float | None = None
    clear_side_mm: float | None = None
    clear_rear_mm: float | None = None
    clear_front_mm: float | None = None
    outlet_to_screen_least_mm: float | None = None
    outlet_to_shelf_least_mm: float | None = None
    air_inlet_area_mm2: float | None = None
    air_inlet_position: str | None = None
    frame_inset_mm: float | None = None
    trim_lap_mm: float | None = None
    connection: str
    non_combustible_above_mm: float | None = None
    max_void_deg_c: float | None = None
    may_be_boarded_over: bool | None = None
    options: tuple[str, ...] = ()
    order_codes: tuple[str, ...] = ()  # materials that can be ordered with it, by code
    standing: str = "stated"


class Screen(msgspec.Struct, frozen=True, kw_only=True):
    """One screen, without its stand."""

    model: str
    diagonal_in: float
    body_width_mm: float
    body_height_mm: float
    body_depth_mm: float
    mass_kg: float
    hole_pattern_width_mm: float
    hole_pattern_height_mm: float
    hole_centre_offset_mm: float | None = None
    thread: str
    power_w: float | None = None
    max_ambient_deg_c: float | None = None
    least_gap_mm: float | None = None
    bracket: str | None = None
    standing: str = "stated"


class Bracket(msgspec.Struct, frozen=True, kw_only=True):
    """One wall bracket for a screen."""

    model: str
    kind: str  # fixed, tilt, pull_out, arm
    depth_mm: float
    reach_mm: float
    mass_kg: float
    rating_kg: float
    plate_hole_width_mm: float
    plate_hole_height_mm: float
    plate_width_mm: float
    plate_height_mm: float
    fixing_count: int
    screen_pattern_least_width_mm: float
    screen_pattern_greatest_width_mm: float
    screen_pattern_least_height_mm: float
    screen_pattern_greatest_height_mm: float
    tilt_deg: float | None = None
    hands_at: str = "none"
    lift_height_mm: float | None = None
    standing: str = "stated"
