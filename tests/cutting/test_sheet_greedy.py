from __future__ import annotations

from collections import Counter

from hypothesis import given, settings

from service.cutting import QUICK, Defect, Effort, SheetJob, SheetStock, cut_sheets, never
from service.cutting.meter import Meter
from service.cutting.sheet_greedy import fill_sheet, free_boxes, greedy_plans, sheets_cost
from service.cutting.sheet_problem import state_sheets
from tests.cutting.jobs import PANELS_A, sheet_jobs, sheets
from tests.cutting.test_sheets import sawable


@given(sheet_jobs())
@settings(max_examples=40)
def test_every_greedy_plan_places_all_pieces_apart_and_sawable(job: SheetJob) -> None:
    problem = state_sheets(job)
    for plan in greedy_plans(problem, Meter(Effort(), never)):
        placed = Counter(piece.kind for layout in plan for piece in layout.pieces)

        assert [kind.demand for kind in problem.kinds] == [placed[at] for at in range(len(problem.kinds))]
        for layout in plan:
            of = problem.classes[layout.number]
            assert sawable([piece[1:] for piece in layout.pieces])
            assert all(of.holds(p.x + p.width, p.y + p.height) for p in layout.pieces)


def test_greedy_alone_finds_the_three_sheets_of_example_a() -> None:
    problem = state_sheets(sheets(PANELS_A))

    assert (3 * 2_390, 3) == min(sheets_cost(problem, plan) for plan in greedy_plans(problem, Meter(Effort(), never)))


def test_a_sheet_is_filled_corner_by_corner() -> None:
    """By hand, kerf 0: 600 x 600 into 2440 x 1220: four beside each other, twice above: eight, and no ninth."""
    problem = state_sheets(sheets([(600, 600, 9)], kerf=0))

    for wide in (True, False):
        assert 8 == len(fill_sheet(problem.kinds, problem.classes[0], (0,), [9], wide=wide))


def test_a_sheet_is_cut_around_its_defects() -> None:
    """By hand: a hole in the middle leaves a strip below, one above, one on each side; together all but the hole."""
    hole = Defect(x_tenth_mm=10_000, y_tenth_mm=5_000, width_tenth_mm=1_000, height_tenth_mm=1_000)
    (of,) = state_sheets(sheets([(997, 496, 1)], kerf=0, defects=(hole,))).classes
    boxes = free_boxes(of)

    assert 4 == len(boxes)
    assert of.width * of.height - of.defects[0][2] * of.defects[0][3] == sum(w * h for _, _, w, h in boxes)


def test_too_few_copies_give_no_plan() -> None:
    assert [] == greedy_plans(state_sheets(sheets([(1300, 700, 3)], copies=2)), Meter(Effort(), never))


def hundred_sizes() -> SheetJob:
    larger = tuple(
        SheetStock(code=f"S{at}", width_tenth_mm=12_500 + 110 * at, height_tenth_mm=9_000 + 30 * at, cost_minor=900 + 7 * at)
        for at in range(99)
    )
    return sheets([(300 + at, 200 + at, 5) for at in range(20)], extra=larger)


def test_a_hundred_sizes_stay_within_the_quick_work() -> None:
    plan = cut_sheets(hundred_sizes(), QUICK)

    assert plan.search.work_count <= QUICK.work_count * 1.25


def test_once_there_is_a_plan_the_clock_ends_the_others() -> None:
    problem, all_day, over = state_sheets(hundred_sizes()), Meter(Effort(), never), Meter(Effort(), lambda: True)
    greedy_plans(problem, all_day)

    assert 1 == len(greedy_plans(problem, over))
    assert over.work_count < all_day.work_count
