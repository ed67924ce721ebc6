"""Framing.md, sections 2.2, 7 and 11: faces, returns, lid. Sizes and joints of A, B, C: test_worked_examples.py."""

from __future__ import annotations

import pytest

from service.errors import UnbuildableError
from service.frame import CutWhen, PanelRole
from tests.examples_of import Request, changed, example_a, example_b, example_c, frame_of
from tests.frame.geometry import ranges
from tests.frame.settings_of import BRIEF, timber

FALLING: Request = {"/survey/floor/fall_mm": 9, "/survey/floor/low_end": "right"}
FLOOR: Request = {f"{BRIEF}/platform_height_mm": 0}


def tapers(request: Request) -> dict[str, float]:
    """What is cut longer for the fall of the floor, in mm."""
    return {panel.role.value: panel.taper_tenth_mm / 10 for panel in frame_of(request).panels if panel.taper_tenth_mm}


def joints(request: Request, role: PanelRole) -> tuple[list[float], list[float]]:
    """Heights of the joints, and places of the vertical ones, of the panels of a role."""
    panels = [panel for panel in frame_of(request).panels if panel.role is role]
    return (
        sorted({panel.box.z0_tenth_mm / 10 for panel in panels if panel.joint_below}),
        sorted({panel.box.x0_tenth_mm / 10 for panel in panels if panel.joint_left}),
    )


def test_the_face_laps_over_the_returns() -> None:
    """Face Wf + 2t wide, returns Df + sc deep and scribed to the wall, lid (Wf + 2t) x (Df + t + sc)."""
    boxes = {panel.role: ranges(panel.box) for panel in frame_of(example_c()).panels}

    assert ((-120, 13430), (2880, 3000), (6790, 11620)) == boxes[PanelRole.FACE_UPPER]
    assert ((-120, 0), (-100, 2880), (0, 11620)) == boxes[PanelRole.RETURN_LEFT]
    assert ((13310, 13430), (-100, 2880), (0, 11620)) == boxes[PanelRole.RETURN_RIGHT]
    assert ((-120, 13430), (-100, 3000), (11620, 11800)) == boxes[PanelRole.LID]


@pytest.mark.parametrize(("lean_mm", "scribe_mm"), [(0, 10), (5, 10), (-10, 10), (10.1, 20.1), (-14, 24)])
def test_a_wall_that_leans_makes_the_returns_deeper(lean_mm: float, scribe_mm: float) -> None:
    """Survey.md, section 4: the scribing allowance covers a lean up to 10; framing.md, section 14: else sc + lean."""
    frame = frame_of(changed(example_c(), {"/survey/wall/plumb_mm": lean_mm}))
    depths = {panel.role: panel for panel in frame.panels}

    assert 288 + scribe_mm == depths[PanelRole.RETURN_LEFT].width_tenth_mm / 10
    assert 300 + scribe_mm == depths[PanelRole.LID].height_tenth_mm / 10
    assert -scribe_mm == depths[PanelRole.RETURN_LEFT].box.y0_tenth_mm / 10


def test_cheeks_reach_from_the_return_to_the_opening() -> None:
    """Width: opening edge + t; z0..z1."""
    boxes = {panel.role: ranges(panel.box) for panel in frame_of(example_c()).panels}

    assert ((-120, 2205), (1340, 6790)) == (boxes[PanelRole.FACE_CHEEK_LEFT][0], boxes[PanelRole.FACE_CHEEK_LEFT][2])
    assert ((9905, 13430), (1340, 6790)) == (boxes[PanelRole.FACE_CHEEK_RIGHT][0], boxes[PanelRole.FACE_CHEEK_RIGHT][2])


@pytest.mark.parametrize(
    ("request_", "roles"),
    [
        (example_a(), {"return_base_left", "return_upper_left", "return_base_right", "return_upper_right"}),
        (example_b(), {"return_left", "return_base_right", "return_upper_right"}),
        (changed(example_b(), {f"{BRIEF}/open_ends": "left"}), {"return_base_left", "return_upper_left", "return_right"}),
        (example_c(), {"return_left", "return_right"}),
        (changed(example_a(), FLOOR), {"return_upper_left", "return_upper_right"}),
    ],
)
def test_returns(request_: Request, roles: set[str]) -> None:
    """Closed end: floor to top; open end: below and above the glass, nothing below it on the floor."""
    assert roles == {panel.role.value for panel in frame_of(request_).panels if panel.role.value.startswith("return")}


