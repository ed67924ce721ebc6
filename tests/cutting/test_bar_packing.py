from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from hypothesis import given, settings

from service.cutting import BarStock, Effort, Method, cut_bars, never
from service.cutting.bar_packing import packed_bars
from service.cutting.meter import Meter
from service.cutting.problem import cost_of, state_bars
from service.cutting.verify_bars import mistakes_in_bars
from tests.cutting.jobs import STOCK_A, bar_jobs, bars, example_a

if TYPE_CHECKING:
    import pytest

    from service.cutting import BarJob


def meter(work: int = 10_000) -> Meter:
    return Meter(Effort(work_count=work), never)


@given(bar_jobs())
@settings(max_examples=30)
def test_every_piece_is_cut_once_on_bars_that_hold_it(job: BarJob) -> None:
    problem = state_bars(job)
    plan = packed_bars(problem, meter()) or ()
    sizes = np.array(problem.sizes)

    assert list(problem.demands) == sum((counts for _, counts in plan), start=np.zeros(len(sizes), dtype=np.int64)).tolist()
    assert all(counts @ sizes <= problem.classes[number].capacity for number, counts in plan)
    for number, of in enumerate(problem.classes):
        assert sum(1 for used, _ in plan if used == number) <= of.copies


def test_the_plan_is_near_the_least_and_always_the_same() -> None:
    problem = state_bars(example_a())
    first, second = packed_bars(problem, meter()), packed_bars(problem, meter())

    assert first is not None
    assert second is not None
    assert 6_297 <= cost_of(problem.classes, first)[0] <= 6_500
    assert [(n, c.tolist()) for n, c in first] == [(n, c.tolist()) for n, c in second]


def test_an_empty_answer_is_no_plan_whatever_it_claims() -> None:
    """`bench/cutting/findings.md`, section 5, point 1: too few copies come back empty and "proven"."""
    few = BarStock(code="FEW", length_tenth_mm=24_000, cost_minor=7, copies_count=2)

    assert packed_bars(state_bars(bars([(1500, 3, False)], [], extra=(few,))), meter()) is None


def test_with_little_work_left_it_is_not_asked() -> None:
    assert packed_bars(state_bars(example_a()), meter(1)) is None


def test_very_many_kinds_get_a_plan_and_a_bound() -> None:
    """200 lengths that share no unit, on bars of 20 m: no table is made; the plan stands between bound and first fit."""
    pieces = [(1_000 + 37 * k, 3, False) for k in range(200)]
    job = bars(pieces, [(20_000, 5_000)], kerf=33)
    plan = cut_bars(job)

    assert () == mistakes_in_bars(job, plan)
    assert plan.proof.cost_bound_minor > 0
    assert plan.search.method in {Method.PACKING, Method.FIRST_FIT}
    assert plan.proof.gap_ratio < 0.03


def test_nothing_is_printed(capfd: pytest.CaptureFixture[str]) -> None:
    packed_bars(state_bars(bars([(1000, 5, False), (700, 3, False)], STOCK_A)), meter())

    assert ("", "") == capfd.readouterr()
