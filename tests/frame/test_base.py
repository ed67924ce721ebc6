"""Framing.md, section 3: the base frame by platform height. Stations and members of the examples: test_worked_examples.py."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise
from typing import TYPE_CHECKING

import pytest

from service.frame import Axis, EndJoint, Role
from service.frame.base import fall_at, fall_under, is_normal, lay_base, stations
from service.rules import load_rules
from tests.examples_of import Request, changed, example_a, example_c, job_of
from tests.frame.geometry import ranges
from tests.frame.settings_of import BRIEF, of_role, setting_of, timber

if TYPE_CHECKING:
    from service.brief import Job

C = example_c()  # 38 x 63, Wf 1331, Df 288, m 400


def at_height(z0_mm: float, **brief: object) -> Request:
    """Example C on another platform."""
    return changed(C, {f"{BRIEF}/platform_height_mm": z0_mm, **{f"{BRIEF}/{name}": value for name, value in brief.items()}})


def roles(request: Request) -> dict[Role, int]:
    """Members of the base by role."""
    return dict(Counter(place.role for place in lay_base(setting_of(request), job_of(request), load_rules())))


@pytest.mark.parametrize(
    ("z0_mm", "expected"),
    [
        (0, {}),
        (12, {}),
        (36, {}),
        (38, {Role.RAIL: 2, Role.CROSS_NOGGIN: 5}),
        (38.1, {Role.RAIL: 2, Role.CROSS_NOGGIN: 5, Role.PACK: 10}),
        (105.9, {Role.RAIL: 2, Role.CROSS_NOGGIN: 5, Role.PACK: 10}),
        (106, {Role.RAIL: 4, Role.UPRIGHT: 10, Role.CROSS_NOGGIN: 5}),
        (165.9, {Role.RAIL: 4, Role.UPRIGHT: 10, Role.CROSS_NOGGIN: 5}),
        (166, {Role.RAIL: 4, Role.UPRIGHT: 10, Role.CROSS_NOGGIN: 10}),
    ],
)
def test_forms(z0_mm: float, expected: dict[Role, int]) -> None:
    """0: none; < b: pad (a panel); b..2b+30: flat frame on packs; from 2b+30 = 106 normal; bottom noggins from 2d+40 = 166."""
    assert expected == roles(at_height(z0_mm))
    assert (z0_mm >= 106) is is_normal(setting_of(at_height(z0_mm)), load_rules())


def test_no_station_is_wider_than_the_board_allows() -> None:
    """K = ceil((Wf - b)/m) + 1 stations at i (Wf - b)/(k - 1)."""
    for width_mm in (1355, 1240, 1241, 2455):
        request = changed(C, {f"{BRIEF}/breast_width_mm": width_mm, f"{BRIEF}/appliance_shift_mm": 0})
        at = setting_of(request)
        lefts = [station.x_tenth_mm for station in stations(at, job_of(request))]
        pitches = [second - first for first, second in pairwise(lefts)]
        assert (0, at.wf - at.b) == (lefts[0], lefts[-1])
        assert max(pitches) <= at.m
        assert max(pitches) - min(pitches) <= 1
        assert -(-(at.wf - at.b) // at.m) == len(pitches)


@pytest.mark.parametrize(
    ("low_end", "falls"), [("right", (0, 45, 90)), ("left", (90, 45, 0)), ("front", (90, 90, 90)), ("unknown", (90, 90, 90))]
)
def test_fall_along_the_width(low_end: str, falls: tuple[int, ...]) -> None:
    job = falling(low_end)

    assert falls == tuple(fall_at(x, 10_000, job) for x in (0, 5_000, 10_000))
    assert falls[0] == fall_under((0, 0), 10_000, job)
    assert max(falls) == fall_under((0, 10_000), 10_000, job)


def falling(low_end: str) -> Job:
    """Example C on a floor that falls by 9."""
    return job_of(changed(C, {"/survey/floor/fall_mm": 9, "/survey/floor/low_end": low_end}))


def test_rails_run_through_and_uprights_stand_between() -> None:
    places = lay_base(setting_of(C), job_of(C), load_rules())

    assert {(EndJoint.NONE, EndJoint.NONE)} == {(rail.start, rail.end) for rail in of_role(places, Role.RAIL)}
    levels = sorted({ranges(rail.box)[2] for rail in of_role(places, Role.RAIL)})
    assert [(0, 380), (960, 1340)] == levels
    assert {(380, 960)} == {ranges(upright.box)[2] for upright in of_role(places, Role.UPRIGHT)}
    assert {Axis.Y} == {place.along for place in of_role(places, Role.CROSS_NOGGIN)}


@pytest.mark.parametrize(("z0_mm", "levels"), [(134, {(710, 1340)}), (200, {(1370, 2000), (0, 630)})])
def test_noggins_on_edge(z0_mm: float, levels: set[tuple[int, int]]) -> None:
    """Top z0-d..z0, bottom 0..d."""
    places = lay_base(setting_of(at_height(z0_mm)), job_of(at_height(z0_mm)), load_rules())

    assert levels == {ranges(place.box)[2] for place in of_role(places, Role.CROSS_NOGGIN)}


def test_a_top_noggin_taller_than_the_platform_lies_flat() -> None:
    """If z0 < d lay the top noggin flat: 38 x 140 on a platform of 110."""
    request = at_height(110, timber=timber(38, 140), breast_depth_mm=400)
    noggins = of_role(lay_base(setting_of(request), job_of(request), load_rules()), Role.CROSS_NOGGIN)
    boxes = [ranges(place.box) for place in noggins]

    assert {(720, 1100)} == {z for _x, _y, z in boxes}
    assert {1400} == {x[1] - x[0] for x, _y, _z in boxes}
    assert (0, setting_of(request).wf) == (boxes[0][0][0], boxes[-1][0][1])  # inside the frame at both ends
    assert 5 == len(boxes)


@pytest.mark.parametrize(("width_mm", "lefts"), [(724, [0, 450]), (854, [0, 290, 580])])
def test_flat_noggins_that_would_overlap_are_left_out(width_mm: float, lefts: list[float]) -> None:
    """50 x 250 flat on three stations: the outer two stay, the one between only where it has room."""
    request = changed(
        at_height(60, timber=timber(50, 250), breast_depth_mm=600, breast_width_mm=width_mm, sill_above_appliance_mm=200),
        {
            f"{BRIEF}/appliance": {"kind": "size_class", "open_ends_count": 0, "length_mm": 500},
            f"{BRIEF}/appliance_shift_mm": 0,
            f"{BRIEF}/top": {"kind": "ceiling"},
        },
    )
    at = setting_of(request)
    noggins = of_role(lay_base(at, job_of(request), load_rules()), Role.CROSS_NOGGIN)

    assert 3 == len(stations(at, job_of(request)))
    assert lefts == [place.box.x0_tenth_mm / 10 for place in noggins]


def test_without_room_between_the_rails_there_are_no_noggins() -> None:
    """N = 0: front and rear rail touch (framing.md, section 13: n < 30 and n != 0)."""
    request = changed(example_a(), {f"{BRIEF}/timber": timber(38, 200), f"{BRIEF}/breast_depth_mm": 415})

    assert 0 == setting_of(request).n
    assert Role.CROSS_NOGGIN not in roles(request)
    flat = changed(request, {f"{BRIEF}/platform_height_mm": 60})
    assert Role.CROSS_NOGGIN not in roles(flat)


def test_packs_carry_the_flat_frame_at_every_station() -> None:
    request = at_height(60)
    places = lay_base(setting_of(request), job_of(request), load_rules())
    packs = of_role(places, Role.PACK)

    assert {(0, 220)} == {ranges(pack.box)[2] for pack in packs}
    assert sorted({station.x_tenth_mm for station in stations(setting_of(request), job_of(request))}) == sorted(
        {pack.box.x0_tenth_mm for pack in packs}
    )
    assert not any(pack.from_bar for pack in packs)
