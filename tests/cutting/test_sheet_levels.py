from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from hypothesis import given, settings

from service.cutting import Defect, Effort, SheetStock, never
from service.cutting.meter import Meter
from service.cutting.sheet_greedy import sheets_cost
from service.cutting.sheet_levels import level_plan, level_plans
from service.cutting.sheet_problem import state_sheets
from tests.cutting.jobs import first_fit_decreasing_height, sheet_jobs, sheets
from tests.cutting.test_sheets import sawable

if TYPE_CHECKING:
    from service.cutting import SheetJob


def meter(work_count: int = 2_000) -> Meter:
    return Meter(Effort(work_count=work_count), never)


@given(sheet_jobs())
@settings(max_examples=60)
def test_it_is_the_textbooks_plan(job: SheetJob) -> None:
    problem = state_sheets(job)
    number = next(at for at, of in enumerate(problem.classes) for step in of.bars.steps if step.stock_index == 0)
    plan = level_plan(problem, number, meter())

    assert first_fit_decreasing_height(job) == (None if plan is None else sheets_cost(problem, plan)[0])
    if plan is not None:
        placed = Counter(piece.kind for layout in plan for piece in layout.pieces)

        assert [kind.demand for kind in problem.kinds] == [placed[at] for at in range(len(problem.kinds))]
        assert all(sawable([piece[1:] for piece in layout.pieces]) for layout in plan)


def test_three_levels_by_hand() -> None:
    """1000 x 1000, kerf 0, grain fixed: 600 and 400 on a level of 500, 1000 on one of 300, and 100 x 300 on a new sheet."""
    job = sheets([(600, 500, 1), (400, 500, 1), (1000, 300, 1), (100, 300, 1)], (1000, 1000), kerf=0, rotatable=False)
    plan = level_plan(state_sheets(job), 0, meter()) or ()

    assert [3, 1] == [len(layout.pieces) for layout in plan]


def test_no_plan_with_defects_or_too_few_copies() -> None:
    hole = Defect(x_tenth_mm=0, y_tenth_mm=0, width_tenth_mm=10, height_tenth_mm=10)

    assert level_plan(state_sheets(sheets([(100, 100, 1)], defects=(hole,))), 0, meter()) is None
    assert level_plan(state_sheets(sheets([(1300, 700, 3)], copies=2)), 0, meter()) is None


def test_beyond_the_first_plan_only_while_there_is_work() -> None:
    larger = SheetStock(code="L", width_tenth_mm=30_000, height_tenth_mm=15_000, cost_minor=9)
    problem = state_sheets(sheets([(300, 200, 4)], extra=(larger,)))

    assert [2, 1] == [len(level_plans(problem, meter(work))) for work in (2_000, 0)]
