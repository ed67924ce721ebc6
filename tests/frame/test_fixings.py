"""Framing.md, section 10.1, and materials.md, section 1: the pattern of fixings. Rows of A, B, C: test_worked_examples.py."""

from __future__ import annotations

import math
from collections import Counter
from itertools import combinations

import pytest

from service.frame import Additions, Role
from service.frame.fixings import shared_levels
from tests.examples_of import Request, changed, example_a, example_b, example_c, frame_of
from tests.frame.settings_of import BRIEF

WALL, CEILING = "/survey/wall", "/survey/ceiling"


def rows(request: Request, additions: Additions | None = None, *, counted: bool = True) -> dict[float, int]:
    """How many wall fixings lie at each level, in mm."""
    frame = frame_of(request, additions)
    return dict(Counter(one.z_tenth_mm / 10 for one in frame.wall_fixings if one.counted is counted))


@pytest.mark.parametrize(
    ("levels_mm", "count", "foot_mm", "shared_mm"),
    [
        ((939, 1111, 2486), 2, None, (1569.3, 2027.7)),  # example A
        ((887.5, 1022.5, 2587.5), 2, None, (1544.2, 2065.8)),  # example B, open ladder
        ((887.5, 1022.5, 2587.5), 3, 250, (568.8, 1544.2, 2065.8)),  # example B, closed ladder
        ((698, 850, 1143), 1, 134, (416,)),  # example C
        ((698, 850, 1143), 0, 134, ()),
        ((698, 850, 1143), -2, 134, ()),
        ((700,), 3, None, ()),
        ((1000, 2000), 1, None, (1500,)),
        ((1000, 2000), 4, None, (1200, 1400, 1600, 1800)),
    ],
)
def test_what_is_left_goes_into_the_longest_stretch(
    levels_mm: tuple[float, ...], count: int, foot_mm: float | None, shared_mm: tuple[float, ...]
) -> None:
    """One by one into the longest stretch left, always shared out equally; from the foot at a closed end."""
    foot = None if foot_mm is None else round(foot_mm * 10)

    assert shared_mm == tuple(level / 10 for level in shared_levels([round(level * 10) for level in levels_mm], count, foot))


@pytest.mark.parametrize(("wall_mm", "rail"), [(1355, 2), (1300, 1), (1301, 2), (1900, 2), (1901, 3)])
def test_fixings_of_a_rear_rail(wall_mm: float, rail: int) -> None:
    """ceil(Lr/600) - 1 for each rear rail: Lr = W - 24 - 76."""
    frame = frame_of(changed(example_c(), {f"{BRIEF}/breast_width_mm": wall_mm, f"{BRIEF}/appliance_shift_mm": 0}))
    by_member = Counter(one.through for one in frame.wall_fixings)
    rails = [
        member.mark for member in frame.members if member.role in {Role.REAR_BOTTOM_RAIL, Role.REAR_MID_RAIL, Role.TOP_RAIL_REAR}
    ]

    assert [rail] * 3 == [by_member[mark] for mark in rails]


def test_fixings_of_a_rail_share_its_length() -> None:
    """Example A, Lr 1251: two, at the thirds."""
    (mark,) = [member.mark for member in frame_of(example_a()).members if member.role is Role.REAR_MID_RAIL]
    places = [one.x_tenth_mm for one in frame_of(example_a()).wall_fixings if one.through == mark]

    assert [380 + 4170, 380 + 8340] == places


