"""Survey.md, section 4, `square_mm`: asked only of a breast against a side wall."""

from __future__ import annotations

import pytest

from service.survey.wall import WallConstruction
from tests.examples_of import Request, changed, example_c, job_of, without

C = without(example_c(), "/survey/room/heights", "/survey/floor/levels", "/survey/wall/square_mm")
CORNER: Request = {"/survey/room/breast_centre_from_left_mm": 677.5}
SQUARE, SIDE = "/survey/wall/square_mm", "/survey/wall/side_construction"


def test_nothing_is_asked_of_a_breast_that_stands_free() -> None:
    job = job_of(C)

    assert (False, False, 0) == (job.left_wall, job.right_wall, job.out_of_square_tenth_mm)
    assert not {SQUARE, SIDE} & {note.pointer for note in job.assumptions}


def test_what_is_taken_in_a_corner() -> None:
    """3 over 600 by default, so 1.5 over a depth of 300; the side wall is taken as the host wall."""
    job = job_of(changed(C, CORNER))
    taken = {note.pointer: note.value for note in job.assumptions}

    assert (15, job.wall_construction) == (job.out_of_square_tenth_mm, job.side_construction)
    assert (3, job.wall_construction.value) == (taken[SQUARE], taken[SIDE])


@pytest.mark.parametrize(("square_mm", "off", "packing"), [(20, 100, 100), (-20, -100, 200)])
def test_what_was_measured(square_mm: float, off: int, packing: int) -> None:
    """Positive: the room opens to the front. Where it narrows, the 10 of packing are kept at the front."""
    job = job_of(changed(C, {**CORNER, SQUARE: square_mm, SIDE: "timber_stud"}))

    assert (off, packing) == (job.out_of_square_tenth_mm, job.side_packing_tenth_mm)
    assert WallConstruction.TIMBER_STUD is job.side_construction
