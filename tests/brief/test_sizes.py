"""Framing.md, sections 1, 2, 5 and 13; survey.md, section 10: gaps, and the sizes that the house chooses."""

from __future__ import annotations

import msgspec
import pytest

from service.brief import least_upstand
from service.catalogue import demo_catalogue
from service.survey.wishes import Finish
from tests.examples_of import Request, changed, example_a, example_b, example_c, frame_of, job_of, unmet_of, without

BRIEF = "/survey/brief"
APPLIANCE, SCREEN = f"{BRIEF}/appliance", f"{BRIEF}/screen"
FIRE: Request = {
    "kind": "custom", "name": "Own", "open_ends_count": 0, "body_width_mm": 760, "body_height_mm": 535, "body_depth_mm": 210,
    "mass_kg": 21, "heat_output_w": 1800, "connection": "plug", "outlet_position": "front_top",
}  # fmt: skip
TELEVISION: Request = {
    "kind": "custom", "name": "Own", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
    "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200,
}  # fmt: skip


def with_fire(**values: object) -> Request:
    """Example C with its own fire."""
    return changed(example_c(), {APPLIANCE: {**FIRE, **values}})


def with_screen(**values: object) -> Request:
    """Example A with its own screen."""
    return changed(example_a(), {SCREEN: {**TELEVISION, **values}})


@pytest.mark.parametrize(
    ("figures", "gaps"),
    [
        ({}, (100, 50, 500, 40)),
        ({"clear_above_mm": 25, "clear_side_mm": 12.5, "clear_rear_mm": 30, "frame_inset_mm": 6}, (250, 125, 300, 60)),
        ({"clear_above_mm": 3, "clear_side_mm": 2, "clear_rear_mm": 1, "frame_inset_mm": 1}, (30, 20, 10, 10)),
        ({"clear_above_mm": 0, "clear_side_mm": 0, "clear_rear_mm": 0, "frame_inset_mm": 0}, (100, 50, 0, 0)),
    ],
)
def test_clearances(figures: Request, gaps: tuple[int, int, int, int]) -> None:
    """Ca 10, cs 5, e 4, the maker's figure wins; a 0 over or beside would let the frame touch the fire (section 9: ca > 0)."""
    job = job_of(with_fire(**figures))

    assert gaps == (job.gap_over_tenth_mm, job.gap_beside_tenth_mm, job.rear_clearance_tenth_mm, job.inset_tenth_mm)


@pytest.mark.parametrize(
    ("screen", "brief", "gaps"),
    [
        ({}, {}, (500, 500, 500)),
        ({}, {"screen_gap_mm": 65}, (650, 650, 650)),
        ({"least_gap_mm": 70}, {}, (700, 700, 700)),
        ({"least_gap_mm": 70}, {"screen_gap_mm": 90}, (900, 900, 900)),
        ({"gap_top_mm": 80, "gap_bottom_mm": 75.5, "gap_side_mm": 20}, {}, (500, 800, 755)),
        ({}, {"hands_at": "sides"}, (600, 500, 500)),
        ({"gap_side_mm": 66}, {"hands_at": "sides"}, (660, 500, 500)),
        ({}, {"hands_at": "none", "screen_bracket": {"kind": "catalogue", "model": "BK-511"}}, (500, 500, 500)),
    ],
)
def test_gaps_round_the_screen(screen: Request, brief: Request, gaps: tuple[int, int, int]) -> None:
    """g: the larger of 50, the maker's and the wish; 60 at the two sides where hands go in."""
    own = {**TELEVISION, **screen} | ({"hole_pattern_width_mm": 400} if "screen_bracket" in brief else {})
    job = job_of(changed(example_a(), {SCREEN: own, **{f"{BRIEF}/{name}": value for name, value in brief.items()}}))

    assert gaps == (job.gaps.side_tenth_mm, job.gaps.top_tenth_mm, job.gaps.bottom_tenth_mm)


