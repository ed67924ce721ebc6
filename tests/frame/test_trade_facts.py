"""Facts that any joiner of this trade knows (common practice, no source), as the issue that asked for the frame names them."""

from __future__ import annotations

import pytest

from service.frame import Role, Unit
from tests.examples_of import changed, example_a, example_c, frame_of, job_of

BRIEF = "/survey/brief"


def timber(thickness_mm: float, width_mm: float) -> dict[str, object]:
    """A custom section."""
    return {
        "kind": "custom", "thickness_mm": thickness_mm, "width_mm": width_mm, "strength_class": "C16", "lengths_mm": [4800]
    }  # fmt: skip


def fire(width_mm: float, height_mm: float, ends: int) -> dict[str, object]:
    """A fire of these sizes, with every figure of its maker left to the house."""
    return {
        "kind": "custom", "name": "fact", "open_ends_count": ends, "body_width_mm": width_mm, "body_height_mm": height_mm,
        "body_depth_mm": 200, "mass_kg": 30, "heat_output_w": 1500, "connection": "plug", "outlet_position": "front_bottom",
    }  # fmt: skip


def test_uprights_of_a_600_platform_in_45_timber() -> None:
    """With 45 x 73 timber a 600 high platform has uprights of 510: 600 less two rails."""
    frame = frame_of(changed(example_c(), {
        f"{BRIEF}/timber": timber(45, 73), f"{BRIEF}/platform_height_mm": 600, f"{BRIEF}/top": {"kind": "ceiling"},
    }))  # fmt: skip
    uprights = {member.length_tenth_mm / 10 for member in frame.members if member.role is Role.UPRIGHT}

    assert {510} == uprights


def test_cross_noggins_of_a_frame_320_deep() -> None:
    """With 45 x 73 timber a frame 320 deep (332 finished in 12 mm board) has cross noggins of 174."""
    frame = frame_of(changed(example_c(), {f"{BRIEF}/timber": timber(45, 73), f"{BRIEF}/breast_depth_mm": 332}))
    noggins = {member.length_tenth_mm / 10 for member in frame.members if member.role in {Role.CROSS_NOGGIN, Role.LADDER_NOGGIN}}

    assert 320 == frame.sizes.frame_depth_tenth_mm / 10
    assert {174} == noggins


def test_width_of_a_three_sided_breast() -> None:
    """A body 1500 wide open on three sides gives a frame 1492 wide: 4 inside the body at each end."""
    frame = frame_of(changed(example_a(), {f"{BRIEF}/appliance": fire(1500, 500, 2)}))

    assert 1492 == frame.sizes.frame_width_tenth_mm / 10


def test_what_is_left_over_the_fire() -> None:
    """A fire 550 high on a 600 platform under 2440 leaves 1290 over it, from which our gaps are taken.

    These are 10 over the fire and 10 of packing under the ceiling, so the upper frame is 1270 high.
    """
    room = [{**point, "height_mm": 2440} for point in example_a()["survey"]["room"]["heights"]]
    request = changed(example_a(), {
        "/survey/room/heights": room, f"{BRIEF}/timber": timber(45, 73), f"{BRIEF}/platform_height_mm": 600,
        f"{BRIEF}/appliance": fire(1500, 550, 2),
    })  # fmt: skip
    job, frame = job_of(request), frame_of(request)

    left_over = 24400 - 6000 - 5500
    assert 12900 == left_over
    assert (100, 100) == (job.gap_over_tenth_mm, job.clear_height_tenth_mm - frame.levels.upper_top_tenth_mm)
    assert 12700 == frame.sizes.upper_height_tenth_mm == left_over - 100 - 100
    assert {12700} == {member.length_tenth_mm for member in frame.members if member.role is Role.LADDER_UPRIGHT}


@pytest.mark.parametrize(("screen_mm", "framing_mm", "clear_mm"), [(700, 830, 800)])
def test_clear_between_lined_battens(screen_mm: float, framing_mm: float, clear_mm: float) -> None:
    """830 between two battens lined with 15 mm board leaves 800 clear: the jambs of a recess for a screen 700 wide."""
    screen = {
        "kind": "custom", "name": "fact", "diagonal_in": 32, "body_width_mm": screen_mm, "body_height_mm": 410,
        "body_depth_mm": 60, "mass_kg": 6, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200,
    }  # fmt: skip
    frame = frame_of(changed(example_a(), {f"{BRIEF}/screen": screen}))
    left, right = sorted(member.box.x0_tenth_mm for member in frame.members if member.role is Role.JAMB_STUD)
    linings = [panel for panel in frame.panels if panel.role.value in {"lining_left", "lining_right"}]

    assert framing_mm == (right - left) / 10 - 38
    assert {15} == {(panel.box.x1_tenth_mm - panel.box.x0_tenth_mm) / 10 for panel in linings}
    inner = [side for panel in linings for side in (panel.box.x0_tenth_mm, panel.box.x1_tenth_mm)]
    assert clear_mm == (sorted(inner)[2] - sorted(inner)[1]) / 10


def test_two_units() -> None:
    """The base stands on the floor and carries the fire; the upper frame never rests on the fire."""
    frame = frame_of(example_a())
    tops = [member.box.z1_tenth_mm for member in frame.members if member.unit is Unit.BASE]
    feet = [member.box.z0_tenth_mm for member in frame.members if member.unit is Unit.UPPER]

    assert 4300 == max(tops)
    assert 9200 == min(feet) == 4300 + 4800 + 100  # platform, fire, gap
