"""Framing.md, section 2: which sums are made of which frame. Their numbers in A, B and C: test_worked_examples.py."""

from __future__ import annotations

import pytest

from tests.examples_of import Request, changed, example_a, example_b, example_c, frame_of
from tests.frame.settings_of import BRIEF

ALWAYS = {"width", "frame_width", "depth", "height", "face_above_fire"}
PLATFORM = f"{BRIEF}/platform_height_mm"


def sums(request: Request) -> dict[str, list[tuple[str, float]]]:
    """Closure sums by name, part by part."""
    return {one.name: [(term.name, term.value_tenth_mm / 10) for term in one.terms] for one in frame_of(request).closures}


@pytest.mark.parametrize(
    ("request_", "more"),
    [
        (example_a(), {"base", "face_width", "recess_depth"}),
        (example_b(), {"base", "opening_line", "recess_depth"}),
        (example_c(), {"base", "opening_line"}),
        (changed(example_c(), {PLATFORM: 0}), {"opening_line"}),
        (changed(example_c(), {PLATFORM: 27}), {"opening_line"}),
        (changed(example_a(), {f"{BRIEF}/screen": None, f"{BRIEF}/screen_bracket": None}), {"base"}),
    ],
)
def test_which_sums(request_: Request, more: set[str]) -> None:
    assert ALWAYS | more == set(sums(request_))


def test_a_flat_base_is_pack_and_rail() -> None:
    assert [("pack", 22), ("rail", 38)] == sums(changed(example_c(), {PLATFORM: 60}))["base"]


def test_full_height_ends_with_packing_and_part_height_with_its_lid() -> None:
    assert ("packing", 10) == sums(example_a())["height"][-1]
    assert ("lid", 18) == sums(example_c())["height"][-1]


@pytest.mark.parametrize(
    ("shift_mm", "parts"),
    [
        (-60, ["ladder", "cheek", "jack", "opening", "jack", "cheek", "ladder"]),
        (-205, ["ladder", "packer", "opening", "jack", "cheek", "ladder"]),
        (205, ["ladder", "cheek", "jack", "opening", "packer", "ladder"]),
    ],
)
def test_parts_of_the_opening_line(shift_mm: float, parts: list[str]) -> None:
    line = sums(changed(example_c(), {f"{BRIEF}/appliance_shift_mm": shift_mm}))["opening_line"]

    assert parts == [name for name, _value in line]
    assert 1331 == sum(value for _name, value in line)


def test_an_open_end_has_no_part_in_the_opening_line() -> None:
    left_open = changed(example_b(), {f"{BRIEF}/open_ends": "left"})

    assert [("opening", 1141), ("jack", 45), ("cheek", 390), ("ladder", 45)] == sums(left_open)["opening_line"]


def test_an_odd_tenth_stands_in_the_right_gap() -> None:
    screen = {
        "kind": "custom", "name": "odd", "diagonal_in": 43, "body_width_mm": 964.1, "body_height_mm": 557, "body_depth_mm": 74,
        "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200,
    }  # fmt: skip
    line = dict(enumerate(sums(changed(example_a(), {f"{BRIEF}/screen": screen}))["face_width"]))

    assert (("gap", 40.4), ("gap", 40.5)) == (line[1], line[5])
