from __future__ import annotations

import resource
from typing import TYPE_CHECKING

import highspy
import numpy as np

from service.cutting import Effort, never
from service.cutting.meter import Meter
from service.cutting.solver import affordable, new_solver, run_integer

if TYPE_CHECKING:
    import pytest


def knapsacks(columns: int = 60, rows: int = 30) -> highspy.HighsLp:
    """A model that takes many nodes: random knapsacks."""
    numbers = np.random.default_rng(3)
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = columns, rows
    weights = numbers.integers(1, 60, (rows, columns)).astype(float)
    model.col_cost_ = -numbers.integers(10, 99, columns).astype(float)
    model.col_lower_, model.col_upper_ = np.zeros(columns), np.ones(columns)
    model.row_lower_, model.row_upper_ = np.full(rows, -highspy.kHighsInf), weights.sum(axis=1) / 3
    model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    model.a_matrix_.start_ = np.arange(rows + 1, dtype=np.int32) * columns
    model.a_matrix_.index_ = np.tile(np.arange(columns, dtype=np.int32), rows)
    model.a_matrix_.value_ = weights.ravel()
    model.integrality_ = [highspy.HighsVarType.kInteger] * columns
    return model


def run(meter: Meter) -> highspy.HighsModelStatus:
    solver = new_solver()
    solver.passModel(knapsacks())
    return run_integer(solver, 1_800, meter)


def test_nothing_is_printed(capfd: pytest.CaptureFixture[str]) -> None:
    run(Meter(Effort(work_count=50), never))

    assert ("", "") == capfd.readouterr()


def test_the_work_left_limits_the_nodes() -> None:
    meter = Meter(Effort(work_count=10), never)
    status = run(meter)

    assert highspy.HighsModelStatus.kOptimal != status
    assert meter.is_over()


def test_the_same_programme_ends_at_the_same_point_each_time() -> None:
    first, second = Meter(Effort(work_count=200), never), Meter(Effort(work_count=200), never)

    assert run(first) == run(second)
    assert first.left_micros() == second.left_micros()


def test_the_callers_clock_interrupts() -> None:
    assert highspy.HighsModelStatus.kInterrupt == run(Meter(Effort(work_count=100_000), lambda: True))


def test_a_large_programme_is_not_begun_with_little_work_left() -> None:
    meter = Meter(Effort(work_count=100), never)

    assert (True, False) == (affordable(10_000, meter), affordable(100_000, meter))


def test_solvers_leave_no_memory_behind() -> None:
    """2,000 solvers with small models: well under 30 MB more, where solvers that stay alive keep some 100 kB each."""
    before = _peak_after(200)

    assert _peak_after(2_000) - before < 30_000


def _peak_after(solvers: int) -> int:
    """Largest memory of the process so far, kB, after so many more solvers."""
    for _ in range(solvers):
        solver = new_solver()
        solver.passModel(knapsacks(6, 3))
        run_integer(solver, 18, Meter(Effort(work_count=100), never))
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
