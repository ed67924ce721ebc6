from __future__ import annotations

from service.cutting import QUICK, STANDARD, THOROUGH, never


def test_without_a_clock_nothing_stops() -> None:
    assert not never()


def test_each_effort_is_ten_times_the_one_before() -> None:
    assert (10, 10) == (STANDARD.work_count // QUICK.work_count, THOROUGH.work_count // STANDARD.work_count)
