from __future__ import annotations

from service.cutting import BarStock, Effort, Method, never
from service.cutting.first_fit import bins_of, first_fit
from service.cutting.meter import Meter
from service.cutting.problem import state_bars, without
from service.cutting.search import Search
from tests.cutting.jobs import STOCK_A, bars, example_a


def searched(job: object, work: int = 2_000, *, greedy: bool = True) -> Search:
    problem = state_bars(job)  # type: ignore[arg-type]  # a job as the builders make it
    plan = first_fit(problem, Meter(Effort(), never)) if greedy else None
    search = Search(bins_of(problem), problem.classes, plan, Meter(Effort(work_count=work), never))
    search.run(lambda demands, used: first_fit(without(problem, demands, used), search.meter))
    return search


def test_the_first_composition_that_can_be_cut_is_the_least() -> None:
    """`knowledge/worked-examples.md`, section 0: A with allowance: 62.97, 12 bars."""
    search = searched(example_a())

    assert ((6_297, 12), (6_297, 12)) == (search.value, search.low)
    assert search.done
    assert Method.PATTERNS == search.method
    assert 12 == search.fewest


def test_without_a_greedy_plan_the_same_is_found() -> None:
    assert (6_297, 12) == searched(example_a(), greedy=False).value


def test_without_work_nothing_is_claimed() -> None:
    search = searched(example_a(), work=0)

    assert not search.done
    assert search.low[0] <= 6_297


def test_too_few_copies_are_seen_to_be_impossible() -> None:
    """By hand: 3 x 1500 do not go on two bars of 2400."""
    few = BarStock(code="FEW", length_tenth_mm=24_000, cost_minor=7, copies_count=2)
    search = searched(bars([(1500, 3, False)], [], extra=(few,)))

    assert (None, True) == (search.plan, search.impossible)


def test_many_kinds_of_bar_are_searched_without_a_list() -> None:
    """12 lengths of nearly equal worth: more compositions than are listed; the plan is no dearer than by one length."""
    stock = [(2400 + 100 * k, 400 + 17 * k) for k in range(12)]
    pieces = [(417, 40, False), (633, 37, False), (951, 31, False), (1207, 29, False)]
    search = searched(bars(pieces, stock))

    assert search.low <= search.value
    assert search.value < searched(bars(pieces, stock[:1])).value


def test_only_a_better_plan_is_kept() -> None:
    search = searched(bars([(1000, 4, False)], STOCK_A))
    best = search.plan

    assert best is not None
    assert not search.offer((*best, best[0]))
    assert best == search.plan
