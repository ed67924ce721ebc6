"""Framing.md, section 4.1: levels of ladder noggins, and what happens where two would meet."""

from __future__ import annotations

import msgspec
import pytest

from service.frame import CutWhen, EndJoint, Role
from service.frame.ladders import lay_ladders, noggin_levels
from service.rules import load_rules
from tests.examples_of import Request, changed, example_a, example_b, example_c
from tests.frame.geometry import ranges
from tests.frame.settings_of import BRIEF, of_role, setting_of, timber

RULES = load_rules()


def levels(request: Request, *, left: bool = True) -> list[tuple[float, float, bool]]:
    """From, to, flat of the noggins of one ladder, in mm."""
    found = noggin_levels(setting_of(request), RULES, left=left)
    return [(level.low_tenth_mm / 10, level.high_tenth_mm / 10, level.flat) for level in found]


def test_uprights_stand_where_their_end_is_closed() -> None:
    places = of_role(lay_ladders(setting_of(example_b()), RULES), Role.LADDER_UPRIGHT)

    assert [2500, 2500, 8650, 8650] == [place.box.z0_tenth_mm for place in places]
    assert {26100} == {place.box.z1_tenth_mm for place in places}
    assert {CutWhen.AFTER_MEASURE} == {place.cut_when for place in places}
    assert {(EndJoint.NONE, EndJoint.NONE)} == {(place.start, place.end) for place in places}


def test_rows_get_their_noggins() -> None:
    """Each hole row - d/2: example A 1373.5 and 1573.5 less 44.5."""
    assert [(1329, 1418, False), (1529, 1618, False)] == levels(example_a())[1:3]


def test_a_ply_gets_a_seat_in_a_closed_ladder() -> None:
    """z1 at a closed end when p > 0: example C with one ply has 134, 679, 1099 (worked-examples.md, C, after checks)."""
    at = setting_of(example_c(), ply_count=1)

    assert [134, 679, 1099] == [level.low_tenth_mm / 10 for level in noggin_levels(at, RULES, left=True)]


@pytest.mark.parametrize(("gap_mm", "count"), [(599.9, 0), (600, 0), (600.1, 1), (1200, 1), (1200.1, 2)])
def test_no_two_noggins_further_apart_than_600(gap_mm: float, count: int) -> None:
    """Between neighbours whose undersides differ by more than 600 insert ceil(diff/600) - 1 equally spaced ones."""
    at = setting_of(example_c())
    taller = msgspec.structs.replace(at, z2=at.z0 + at.d + round(gap_mm * 10))

    assert count + 2 == len(noggin_levels(taller, RULES, left=True))


def test_halves_of_equal_spacing_are_rounded_up() -> None:
    """Example B, closed ladder: 557.5 lies half way; with three gaps the tenths are rounded half up."""
    at = setting_of(example_c())
    taller = msgspec.structs.replace(at, z2=at.z0 + at.d + 16_000)

    assert [1340, 6673, 12007, 17340] == [level.low_tenth_mm for level in noggin_levels(taller, RULES, left=True)]


def test_a_noggin_at_the_top_that_meets_a_row_lies_flat() -> None:
    """Two levels closer than d collide: the row stays, the other one moves: it is laid flat under the top."""
    at = setting_of(example_a())
    assert at.recess is not None
    low = msgspec.structs.replace(at.recess, row_levels_tenth_mm=(13_735, at.z2 - 1_000))

    found = noggin_levels(msgspec.structs.replace(at, recess=low), RULES, left=True)

    assert (at.z2 - 380, at.z2, True) == (found[-1].low_tenth_mm, found[-1].high_tenth_mm, found[-1].flat)
    assert at.z2 - 1_000 - 445 == found[-2].low_tenth_mm


def test_a_low_upper_frame_has_a_flat_noggin_on_top() -> None:
    """45 x 140 with 262 over the fire: two noggins on edge (280) have no room, one on edge and one flat (185) have."""
    request = changed(example_c(), {
        f"{BRIEF}/timber": timber(45, 140), f"{BRIEF}/breast_depth_mm": 400, f"{BRIEF}/top/height_mm": 134 + 545 + 262 + 18,
        f"{BRIEF}/sill_above_appliance_mm": 130, f"{BRIEF}/platform_height_mm": 134,
    })  # fmt: skip
    fire = {"kind": "size_class", "open_ends_count": 2, "length_mm": 1100}
    hung = changed(request, {f"{BRIEF}/appliance": fire, f"{BRIEF}/open_ends": "both", f"{BRIEF}/breast_width_mm": None,
                             f"{BRIEF}/appliance_shift_mm": 0, f"{BRIEF}/top/height_mm": 134 + 515 + 262 + 18})  # fmt: skip

    assert [(649, 789, False), (866, 911, True)] == levels(hung)


def test_flat_noggins_lie_inside_the_frame() -> None:
    at = setting_of(example_a())
    assert at.recess is not None
    low = msgspec.structs.replace(at.recess, row_levels_tenth_mm=(at.z2 - 1_000,))
    places = of_role(lay_ladders(msgspec.structs.replace(at, recess=low), RULES), Role.LADDER_NOGGIN)
    tops = [ranges(place.box) for place in places if place.box.z1_tenth_mm == at.z2]

    assert [(0, 890), (at.wf - 890, at.wf)] == [x for x, _y, _z in tops]
    assert {(at.d, at.df - at.d)} == {y for _x, y, _z in tops}


def test_where_front_and_rear_touch_there_are_no_noggins() -> None:
    request = changed(example_a(), {f"{BRIEF}/timber": timber(38, 200), f"{BRIEF}/breast_depth_mm": 415})

    assert [] == of_role(lay_ladders(setting_of(request), RULES), Role.LADDER_NOGGIN)


def test_a_noggin_that_has_room_neither_on_edge_nor_flat_is_left_out() -> None:
    at = setting_of(example_a())
    assert at.recess is not None
    low = msgspec.structs.replace(at.recess, row_levels_tenth_mm=(at.z2 - 500,))

    found = noggin_levels(msgspec.structs.replace(at, recess=low), RULES, left=True)

    assert (at.z2 - 500 - 445, False) == (found[-1].low_tenth_mm, found[-1].flat)
