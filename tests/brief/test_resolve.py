"""resolve(): every default listed with pointer and value, the job complete, the measures over the standing fire."""

from __future__ import annotations

import pytest

from service.brief import Job, supply_of
from service.brief.beside import Beside
from service.brief.ceiling_facts import CeilingFacts
from service.brief.extras import Extras
from service.brief.resolve import Extent
from service.brief.room_facts import RoomFacts
from service.brief.site_facts import SiteFacts
from service.brief.sizes import Clearances, Facing, Hanging
from service.brief.things import Things
from service.brief.wall_facts import WallFacts
from service.rules import load_rules
from service.survey.appliance import OpenEnds
from service.survey.services import SupplyWanted
from tests.examples_of import DAY, Request, changed, example_a, example_c, frame_of, job_of, request_of, without

BRIEF = "/survey/brief"
MEASURED = "/survey/measured"
BARE: Request = {"survey": {"brief": {"appliance": {"kind": "catalogue", "model": "AF-302"}}}}
DEFAULTS = {
    "/terms/date": DAY,
    "/terms/scope": "supply_and_fit",
    "/terms/appliance_supplied_by": "shop",
    "/terms/screen_supplied_by": "customer",
    "/terms/bracket_supplied_by": "shop",
    "/terms/crew_count": 2,
    "/survey/room/heights": 2400,
    "/survey/room/wall_length_mm": 4000,
    "/survey/room/breast_centre_from_left_mm": 2000,
    "/survey/wall/construction": "unknown",
    "/survey/wall/lining_mm": 15,
    "/survey/wall/external": False,
    "/survey/wall/damp": "none",
    "/survey/wall/party": "unknown",
    "/survey/wall/flat_mm": 4,
    "/survey/wall/plumb_mm": 5,
    "/survey/ceiling/kind": "boarded_joists",
    "/survey/ceiling/joists": "unknown",
    "/survey/ceiling/lining_mm": 12.5,
    "/survey/ceiling/textured_coating": "unknown",
    "/survey/floor/fall_mm": 6,
    "/survey/floor/low_end": "unknown",
    "/survey/floor/construction": "boards",
    "/survey/floor/underfloor_heating": "no",
    "/survey/floor/sound": "yes",
    "/survey/floor/skirting_height_mm": 120,
    "/survey/floor/skirting_thickness_mm": 15,
    "/survey/services/accessories": "none",
    "/survey/services/cable_scan": "not_done",
    "/survey/services/rcd": "yes",
    "/survey/services/supply_wanted": "fused_connection",
    "/survey/services/gas": "unknown",
    "/survey/services/pipes": "none",
    "/survey/services/air_vents": "none",
    "/survey/chimney/flue": "unknown",
    "/survey/site/country": "gb",
    "/survey/site/building": "house",
    "/survey/site/storey": 0,
    "/survey/site/build_year": "unknown",
    "/survey/site/longest_length_mm": 4800,
    "/survey/site/largest_board_length_mm": 2440,
    "/survey/site/largest_board_width_mm": 1220,
    "/survey/site/narrowest_door_mm": 760,
    "/survey/site/stairs": "straight",
    "/survey/site/parking_distance_mm": 20_000,
    "/survey/site/workspace": "outside",
    "/survey/site/surveyed_on": "not told",
    f"{BRIEF}/top": "ceiling",
    f"{BRIEF}/breast_depth_mm": 370,
    f"{BRIEF}/platform_height_mm": 300,
    f"{BRIEF}/sill_above_appliance_mm": 200,
    f"{BRIEF}/timber": "C16 38 x 63",
    f"{BRIEF}/board": "BD-2015R",
    f"{BRIEF}/finish": "painted",
    f"{BRIEF}/after_measure_allowance_mm": 20,
}
HOUSE_CHOICES = {
    *(pointer for pointer in DEFAULTS if pointer.startswith("/terms")), f"{BRIEF}/sill_above_appliance_mm", f"{BRIEF}/timber",
    f"{BRIEF}/board", f"{BRIEF}/finish", f"{BRIEF}/after_measure_allowance_mm",
}  # fmt: skip
NOT_NEEDED_FOR_FIRM = {"/survey/floor/low_end", "/survey/site/parking_distance_mm"}


def test_every_default_is_listed() -> None:
    """Survey.md, column "default": all that is taken of a request that names only its fire, each once with its value."""
    job = job_of(BARE)

    assert {note.pointer: note.value for note in job.assumptions} == DEFAULTS
    assert len(DEFAULTS) == len(job.assumptions)
    assert all(note.effect for note in job.assumptions)


def test_which_defaults_keep_a_quote_from_being_firm() -> None:
    """Survey.md, section 10: a wish left out is a house choice and does not; column "for" of the others."""
    job = job_of(BARE)

    assert {note.pointer for note in job.assumptions if note.house_choice} == HOUSE_CHOICES
    assert {note.pointer for note in job.assumptions if note.needed_for_firm} == set(
        DEFAULTS
    ) - HOUSE_CHOICES - NOT_NEEDED_FOR_FIRM


