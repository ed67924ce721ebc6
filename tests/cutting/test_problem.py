from __future__ import annotations

import msgspec
import numpy as np

from service.cutting import BarAim, BarStock
from service.cutting.problem import cost_of, state_bars, usable_tenth_mm, without
from tests.cutting.jobs import bars

# Two steps of 2400, one of 3000, an offcut; kerf 4, trim 10.
JOB = msgspec.structs.replace(
    bars([(1000, 2, False), (600, 3, True), (1000, 1, True)], [], trim=100),
    stock=(
        BarStock(code="B", length_tenth_mm=24_000, cost_minor=400),
        BarStock(code="A", length_tenth_mm=24_000, cost_minor=350, copies_count=2),
        BarStock(code="C", length_tenth_mm=30_000, cost_minor=500),
        BarStock(code="OFF", length_tenth_mm=7_000, copies_count=1, offcut=True),
        BarStock(code="SHORT", length_tenth_mm=5_000, cost_minor=1),
        BarStock(code="NONE", length_tenth_mm=24_000, cost_minor=1, copies_count=0),
    ),
)
PROBLEM = state_bars(JOB)


def test_equal_lengths_are_one_kind_and_sizes_are_divided_by_what_they_share() -> None:
    """By hand: 1004 and 604 in tenths share 40; bars: (L - 100 + 40) / 40, rounded down."""
    assert (40, (251, 151), (3, 3)) == (PROBLEM.unit_tenth_mm, PROBLEM.sizes, PROBLEM.demands)
    assert (748, 598, 173) == tuple(of.capacity for of in PROBLEM.classes)
    assert (2 * 748, True) == (PROBLEM.cells, PROBLEM.tables_fit)
    assert 1 == PROBLEM.kerf


def test_bars_of_one_length_go_cheapest_first_as_far_as_they_last() -> None:
    two_four = PROBLEM.classes[1]

    assert [(350, 2), (400, 6)] == [(step.cost, step.copies) for step in two_four.steps]
    assert (350 * 2 + 400, 3) == two_four.costs(3)
    assert 8 == two_four.copies


def test_by_length_an_offcut_on_hand_counts_nothing() -> None:
    problem = state_bars(msgspec.structs.replace(JOB, aim=BarAim.LENGTH))

    assert [30_000, 24_000, 0] == [of.steps[0].cost for of in problem.classes]


def test_a_plan_costs_its_cheapest_bars() -> None:
    one = np.array([1, 0])

    assert (350 + 350 + 400 + 500, 4) == cost_of(PROBLEM.classes, [(1, one), (1, one), (1, one), (0, one), (2, one)])
    assert (0, 0) == cost_of(PROBLEM.classes, [])


def test_what_is_left_has_fewer_pieces_and_fewer_cheap_bars() -> None:
    rest = without(PROBLEM, [1, 0], [1, 1, 1, 2])

    assert (1, 0) == rest.demands
    assert [0, 5] == [step.copies for step in rest.classes[1].steps]
    assert 0 == rest.classes[2].copies


def test_trim_is_taken_off_the_bar() -> None:
    assert 23_900 == usable_tenth_mm(JOB.stock[0], JOB)


def test_nothing_to_cut_is_a_problem_too() -> None:
    assert ((), 1) == (state_bars(bars([], [(2400, 1)])).sizes, state_bars(bars([], [(2400, 1)])).unit_tenth_mm)
