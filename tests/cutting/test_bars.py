from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING

import msgspec
import pytest
from hypothesis import given, settings

from service.cutting import GREEDY, BarAim, BarJob, BarStock, CuttingError, Effort, Method, Stopped, cut_bars
from service.cutting import bars as door
from service.cutting.verify_bars import mistakes_in_bars
from service.errors import RequestFaultsError
from tests.cutting.jobs import STOCK_A, bar_jobs, bars, example_a, first_fit_decreasing, least_cost

if TYPE_CHECKING:
    from service.cutting import BarPlan


def test_example_a_costs_what_was_proven() -> None:
    """`knowledge/worked-examples.md`, section 0: A with allowance 20: 62.97 with 12 bars, or 35400 mm with 8 bars."""
    by_cost, by_length = cut_bars(example_a()), cut_bars(example_a(BarAim.LENGTH))

    assert (6_297, 12, True, True) == _proven(by_cost)
    assert (354_000, 8) == (by_length.proof.bought_length_tenth_mm, by_length.bars_count)
    assert (True, True) == (by_length.proof.first_proven, by_length.proof.bought_proven)
    assert (0, 354_000) == (by_length.proof.cost_bound_minor, by_length.proof.length_bound_tenth_mm)


def _proven(plan: BarPlan) -> tuple[int, int, bool, bool]:
    return plan.cost_minor, plan.bars_count, plan.proof.first_proven, plan.proof.bought_proven


@given(bar_jobs())
@settings(max_examples=60)
def test_every_piece_lies_once_and_everything_adds_up(job: BarJob) -> None:
    plan = cut_bars(job)
    placed = sorted(label for group in plan.groups for row in group.labels for label in row)
    parts = (plan.pieces_length_tenth_mm, plan.kerf_length_tenth_mm, plan.trim_length_tenth_mm, plan.kept_length_tenth_mm)

    assert () == mistakes_in_bars(job, plan)
    assert not plan.search.fallback
    assert sorted(piece.label for piece in job.pieces for _ in range(piece.pieces_count)) == placed
    assert plan.stock_length_tenth_mm == sum(parts) + plan.waste_length_tenth_mm


@given(bar_jobs(one_stock=True))
@settings(max_examples=40)
def test_never_dearer_than_first_fit_decreasing(job: BarJob) -> None:
    by_cost = msgspec.structs.replace(job, aim=BarAim.COST)

    assert cut_bars(by_cost).cost_minor <= first_fit_decreasing(by_cost)


@given(bar_jobs(most_kinds=3, most_count=2))
@settings(max_examples=40)
def test_a_proof_agrees_with_trying_everything(job: BarJob) -> None:
    by_cost = msgspec.structs.replace(job, aim=BarAim.COST)
    plan = cut_bars(by_cost)

    assert (least_cost(by_cost), True) == (plan.cost_minor, plan.proof.first_proven)


@given(bar_jobs())
@settings(max_examples=25)
def test_more_kinds_of_stock_never_cost_more(job: BarJob) -> None:
    more = msgspec.structs.replace(job, stock=(*job.stock, BarStock(code="MORE", length_tenth_mm=39_000, cost_minor=600)))
    few, many = cut_bars(job), cut_bars(more)

    assert few.proof.first_proven
    assert many.proof.first_proven
    if job.aim is BarAim.COST:
        assert many.cost_minor <= few.cost_minor
    else:
        assert many.proof.bought_length_tenth_mm <= few.proof.bought_length_tenth_mm


@given(bar_jobs(most_kinds=5))
@settings(max_examples=25)
def test_scaling_all_lengths_changes_nothing(job: BarJob) -> None:
    plan, larger = cut_bars(job), cut_bars(_scaled(job, 3))

    assert (plan.cost_minor, plan.bars_count) == (larger.cost_minor, larger.bars_count)
    assert 3 * plan.proof.leftover_tenth_mm == larger.proof.leftover_tenth_mm
    assert plan.proof.bought_proven == larger.proof.bought_proven


def _scaled(job: BarJob, by: int) -> BarJob:
    replace = msgspec.structs.replace
    return replace(
        job,
        pieces=tuple(replace(piece, length_tenth_mm=by * piece.length_tenth_mm) for piece in job.pieces),
        stock=tuple(replace(stock, length_tenth_mm=by * stock.length_tenth_mm) for stock in job.stock),
        kerf_tenth_mm=by * job.kerf_tenth_mm,
        end_trim_tenth_mm=by * job.end_trim_tenth_mm,
    )


@given(bar_jobs())
@settings(max_examples=25)
def test_the_order_of_the_job_is_no_matter(job: BarJob) -> None:
    pieces, stock = list(job.pieces), list(job.stock)
    Random(1).shuffle(pieces)  # noqa: S311 - an order for a test
    Random(2).shuffle(stock)  # noqa: S311 - an order for a test
    shuffled = msgspec.structs.replace(job, pieces=tuple(pieces), stock=tuple(stock))

    assert msgspec.json.encode(cut_bars(job)) == msgspec.json.encode(cut_bars(shuffled))


