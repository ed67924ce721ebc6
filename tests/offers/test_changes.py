from __future__ import annotations

from service.errors import Unmet
from service.offers.changes import EVERY, FAMILIES, Wish, families_for, platforms, screens, timbers
from tests.examples_of import example_a, example_b, job_of
from tests.hardware.test_choosing import CATALOGUE


def unmet(code: str, short_mm: float) -> Unmet:
    return Unmet(code=code, says="", asked_mm=short_mm, available_mm=0.0, short_by_mm=short_mm, offer="")


def wish(*missed: Unmet) -> Wish:
    return Wish(job_of(example_a()), CATALOGUE, missed)


def test_screens_come_down_from_the_largest() -> None:
    wide = Wish(job_of(example_b()), CATALOGUE, ())
    inches = [float(change.says.split(", ")[1].split(" ")[0]) for change in screens(wide)]

    assert sorted(inches, reverse=True) == inches
    assert 43 <= max(inches) < 60  # example B hangs a 60 in screen


def test_platforms_come_down_from_the_highest_that_may_do() -> None:
    """430 asked, 37 too high: 393, in steps of 5 down: 390 first."""
    heights = [float(change.says.split(" ")[1]) for change in platforms(wish(unmet("recess_high", 37.0)))]

    assert 390.0 == heights[0]
    assert sorted(heights, reverse=True) == heights


def test_timbers_are_other_graded_sections() -> None:
    says = [change.says for change in timbers(wish())]

    assert all("C16" in one or "C24" in one for one in says)
    assert not any("38 x 89" in one for one in says)
    assert len(set(says)) == len(says) > 1


def test_families_for_what_is_missed_come_first_and_none_is_left_out() -> None:
    order = families_for((unmet("heat", 1.0), unmet("depth_fire", 1.0)))

    first = tuple(dict.fromkeys((*FAMILIES["heat"], *FAMILIES["depth_fire"])))
    assert first == order[: len(first)]
    assert set(EVERY) <= set(order)
    assert len(set(order)) == len(order)
