from __future__ import annotations

from typing import TYPE_CHECKING

from hypothesis import given, settings

from service.cutting import cut_sheets
from service.cutting.bounds import cost_bound
from service.cutting.sheet_bounds import sheet_cuts
from service.cutting.sheet_problem import state_sheets
from service.errors import RequestFaultsError
from tests.cutting.jobs import PANELS_A, sheet_jobs, sheets

if TYPE_CHECKING:
    from service.cutting import SheetJob


def least_sheets(job: SheetJob) -> int:
    return max(-(-cut.needed // int(cut.worths[0])) for cut in sheet_cuts(state_sheets(job)))


def test_five_long_panels_need_three_sheets() -> None:
    """`knowledge/worked-examples.md`, example A: the area alone says 2, the panels that must lie along the sheet say 3."""
    by_area = sheet_cuts(state_sheets(sheets(PANELS_A)))[0]

    assert 2 == -(-by_area.needed // int(by_area.worths[0]))
    assert 3 == least_sheets(sheets(PANELS_A))


def test_panels_over_half_the_sheet_go_one_to_a_sheet() -> None:
    """By hand: 1300 x 700 twice is over 2440 wide and over 1220 high, any way round."""
    assert 5 == least_sheets(sheets([(1300, 700, 5)]))


def test_panels_over_a_third_of_the_sheet_go_four_to_a_sheet() -> None:
    """By hand, kerf 0: 850 x 420 over a third of 2440 and of 1220: two by two, 9 pieces need 3 sheets (area: 2)."""
    job = sheets([(850, 420, 9)], kerf=0, rotatable=False)

    assert 3 == least_sheets(job)
    assert 3 == cut_sheets(job).sheets_count


def test_a_panel_that_may_be_turned_counts_with_its_lesser_value() -> None:
    """By hand: turning only ever helps, so that the bound with turning is no higher than the one without."""
    fixed, free = sheets([(1300, 600, 8)], (2600, 1300), rotatable=False), sheets([(1300, 600, 8)], (2600, 1300))

    assert least_sheets(free) <= least_sheets(fixed) == cut_sheets(fixed).sheets_count


@given(sheet_jobs(most_panels=5))
@settings(max_examples=30)
def test_no_bound_lies_above_a_plan(job: SheetJob) -> None:
    try:
        plan = cut_sheets(job)
    except RequestFaultsError:
        return
    problem = state_sheets(job)

    assert cost_bound(tuple(of.bars for of in problem.classes), sheet_cuts(problem)) <= plan.cost_minor
