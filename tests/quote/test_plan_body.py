from __future__ import annotations

import pytest

from service.quote.plan_body import plan_body
from tests.sold_examples import NAMES, made, sell, sold, strengthened


@pytest.mark.parametrize("name", NAMES)
def test_every_bar_adds_up_on_the_wire(name: str) -> None:
    """Pieces + kerfs + rests = stock taken, to a tenth of a millimetre; every mark once."""
    at = made(name)
    bars = plan_body(at.plan, "GBP").bars
    pieces = sum(bar.bars_count * sum(cut.length_mm for cut in bar.cuts) for bar in bars.bars)
    marks = [mark for bar in bars.bars for cut in bar.cuts for mark in cut.marks]

    assert bars.pieces_length_mm == pytest.approx(pieces)
    assert bars.stock_length_mm == pytest.approx(
        bars.pieces_length_mm + bars.kerf_length_mm + bars.kept_length_mm + bars.waste_length_mm
    )
    assert sorted(member.mark for member in at.frame.members if member.from_bar) == sorted(marks)
    assert at.plan.bars.bars_count == sum(bar.bars_count for bar in bars.bars)


@pytest.mark.parametrize("name", NAMES)
def test_every_piece_lies_on_its_sheet(name: str) -> None:
    at = made(name)
    boards = plan_body(at.plan, "GBP").boards
    marks = [mark for board in boards for sheet in board.sheets for piece in sheet.pieces for mark in piece.marks]

    assert sorted(panel.mark for panel in at.frame.panels) == sorted(marks)
    for board in boards:
        for sheet in board.sheets:
            assert all(piece.x_mm + piece.width_mm <= sheet.width_mm for piece in sheet.pieces)
            assert all(piece.y_mm + piece.height_mm <= sheet.height_mm for piece in sheet.pieces)


@pytest.mark.parametrize("name", NAMES)
def test_the_saw_can_follow_the_steps(name: str) -> None:
    """Every step saws parts that lie there already, and yields parts that were not there before."""
    for board in plan_body(made(name).plan, "GBP").boards:
        for sheet in board.sheets:
            there = {part.name for part in sheet.parts if not part.parent}
            for step in sheet.steps:
                assert set(step.parts) <= there
                assert not set(step.yields) & there
                there |= set(step.yields)
            names = {part.name for part in sheet.parts}

            assert there <= names


def test_cost_and_proof_of_the_worked_example() -> None:
    """`knowledge/worked-examples.md`, A with allowance: 62.97, 12 bars, proven."""
    bars = plan_body(made("A").plan, "GBP").bars
    cost = (bars.cost.amount, bars.cost.currency) if bars.cost else ()

    assert ("62.97", "GBP", 20, 4.0) == (*cost, bars.allowance_mm, bars.kerf_mm)
    assert (True, 12, True) == (bars.proof.first_proven, bars.proof.bought_count, bars.proof.bought_proven)
    assert bars.cost == bars.proof.cost_bound


def test_what_is_not_priced_has_no_cost() -> None:
    """A custom section and board are in no price book: null, never 0.00."""
    timber = {"kind": "custom", "thickness_mm": 44, "width_mm": 70, "strength_class": "C24", "lengths_mm": [2400, 4800]}
    board = {
        "kind": "custom", "board_kind": "mdf", "thickness_mm": 16, "sheet_length_mm": 2440, "sheet_width_mm": 1220,
        "density_kg_m3": 740,
    }  # fmt: skip
    plan = plan_body(sell(sold("A", survey__brief__timber=timber, survey__brief__board=board)).plan, "GBP")

    assert (None, None, "length") == (plan.bars.cost, plan.bars.proof.cost_bound, plan.bars.proof.aim)
    assert [None, "23.90", "44.80"] == [board.cost and board.cost.amount for board in plan.boards]


def test_bars_of_another_class_stand_beside_the_jobs() -> None:
    at = strengthened()
    plan = plan_body(at.plan, "GBP")
    marks = [mark for one in (plan.bars, *plan.other_bars) for bar in one.bars for cut in bar.cuts for mark in cut.marks]

    assert [(38.0, 63.0, "C24"), (38.0, 89.0, "C24")] == [
        (one.thickness_mm, one.width_mm, one.strength_class) for one in plan.other_bars
    ]
    assert sorted(member.mark for member in at.frame.members if member.from_bar) == sorted(marks)
    assert () == plan_body(made("C").plan, "GBP").other_bars
