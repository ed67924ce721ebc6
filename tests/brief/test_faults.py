"""Survey.md, sections 2 to 13 and 15: each contradiction and impossible value fires, and its nearest neighbour does not."""

from __future__ import annotations

import pytest

from service.errors import Reason
from service.survey.appliance import OpenEnds
from tests.examples_of import DAY, changed, example_a, example_c, faults_of, job_of, without

ROOM, WALL, CEILING, FLOOR = "/survey/room", "/survey/wall", "/survey/ceiling", "/survey/floor"
SITE, BRIEF = "/survey/site", "/survey/brief"
HEIGHTS = example_c()["survey"]["room"]["heights"]


def levels(*levels_mm: float) -> list[dict[str, float]]:
    """Levels at the points of example C."""
    return [
        {"x_mm": point["x_mm"], "y_mm": point["y_mm"], "level_mm": level} for point, level in zip(HEIGHTS, levels_mm, strict=True)
    ]


def heights(*heights_mm: float) -> list[dict[str, float]]:
    """Heights at the points of example C."""
    return [{**point, "height_mm": height} for point, height in zip(HEIGHTS, heights_mm, strict=True)]


def cleared(code: str, day: str) -> list[dict[str, str]]:
    """One caution that somebody cleared."""
    return [{"code": code, "name": "A. Surveyor", "role": "surveyor", "on": day, "evidence": "photo"}]


OBSTACLE = {"kind": "window", "x0_mm": 100, "x1_mm": 200, "z0_mm": 0, "z1_mm": 900}
FIRING = {
    "same stud twice": (
        {f"{WALL}/stud_positions_mm": [400, 409.9]},
        f"{WALL}/stud_positions_mm",
        Reason.CONTRADICTION,
        "same place",
    ),
    "stud beyond the wall": (
        {f"{WALL}/stud_positions_mm": [4000.1]},
        f"{WALL}/stud_positions_mm",
        Reason.CONTRADICTION,
        "beyond",
    ),
    "height beyond the wall": (
        {f"{ROOM}/heights": [*HEIGHTS, {"x_mm": 4000.1, "y_mm": 0, "height_mm": 2450}]},
        f"{ROOM}/heights/5/x_mm",
        Reason.CONTRADICTION,
        "beyond",
    ),
    "level beyond the wall": (
        {f"{FLOOR}/fall_mm": None, f"{FLOOR}/levels": [{"x_mm": 4000.1, "y_mm": 0, "level_mm": 0}]},
        f"{FLOOR}/levels/0/x_mm",
        Reason.CONTRADICTION,
        "beyond",
    ),
    "same joist twice": (
        {f"{CEILING}/joist_positions_mm": [400, 400]},
        f"{CEILING}/joist_positions_mm",
        Reason.CONTRADICTION,
        "same place",
    ),
    "fall against levels": (
        {f"{FLOOR}/fall_mm": 3.1, f"{FLOOR}/levels": levels(0, 0, 0, 0, 0)},
        f"{FLOOR}/fall_mm",
        Reason.CONTRADICTION,
        "levels differ",
    ),
    "floor falls too far": (
        {f"{FLOOR}/fall_mm": None, f"{FLOOR}/levels": levels(0, 0, 60.1, 0, 0)},
        f"{FLOOR}/levels",
        Reason.IMPOSSIBLE_VALUE,
        "60.1",
    ),
    "slope under a flat ceiling": (
        {f"{CEILING}/slope_deg": 2, f"{ROOM}/heights": heights(2450, 2450, 2464.9, 2450, 2450)},
        f"{CEILING}/slope_deg",
        Reason.CONTRADICTION,
        "slope",
    ),
    "obstacle inside out": (
        {f"{ROOM}/obstacles": [{**OBSTACLE, "x1_mm": 100}]},
        f"{ROOM}/obstacles/0",
        Reason.IMPOSSIBLE_VALUE,
        "edge",
    ),
    "obstacle upside down": (
        {f"{ROOM}/obstacles": [OBSTACLE, {**OBSTACLE, "z1_mm": 0}]},
        f"{ROOM}/obstacles/1",
        Reason.IMPOSSIBLE_VALUE,
        "edge",
    ),
    "radiator inside out": (
        {"/survey/services/radiators": [{"x0_mm": 200, "x1_mm": 150}]},
        "/survey/services/radiators/0",
        Reason.IMPOSSIBLE_VALUE,
        "edge",
    ),
    "no such day": ({f"{SITE}/surveyed_on": "2026-11-31"}, f"{SITE}/surveyed_on", Reason.IMPOSSIBLE_VALUE, "calendar"),
    "surveyed tomorrow": ({f"{SITE}/surveyed_on": "2026-12-02"}, f"{SITE}/surveyed_on", Reason.IMPOSSIBLE_VALUE, "after"),
    "cleared tomorrow": (
        {"/survey/cleared": cleared("S09", "2026-12-02")},
        "/survey/cleared/0/on",
        Reason.IMPOSSIBLE_VALUE,
        "after",
    ),
    "no such caution": ({"/survey/cleared": cleared("X09", DAY)}, "/survey/cleared/0/code", Reason.IMPOSSIBLE_VALUE, "X09"),
    "provenance of nothing": (
        {"/survey/provenance": {"/wall": "measured"}},
        "/survey/provenance",
        Reason.IMPOSSIBLE_VALUE,
        "points to nothing",
    ),
    "ends that this fire has not": ({f"{BRIEF}/open_ends": "left"}, f"{BRIEF}/open_ends", Reason.CONTRADICTION, "0 ends"),
}
SILENT = {
    "studs 10 apart": {f"{WALL}/stud_positions_mm": [400, 410]},
    "stud at the end of the wall": {f"{WALL}/stud_positions_mm": [4000]},
    "height at the end of the wall": {f"{ROOM}/heights": [*HEIGHTS, {"x_mm": 4000, "y_mm": 0, "height_mm": 2450}]},
    "stud in any order": {f"{WALL}/stud_positions_mm": [900, 400]},
    "fall within 3 of the levels": {f"{FLOOR}/fall_mm": 3, f"{FLOOR}/levels": levels(0, 0, 0, 0, 0)},
    "fall as the levels say": {f"{FLOOR}/fall_mm": 9, f"{FLOOR}/levels": levels(0, 0, -9, 0, 0)},
    "floor falls as far as may be": {f"{FLOOR}/fall_mm": None, f"{FLOOR}/levels": levels(0, 0, 60, 0, 0)},
    "slope with its heights": {f"{CEILING}/slope_deg": 2, f"{ROOM}/heights": heights(2450, 2450, 2465, 2450, 2450)},
    "slope at one point": {f"{CEILING}/slope_deg": 2, f"{ROOM}/heights": HEIGHTS[:1]},
    "obstacle": {f"{ROOM}/obstacles": [OBSTACLE]},
    "radiator": {"/survey/services/radiators": [{"x0_mm": 150, "x1_mm": 200}]},
    "surveyed today": {f"{SITE}/surveyed_on": DAY},
    "cleared today": {"/survey/cleared": cleared("S09", DAY)},
    "leap day": {f"{SITE}/surveyed_on": "2024-02-29"},
    "the ends of this fire": {f"{BRIEF}/open_ends": "none"},
}


