"""Survey.md, section 4: what is taken of the wall where nothing is said."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from service.survey.wall import WallConstruction
from tests.examples_of import changed, example_c, job_of, without

if TYPE_CHECKING:
    from service.brief import Job

WALL = "/survey/wall"


def assumed(job: Job) -> dict[str, object]:
    """What was taken of the wall."""
    return {note.pointer.removeprefix(f"{WALL}/"): note.value for note in job.assumptions if note.pointer.startswith(WALL)}


def test_an_unknown_wall() -> None:
    job = job_of(without(example_c(), WALL))

    expected = {
        "construction": "unknown", "lining_mm": 15, "external": False, "damp": "none", "party": "unknown", "flat_mm": 4,
        "plumb_mm": 5,
    }  # fmt: skip
    assert expected == assumed(job)
    assert (WallConstruction.UNKNOWN, 150, 0, 5, None) == (
        job.wall_construction, job.wall_lining_tenth_mm, job.wall_void_tenth_mm, job.lean_mm, job.studs_tenth_mm
    )  # fmt: skip


@pytest.mark.parametrize(
    ("construction", "asks"), [("solid_brick", True), ("aerated_block", True), ("concrete", False), ("steel_stud", False)]
)
def test_masonry_asks_for_its_units(construction: str, *, asks: bool) -> None:
    """Units: needed if masonry; sound is assumed."""
    job = job_of(without(changed(example_c(), {f"{WALL}/construction": construction}), f"{WALL}/units"))

    assert asks is ("units" in assumed(job))


def test_dabs_ask_for_backing_and_void() -> None:
    job = job_of(changed(example_c(), {f"{WALL}/construction": "plasterboard_on_dabs"}))

    assert {"backing": "unknown", "void_mm": 20} == assumed(job)
    assert 200 == job.wall_void_tenth_mm


def test_a_void_that_was_measured() -> None:
    for construction in ("plasterboard_on_dabs", "solid_brick"):
        job = job_of(changed(example_c(), {f"{WALL}/construction": construction, f"{WALL}/void_mm": 32.5}))
        assert 325 == job.wall_void_tenth_mm


@pytest.mark.parametrize("construction", ["timber_stud", "steel_stud", "lath_and_plaster"])
def test_studs_that_were_not_found(construction: str) -> None:
    job = job_of(changed(example_c(), {f"{WALL}/construction": construction}))

    assert job.studs_tenth_mm is None
    assert "not found" == assumed(job)["stud_positions_mm"]


def test_studs_count_from_the_left_end_of_the_frame() -> None:
    """Framing.md, section 1: survey x = frame x + centre - W/2 + tf; example C: left end at 2000 - 677.5 + 12 = 1334.5."""
    studs = {f"{WALL}/construction": "timber_stud", f"{WALL}/stud_positions_mm": [1934.5, 1334.5, 2534.5]}

    assert (0, 6000, 12000) == job_of(changed(example_c(), studs)).studs_tenth_mm


def test_studs_of_a_solid_wall_are_not_used() -> None:
    assert job_of(changed(example_c(), {f"{WALL}/stud_positions_mm": [1934.5]})).studs_tenth_mm is None


def test_a_lean_either_way_is_a_lean() -> None:
    assert 8 == job_of(changed(example_c(), {f"{WALL}/plumb_mm": -8})).lean_mm
