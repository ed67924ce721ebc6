"""Framing.md, section 3: 0 < z0 < b: a solid pad of sheet plies, rest <= 6 by packers."""

from __future__ import annotations

import pytest

from service.errors import UnbuildableError
from service.frame import PanelRole
from service.frame.pads import greatest_platform, pad_heights, pad_pieces
from service.rules import load_rules
from tests.examples_of import Request, changed, example_c, frame_of, job_of
from tests.frame.geometry import ranges
from tests.frame.settings_of import BRIEF, setting_of

PLATFORM = f"{BRIEF}/platform_height_mm"
WIDE: Request = changed(example_c(), {
    f"{BRIEF}/breast_width_mm": 2700, f"{BRIEF}/appliance_shift_mm": 0, f"{BRIEF}/top": {"kind": "ceiling"}, PLATFORM: 27,
    "/survey/site/largest_board_length_mm": 2440,
})  # fmt: skip


def test_heights_that_plies_add_up_to() -> None:
    """Of 12, 15 and 18 under b = 38, each with the fewest sheets, the thickest first."""
    expected = {
        0: (), 120: (120,), 150: (150,), 180: (180,), 240: (120, 120), 270: (150, 120), 300: (180, 120), 330: (180, 150),
        360: (180, 180),
    }  # fmt: skip

    assert expected == pad_heights(job_of(example_c()))


@pytest.mark.parametrize(
    ("z0_mm", "plies", "rest_mm"),
    [(12, [12], 0), (13, [12], 1), (15, [15], 0), (23.9, [18], 5.9), (24, [12, 12], 0), (37.9, [18, 18], 1.9)],
)
def test_plies_of_a_pad(z0_mm: float, plies: list[float], rest_mm: float) -> None:
    """Laid from the rest up to the platform, Wf x Df."""
    at = setting_of(changed(example_c(), {PLATFORM: z0_mm}))
    boxes = [ranges(piece.box) for piece in pad_pieces(at, job_of(example_c()))]

    assert plies == [(z[1] - z[0]) / 10 for _x, _y, z in boxes]
    assert (rest_mm * 10, z0_mm * 10) == (boxes[0][2][0], boxes[-1][2][1])
    assert {((0, at.wf), (0, at.df))} == {(x, y) for x, y, _z in boxes}


@pytest.mark.parametrize("z0_mm", [0, 38, 134])
def test_no_pad(z0_mm: float) -> None:
    assert () == pad_pieces(setting_of(changed(example_c(), {PLATFORM: z0_mm})), job_of(example_c()))


@pytest.mark.parametrize(
    ("height_mm", "platform_mm"),
    [(1042, 1042), (38, 38), (37.9, 37.9), (24, 24), (18.1, 18.1), (12, 12), (11.9, 0), (5, 0), (0, 0)],
)
def test_greatest_platform_that_can_be_built(height_mm: float, platform_mm: float) -> None:
    """An offer must be a form of section 3: never packers alone, never between two pads."""
    found = greatest_platform(round(height_mm * 10), job_of(example_c()), load_rules())

    assert platform_mm == found / 10
    if platform_mm < 100:
        assert frame_of(changed(example_c(), {PLATFORM: platform_mm})).members


def test_a_pad_longer_than_its_sheet_is_joined_and_the_joints_staggered() -> None:
    """2676 of 2440: two sheets in the lower ply, their joint under the middle of a sheet of the upper one."""
    at = setting_of(WIDE)
    pieces = pad_pieces(at, job_of(WIDE))
    edges = {(ranges(piece.box)[2][0], *ranges(piece.box)[0]) for piece in pieces}

    assert 26_760 == at.wf
    assert {(0, 0, 13_380), (0, 13_380, 26_760), (150, 0, 6_690), (150, 6_690, 20_070), (150, 20_070, 26_760)} == edges
    assert all(piece.cut_width_mm <= 2440 for piece in pieces)
    assert [at.wf, at.wf] == [sum(piece.width_tenth_mm for piece in pieces if piece.box.z0_tenth_mm == low) for low in (0, 150)]


def test_a_deep_pad_takes_its_sheets_the_other_way() -> None:
    deep = changed(WIDE, {f"{BRIEF}/breast_depth_mm": 1300})
    widths = [piece.cut_width_mm for piece in pad_pieces(setting_of(deep), job_of(deep)) if piece.box.z0_tenth_mm == 0]

    assert [892, 892, 892] == widths  # three of 1220


def test_a_pad_deeper_than_its_sheet_is_long_cannot_be_cut() -> None:
    deep = changed(WIDE, {f"{BRIEF}/breast_depth_mm": 1300, "/survey/site/largest_board_length_mm": 1220})

    with pytest.raises(UnbuildableError, match="the pad of"):
        frame_of(deep)


def test_pads_are_panels_of_the_frame() -> None:
    frame = frame_of(changed(example_c(), {PLATFORM: 27}))
    pads = [panel for panel in frame.panels if panel.role is PanelRole.PAD]

    assert [("P-PD1", 150, 1331, 288), ("P-PD2", 120, 1331, 288)] == [
        (panel.mark, panel.thickness_tenth_mm, panel.cut_width_mm, panel.cut_height_mm) for panel in pads
    ]
