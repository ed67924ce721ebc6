"""The cutting plan of a frame as it goes on the wire."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from service.cut_plans import bar_plan_answer, sheet_plan_answer
from service.cutting import BarAim
from service.quote.wire_cuts import BoardPlanAnswer, CutPlanAnswer, FrameBarsAnswer, OtherBarsAnswer
from service.units import millimetres

if TYPE_CHECKING:
    import msgspec

    from service.cut_plans import BarPlanAnswer
    from service.cutting import BarPlan, BoardCuts, FramePlan


def plan_body(plan: FramePlan, currency: str) -> CutPlanAnswer:
    """Bars and sheets with every cut placed; what the price book does not price has no cost, not one of nothing."""
    return CutPlanAnswer(
        bars=FrameBarsAnswer(**_fields(_bars(plan.bars, plan, currency)), allowance_mm=plan.allowance_mm),
        other_bars=tuple(
            OtherBarsAnswer(
                **_fields(_bars(one.plan, plan, currency)),
                allowance_mm=plan.allowance_mm,
                thickness_mm=millimetres(one.timber.thickness_tenth_mm),
                width_mm=millimetres(one.timber.width_tenth_mm),
                strength_class=one.timber.strength_class,
            )
            for one in plan.other_bars
        ),
        boards=tuple(_board(board, currency) for board in plan.boards),
    )


def _bars(bars: BarPlan, plan: FramePlan, currency: str) -> BarPlanAnswer:
    priced = bars.proof.aim is BarAim.COST
    return bar_plan_answer(bars, currency=currency if priced else None, kerf_mm=plan.kerf_mm)


def _board(board: BoardCuts, currency: str) -> BoardPlanAnswer:
    sheets = sheet_plan_answer(board.plan, currency=currency if board.plan.cost_minor else None, kerf_mm=board.kerf_mm)
    return BoardPlanAnswer(
        **_fields(sheets), board_code=board.code, description=board.description, with_allowance=board.with_allowance
    )


def _fields(part: msgspec.Struct) -> dict[str, Any]:
    """The fields of a plain plan, for a struct that adds to them; the parts are shared, not copied."""
    return {name: getattr(part, name) for name in part.__struct_fields__}