@pytest.mark.parametrize(("values", "pointer", "reason", "words"), FIRING.values(), ids=FIRING)
def test_fires(values: dict[str, object], pointer: str, reason: Reason, words: str) -> None:
    (fault,) = faults_of(changed(example_c(), values))

    assert (pointer, reason) == (fault.pointer, fault.reason)
    assert words in fault.detail
    assert fault.remedy


@pytest.mark.parametrize("values", SILENT.values(), ids=SILENT)
def test_does_not_fire(values: dict[str, object]) -> None:
    assert () == faults_of(changed(example_c(), values))


def test_two_fields_are_named_with_their_inequality() -> None:
    """Contradiction: name both pointers and the inequality."""
    (fault,) = faults_of(changed(example_c(), {f"{FLOOR}/fall_mm": 9, f"{FLOOR}/levels": levels(0, 0, -2, 0, 0)}))

    assert (f"{FLOOR}/levels",) == fault.related
    assert "a fall of 9 where the levels differ by 2" == fault.detail


@pytest.mark.parametrize(
    ("model", "sent", "ends"),
    [
        ("AF-102", None, OpenEnds.NONE),
        ("AF-302", None, OpenEnds.BOTH),
        ("AF-201", None, OpenEnds.RIGHT),
        ("AF-201", "left", OpenEnds.LEFT),
        ("AF-201", "right", OpenEnds.RIGHT),
        ("AF-302", "both", OpenEnds.BOTH),
    ],
)
def test_open_ends(model: str, sent: str | None, ends: OpenEnds) -> None:
    request = changed(without(example_c(), f"{BRIEF}/appliance_shift_mm", f"{BRIEF}/breast_width_mm"), {
        f"{BRIEF}/appliance/model": model, f"{BRIEF}/open_ends": sent,
    })  # fmt: skip
    job = job_of(request)

    assert ends is job.open_ends
    chosen = [note.value for note in job.assumptions if note.pointer == f"{BRIEF}/open_ends"]
    assert (["right"] if (model, sent) == ("AF-201", None) else []) == chosen