def test_a_bracket_says_where_hands_go() -> None:
    request = changed(
        with_screen(hole_pattern_width_mm=400), {f"{BRIEF}/screen_bracket": {"kind": "catalogue", "model": "BK-511"}}
    )

    assert (600, 500) == (job_of(request).gaps.side_tenth_mm, job_of(request).gaps.top_tenth_mm)


@pytest.mark.parametrize(
    ("screen", "brief", "room_mm"),
    [
        ({}, {}, 25),
        ({"connectors": "side", "straight_plug_length_mm": 45}, {}, 25),
        ({"connectors": "rear"}, {}, 60),
        ({"connectors": "rear", "straight_plug_length_mm": 45}, {}, 45),
        ({"connectors": "rear"}, {f"{BRIEF}/cable_room_mm": 30}, 30),
    ],
)
def test_room_for_plugs(screen: Request, brief: Request, room_mm: float) -> None:
    """kr: 25 plugs to the side, 60 straight plugs (viewing.md, section 5: rear connectors, their length if stated)."""
    assert room_mm * 10 == job_of(changed(with_screen(**screen), brief)).cable_room_tenth_mm


def test_without_a_screen_there_is_no_room_behind_it() -> None:
    job = job_of(example_c())

    assert (0, 0, 0) == (job.set_back_tenth_mm, job.cable_room_tenth_mm, job.gaps.side_tenth_mm)
    assert not {f"{BRIEF}/screen_gap_mm", f"{BRIEF}/cable_room_mm"} & {note.pointer for note in job.assumptions}


@pytest.mark.parametrize(
    ("board", "sent", "finish", "skim"),
    [
        ("BD-2012M", None, Finish.PAINTED, 0),
        ("BD-2125K", None, Finish.SKIMMED, 20),
        ("BD-2125K", "taped", Finish.TAPED, 0),
        ("BD-2012M", "skimmed", Finish.SKIMMED, 20),
    ],
)
def test_finish_and_skim(board: str, sent: str | None, finish: Finish, skim: int) -> None:
    """S = 0 (MDF, ply), 2 (skim)."""
    job = job_of(changed(example_c(), {f"{BRIEF}/board/code": board, f"{BRIEF}/finish": sent}))

    assert (finish, skim) == (job.finish, job.skim_tenth_mm)


@pytest.mark.parametrize(
    ("distance_mm", "outlet_mm", "upstand_mm"),
    [
        (None, 500, 0), (250, None, 0), (0, 500, 0), (110, 500, 0), (111, 500, 5), (115, 500, 5), (115.1, 500, 10),
        (310, 500, 200), (311, 500, 205), (700, 35, 125),
    ],
)  # fmt: skip
def test_least_upstand(distance_mm: float | None, outlet_mm: float | None, upstand_mm: float) -> None:
    """U >= so - (Bh - ho) - ca - tl - g, rounded up to 5: 535 - 500 + 10 + 15 + 50 = 110 lie there without any upstand."""
    fire = msgspec.structs.replace(
        demo_catalogue().appliances["AF-102"], outlet_to_screen_least_mm=distance_mm, outlet_height_mm=outlet_mm
    )

    assert upstand_mm * 10 == least_upstand(fire, over=100, under=150 + 500)


def test_no_outlet_no_distance() -> None:
    fire = msgspec.structs.replace(demo_catalogue().appliances["AF-102"], outlet_position="none")

    assert 0 == least_upstand(fire, over=0, under=0)


@pytest.mark.parametrize(
    ("values", "upstand_mm"),
    [
        ({}, 200),
        ({"outlet_height_mm": 500, "outlet_to_screen_least_mm": 400}, 290),
        ({"outlet_height_mm": 500, "outlet_to_screen_least_mm": 250}, 200),
    ],
)
def test_the_houses_upstand(values: Request, upstand_mm: float) -> None:
    """200, or the least that keeps outlet to screen: 400 - 110 = 290."""
    request = changed(with_fire(**values), {SCREEN: TELEVISION, f"{BRIEF}/sill_above_appliance_mm": None})

    assert upstand_mm * 10 == job_of(request).upstand_tenth_mm


