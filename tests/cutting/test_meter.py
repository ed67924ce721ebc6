from __future__ import annotations

from service.cutting import Effort, Stopped, never
from service.cutting.meter import Meter


def test_work_counts_down_to_the_limit() -> None:
    meter = Meter(Effort(work_count=2), never)
    meter.spend(1_500)

    assert (False, 1, 500) == (meter.is_over(), meter.work_count, meter.left_micros())

    meter.spend(600)

    assert (True, 0) == (meter.is_over(), meter.left_micros())


def test_what_ended_the_search_is_told() -> None:
    meter = Meter(Effort(work_count=1), never)

    assert Stopped.DONE == meter.stopped(done=True)
    assert Stopped.WORK_LIMIT == meter.stopped(done=False)


def test_the_clock_rings_once_and_for_all() -> None:
    answers = iter([False, True, False])
    meter = Meter(Effort(work_count=100), lambda: next(answers))

    assert [False, True, True] == [meter.rang() for _ in range(3)]
    assert meter.is_over()
    assert Stopped.CLOCK_GUARD == meter.stopped(done=True)


def test_another_search_may_do_as_much_again() -> None:
    meter = Meter(Effort(work_count=2), never)
    meter.spend(2_500)
    meter.renew()

    assert (False, 2, 2_000) == (meter.is_over(), meter.work_count, meter.left_micros())
