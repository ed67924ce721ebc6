"""Hypothesis strategies: requests of the right shape with any values up to the hard limits (`knowledge/survey.md`)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from hypothesis import strategies as st

from tests.strategies import DAY, requests

if TYPE_CHECKING:
    from hypothesis.strategies import DrawFn, SearchStrategy

    from tests.strategies import Request


def _hard(low: float, high: float) -> SearchStrategy[float]:
    """Any number up to the hard limits, the limits often."""
    return st.sampled_from((float(low), float(high))) | st.floats(low, high, allow_nan=False)


def _points(field: str, low: float, high: float) -> SearchStrategy[list[Request]]:
    return st.lists(
        st.fixed_dictionaries({"x_mm": _hard(0, 15_000), "y_mm": _hard(0, 12_000), field: _hard(low, high)}), max_size=6
    )


def _spans() -> SearchStrategy[list[Request]]:
    return st.lists(st.fixed_dictionaries({"x0_mm": _hard(0, 15_000), "x1_mm": _hard(0, 15_000)}), max_size=3)


MONEY = st.fixed_dictionaries(
    {"amount": st.sampled_from(("0", "12.50", "-3", "1.005")), "currency": st.sampled_from(("GBP", "EUR", "XAU"))}
)
DAYS = st.sampled_from((DAY, "2026-02-30", "2030-01-01", "2020-05-05"))
NAMES = st.sampled_from(("", "/survey", "/survey/wall/lining_mm", "/survey/nowhere", "/x"))
WILD_FIRE = st.fixed_dictionaries(
    {
        "kind": st.just("custom"), "name": st.just("wild"), "open_ends_count": st.integers(0, 2), "mass_kg": _hard(3, 200),
        "body_width_mm": _hard(300, 4_000), "body_height_mm": _hard(200, 1_500), "body_depth_mm": _hard(80, 700),
        "heat_output_w": _hard(0, 9_000), "connection": st.just("plug"), "outlet_position": st.sampled_from(("none", "top")),
    },
    optional={
        "clear_above_mm": _hard(0, 400), "clear_side_mm": _hard(0, 400), "clear_rear_mm": _hard(0, 400),
        "frame_inset_mm": _hard(0, 50), "outlet_height_mm": _hard(0, 1_500), "outlet_to_screen_least_mm": _hard(0, 2_000),
    },
)  # fmt: skip
WILD_SCREEN = st.fixed_dictionaries(
    {
        "kind": st.just("custom"), "name": st.just("wild"), "diagonal_in": _hard(10, 120), "body_width_mm": _hard(0.1, 4_000),
        "body_height_mm": _hard(0.1, 4_000), "body_depth_mm": _hard(0.1, 300), "mass_kg": _hard(0.1, 150),
        "hole_pattern_width_mm": _hard(50, 1_200), "hole_pattern_height_mm": _hard(50, 1_000),
    },
    optional={"hole_centre_offset_mm": _hard(-500, 500), "least_gap_mm": _hard(0, 400), "connectors": st.just("rear")},
)  # fmt: skip
WILD_TIMBER = st.fixed_dictionaries(
    {
        "kind": st.just("custom"), "thickness_mm": _hard(25, 100), "width_mm": _hard(38, 250), "strength_class": st.just("C16"),
        "lengths_mm": st.lists(_hard(1_800, 6_000), min_size=1, max_size=3),
    }
)  # fmt: skip
WILD_BOARD = st.fixed_dictionaries(
    {
        "kind": st.just("custom"), "board_kind": st.just("mdf"), "thickness_mm": _hard(6, 30),
        "sheet_length_mm": _hard(900, 4_000), "sheet_width_mm": _hard(600, 2_000), "density_kg_m3": _hard(200, 2_500),
    }
)  # fmt: skip
WILD: dict[str, SearchStrategy[Any]] = {
    "/survey/room/heights": _points("height_mm", 1_900, 4_500),
    "/survey/room/wall_length_mm": _hard(300, 15_000),
    "/survey/room/breast_centre_from_left_mm": _hard(0, 15_000),
    "/survey/room/obstacles": _spans().map(lambda spans: [{**span, "kind": "door_swing", "reach_mm": 800} for span in spans]),
    "/survey/floor/levels": _points("level_mm", -1_000, 1_000),
    "/survey/floor/fall_mm": _hard(0, 60),
    "/survey/wall/stud_positions_mm": st.lists(_hard(0, 15_000), max_size=5),
    "/survey/wall/construction": st.sampled_from(("timber_stud", "steel_stud", "lath_and_plaster", "concrete", "unknown")),
    "/survey/ceiling/joist_positions_mm": st.lists(_hard(0, 15_000), max_size=5),
    "/survey/ceiling/slope_deg": _hard(0, 60),
    "/survey/services/radiators": _spans(),
    "/survey/site/longest_length_mm": _hard(1_800, 6_000),
    "/survey/site/largest_board_length_mm": _hard(600, 6_000),
    "/survey/site/largest_board_width_mm": _hard(300, 2_000),
    "/survey/site/surveyed_on": DAYS,
    "/survey/site/parking_cost": MONEY,
    "/survey/measured/appliance_top_to_ceiling_mm": st.lists(_hard(50, 4_000), min_size=1, max_size=3),
    "/survey/provenance": st.dictionaries(NAMES, st.just("measured")),
    "/survey/brief/appliance": WILD_FIRE,
    "/survey/brief/screen": WILD_SCREEN,
    "/survey/brief/open_ends": st.sampled_from(("none", "left", "right", "both")),
    "/survey/brief/breast_width_mm": _hard(400, 8_000),
    "/survey/brief/breast_depth_mm": _hard(100, 1_500),
    "/survey/brief/top": st.none() | st.fixed_dictionaries({"kind": st.just("part_height"), "height_mm": _hard(400, 4_500)}),
    "/survey/brief/platform_height_mm": _hard(0, 1_500),
    "/survey/brief/sill_above_appliance_mm": _hard(0, 2_000),
    "/survey/brief/appliance_shift_mm": _hard(-2_000, 2_000),
    "/survey/brief/screen_gap_mm": _hard(50, 400),
    "/survey/brief/glass_set_back_mm": _hard(0, 200),
    "/survey/brief/cable_room_mm": _hard(0, 200),
    "/survey/brief/timber": WILD_TIMBER,
    "/survey/brief/board": WILD_BOARD,
    "/survey/brief/after_measure_allowance_mm": _hard(0, 100),
    "/terms/date": DAYS,
    "/terms/travel_per_day": MONEY,
    "/terms/margin_ratio": _hard(0, 0.9),
    "/terms/mark_up_ratio": _hard(0, 9),
}


@st.composite
def wild_requests(draw: DrawFn) -> Request:
    """A request of the right shape with any values up to the hard limits; most are refused or cannot be built."""
    request = draw(requests())
    for pointer in draw(st.lists(st.sampled_from(tuple(WILD)), min_size=1, max_size=6, unique=True)):
        *way, last = pointer.split("/")[1:]
        part = request
        for name in way:
            part = part.setdefault(name, {})
        part[last] = draw(WILD[pointer])
    return request