def test_the_houses_upstand_has_room_for_cripples() -> None:
    """Upstand code of framing.md, section 13: at least 2b + 40."""
    thick = {"kind": "custom", "thickness_mm": 90, "width_mm": 100, "strength_class": "C16", "lengths_mm": [4800]}
    request = changed(without(example_c(), f"{BRIEF}/sill_above_appliance_mm"), {f"{BRIEF}/timber": thick})

    assert 2200 == job_of(request).upstand_tenth_mm


def test_an_upstand_without_a_screen_asks_nothing_of_the_outlet() -> None:
    request = changed(with_fire(outlet_height_mm=500, outlet_to_screen_least_mm=400), {f"{BRIEF}/sill_above_appliance_mm": None})

    assert 2000 == job_of(request).upstand_tenth_mm


@pytest.mark.parametrize(
    ("request_", "width_mm"),
    [
        (changed(example_c(), {f"{BRIEF}/breast_width_mm": None, f"{BRIEF}/appliance_shift_mm": 0}), 950),  # 770 + 4 x 38 + 24
        (changed(example_c(), {f"{BRIEF}/breast_width_mm": None}), 1070),  # and 2 x 60 of shift
        (changed(example_b(), {f"{BRIEF}/breast_width_mm": None}), 1680),  # 1470 + 4 x 45 + 29
        (changed(example_b(), {f"{BRIEF}/breast_width_mm": None, SCREEN: None}), 1260),  # 1141 + 2 x 45 + 29
    ],
)
def test_the_houses_width(request_: Request, width_mm: float) -> None:
    """The least with jack studs and jambs, rounded up to 10: framing.md, sections 5, 6 and 13. It can be built."""
    job = job_of(request_)

    assert width_mm * 10 == job.width_tenth_mm
    assert [width_mm] == [note.value for note in job.assumptions if note.pointer == f"{BRIEF}/breast_width_mm"]
    assert () == unmet_of(request_)


def test_a_three_sided_fire_sets_its_width() -> None:
    assert job_of(example_a()).width_tenth_mm is None
    assert 13570 == job_of(changed(example_a(), {f"{BRIEF}/breast_width_mm": 1357})).width_tenth_mm


@pytest.mark.parametrize(
    ("request_", "depth_mm"),
    [
        (changed(example_a(), {f"{BRIEF}/breast_depth_mm": None}), 370),  # 330 + 40
        (changed(example_c(), {f"{BRIEF}/breast_depth_mm": None}), 240),  # 210 + 30
        (changed(with_fire(body_depth_mm=120), {f"{BRIEF}/breast_depth_mm": None, f"{BRIEF}/timber/code": "TM-1091L"}), 240),
        (
            changed(example_c(), {
                f"{BRIEF}/breast_depth_mm": None, SCREEN: {**TELEVISION, "body_depth_mm": 180},
                f"{BRIEF}/top": {"kind": "ceiling"}, f"{BRIEF}/breast_width_mm": 1400,
            }),
            300,  # 25 + 180 + 30 + 18 + 38 = 291
        ),
    ],
)  # fmt: skip
def test_the_houses_depth(request_: Request, depth_mm: float) -> None:
    """D: the least that fits, up to 10 (third: 2 x 95 + 30 + 12 = 232). It can be built."""
    assert depth_mm * 10 == job_of(request_).depth_tenth_mm
    assert () == unmet_of(request_)


def test_the_houses_breast_is_as_deep_as_its_bearers_ask() -> None:
    """A thin screen: the bearers still pass behind the front timber, which sets depth and recess."""
    thin = {**TELEVISION, "body_depth_mm": 10}
    plain = {f"{BRIEF}/glass_set_back_mm": 0, f"{BRIEF}/cable_room_mm": 0, f"{BRIEF}/breast_depth_mm": None}
    request = changed(example_a(), {SCREEN: thin, **plain})
    recess = frame_of(request).sizes.recess

    assert recess is not None
    assert 150 + 890 - 180 == recess.depth_tenth_mm  # tf + d - tb
    assert frame_of(request).sizes.frame_depth_tenth_mm - 890 == recess.bearer_back_tenth_mm
