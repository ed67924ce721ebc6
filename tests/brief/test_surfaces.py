"""Survey.md, sections 3 and 6: heights and levels point by point, in frame axes."""

from __future__ import annotations

import pytest

from tests.examples_of import example_b, job_of
from tests.sold_examples import sold
from tests.variant_requests import of_points, uneven


def test_even_surfaces_are_not_kept() -> None:
    """Example B: the floor falls evenly to the right under a level ceiling."""
    job = job_of(example_b())

    assert ((), (), (), ()) == (job.ceiling_rear, job.ceiling_front, job.floor_rear, job.floor_front)


def test_points_in_frame_axes() -> None:
    """Example A: the breast from 1271.5 to 2628.5, boards of 15: the frame from 1286.5."""
    job = job_of(uneven())

    assert [(-150, 0), (6635, 100), (13_420, 300)] == [(one.x_tenth_mm, one.off_tenth_mm) for one in job.ceiling_rear]
    assert [(-150, 50), (13_420, 240)] == [(one.x_tenth_mm, one.off_tenth_mm) for one in job.ceiling_front]
    assert [0, 120, 30] == [one.off_tenth_mm for one in job.floor_rear]
    assert [20, 40] == [one.off_tenth_mm for one in job.floor_front]


@pytest.mark.parametrize(("middle_mm", "kept"), [(-3, False), (-4, False), (-5.1, True), (-0.9, True)])
def test_a_floor_within_a_packer_of_an_even_fall_is_even(middle_mm: float, kept: bool) -> None:
    """6 to the right: 3 in the middle, give or take 1."""
    request = of_points(sold("A"), "level", (0, middle_mm, -6, 0, -6))
    del request["survey"]["floor"]["fall_mm"]
    for point, level in zip(request["survey"]["room"]["heights"], (0, middle_mm, -6, 0, -6), strict=True):
        point["height_mm"] = 2515 - level

    assert kept == bool(job_of(request).floor_rear)


def test_without_levels_heights_tell_the_ceiling() -> None:
    request = of_points(sold("A"), "height", (2515, 2520, 2525, 2515, 2525))
    request["survey"]["floor"] = {**request["survey"]["floor"], "fall_mm": 0}
    del request["survey"]["floor"]["levels"]

    assert [0, 50, 100] == [one.off_tenth_mm for one in job_of(request).ceiling_rear]