@pytest.mark.parametrize(("end", "allowed", "refused"), [("left", "left", "right"), ("right", "right", "left")])
def test_a_fire_with_glass_at_one_named_end(end: str, allowed: str, refused: str) -> None:
    fire = {
        "kind": "custom", "name": "x", "open_ends_count": 1, "open_end": end, "body_width_mm": 800, "body_height_mm": 500,
        "body_depth_mm": 200, "mass_kg": 20, "heat_output_w": 1000, "connection": "plug", "outlet_position": "front_top",
    }  # fmt: skip
    request = changed(without(example_c(), f"{BRIEF}/appliance_shift_mm", f"{BRIEF}/open_ends"), {f"{BRIEF}/appliance": fire})

    assert allowed == job_of(request).open_ends.value
    (fault,) = faults_of(changed(request, {f"{BRIEF}/open_ends": refused}))
    assert f"send {allowed}, or another fire" == fault.remedy


DOUBTS = {
    "pitch of studs": (
        {f"{WALL}/stud_positions_mm": [400, 699.9]},
        {f"{WALL}/stud_positions_mm": [400, 700]},
        f"{WALL}/stud_positions_mm",
    ),
    "pitch of joists": (
        {f"{CEILING}/joist_positions_mm": [400, 1050.1]},
        {f"{CEILING}/joist_positions_mm": [400, 1050]},
        f"{CEILING}/joist_positions_mm",
    ),
    "levels": (
        {f"{FLOOR}/fall_mm": None, f"{FLOOR}/levels": levels(0, 0, 25.1, 0, 0)},
        {f"{FLOOR}/fall_mm": None, f"{FLOOR}/levels": levels(0, 0, 25, 0, 0)},
        f"{FLOOR}/levels",
    ),
    "heights": (
        {f"{ROOM}/heights": heights(2450, 2450, 2510.1, 2450, 2450)},
        {f"{ROOM}/heights": heights(2450, 2450, 2510, 2450, 2450)},
        f"{ROOM}/heights",
    ),
    "an old survey": ({f"{SITE}/surveyed_on": "2026-09-01"}, {f"{SITE}/surveyed_on": "2026-09-02"}, f"{SITE}/surveyed_on"),
}


@pytest.mark.parametrize(("beyond", "within", "pointer"), DOUBTS.values(), ids=DOUBTS)
def test_doubtful_and_just_not(beyond: dict[str, object], within: dict[str, object], pointer: str) -> None:
    """Sections 3 to 6 and 9: pitch 300..650, fall over 25, spread over 60, survey older than 90 days."""
    assert pointer in {doubt.pointer for doubt in job_of(changed(example_c(), beyond)).doubts}
    assert pointer not in {doubt.pointer for doubt in job_of(changed(example_c(), within)).doubts}


@pytest.mark.parametrize(
    ("values", "by_hand"),
    [
        ({f"{ROOM}/heights": heights(2450, 2450, 2600, 2450, 2450)}, False),
        ({f"{ROOM}/heights": heights(2450, 2450, 2600.1, 2450, 2450)}, True),
        ({f"{CEILING}/slope_deg": 5, f"{ROOM}/heights": heights(2450, 2450, 2500, 2450, 2500)}, True),
    ],
)
def test_sloping_ceilings_are_left_to_a_person(values: dict[str, object], *, by_hand: bool) -> None:
    """Spread over 150: treat as a sloping ceiling (framing.md, section 14: not laid out here)."""
    assert by_hand is any("sloping" in says for says in job_of(changed(example_c(), values)).by_hand)


def test_all_faults_at_once() -> None:
    """Section 2: never pick one silently, never only the first."""
    request = changed(example_a(), {
        f"{WALL}/stud_positions_mm": [400, 401], f"{FLOOR}/fall_mm": 30, f"{SITE}/surveyed_on": "2030-01-01",
        f"{BRIEF}/open_ends": "left", f"{BRIEF}/timber/code": "TM-1407E", f"{BRIEF}/board/code": "TM-1407E",
        f"{BRIEF}/screen/model": "SC-999", f"{BRIEF}/breast_width_mm": 3900.5, "/terms/price_book": "other",
        "/terms/tax": {"kind": "zero"},
    })  # fmt: skip

    assert [
        "/survey/brief/board/code", "/survey/brief/open_ends", "/survey/brief/screen/model", "/survey/brief/timber/code",
        "/survey/floor/fall_mm", "/survey/room/breast_centre_from_left_mm", "/survey/site/surveyed_on",
        "/survey/wall/stud_positions_mm", "/terms/price_book", "/terms/tax/kind",
    ] == sorted(fault.pointer for fault in faults_of(request))  # fmt: skip


@pytest.mark.parametrize(
    ("model", "wanted", "fires"),
    [("AF-302", "plug_in_reach", True), ("AF-302", "fused_connection", False), ("AF-301", "plug_in_reach", False)],
)
def test_a_fire_for_fixed_wiring_has_no_plug(model: str, wanted: str, *, fires: bool) -> None:
    supply = "/survey/services/supply_wanted"
    found = faults_of(changed(example_a(), {f"{BRIEF}/appliance/model": model, supply: wanted, f"{BRIEF}/screen": None}))

    assert ([(supply, Reason.CONTRADICTION)] if fires else []) == [(fault.pointer, fault.reason) for fault in found]
