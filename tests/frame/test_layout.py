"""lay_out(): the frame as a whole, and what the fitter is told of it."""

from __future__ import annotations

import msgspec
import pytest

from service.errors import UnbuildableError
from service.frame import Additions, Frame, Role
from tests.examples_of import Request, changed, example_a, example_b, example_c, frame_of
from tests.frame.settings_of import BRIEF

PLATFORM = f"{BRIEF}/platform_height_mm"


def falling(fall_mm: float, low_end: str = "right", **brief: object) -> Request:
    """Example C on a floor that falls."""
    return changed(example_c(), {
        "/survey/floor/fall_mm": fall_mm, "/survey/floor/low_end": low_end,
        **{f"{BRIEF}/{name}": value for name, value in brief.items()},
    })  # fmt: skip


def test_facts_of_the_examples() -> None:
    a, b, c = (frame_of(request) for request in (example_a(), example_b(), example_c()))

    assert [(True, True, True, True), (False, True, True, True), (False, False, False, False)] == [
        (frame.left_open, frame.right_open, frame.full_height, frame.screen_hung) for frame in (a, b, c)
    ]
    assert [1, 1, 0] == [frame.ply_count for frame in (a, b, c)]


def test_openings() -> None:
    """Design.md, section 5: fire and recess with their framing sizes."""
    a, c = frame_of(example_a()), frame_of(example_c())

    assert [("fire", 0, 13270, 4300, 9200), ("recess", 1165, 12105, 11300, 18170)] == [
        (one.kind, one.x0_tenth_mm, one.x1_tenth_mm, one.z0_tenth_mm, one.z1_tenth_mm) for one in a.openings
    ]
    assert ["fire"] == [one.kind for one in c.openings]


@pytest.mark.parametrize(("request_", "width_mm"), [(example_a(), 1357), (example_b(), 1155.5), (example_c(), 770)])
def test_opening_of_the_boards(request_: Request, width_mm: float) -> None:
    """Board opening: the framed one, and board and skim at each open end; B 1155.5 (worked-examples.md)."""
    assert width_mm * 10 == frame_of(request_).sizes.board_opening_width_tenth_mm


def test_stations_are_of_a_base_frame_only() -> None:
    assert [5, 0, 0, 5] == [len(frame_of(changed(example_c(), {PLATFORM: z0})).stations) for z0 in (134, 0, 27, 60)]


def test_additions_are_laid_in() -> None:
    """Example C after checks: one ply more, 48 pieces of 23598; noggins at 134, 679, 1099; six brackets."""
    frame = frame_of(example_c(), Additions(ply_count=1, bracketed_roles=("top_rail_front", "top_rail_rear")))

    assert (48, 23598, 23596) == (
        len(frame.members), sum(member.length_tenth_mm for member in frame.members) / 10,
        sum(member.cut_length_mm for member in frame.members),
    )  # fmt: skip
    noggins = {member.box.z0_tenth_mm / 10 for member in frame.members if member.role is Role.LADDER_NOGGIN}
    assert {134, 679, 1099} == noggins
    assert 6 == sum((member.start_joint == "bracket") + (member.end_joint == "bracket") for member in frame.members)


def test_example_b_after_checks() -> None:
    """54 pieces, 39452 (cut 39442): a rear rail at z 2425..2470 added."""
    frame = frame_of(example_b(), Additions(extra_rear_rails_tenth_mm=(24250,), bracketed_roles=("sill_rail",)))

    assert (54, 39452, 39442) == (
        len(frame.members), sum(member.length_tenth_mm for member in frame.members) / 10,
        sum(member.cut_length_mm for member in frame.members),
    )  # fmt: skip


def test_a_frame_is_a_value() -> None:
    """Same survey, same bytes: it goes to JSON and back unchanged."""
    frame = frame_of(example_b())

    assert frame == msgspec.json.decode(msgspec.json.encode(frame), type=Frame)
    assert msgspec.json.encode(frame) == msgspec.json.encode(frame_of(example_b()))


@pytest.mark.parametrize(
    ("request_", "notes"),
    [
        (example_a(), ()),
        (example_b(), ()),
        (changed(example_b(), {f"{BRIEF}/screen/model": "SC-058"}), ("pack the 7.5 between jamb and ladder at both sides",)),
        (changed(example_c(), {f"{BRIEF}/appliance_shift_mm": -165}), ("pack the 39.5 between jack and ladder at the left",)),
        (changed(example_c(), {f"{BRIEF}/appliance_shift_mm": 165}), ("pack the 39.5 between jack and ladder at the right",)),
        (changed(example_c(), {f"{BRIEF}/appliance_shift_mm": -204.5}), ()),
        (falling(25), ()),
        (falling(9, platform_height_mm=38), ()),
        (falling(25.1), ("the floor falls by 25.1: a timber sole piece instead of packers",)),
        (falling(9, platform_height_mm=0), ("the floor falls by 9: pack up what stands on it at the low side",)),
        (falling(9, "front", platform_height_mm=27), ("the floor falls by 9: pack up what stands on it at the low side",)),
    ],
)
def test_notes_to_the_fitter(request_: Request, notes: tuple[str, ...]) -> None:
    """Framing.md, sections 3, 5 and 6."""
    assert notes == frame_of(request_).notes


@pytest.mark.parametrize(("depth_mm", "noted"), [(215, False), (214.9, True)])
def test_room_for_cables_behind_the_bearers(depth_mm: float, *, noted: bool) -> None:
    """Section 5: keep >= 30 free behind the bearers: 129 + 18 + 38 + 30 = 215; thin timber and a flat fire."""
    fire = {
        "kind": "custom",
        "name": "flat",
        "open_ends_count": 2,
        "body_width_mm": 1335,
        "body_height_mm": 480,
        "body_depth_mm": 120,
        "mass_kg": 40,
        "heat_output_w": 1000,
        "connection": "plug",
        "outlet_position": "front_bottom",
        "clear_rear_mm": 0,
    }
    request = changed(example_a(), {
        f"{BRIEF}/appliance": fire, f"{BRIEF}/breast_depth_mm": depth_mm, f"{BRIEF}/timber/code": "TM-1007V",
    })  # fmt: skip

    assert noted is any("behind the bearers" in note for note in frame_of(request).notes)


def test_a_high_platform_is_asked_back() -> None:
    """Section 3: z0 > 1000: ask back."""
    assert () == frame_of(changed(example_a(), {PLATFORM: 1000})).notes
    (note,) = frame_of(changed(example_a(), {PLATFORM: 1000.1})).notes
    assert "1000.1" in note


def test_everything_unmet_is_raised_at_once() -> None:
    request = changed(example_a(), {
        f"{BRIEF}/breast_width_mm": 1400, f"{BRIEF}/breast_depth_mm": 200, f"{BRIEF}/screen/model": "SC-085",
        f"{BRIEF}/screen_bracket": None, f"{BRIEF}/sill_above_appliance_mm": 20,
    })  # fmt: skip

    with pytest.raises(UnbuildableError) as raised:
        frame_of(request)
    codes = ["depth_ladder", "depth_fire", "width_fixed", "upstand", "recess_wide"]
    assert codes == [unmet.code for unmet in raised.value.unmet]