@pytest.mark.parametrize(
    ("low_end", "expected"),
    [
        ("right", {"face_base": 9, "return_right": 9}),
        ("left", {"face_base": 9, "return_left": 9}),
        ("front", {"face_base": 9, "return_left": 9, "return_right": 9}),
        ("unknown", {"face_base": 9, "return_left": 9, "return_right": 9}),
    ],
)
def test_boards_that_reach_the_floor_grow_by_its_fall(low_end: str, expected: dict[str, float]) -> None:
    """Every panel that reaches the floor at a low spot grows by the fall at its low edge and is cut tapered."""
    assert expected == tapers(changed(example_c(), {**FALLING, "/survey/floor/low_end": low_end}))


def test_cheeks_on_the_floor_grow_by_the_fall_under_them() -> None:
    """C0: the left cheek ends at x 220.5 of 1331, where the floor lies 9 x 220.5/1331 = 1.5 lower."""
    expected = {"face_cheek_left": 1.5, "face_cheek_right": 9, "return_right": 9}

    assert expected == tapers(changed(example_c(), {**FALLING, **FLOOR}))


def test_the_box_of_a_tapered_board_ends_at_the_highest_floor() -> None:
    base = next(panel for panel in frame_of(changed(example_c(), FALLING)).panels if panel.role is PanelRole.FACE_BASE)

    assert (0, 1340, 1430, 143) == (base.box.z0_tenth_mm, base.box.z1_tenth_mm, base.height_tenth_mm, base.cut_height_mm)


@pytest.mark.parametrize(("platform_mm", "base"), [(0, []), (27, ["P-FB1"]), (60, ["P-FB1"])])
def test_a_face_below_the_fire(platform_mm: float, base: list[str]) -> None:
    frame = frame_of(changed(example_c(), {f"{BRIEF}/platform_height_mm": platform_mm}))

    assert base == [panel.mark for panel in frame.panels if panel.role is PanelRole.FACE_BASE]


def test_a_wide_face_is_joined_on_studs() -> None:
    """2700 wide: base on a station, face over the fire on a stud that runs through, each leftmost."""
    wide = changed(
        example_c(), {f"{BRIEF}/breast_width_mm": 2700, f"{BRIEF}/appliance_shift_mm": 0, f"{BRIEF}/top": {"kind": "ceiling"}}
    )
    frame = frame_of(wide)
    stations = [station.x_tenth_mm / 10 + 19 for station in frame.stations]
    studs = [member.box.x0_tenth_mm / 10 + 19 for member in frame.members if member.role == "front_stud"]

    assert ([], [stations[1]]) == joints(wide, PanelRole.FACE_BASE)
    upright, beside = joints(wide, PanelRole.FACE_UPPER)
    assert upright == []
    assert set(beside) <= set(studs)
    assert 2 == len(beside)  # 2700 x 1761 in strips of 1220


@pytest.mark.parametrize(("z0_mm", "columns"), [(60, 1), (24, 1)])
def test_a_wide_face_before_a_flat_frame_or_a_pad_is_joined_too(z0_mm: float, columns: int) -> None:
    """A pack and the rail over it, or the solid pad, lie behind the joint."""
    wide = changed(
        example_c(),
        {
            f"{BRIEF}/breast_width_mm": 2700,
            f"{BRIEF}/appliance_shift_mm": 0,
            f"{BRIEF}/top": {"kind": "ceiling"},
            f"{BRIEF}/platform_height_mm": z0_mm,
        },
    )

    assert columns == len(joints(wide, PanelRole.FACE_BASE)[1])


