"""A plan for sheets as it goes on the wire."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.cut_plans.proof_body import leftovers_answer, money_or_none, proof_answer, stock_answer
from service.cut_plans.wire import (
    AimAnswer,
    AimName,
    MarkLineAnswer,
    PlacedAnswer,
    SawStepAnswer,
    SheetAnswer,
    SheetPartAnswer,
    SheetPlanAnswer,
)
from service.units import millimetres

if TYPE_CHECKING:
    from service.cutting import MarkLine, PlacedPiece, Proof, SheetGroup, SheetPart, SheetPlan, SheetStep

MM2_PER_M2: Final = 1_000_000


def sheet_plan_answer(plan: SheetPlan, *, currency: str | None, kerf_mm: float) -> SheetPlanAnswer:
    """Sheets with every cut placed.

    Args:
        plan: as the cutting stage made it.
        currency: of its costs; None: nothing has a price.
        kerf_mm: the saw cut that it was made with.
    """
    return SheetPlanAnswer(
        aims=_aims(plan.proof, priced=currency is not None),
        sheets=tuple(_sheet(group) for group in plan.groups),
        stock=stock_answer(plan.stock, currency),
        leftovers=leftovers_answer(plan.leftovers),
        cost=money_or_none(plan.cost_minor, currency),
        stock_area_m2=_square_metres(plan.stock_area_mm2),
        pieces_area_m2=_square_metres(plan.pieces_area_mm2),
        kept_area_m2=_square_metres(plan.kept_area_mm2),
        lost_area_m2=_square_metres(plan.lost_area_mm2),
        kerf_mm=kerf_mm,
        proof=proof_answer(plan.proof, plan.search, currency),
    )


def _square_metres(area_mm2: float) -> float:
    return round(area_mm2 / MM2_PER_M2, 4)


def _aims(proof: Proof, *, priced: bool) -> tuple[AimAnswer, ...]:
    """The aims in their order; without prices the first falls away."""
    aims = (
        AimAnswer(aim=AimName.LEAST_COST, proven=proof.first_proven),
        AimAnswer(aim=AimName.FEWEST_SHEETS, proven=proof.bought_proven),
        AimAnswer(aim=AimName.LARGEST_LEFTOVER, proven=proof.leftover_proven),
        AimAnswer(aim=AimName.FEW_SAW_SETTINGS, proven=False),
    )
    return aims if priced else aims[1:]


def _sheet(group: SheetGroup) -> SheetAnswer:
    return SheetAnswer(
        name=group.name,
        code=group.code,
        width_mm=millimetres(group.width_tenth_mm),
        height_mm=millimetres(group.height_tenth_mm),
        offcut=group.offcut,
        sheets_count=group.sheets_count,
        pieces=tuple(_placed(piece, group, index) for index, piece in enumerate(group.pieces)),
        steps=tuple(_step(step) for step in group.steps),
        parts=tuple(_part(part) for part in group.parts),
        layout=group.layout,
        lines=tuple(_line(line) for line in group.lines),
    )


def _line(line: MarkLine) -> MarkLineAnswer:
    return MarkLineAnswer(
        direction=line.direction,
        at_mm=millimetres(line.at_tenth_mm),
        from_mm=millimetres(line.from_tenth_mm),
        to_mm=millimetres(line.to_tenth_mm),
        after_measure=line.after_measure,
    )


def _placed(piece: PlacedPiece, group: SheetGroup, index: int) -> PlacedAnswer:
    return PlacedAnswer(
        x_mm=millimetres(piece.x_tenth_mm),
        y_mm=millimetres(piece.y_tenth_mm),
        width_mm=millimetres(piece.width_tenth_mm),
        height_mm=millimetres(piece.height_tenth_mm),
        rotated=piece.rotated,
        after_measure=piece.after_measure,
        marks=tuple(labels[index] for labels in group.labels),
    )


def _step(step: SheetStep) -> SawStepAnswer:
    return SawStepAnswer(
        parts=step.parts,
        direction=step.direction,
        trim=step.trim,
        stop_mm=millimetres(step.stop_tenth_mm),
        cuts_count=step.cuts_count,
        yields=step.yields,
    )


def _part(part: SheetPart) -> SheetPartAnswer:
    return SheetPartAnswer(
        name=part.name,
        parent=part.parent,
        kind=part.kind,
        x_mm=millimetres(part.x_tenth_mm),
        y_mm=millimetres(part.y_tenth_mm),
        width_mm=millimetres(part.width_tenth_mm),
        height_mm=millimetres(part.height_tenth_mm),
    )
