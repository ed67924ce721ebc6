from __future__ import annotations

import msgspec
import numpy as np
from hypothesis import given, settings

from service.cutting import QUICK, BarAim, BarJob, BarStock, Effort, cut_bars, never
from service.cutting.first_fit import bins_of, exchange, first_fit
from service.cutting.meter import Meter
from service.cutting.problem import cost_of, state_bars
from tests.cutting.jobs import bar_jobs, bars, first_fit_decreasing


@given(bar_jobs(one_stock=True))
@settings(max_examples=40)
def test_with_one_length_it_is_first_fit_decreasing(job: BarJob) -> None:
    problem = state_bars(msgspec.structs.replace(job, aim=BarAim.COST))
    plan = first_fit(problem, Meter(Effort(), never))

    assert plan is not None
    assert first_fit_decreasing(job) == cost_of(problem.classes, plan)[0]


@given(bar_jobs())
@settings(max_examples=40)
def test_every_piece_is_cut_once_on_bars_that_hold_it(job: BarJob) -> None:
    problem = state_bars(job)
    plan = first_fit(problem, Meter(Effort(), never)) or ()
    sizes = np.array(problem.sizes)

    assert list(problem.demands) == sum((counts for _, counts in plan), start=np.zeros(len(sizes), dtype=np.int64)).tolist()
    assert all(counts @ sizes <= problem.classes[number].capacity for number, counts in plan)
    for number, of in enumerate(problem.classes):
        assert sum(1 for used, _ in plan if used == number) <= of.copies


def test_too_few_copies_give_no_plan() -> None:
    few = msgspec.structs.replace(
        bars([(1500, 3, False)], []), stock=(BarStock(code="A", length_tenth_mm=24_000, cost_minor=1, copies_count=2),)
    )

    assert first_fit(state_bars(few), Meter(Effort(), never)) is None


def test_a_bar_is_exchanged_for_the_cheapest_that_holds_its_pieces() -> None:
    """By hand: 2300 on a bar of 4800 goes onto one of 2400 just as well."""
    problem = state_bars(bars([(2300, 1, False)], [(2400, 400), (4800, 900)]))

    assert 400 == cost_of(problem.classes, exchange(problem, ((0, np.array([1])),)))[0]


def test_the_cover_model_sees_the_same_problem() -> None:
    problem = state_bars(bars([(1000, 2, False)], [(2400, 400)]))
    bins = bins_of(problem)

    assert (list(problem.sizes), list(problem.demands), 1) == (
        bins.sizes.tolist(),
        bins.demands.tolist(),
        bins.source.classes_count,
    )


def hundred_lengths() -> BarJob:
    return bars([(777 + at, 9, False) for at in range(50)], [(1000 + 37 * at, 100 + at) for at in range(100)])


def test_a_hundred_lengths_stay_about_within_the_quick_work() -> None:
    """A first plan and the completion of the relaxed one are made in any case."""
    plan = cut_bars(hundred_lengths(), QUICK)

    assert plan.search.work_count <= QUICK.work_count * 1.5


def test_once_there_is_a_plan_the_clock_ends_the_others() -> None:
    problem, all_day, over = state_bars(hundred_lengths()), Meter(Effort(), never), Meter(Effort(), lambda: True)
    first_fit(problem, all_day)

    assert first_fit(problem, over) is not None
    assert over.work_count < all_day.work_count