def test_base_pieces_come_first_on_every_bar_and_long_before_short() -> None:
    for group in cut_bars(example_a()).groups:
        order = [(cut.after_measure, -cut.length_tenth_mm) for cut in group.cuts]

        assert sorted(order) == order


def test_pieces_that_wait_for_the_measure_lie_on_few_bars() -> None:
    plan = cut_bars(bars([(1000, 6, False), (1000, 2, True)], [(2400, 400)]))
    waiting = sum(group.bars_count for group in plan.groups if any(cut.after_measure for cut in group.cuts))

    assert (4, 1) == (plan.bars_count, waiting)


def test_the_longest_leftover_is_one_long_rest() -> None:
    """By hand: 5 x 700 on two bars of 2400 and kerf 4: 3 + 2; the rest is 2400 - 2 x 704 = 992."""
    plan = cut_bars(bars([(700, 5, False)], [(2400, 400)]))

    assert (2, 9_920, True) == (plan.bars_count, plan.proof.leftover_tenth_mm, plan.proof.leftover_proven)
    assert [9_920] == [rest.width_tenth_mm for rest in plan.leftovers]


def test_an_offcut_on_hand_is_used_before_a_bar_is_bought() -> None:
    """By hand: 2 x 1100 and kerf 4 need 2204: one bar of 2400, or two offcuts of 1150 for nothing."""
    offcut = BarStock(code="OFF", length_tenth_mm=11_500, copies_count=2, offcut=True)
    job = bars([(1100, 2, False)], [(2400, 400)])
    plan = cut_bars(msgspec.structs.replace(job, stock=(*job.stock, offcut)))

    assert (0, 2, 0, True) == (plan.cost_minor, plan.bars_count, plan.proof.bought_count, plan.proof.bought_proven)


def test_of_two_prices_for_a_length_the_lower_goes_first_as_far_as_it_lasts() -> None:
    """By hand: three bars are needed; two are there at 300, the third costs 400."""
    job = bars([(2000, 3, False)], [])
    steps = (
        BarStock(code="NEW", length_tenth_mm=24_000, cost_minor=400),
        BarStock(code="OLD", length_tenth_mm=24_000, cost_minor=300, copies_count=2),
    )
    plan = cut_bars(msgspec.structs.replace(job, stock=steps))

    assert 2 * 300 + 400 == plan.cost_minor
    assert {"OLD": 2, "NEW": 1} == {line.code: line.taken_count for line in plan.stock}


def test_nothing_to_cut_costs_nothing() -> None:
    plan = cut_bars(bars([], STOCK_A))

    assert (Method.NOTHING_TO_CUT, 0, True) == (plan.search.method, plan.cost_minor, plan.proof.leftover_proven)
    assert () == mistakes_in_bars(bars([], STOCK_A), plan)


def test_too_few_copies_are_refused() -> None:
    job = bars([(2000, 3, False)], [])
    few = msgspec.structs.replace(job, stock=(BarStock(code="FEW", length_tenth_mm=24_000, cost_minor=1, copies_count=2),))

    with pytest.raises(RequestFaultsError, match="cannot give all pieces"):
        cut_bars(few)


def test_a_piece_that_fits_nowhere_is_refused_by_name() -> None:
    with pytest.raises(RequestFaultsError, match="'M0'"):
        cut_bars(bars([(5000, 1, False)], STOCK_A))


def test_hardly_any_work_still_gives_a_plan_marked_so() -> None:
    plan = cut_bars(example_a(), Effort(work_count=0))

    assert Stopped.WORK_LIMIT == plan.search.stopped
    assert () == mistakes_in_bars(example_a(), plan)
    assert plan.proof.cost_bound_minor <= 6_297 <= plan.cost_minor


def test_the_callers_clock_ends_the_search_marked_so() -> None:
    plan = cut_bars(example_a(), stop=lambda: True)

    assert Stopped.CLOCK_GUARD == plan.search.stopped
    assert () == mistakes_in_bars(example_a(), plan)


def test_a_plan_that_fails_the_check_is_replaced_by_the_greedy_one(monkeypatch: pytest.MonkeyPatch) -> None:
    answers = iter([("planted",), ()])
    monkeypatch.setattr(door, "mistakes_in_bars", lambda _job, _plan: next(answers))
    plan = cut_bars(example_a())

    assert (True, Method.FIRST_FIT, False) == (plan.search.fallback, plan.search.method, plan.proof.first_proven)
    assert () == mistakes_in_bars(example_a(), plan)


def test_no_plan_leaves_without_passing_the_check(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(door, "mistakes_in_bars", lambda _job, _plan: ("planted",))

    with pytest.raises(CuttingError, match="planted"):
        cut_bars(example_a())


def test_a_greedy_plan_is_checked_and_proves_nothing() -> None:
    plan = cut_bars(example_a(), GREEDY)

    assert [] == list(mistakes_in_bars(example_a(), plan))
    assert not plan.proof.first_proven
    assert not plan.search.fallback
    assert plan.cost_minor >= cut_bars(example_a()).cost_minor
