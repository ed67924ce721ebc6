"""Cutting plans as text: every bar and sheet with what is cut from it, and how good the plan is."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from service.quote.text_layout import number, row, runs_of, title, wrapped

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.cut_plans import BarAnswer, ProofAnswer, SheetAnswer, StockAnswer
    from service.quote.wire_cuts import BoardPlanAnswer, CutPlanAnswer, FrameBarsAnswer
    from service.units import Money


def cuts_text(plan: CutPlanAnswer) -> Iterator[str]:
    """Bars, then sheets."""
    yield from title("BARS AND THEIR CUTS (mm)")
    yield from _bars(plan.bars)
    for other in plan.other_bars:
        yield f"{other.strength_class} {number(other.thickness_mm)} x {number(other.width_mm)}, made stronger for the checks:"
        yield from _bars(other)
    yield from title("SHEETS AND THEIR CUTS (mm, from the lower left corner as the sheet lies)")
    for board in plan.boards:
        yield from _board(board)


def _bars(bars: FrameBarsAnswer) -> Iterator[str]:
    left = f"; {bars.allowance_mm} mm longer what is cut after measuring (*)" if bars.allowance_mm else ""
    yield from wrapped(f"{_stock(bars.stock)}{_cost(bars.cost)}; {_proof(bars.proof, 'bars')}")
    yield from wrapped(f"saw cut {number(bars.kerf_mm)}{left}")
    for bar in bars.bars:
        yield from _bar(bar)


def _stock(stock: tuple[StockAnswer, ...]) -> str:
    return ", ".join(f"{one.taken_count} x {one.code}" for one in stock)


def _cost(cost: Money | None) -> str:
    return ", no price" if cost is None else f" = {cost.amount} {cost.currency}"


def _proof(proof: ProofAnswer, things: str) -> str:
    """What is proven of a plan, and how far from the least it may be where it is not."""
    fewest = "proven" if proof.bought_proven else f"not proven: at least {proof.bought_bound_count}"
    count = f"{proof.bought_count} {things.removesuffix('s') if proof.bought_count == 1 else things}, fewest {fewest}"
    if proof.aim == "length":
        return f"least length {_least(proof, number(proof.length_bound_mm))}; {count}"
    bound = proof.cost_bound
    return count if bound is None else f"least cost {_least(proof, f'{bound.amount} {bound.currency}')}; {count}"


def _least(proof: ProofAnswer, bound: str) -> str:
    return "proven" if proof.first_proven else f"not proven: at least {bound}, gap {proof.gap_ratio:.2%}"


def _bar(bar: BarAnswer) -> Iterator[str]:
    """Bars that are cut alike: their cuts once, then the marks of each."""
    count = "1 bar" if bar.bars_count == 1 else f"{bar.bars_count} bars"
    cuts = []
    for (length, late), group in groupby(bar.cuts, key=lambda cut: (cut.length_mm, cut.after_measure)):
        same = len(list(group))
        cuts.append(f"{f'{same} x ' if same > 1 else ''}{number(length)}{'*' if late else ''}")
    kept = ", keep it" if bar.keep else ""
    yield from row(f"{bar.name:5}{count} of {number(bar.length_mm)}", f"{' + '.join(cuts)}; rest {number(bar.rest_mm)}{kept}", 22)
    for index in range(bar.bars_count):
        yield from wrapped(runs_of(sorted_marks(bar, index)), 22, 0)


def sorted_marks(bar: BarAnswer, index: int) -> list[str]:
    """Marks of one bar in the order of its cuts; of equal cuts, in the order of their numbers."""
    marks = []
    for _length, group in groupby(bar.cuts, key=lambda cut: (cut.length_mm, cut.after_measure)):
        marks += sorted((cut.marks[index] for cut in group), key=lambda mark: (len(mark), mark))
    return marks


def _allowance(board: BoardPlanAnswer) -> str:
    """Whether the ceiling edges are left longer; where they are not, nothing is there to trim."""
    if board.with_allowance:
        return "; with the allowance on ceiling edges"
    late = any(piece.after_measure for sheet in board.sheets for piece in sheet.pieces)
    return "; ceiling edges (*) have no allowance on these sheets: cut them only when the ceiling is measured" if late else ""


def _board(board: BoardPlanAnswer) -> Iterator[str]:
    left = _allowance(board)
    yield from wrapped(f"{board.description}: {_stock(board.stock)}{_cost(board.cost)}; {_proof(board.proof, 'sheets')}{left}")
    for sheet in board.sheets:
        yield from _sheet(sheet)


def _sheet(sheet: SheetAnswer) -> Iterator[str]:
    count = "1 sheet" if sheet.sheets_count == 1 else f"{sheet.sheets_count} sheets"
    marked_out = ", for the plunge saw" if sheet.lines else ""
    yield f"{sheet.name:5}{count} of {number(sheet.width_mm)} x {number(sheet.height_mm)}{marked_out}"
    for piece in sheet.pieces:
        late, turned = "*" if piece.after_measure else "", "  turned" if piece.rotated else ""
        size = f"{number(piece.width_mm)} x {number(piece.height_mm)}{late}"
        yield f"     {runs_of(piece.marks):17}{size:16}at {number(piece.x_mm)}, {number(piece.y_mm)}{turned}"
    for line in sheet.lines:
        late, way = "*" if line.after_measure else "", "along" if line.direction == "rip" else "across"
        yield f"     saw {way} at {number(line.at_mm)}{late} from {number(line.from_mm)} to {number(line.to_mm)}"