def test_fixings_of_an_upright() -> None:
    """ceil(length/500) + 1, in the middle of it: A 1585: 5; B 2360: 6 and 1745: 5; C 1028: 4."""
    for request, expected in ((example_a(), [5, 5]), (example_b(), [6, 5]), (example_c(), [4, 4])):
        frame = frame_of(request)
        uprights = [member for member in frame.members if member.role is Role.LADDER_UPRIGHT and member.box.y0_tenth_mm == 0]
        assert expected == [sum(one.through == member.mark for one in frame.wall_fixings) for member in uprights]
        middles = {(member.box.x0_tenth_mm + member.box.x1_tenth_mm) // 2 for member in uprights}
        marks = {member.mark for member in uprights}
        assert middles == {one.x_tenth_mm for one in frame.wall_fixings if one.through in marks}


def test_a_row_near_the_ceiling_counts_only_after_a_scan() -> None:
    """Services.md, section 3: within 150 of the ceiling only if scanned. A: H 2515, top row at 2486."""
    blind = changed(example_a(), {"/survey/services/cable_scan": "not_done"})

    assert {2486: 4} == rows(blind, counted=False)
    assert {} == rows(example_a(), counted=False)
    assert {} == rows(example_c(), counted=False)  # part height, not scanned


@pytest.mark.parametrize(("height_mm", "spare_counts"), [(1903, True), (2515, True)])
def test_spare_fixings_of_an_upright_keep_out_of_the_zone_too(*, height_mm: float, spare_counts: bool) -> None:
    heights = [{**point, "height_mm": height_mm} for point in example_a()["survey"]["room"]["heights"]]
    blind = changed(example_a(), {"/survey/services/cable_scan": "not_done", "/survey/room/heights": heights})
    strip = height_mm - 150

    assert spare_counts is all(level <= strip for level in rows(blind))
    assert all(level > strip for level in rows(blind, counted=False))


def test_an_extra_rear_rail_takes_over_the_row() -> None:
    """Section 10.3; B after checks: rows 887.5 (4), 1022.5 (4), 1497.5 (2), 1972.5 (2), 2447.5 (4), one at 568.75: 17."""
    added = Additions(extra_rear_rails_tenth_mm=(24250,))

    assert {568.8: 1, 887.5: 4, 1022.5: 4, 1497.5: 2, 1972.5: 2, 2447.5: 4} == rows(example_b(), added)
    assert {} == rows(example_b(), added, counted=False)


def with_studs(*studs_mm: float, kind: str = "timber_stud") -> Request:
    """Example C before a stud wall; studs by their place in the frame."""
    return changed(example_c(), {f"{WALL}/construction": kind, f"{WALL}/stud_positions_mm": [1334.5 + stud for stud in studs_mm]})


def test_studs_replace_the_pitch() -> None:
    """Stud walls: the real stud positions replace these pitches; an upright beside a stud gets none."""
    frame = frame_of(with_studs(-100, 19, 419, 819, 1219))

    assert {19, 419, 819, 1219} == {one.x_tenth_mm / 10 for one in frame.wall_fixings if one.counted}
    uprights = [member.mark for member in frame.members if member.role is Role.LADDER_UPRIGHT and member.box.y0_tenth_mm == 0]
    held = {mark: sum(one.through == mark for one in frame.wall_fixings) for mark in uprights}
    assert [4, 0] == [held[mark] for mark in uprights]


def test_studs_that_were_not_found_count_nothing() -> None:
    frame = frame_of(changed(example_c(), {f"{WALL}/construction": "timber_stud"}))

    assert 14 == len(frame.wall_fixings)  # laid out at the pitch, for the bill
    assert not any(one.counted for one in frame.wall_fixings)


def test_an_unknown_wall_is_counted_at_the_pitch() -> None:
    """Survey.md, section 4: unknown: fixings are counted at the laid-out pitch for the bill."""
    assert {416: 2, 698: 4, 850: 4, 1143: 4} == rows(changed(example_c(), {f"{WALL}/construction": "unknown"}))


@pytest.mark.parametrize(
    ("joists_mm", "screws"),
    [([38], 2), ([37.9], 0), ([1289], 2), ([1289.1], 0), ([400, 800], 4), ([], 0)],
)
def test_joists_that_the_top_rails_really_cross(joists_mm: list[float], screws: int) -> None:
    """Joists really crossed x 2 rows, one screw each; example A: rails from 38 to 1289, left end of the frame at 1286.5."""
    request = changed(example_a(), {f"{CEILING}/joist_positions_mm": [1286.5 + joist for joist in joists_mm]})

    assert screws == len(frame_of(request).ceiling_screws)


@pytest.mark.parametrize(("noggins", "screws", "to_fit"), [("none", 0, 0), ("to_be_fitted", 8, 4), ("fitted", 8, 0)])
def test_noggins_between_joists_along_the_wall(noggins: str, screws: int, to_fit: int) -> None:
    """along_wall or unknown = 0 unless noggins are fitted: one per 600 of the rail and one (house choice): 1531 -> 4."""
    frame = frame_of(changed(example_b(), {f"{CEILING}/noggins": noggins}))

    assert (screws, to_fit) == (len(frame.ceiling_screws), frame.joist_noggin_count)
    part = frame_of(changed(example_c(), {f"{CEILING}/joists": "along_wall", f"{CEILING}/noggins": noggins}))
    assert ((), 0) == (part.ceiling_screws, part.joist_noggin_count)


def test_nothing_is_screwed_into_a_ceiling_that_holds_none() -> None:
    frame = frame_of(changed(example_b(), {f"{CEILING}/noggins": "to_be_fitted", f"{CEILING}/kind": "suspended_grid"}))

    assert ((), 0) == (frame.ceiling_screws, frame.joist_noggin_count)


@pytest.mark.parametrize("upstand_mm", [120, 160, 210])
def test_fixings_keep_a_hundred_apart(upstand_mm: float) -> None:
    """`knowledge/fixings.md`, 2.3: spacing 100 or more, also where two rear rails lie close to each other."""
    request = changed(example_a(), {"/survey/brief/sill_above_appliance_mm": upstand_mm})
    places = [(one.x_tenth_mm, one.z_tenth_mm) for one in frame_of(request).wall_fixings]

    assert 1_000 <= min(math.dist(first, second) for first, second in combinations(places, 2))
