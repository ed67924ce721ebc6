"""Hard limits of the survey: the limit itself is taken, the next number beyond it is refused.

Source: the survey findings of this project, sections 3 to 10, column "hard" (common practice, no source).
"""

from __future__ import annotations

from typing import Any

import msgspec
import pytest

from service.survey import Survey

CUSTOM_FIRE = {
    "kind": "custom",
    "name": "from the manual",
    "open_ends_count": 0,
    "body_width_mm": 900,
    "body_height_mm": 550,
    "body_depth_mm": 250,
    "mass_kg": 30,
    "heat_output_w": 1800,
    "connection": "plug",
    "outlet_position": "front_top",
}
HEIGHT = {"x_mm": 0, "y_mm": 0, "height_mm": 2400}

LIMITS = [
    ("room/heights/0/height_mm", 1_900, 4_500),
    ("room/wall_length_mm", 300, 15_000),
    ("room/depth_mm", 1_500, 12_000),
    ("room/seat_distance_mm", 800, 12_000),
    ("room/eye_height_mm", 600, 1_900),
    ("wall/lining_mm", 0, 60),
    ("wall/void_mm", 0, 80),
    ("wall/declared_tension_kn", 0, 2),
    ("wall/declared_shear_kn", 0, 2),
    ("wall/plumb_mm", -50, 50),
    ("wall/flat_mm", 0, 30),
    ("ceiling/slope_deg", 0, 60),
    ("floor/fall_mm", 0, 60),
    ("floor/skirting_height_mm", 0, 400),
    ("site/storey", 0, 40),
    ("site/longest_length_mm", 1_800, 6_000),
    ("site/narrowest_door_mm", 500, 2_000),
    ("brief/appliance/body_width_mm", 300, 4_000),
    ("brief/appliance/body_height_mm", 200, 1_500),
    ("brief/appliance/body_depth_mm", 80, 700),
    ("brief/appliance/mass_kg", 3, 200),
    ("brief/appliance/heat_output_w", 0, 9_000),
    ("brief/platform_height_mm", 0, 1_500),
    ("brief/after_measure_allowance_mm", 0, 100),
]


def with_value(path: str, value: float) -> dict[str, Any]:
    """A survey that holds one value at a path."""
    survey: dict[str, Any] = {"room": {"heights": [dict(HEIGHT)]}, "brief": {"appliance": dict(CUSTOM_FIRE)}}
    *steps, last = path.split("/")
    place: Any = survey
    for step in steps:
        place = place[int(step)] if isinstance(place, list) else place.setdefault(step, {})
    place[last] = value
    return survey


def taken(path: str, value: float) -> float:
    """The value at a path once the survey was decoded."""
    place: Any = msgspec.convert(with_value(path, value), Survey)
    for step in path.split("/"):
        place = place[int(step)] if isinstance(place, tuple) else getattr(place, step)
    return float(place)


@pytest.mark.parametrize(("path", "low", "high"), LIMITS)
def test_the_limit_is_taken_and_the_next_number_is_not(path: str, low: int, high: int) -> None:
    for value in (low, high):
        assert value == taken(path, value)
    for value in (low - 1, high + 1):
        with pytest.raises(msgspec.ValidationError, match=path.rpartition("/")[2]):
            msgspec.convert(with_value(path, value), Survey)


def test_a_screen_gap_under_50_is_refused() -> None:
    """Section 10: `screen_gap_mm` under 50 is refused."""
    assert 50 == taken("brief/screen_gap_mm", 50)
    with pytest.raises(msgspec.ValidationError, match="screen_gap_mm"):
        msgspec.convert(with_value("brief/screen_gap_mm", 49.9), Survey)


@pytest.mark.parametrize("value", ["2400", None, True, [2400], {}])
def test_a_number_is_a_number(value: Any) -> None:  # noqa: ANN401 - anything that is sent
    with pytest.raises(msgspec.ValidationError, match="height_mm"):
        msgspec.convert(with_value("room/heights/0/height_mm", value), Survey)


def test_a_whole_number_written_as_a_decimal_is_one() -> None:
    assert 3000 == taken("room/seat_distance_mm", 3000.0)
