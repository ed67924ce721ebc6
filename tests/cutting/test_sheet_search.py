from __future__ import annotations

from service.cutting import Effort, FirstCut, Method, SheetJob, never
from service.cutting.meter import Meter
from service.cutting.sheet_greedy import greedy_plans
from service.cutting.sheet_packing import Way
from service.cutting.sheet_problem import state_sheets
from service.cutting.sheet_search import SheetSearch, edge_to_edge
from tests.cutting.jobs import PANELS_A, sheets


def searched(job: SheetJob, work: int = 2_000) -> SheetSearch:
    problem, meter = state_sheets(job), Meter(Effort(work_count=work), never)
    search = SheetSearch(problem, edge_to_edge(FirstCut.ANY), meter, lambda _plan: True)
    search.run(greedy_plans(problem, meter))
    return search


def test_value_and_bound_meet_on_example_a() -> None:
    search = searched(sheets(PANELS_A))

    assert ((7_170, 3), (7_170, 3), 3) == (search.value, search.low, search.fewest)
    assert search.done


def test_pieces_that_fill_a_sheet_are_put_on_one() -> None:
    """By hand, kerf 0, grain fixed: 6 x 6, 6 x 4, 4 x 6 and 4 x 4 fill 10 x 10."""
    sizes = [(600, 600, 1), (600, 400, 1), (400, 600, 1), (400, 400, 1)]
    full = searched(sheets(sizes, (1000, 1000), kerf=0, rotatable=False))

    assert (1, True) == (full.value[1], full.done)


def test_hard_jobs_are_handed_to_the_list_of_sets() -> None:
    """Twenty panels, 2 to 3 on a sheet: greedy needs more than the bound; the list of all sets closes the gap."""
    panels = [(97, 52), (88, 61), (83, 44), (76, 39), (71, 66), (69, 33), (64, 58), (61, 47), (58, 29), (55, 51)]
    search = searched(sheets([(10 * w, 10 * h, 1) for w, h in panels], (1000, 1000), kerf=0, rotatable=False))

    assert search.done
    assert search.value[1] == search.low[1]


def test_without_work_the_bound_and_the_greedy_plan_stand() -> None:
    search = searched(sheets(PANELS_A), work=0)

    assert search.plans
    assert Method.FIRST_FIT == search.method


def test_equally_good_plans_are_kept_side_by_side() -> None:
    search = searched(sheets(PANELS_A))
    search.ask(Way.LEFTOVERS, 64)

    assert len(search.plans) == len(set(search.plans)) > 1


def test_a_plan_that_cannot_be_sawn_as_asked_is_dropped() -> None:
    problem, meter = state_sheets(sheets(PANELS_A)), Meter(Effort(), never)
    search = SheetSearch(problem, edge_to_edge(FirstCut.ANY), meter, lambda _plan: False)
    search.run(greedy_plans(problem, meter))

    assert [] == search.plans
    assert not search.done
