"""Survey.md, sections 3 and 6: the clear height, the fall of the floor and where it falls to."""

from __future__ import annotations

import pytest

from service.brief.room_facts import low_end_of
from service.survey.floor import FloorLevel, LowEnd
from tests.examples_of import changed, example_b, example_c, frame_of, job_of, without

POINTS = [(1000, 0), (1500, 0), (2000, 0), (1000, 400), (2000, 400)]


def levels(*levels_mm: float) -> tuple[FloorLevel, ...]:
    """Levels at left, middle, right at the wall and left, right at the depth."""
    return tuple(FloorLevel(x_mm=x, y_mm=y, level_mm=level) for (x, y), level in zip(POINTS, levels_mm, strict=True))


@pytest.mark.parametrize(
    ("levels_mm", "low_end"),
    [
        ((0, 0, -9, 0, -9), LowEnd.RIGHT),
        ((0, -4, -9, 0, -9), LowEnd.RIGHT),
        ((-9, 0, 0, -9, 0), LowEnd.LEFT),
        ((0, 0, 0, -6, -6), LowEnd.FRONT),
        ((-6, -6, -6, 0, 0), LowEnd.BACK),
        ((0, 0, 0, 0, 0), LowEnd.UNKNOWN),
        ((0, -9, 0, 0, 0), LowEnd.BACK),  # a hollow in the middle of the wall
        ((2, 2, 2, -7, 2), LowEnd.LEFT),  # one corner: the wall's direction before the room's
    ],
)
def test_where_levels_fall_to(levels_mm: tuple[float, ...], low_end: LowEnd) -> None:
    assert low_end is low_end_of(levels(*levels_mm))


def test_no_levels_fall_nowhere() -> None:
    assert LowEnd.UNKNOWN is low_end_of(())
    assert LowEnd.UNKNOWN is low_end_of(levels(0, 0, 0, 0, 0)[:1])


def test_clear_height_is_lowest_ceiling_less_highest_floor() -> None:
    """H = min(level + height) - max(level): example B, level ceiling over a floor 9 lower at the right."""
    job = job_of(example_b())

    assert (26200, 90, LowEnd.RIGHT) == (job.clear_height_tenth_mm, job.fall_tenth_mm, job.low_end)


def test_clear_height_where_levels_were_taken_elsewhere() -> None:
    """If they are unknown: min(height) - fall, the safe side."""
    elsewhere = [{"x_mm": 500, "y_mm": 0, "level_mm": 0}, {"x_mm": 3500, "y_mm": 0, "level_mm": -9}]
    job = job_of(changed(example_b(), {"/survey/floor/levels": elsewhere}))

    assert 26200 - 90 == job.clear_height_tenth_mm


def test_clear_height_with_a_fall_only() -> None:
    job = job_of(changed(example_c(), {"/survey/floor/fall_mm": 7.5, "/survey/floor/low_end": "left"}))

    assert (24500 - 75, 75, LowEnd.LEFT) == (job.clear_height_tenth_mm, job.fall_tenth_mm, job.low_end)


def test_the_low_end_that_was_sent_wins() -> None:
    assert LowEnd.UNKNOWN is job_of(changed(example_b(), {"/survey/floor/low_end": "unknown"})).low_end
    assert LowEnd.RIGHT is job_of(without(example_b(), "/survey/floor/low_end")).low_end


def test_defaults_of_an_empty_room() -> None:
    """Survey.md: 2400 less 6 of fall, wall 4000, middle of the wall, skirting 120 x 15."""
    job = job_of(without(example_c(), "/survey/room", "/survey/floor"))

    assert (23940, 60, LowEnd.UNKNOWN) == (job.clear_height_tenth_mm, job.fall_tenth_mm, job.low_end)
    assert (20000, 120, 15) == (job.wall_centre_tenth_mm, job.skirting_height_mm, job.skirting_thickness_mm)
    assert {
        "/survey/room/heights": 2400,
        "/survey/room/wall_length_mm": 4000,
        "/survey/room/breast_centre_from_left_mm": 2000,
        "/survey/floor/fall_mm": 6,
        "/survey/floor/low_end": "unknown",
        "/survey/floor/construction": "boards",
        "/survey/floor/sound": "yes",
        "/survey/floor/underfloor_heating": "no",
        "/survey/floor/skirting_height_mm": 120,
        "/survey/floor/skirting_thickness_mm": 15,
    } == {note.pointer: note.value for note in job.assumptions if note.pointer.startswith(("/survey/room", "/survey/floor"))}


def test_the_centre_follows_a_wall_that_was_measured() -> None:
    job = job_of(changed(without(example_c(), "/survey/room/breast_centre_from_left_mm"), {"/survey/room/wall_length_mm": 5000}))

    assert 25000 == job.wall_centre_tenth_mm


def test_few_points_keep_a_quote_from_being_firm() -> None:
    """Fewer than 5 points: missing for a firm quote; the lowest of them is used."""
    few = example_c()["survey"]["room"]["heights"][:3]
    job = job_of(changed(example_c(), {"/survey/room/heights": few}))
    (note,) = [note for note in job.assumptions if note.pointer == "/survey/room/heights"]

    assert (True, "3 of 5 points") == (note.needed_for_firm, note.value)
    assert 24500 == job.clear_height_tenth_mm


@pytest.mark.parametrize(
    ("low_end", "packers"), [("left", (90, 67, 45, 22, 0)), ("right", (0, 23, 45, 68, 90)), ("front", (90,) * 5)]
)
def test_packers_follow_the_fall(low_end: str, packers: tuple[int, ...]) -> None:
    """Framing.md, section 3: packers of the height by which the floor lies lower, by a straight line; halves up."""
    frame = frame_of(changed(example_c(), {"/survey/floor/fall_mm": 9, "/survey/floor/low_end": low_end}))

    assert packers == tuple(station.packer_tenth_mm for station in frame.stations)
