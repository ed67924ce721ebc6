"""Framing.md, section 11: the joint finder. Worked joints of A and B: test_worked_examples.py."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from service.brief import Board
from service.frame.joints import Column, Wanted, divide
from service.rules import load_rules
from service.units import tenths

if TYPE_CHECKING:
    from service.frame.joints import Strip

RULES = load_rules()
BOARD = Board(
    code="", board_kind="mdf", description="", thickness_tenth_mm=150, sheet_length_tenth_mm=24_400, sheet_width_tenth_mm=12_200,
    mass_kg_m2=11.0, edge="square", stud_pitch_tenth_mm=6_000,
)  # fmt: skip


def wanted(
    width_mm: float,
    high_mm: float,
    low_mm: float = 0,
    *,
    heights: tuple[float, ...] = (),
    corners: tuple[float, ...] = (),
    columns: tuple[Column, ...] = (),
    grow: int = 0,
) -> Wanted:
    """A board before it is divided, its left edge at 0; heights and corners in mm."""
    return Wanted(
        low_tenth_mm=tenths(low_mm),
        high_tenth_mm=tenths(high_mm),
        left_tenth_mm=0,
        right_tenth_mm=tenths(width_mm),
        grow_low_tenth_mm=grow,
        heights_tenth_mm=tuple(tenths(level) for level in heights),
        columns=columns,
        corners_tenth_mm=tuple(tenths(level) for level in corners),
    )


def studs(*centres_mm: float, foot_mm: float = 0, head_mm: float = 3_000) -> tuple[Column, ...]:
    """Studs that run from a level to another."""
    return tuple(
        Column(centre_tenth_mm=tenths(centre), foot_tenth_mm=tenths(foot_mm), head_tenth_mm=tenths(head_mm))
        for centre in centres_mm
    )


def levels(strips: tuple[Strip, ...]) -> list[float]:
    """Heights of the joints in mm."""
    return sorted({strip.low_tenth_mm / 10 for strip in strips if strip.joint_below})


def lefts(strips: tuple[Strip, ...]) -> list[float]:
    """Places of the vertical joints in mm."""
    return sorted({strip.left_tenth_mm / 10 for strip in strips if strip.joint_left})


@pytest.mark.parametrize(("width_mm", "high_mm"), [(2440, 1220), (1220, 2440), (2440.4, 1220.4), (1357, 916)])
def test_a_board_that_its_sheet_gives_is_whole(width_mm: float, high_mm: float) -> None:
    """Either way round; sizes are those that are cut, in whole mm."""
    (strip,) = divide(wanted(width_mm, high_mm, heights=(500,)), BOARD, RULES)

    assert (False, False) == (strip.joint_below, strip.joint_left)


@pytest.mark.parametrize(("width_mm", "high_mm"), [(2440.5, 1220), (1220.5, 1220.5), (2441, 900)])
def test_a_board_without_timber_for_a_joint_stays_whole_and_too_large(width_mm: float, high_mm: float) -> None:
    assert 1 == len(divide(wanted(width_mm, high_mm), BOARD, RULES))


def test_the_fewest_strips() -> None:
    """Take the smallest number of strips whose pieces fit the sheet."""
    strips = divide(wanted(1500, 2300, heights=(300, 600, 900, 1150, 1600, 2000)), BOARD, RULES)

    assert [1150] == levels(strips)
    assert [0, 11_500] == [strip.low_tenth_mm for strip in strips]


def test_three_strips_where_two_do_not_fit() -> None:
    strips = divide(wanted(1500, 3000, heights=(900, 1000, 2000, 2100)), BOARD, RULES)

    assert [1000, 2100] == levels(strips)  # among equals the highest joints, from the top down


def test_joints_keep_away_from_the_corners_of_openings() -> None:
    """Among equals keep joints away from opening corners by >= 100."""
    heights = (1000, 1100, 1190)

    assert [1190] == levels(divide(wanted(1500, 2300, heights=heights), BOARD, RULES))
    assert [1100] == levels(divide(wanted(1500, 2300, heights=heights, corners=(1250,)), BOARD, RULES))
    assert [1190] == levels(divide(wanted(1500, 2300, heights=heights, corners=(1290,)), BOARD, RULES))


def test_a_joint_at_a_corner_is_better_than_none() -> None:
    assert [1190] == levels(divide(wanted(1500, 2300, heights=(1190,), corners=(1200,)), BOARD, RULES))


def test_thin_strips_are_refused_if_there_is_another_choice() -> None:
    """A strip < 100 high is refused if another choice exists."""
    sheet = wanted(400, 2520, heights=(400, 2421))

    assert [400] == levels(divide(sheet, BOARD, RULES))
    assert [2421] == levels(divide(wanted(400, 2520, heights=(2421,)), BOARD, RULES))


def test_no_piece_longer_than_two_metres_if_there_is_a_choice() -> None:
    """Still equal: the highest joint that leaves no piece longer than 2000: example B, closed return 2620 high."""
    heights = (297.5, 605, 912.5, 1294.5, 1694.5, 2128.5, 2562.5)
    b = wanted(395.5, 2620, heights=heights, corners=(250, 865, 1045, 1944))

    assert [1694.5] == levels(divide(b, BOARD, RULES))


def test_vertical_joints_stand_on_studs_that_run_the_whole_strip() -> None:
    sheet = wanted(3000, 1000, columns=studs(700, 1300, 2600) + studs(1500, head_mm=900))

    assert [700] == lefts(divide(sheet, BOARD, RULES))  # leftmost that leaves both pieces within 2440


def test_two_vertical_joints() -> None:
    sheet = wanted(3000, 2000, columns=studs(600, 1200, 1800, 2400))

    assert [600, 1800] == lefts(divide(sheet, BOARD, RULES))  # 600 + 1200 + 1200


def test_a_narrow_piece_is_left_only_without_a_choice() -> None:
    """Pieces under 100 wide, like strips under 100 high."""
    assert [1200] == lefts(divide(wanted(2480, 1000, columns=studs(60, 1200)), BOARD, RULES))
    assert [60] == lefts(divide(wanted(2480, 1000, columns=studs(60)), BOARD, RULES))


def test_strips_may_have_joints_of_their_own() -> None:
    """A wide face: one strip whole, the other in two."""
    strips = divide(wanted(2400, 2000, heights=(600,), columns=studs(1200, foot_mm=600)), BOARD, RULES)

    assert [600] == levels(strips)
    assert [(0, 24_000), (0, 12_000), (12_000, 24_000)] == [(strip.left_tenth_mm, strip.right_tenth_mm) for strip in strips]


def test_cut_sizes_of_a_stack_add_up() -> None:
    """Section 2.1: round the edge once and take differences: 1966.5 - 865 = 1101.5 -> 1102, the rest 653."""
    strips = divide(wanted(1646, 2620, low_mm=865, heights=(1966.5,)), BOARD, RULES)

    assert [1102, 653] == [strip.cut_height_mm for strip in strips]
    assert 1755 == sum(strip.cut_height_mm for strip in strips)


def test_the_lowest_strip_grows_with_the_floor() -> None:
    strips = divide(wanted(1500, 2000, heights=(1000,), grow=95), BOARD, RULES)

    assert [95, 0] == [strip.grow_tenth_mm for strip in strips]
    assert [1010, 1000] == [strip.cut_height_mm for strip in strips]  # 1009.5 rounded, then 2009.5 less it
    assert 2010 == sum(strip.cut_height_mm for strip in strips)


def test_a_strip_that_grows_beyond_its_sheet_is_divided() -> None:
    whole = wanted(1500, 1215, heights=(600,))

    assert [] == levels(divide(whole, BOARD, RULES))
    assert [600] == levels(divide(wanted(1500, 1215, heights=(600,), grow=60), BOARD, RULES))


def test_a_joint_that_rounds_a_piece_beyond_its_sheet_is_not_taken() -> None:
    """The piece above 1000.4 would be cut 1221: 2220.5 -> 2221 less 1000."""
    assert [1001] == levels(divide(wanted(1500, 2220.5, heights=(1000.4, 1001)), BOARD, RULES))
    only = divide(wanted(1500, 2220.5, heights=(1000.4,)), BOARD, RULES)
    assert 1 == len(only)
