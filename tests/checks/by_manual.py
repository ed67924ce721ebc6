"""Example C with a fire by its manual, with any figure changed or left out; without a screen and with one over it."""

from __future__ import annotations

from typing import Any

from tests.examples_of import changed
from tests.sold_examples import sold

MANUAL: dict[str, Any] = {
    "kind": "custom", "name": "by its manual", "open_ends_count": 0, "body_width_mm": 760, "body_height_mm": 535,
    "body_depth_mm": 210, "mass_kg": 21, "heat_output_w": 1800, "connection": "hard_wired", "outlet_position": "front_top",
    "outlet_height_mm": 500, "clear_above_mm": 10, "clear_side_mm": 5, "clear_rear_mm": 30, "clear_front_mm": 1000,
    "outlet_to_screen_least_mm": 250, "air_inlet_area_mm2": 7000, "air_inlet_position": "front_bottom", "trim_lap_mm": 20,
    "max_void_deg_c": 45, "may_be_boarded_over": True,
}  # fmt: skip
SCREEN = {"kind": "catalogue", "model": "SC-043"}


def by_manual(**figures: object) -> dict[str, Any]:
    """Example C with a fire by its manual; None: not stated."""
    told = {key: value for key, value in {**MANUAL, **figures}.items() if value is not None}
    values_ = {"/survey/brief/appliance": told, "/survey/services/supply_wanted": "fused_connection"}
    return changed(sold("C"), values_)


def under_screen(**figures: object) -> dict[str, Any]:
    """The same with a screen over it, up to the ceiling."""
    more = {"/survey/brief/screen": SCREEN, "/survey/brief/top": {"kind": "ceiling"}, "/survey/brief/breast_width_mm": 1600}
    return changed(by_manual(**figures), more)
