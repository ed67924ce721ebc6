"""The cutting plan as it goes on the wire."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.quote.money_text import money
from service.quote.wire import (
    BarAnswer,
    BarCutAnswer,
    BarPlanAnswer,
    CutPlanAnswer,
    PlacedAnswer,
    ProofAnswer,
    SawStepAnswer,
    SheetAnswer,
    SheetPartAnswer,
    SheetPlanAnswer,
    StockAnswer,
)
from service.units import millimetres

if TYPE_CHECKING:
    from service.cutting import BarGroup, BarPlan, BoardCuts, FramePlan, Proof, SearchNote, SheetGroup, StockTaken

MM2_PER_M2 = 1_000_000


def plan_body(plan: FramePlan, currency: str) -> CutPlanAnswer:
    """Bars and sheets with every cut placed."""
    return CutPlanAnswer(bars=_bars(plan, currency), boards=tuple(_board(board, currency) for board in plan.boards))


def _bars(plan: FramePlan, currency: str) -> BarPlanAnswer:
    bars: BarPlan = plan.bars
    return BarPlanAnswer(
        bars=tuple(_bar(group) for group in bars.groups),
        stock=_stock(bars.stock, currency),
        cost=money(bars.cost_minor, currency),
        stock_length_mm=millimetres(bars.stock_length_tenth_mm),
        pieces_length_mm=millimetres(bars.pieces_length_tenth_mm),
        kerf_length_mm=millimetres(bars.kerf_length_tenth_mm),
        kept_length_mm=millimetres(bars.kept_length_tenth_mm),
        waste_length_mm=millimetres(bars.waste_length_tenth_mm),
        kerf_mm=plan.kerf_mm,
        allowance_mm=plan.allowance_mm,
        proof=_proof(bars.proof, bars.search, currency),
    )


def _bar(group: BarGroup) -> BarAnswer:
    return BarAnswer(
        name=group.name,
        code=group.code,
        length_mm=millimetres(group.length_tenth_mm),
        bars_count=group.bars_count,
        cuts=tuple(
            BarCutAnswer(
                start_mm=millimetres(cut.start_tenth_mm),
                end_mm=millimetres(cut.end_tenth_mm),
                length_mm=millimetres(cut.end_tenth_mm - cut.start_tenth_mm),
                after_measure=cut.after_measure,
                marks=tuple(labels[index] for labels in group.labels),
            )
            for index, cut in enumerate(group.cuts)
        ),
        rest_mm=millimetres(group.rest_tenth_mm),
        keep=group.keep,
    )


def _board(board: BoardCuts, currency: str) -> SheetPlanAnswer:
    plan = board.plan
    return SheetPlanAnswer(
        board_code=board.code,
        description=board.description,
        with_allowance=board.with_allowance,
        sheets=tuple(_sheet(group) for group in plan.groups),
        stock=_stock(plan.stock, currency),
        cost=money(plan.cost_minor, currency),
        stock_area_m2=round(plan.stock_area_mm2 / MM2_PER_M2, 4),
        pieces_area_m2=round(plan.pieces_area_mm2 / MM2_PER_M2, 4),
        proof=_proof(plan.proof, plan.search, currency),
    )


def _sheet(group: SheetGroup) -> SheetAnswer:
    return SheetAnswer(
        name=group.name,
        code=group.code,
        width_mm=millimetres(group.width_tenth_mm),
        height_mm=millimetres(group.height_tenth_mm),
        sheets_count=group.sheets_count,
        pieces=tuple(
            PlacedAnswer(
                x_mm=millimetres(piece.x_tenth_mm),
                y_mm=millimetres(piece.y_tenth_mm),
                width_mm=millimetres(piece.width_tenth_mm),
                height_mm=millimetres(piece.height_tenth_mm),
                rotated=piece.rotated,
                after_measure=piece.after_measure,
                marks=tuple(labels[index] for labels in group.labels),
            )
            for index, piece in enumerate(group.pieces)
        ),
        steps=tuple(
            SawStepAnswer(
                parts=step.parts,
                direction=step.direction,
                trim=step.trim,
                stop_mm=millimetres(step.stop_tenth_mm),
                cuts_count=step.cuts_count,
                yields=step.yields,
            )
            for step in group.steps
        ),
        parts=tuple(
            SheetPartAnswer(
                name=part.name,
                parent=part.parent,
                kind=part.kind,
                x_mm=millimetres(part.x_tenth_mm),
                y_mm=millimetres(part.y_tenth_mm),
                width_mm=millimetres(part.width_tenth_mm),
                height_mm=millimetres(part.height_tenth_mm),
            )
            for part in group.parts
        ),
    )


def _stock(taken: tuple[StockTaken, ...], currency: str) -> tuple[StockAnswer, ...]:
    return tuple(
        StockAnswer(code=one.code, taken_count=one.taken_count, each=money(one.cost_each_minor, currency)) for one in taken
    )


def _proof(proof: Proof, search: SearchNote, currency: str) -> ProofAnswer:
    return ProofAnswer(
        aim=proof.aim.value,
        cost=money(proof.cost_minor, currency),
        cost_bound=money(proof.cost_bound_minor, currency),
        bought_length_mm=millimetres(proof.bought_length_tenth_mm),
        length_bound_mm=millimetres(proof.length_bound_tenth_mm),
        gap_ratio=round(proof.gap_ratio, 6),
        first_proven=proof.first_proven,
        bought_count=proof.bought_count,
        bought_bound_count=proof.bought_bound_count,
        bought_proven=proof.bought_proven,
        leftover_mm=millimetres(proof.leftover_tenth_mm),
        leftover_proven=proof.leftover_proven,
        method=search.method,
        stopped=search.stopped,
        fallback=search.fallback,
        engines=search.engines,
    )