def test_between_sill_and_head_a_joint_stands_in_line_with_a_cripple() -> None:
    """A screen as high as a sheet is wide: sill to head 1248 over 1220; the border round the hole lies on the two rails."""
    large = changed(
        example_c(),
        {
            f"{BRIEF}/screen": {"kind": "catalogue", "model": "SC-085"},
            f"{BRIEF}/breast_width_mm": 2300,
            f"{BRIEF}/top": {"kind": "ceiling"},
            f"{BRIEF}/appliance_shift_mm": 0,
            f"{BRIEF}/breast_depth_mm": 350,
        },
    )
    frame = frame_of(large)
    recess = next(opening for opening in frame.openings if opening.kind == "recess")
    strips = [panel for panel in frame.panels if panel.role is PanelRole.FACE_UPPER]
    pierced = [panel for panel in strips if panel.cut_outs]

    assert 2 == len(pierced)
    inside = pierced[1].box.x0_tenth_mm
    assert recess.x0_tenth_mm < inside < recess.x1_tenth_mm
    cripples = [member.box.x0_tenth_mm + 190 for member in frame.members if member.role == "cripple_below"]
    assert inside in cripples
    left, right = pierced[0].cut_outs[0], pierced[1].cut_outs[0]
    assert left.width_tenth_mm + right.width_tenth_mm == (1894 + 100) * 10
    assert pierced[0].width_tenth_mm == left.x_tenth_mm + left.width_tenth_mm  # the hole runs on into the next piece
    assert 0 == right.x_tenth_mm


def test_thin_timber_carries_no_joint() -> None:
    """Both sides of every joint >= 19 of timber (section 7): 37.9 is too narrow, 38 is not."""
    high = {f"{BRIEF}/platform_height_mm": 200, f"{BRIEF}/screen": None}

    def made(b_mm: float) -> tuple[list[float], list[float]]:
        return joints(changed(example_a(), {**high, f"{BRIEF}/timber": timber(b_mm, 89)}), PanelRole.FACE_UPPER)

    assert made(38) != ([], [])
    with pytest.raises(UnbuildableError, match="the face upper of"):
        made(37.9)


def test_a_cheek_too_large_for_its_sheet_is_joined_on_its_stud() -> None:
    """Cement board 1200 x 800 before a cheek 885 wide and 910 high: its stud carries the joint."""
    fire = {
        "kind": "custom",
        "name": "high",
        "open_ends_count": 0,
        "body_width_mm": 500,
        "body_height_mm": 850,
        "body_depth_mm": 200,
        "mass_kg": 30,
        "heat_output_w": 900,
        "connection": "plug",
        "outlet_position": "front_bottom",
    }
    request = changed(
        example_c(),
        {
            f"{BRIEF}/appliance": fire,
            f"{BRIEF}/board": {"kind": "catalogue", "code": "BD-2312N"},
            f"{BRIEF}/breast_width_mm": 2300,
            f"{BRIEF}/appliance_shift_mm": 0,
            f"{BRIEF}/top/height_mm": 1500,
        },
    )
    left = joints(request, PanelRole.FACE_CHEEK_LEFT)[1]
    studs = [member.box.x0_tenth_mm / 10 + 19 for member in frame_of(request).members if member.role == "cheek_stud"]

    assert 1 == len(left)
    assert left[0] in studs


def test_only_boards_at_the_ceiling_wait_for_it() -> None:
    """Section 2.2: face and returns that reach the ceiling, only the strip with that edge; full height only."""
    frame = frame_of(example_b())
    top = frame.levels.finished_top_tenth_mm

    assert {panel.mark for panel in frame.panels if panel.box.z1_tenth_mm == top} == {
        panel.mark for panel in frame.panels if panel.cut_when is CutWhen.AFTER_MEASURE
    }
    assert {CutWhen.NOW} == {panel.cut_when for panel in frame_of(example_c()).panels}


def test_boards_that_are_not_divided_have_no_joint() -> None:
    whole = {"lid", "pad", "lining", "backboard"}
    panels = [*frame_of(changed(example_c(), {f"{BRIEF}/platform_height_mm": 27})).panels, *frame_of(example_a()).panels]

    assert {(False, False)} == {(one.joint_below, one.joint_left) for one in panels if one.layer.value in whole}


def test_a_lid_longer_than_its_sheet_is_refused() -> None:
    """An unsplittable panel exceeds what can be bought: code sheet."""
    with pytest.raises(UnbuildableError, match="the lid of 2500 x 310"):
        frame_of(changed(example_c(), {f"{BRIEF}/breast_width_mm": 2500}))