def test_a_screen_has_its_own_defaults() -> None:
    with_screen = {"survey": {"brief": {**BARE["survey"]["brief"], "screen": {"kind": "catalogue", "model": "SC-043"}}}}
    more = {note.pointer: note.value for note in job_of(with_screen).assumptions if note.pointer not in DEFAULTS}

    expected = {
        f"{BRIEF}/screen_bracket": "BK-301", f"{BRIEF}/screen_gap_mm": 50, f"{BRIEF}/glass_set_back_mm": 25,
        f"{BRIEF}/cable_room_mm": 25,
    }  # fmt: skip
    assert expected == more


def test_a_bare_request_can_be_built() -> None:
    assert frame_of(BARE).members


def test_the_parts_of_a_job_are_all_of_it_and_each_once() -> None:
    """Every field of a job comes from one part (the clear height from the room, then from the measures)."""
    parts = (Things, Clearances, Hanging, Facing, RoomFacts, WallFacts, CeilingFacts, SiteFacts, Extent, Beside, Extras)
    own = {
        "survey", "terms", "today", "rule_edition", "studs_tenth_mm", "joists_tenth_mm", "assumptions", "doubts", "by_hand",
        "missing_figures", "ceiling_rear", "ceiling_front", "floor_rear", "floor_front",
    }  # fmt: skip
    given = [name for part in parts for name in part.__struct_fields__ if name in Job.__struct_fields__]

    assert set(Job.__struct_fields__) == own | set(given)
    assert {"clear_height_tenth_mm"} == {name for name in given if given.count(name) > 1}
    assert not own & set(given)


def test_what_the_job_keeps_of_the_request() -> None:
    job, request = job_of(example_a()), request_of(example_a())

    assert (request.survey, request.terms, DAY, load_rules().edition) == (job.survey, job.terms, job.today, job.rule_edition)


def test_wishes_of_example_a() -> None:
    job = job_of(example_a())

    assert (OpenEnds.BOTH, True, 25150, 25150, None, 4350, 4300, 2100, 0, 20) == (
        job.open_ends, job.full_height, job.clear_height_tenth_mm, job.finished_top_tenth_mm, job.width_tenth_mm,
        job.depth_tenth_mm, job.platform_tenth_mm, job.upstand_tenth_mm, job.shift_tenth_mm, job.allowance_mm,
    )  # fmt: skip


def test_wishes_of_example_c() -> None:
    job = job_of(example_c())

    assert (OpenEnds.NONE, False, 24500, 11800, 13550, 3000, 1340, 1900, -600) == (
        job.open_ends, job.full_height, job.clear_height_tenth_mm, job.finished_top_tenth_mm, job.width_tenth_mm,
        job.depth_tenth_mm, job.platform_tenth_mm, job.upstand_tenth_mm, job.shift_tenth_mm,
    )  # fmt: skip


@pytest.mark.parametrize(("taken_mm", "upper_mm"), [([1605], 1585), ([1607.5, 1601, 1610], 1581), ([1609.9], 1589.9)])
def test_measures_over_the_standing_fire(taken_mm: list[float], upper_mm: float) -> None:
    """Framing.md, section 2.2: Hu = min(measures) - ca - ct; example A: 2515 - 430 - 480 = 1605 by the survey."""
    request = changed(example_a(), {MEASURED: {"appliance_top_to_ceiling_mm": taken_mm}})
    frame = frame_of(request)

    assert upper_mm == frame.sizes.upper_height_tenth_mm / 10
    assert 920 + upper_mm == frame.levels.upper_top_tenth_mm / 10
    assert () == job_of(request).doubts


@pytest.mark.parametrize(("taken_mm", "doubted"), [(1635, False), (1635.1, True), (1575, False), (1574.9, True)])
def test_measures_far_from_the_survey(taken_mm: float, *, doubted: bool) -> None:
    """Survey.md, section 11: a value that differs from the survey by > 30: doubtful."""
    job = job_of(changed(example_a(), {MEASURED: {"appliance_top_to_ceiling_mm": [taken_mm]}}))

    assert doubted is bool(job.doubts)
    if doubted:
        assert "where the survey leaves 1605" in job.doubts[0].says


def test_measures_change_nothing_in_part_height() -> None:
    """Part height: nothing follows from the ceiling."""
    measured = changed(example_c(), {MEASURED: {"appliance_top_to_ceiling_mm": [1700]}})

    assert frame_of(example_c()) == frame_of(measured)


def test_how_the_fire_is_connected() -> None:
    wanted = "/survey/services/supply_wanted"

    assert SupplyWanted.FUSED_CONNECTION is supply_of(job_of(without(example_c(), "/survey/services")))
    assert SupplyWanted.NEW_CIRCUIT is supply_of(job_of(changed(example_c(), {wanted: "new_circuit"})))
