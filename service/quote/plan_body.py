"""The cutting plan of a frame as it goes on the wire."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from service.cut_plans import bar_plan_answer, sheet_plan_answer
from service.cutting import BarAim
from service.quote.wire import BoardPlanAnswer, CutPlanAnswer, FrameBarsAnswer

if TYPE_CHECKING:
    import msgspec

    from service.cutting import BoardCuts, FramePlan


def plan_body(plan: FramePlan, currency: str) -> CutPlanAnswer:
    """Bars and sheets with every cut placed; what the price book does not price has no cost, not one of nothing."""
    priced = plan.bars.proof.aim is BarAim.COST
    bars = bar_plan_answer(plan.bars, currency=currency if priced else None, kerf_mm=plan.kerf_mm)
    return CutPlanAnswer(
        bars=FrameBarsAnswer(**_fields(bars), allowance_mm=plan.allowance_mm),
        boards=tuple(_board(board, currency) for board in plan.boards),
    )


def _board(board: BoardCuts, currency: str) -> BoardPlanAnswer:
    sheets = sheet_plan_answer(board.plan, currency=currency if board.plan.cost_minor else None, kerf_mm=board.kerf_mm)
    return BoardPlanAnswer(
        **_fields(sheets), board_code=board.code, description=board.description, with_allowance=board.with_allowance
    )


def _fields(part: msgspec.Struct) -> dict[str, Any]:
    """The fields of a plain plan, for a struct that adds to them; the parts are shared, not copied."""
    return {name: getattr(part, name) for name in part.__struct_fields__}
