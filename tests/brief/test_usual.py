"""Survey.md, section 2, class doubtful: outside the sane range, inside the hard limit: accepted, flagged."""

from __future__ import annotations

import pytest

from service.brief.usual import USUAL
from tests.examples_of import changed, example_a, example_c, job_of, without

ROWS = [(f"/survey/{section}/{field}", low, high) for section, field, low, high in USUAL]
BARE = without(
    example_c(), "/survey/room/breast_centre_from_left_mm", "/survey/room/heights", "/survey/floor/levels"
)  # they follow the wall


def doubted(pointer: str, value: float) -> bool:
    """Whether a value is flagged."""
    request = changed(BARE, {pointer: value})
    return pointer in {doubt.pointer for doubt in job_of(request).doubts}


@pytest.mark.parametrize(("pointer", "low", "high"), ROWS)
def test_both_limits_of_a_usual_range_are_usual(pointer: str, low: float, high: float) -> None:
    assert not doubted(pointer, low)
    assert not doubted(pointer, high)


@pytest.mark.parametrize(("pointer", "low", "high"), ROWS)
def test_beyond_a_usual_range(pointer: str, low: float, high: float) -> None:
    assert doubted(pointer, high + 1)
    if low > 0:
        assert doubted(pointer, low - 1)


def test_none_at_all_is_usual() -> None:
    """0 lining, void or skirting means that there is none."""
    for pointer in ("/survey/wall/lining_mm", "/survey/wall/void_mm", "/survey/floor/skirting_height_mm"):
        assert not doubted(pointer, 0)


@pytest.mark.parametrize(("height_mm", "flagged"), [(2199, True), (2200, False), (3000, False), (3001, True)])
def test_unusual_rooms(height_mm: float, *, flagged: bool) -> None:
    """heights: 2200..3000 usual; each point is named."""
    heights = [{**point, "height_mm": height_mm} for point in example_a()["survey"]["room"]["heights"]]
    job = job_of(changed(example_a(), {"/survey/room/heights": heights}))

    expected = [f"/survey/room/heights/{index}/height_mm" for index in range(5)] if flagged else []
    assert expected == [doubt.pointer for doubt in job.doubts]
