from __future__ import annotations

from collections import Counter

import pytest

from service.cutting import Defect, Effort, FirstCut, SheetStock, never
from service.cutting.meter import Meter
from service.cutting.sheet_greedy import sheets_cost
from service.cutting.sheet_packing import Way, ask_packing
from service.cutting.sheet_problem import SheetProblem, state_sheets
from tests.cutting.jobs import PANELS_A, sheets
from tests.cutting.test_sheets import sawable


def asked(problem: SheetProblem, way: Way = Way.TREE, width: int = 64, *, first_cut: FirstCut = FirstCut.ANY) -> tuple | None:  # type: ignore[type-arg]  # a plan or nothing
    return ask_packing(problem, way, width, first_cut=first_cut, meter=Meter(Effort(work_count=100_000), never))


@pytest.mark.parametrize("way", Way)
def test_every_search_gives_whole_sawable_plans(way: Way) -> None:
    problem = state_sheets(sheets(PANELS_A))
    plan = asked(problem, way, 2 if way is Way.CORRECTION else 64)

    assert plan is not None
    placed = Counter(piece.kind for layout in plan for piece in layout.pieces)
    assert [kind.demand for kind in problem.kinds] == [placed[at] for at in range(len(problem.kinds))]
    assert all(sawable([piece[1:] for piece in layout.pieces]) for layout in plan)
    assert (3 * 2_390, 3) == sheets_cost(problem, plan)


def test_the_same_question_gives_the_same_plan() -> None:
    problem = state_sheets(sheets(PANELS_A))

    assert asked(problem) == asked(problem)


def test_a_free_offcut_is_taken_first_though_a_cost_must_be_above_nothing() -> None:
    """`bench/cutting/findings.md`, section 5, point 6."""
    offcut = SheetStock(code="OFF", width_tenth_mm=12_000, height_tenth_mm=6_000, copies_count=1, offcut=True)
    problem = state_sheets(sheets([(1000, 500, 1)], extra=(offcut,)))
    plan = asked(problem)

    assert plan is not None
    assert (0, 0) == sheets_cost(problem, plan)


def test_an_empty_answer_is_no_plan_whatever_it_claims() -> None:
    """`bench/cutting/findings.md`, section 5, point 1: infeasible input comes back empty and "proven"."""
    assert asked(state_sheets(sheets([(1300, 700, 3)], copies=2))) is None


def test_one_copy_with_trims_is_found() -> None:
    """`bench/cutting/findings.md`, section 5, point 5."""
    assert asked(state_sheets(sheets([(1000, 500, 2)], trim=100, copies=1))) is not None


def test_pieces_keep_off_defects() -> None:
    hole = Defect(x_tenth_mm=11_000, y_tenth_mm=5_000, width_tenth_mm=2_000, height_tenth_mm=2_000)
    problem = state_sheets(sheets([(1100, 500, 4)], kerf=0, rotatable=False, defects=(hole,)))
    plan = asked(problem)
    x, y, width, height = problem.classes[0].defects[0]

    assert plan is not None
    assert not any(
        p.x < x + width and x < p.x + p.width and p.y < y + height and y < p.y + p.height
        for layout in plan
        for p in layout.pieces
    )


@pytest.mark.parametrize("first_cut", [FirstCut.RIP, FirstCut.CROSS])
def test_the_first_cut_can_be_asked_for(first_cut: FirstCut) -> None:
    plan = asked(state_sheets(sheets([(1200, 600, 4)], kerf=0)), first_cut=first_cut)

    assert plan is not None
    assert 1 == len(plan)


def test_what_is_too_much_is_not_asked() -> None:
    """`bench/cutting/findings.md`, section 5, point 9."""
    many = state_sheets(sheets([(300 + k, 200 + k, 60) for k in range(20)]))
    little = Meter(Effort(work_count=1), never)

    assert asked(many) is None
    assert ask_packing(state_sheets(sheets(PANELS_A)), Way.TREE, 2_048, first_cut=FirstCut.ANY, meter=little) is None


def test_nothing_is_printed(capfd: pytest.CaptureFixture[str]) -> None:
    asked(state_sheets(sheets(PANELS_A)))

    assert ("", "") == capfd.readouterr()
