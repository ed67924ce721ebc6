from __future__ import annotations

from service.cutting import Defect, SheetPiece, SheetStock
from service.cutting.sheet_problem import kind_key, state_sheets
from tests.cutting.jobs import sheets


def test_kerf_and_trim_are_taken_out() -> None:
    """By hand: 996 x 496 with kerf 4 is 1000 x 500, unit 500; the sheet (2440 - 20 + 4) x (1220 - 20 + 4) holds 4 x 2 units."""
    problem = state_sheets(sheets([(996, 496, 3)], trim=100))
    (kind,), (of,) = problem.kinds, problem.classes

    assert (5_000, 2, 1, 3) == (problem.unit_tenth_mm, kind.width, kind.height, kind.demand)
    assert (4, 2) == (of.width, of.height)
    assert (True, True, False) == (of.holds(4, 2), of.holds(1, 1), of.holds(5, 1))


def test_a_piece_that_may_be_turned_lies_either_way() -> None:
    turned = SheetPiece(label="a", width_tenth_mm=10, height_tenth_mm=20, rotatable=True)
    fixed = SheetPiece(label="b", width_tenth_mm=10, height_tenth_mm=20)
    square = SheetPiece(label="c", width_tenth_mm=10, height_tenth_mm=10, rotatable=True)

    assert (20, 10, True) == kind_key(turned)
    assert (10, 20, False) == kind_key(fixed)
    assert (10, 10, False) == kind_key(square)
    assert 2 == len(state_sheets(sheets([(400, 300, 1)])).kinds[0].ways())


def test_a_defect_keeps_its_place_and_gives_way_for_the_saw() -> None:
    """By hand, kerf 4, trim 10, unit 1: a defect at 110..130 lies at 100..120 when trimmed; a padded piece may reach 104."""
    hole = Defect(x_tenth_mm=1_100, y_tenth_mm=1_100, width_tenth_mm=200, height_tenth_mm=200)
    problem = state_sheets(sheets([(997, 496, 1)], trim=100, defects=(hole,)))

    assert 10 == problem.unit_tenth_mm
    assert ((104, 104, 16, 16),) == problem.classes[0].defects


def test_a_defect_in_the_trim_is_no_matter() -> None:
    edge = Defect(x_tenth_mm=0, y_tenth_mm=0, width_tenth_mm=50, height_tenth_mm=12_200)
    (of,) = state_sheets(sheets([(997, 496, 1)], trim=100, defects=(edge,))).classes

    assert 0 == of.defects[0][2]


def test_sheets_of_one_size_are_one_class_cheapest_first() -> None:
    cheap = SheetStock(code="OLD", width_tenth_mm=24_400, height_tenth_mm=12_200, cost_minor=1_000, copies_count=1)
    (of,) = state_sheets(sheets([(500, 500, 4)], extra=(cheap,))).classes

    assert [(1_000, 1), (2_390, 4)] == [(step.cost, step.copies) for step in of.bars.steps]
