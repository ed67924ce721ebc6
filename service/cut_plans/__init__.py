"""Cut plans: the cutting stage on its own, asked and answered on the wire. A quote writes its plan in the same forms."""

from service.cut_plans.answer import MOST_WORK_COUNT, answer_cut_plan
from service.cut_plans.bar_body import bar_plan_answer
from service.cut_plans.requests import CutPlanRequest
from service.cut_plans.sheet_body import sheet_plan_answer
from service.cut_plans.wire import (
    BarAnswer,
    BarPlanAnswer,
    CutPlanMade,
    ProofAnswer,
    SheetAnswer,
    SheetPlanAnswer,
    StockAnswer,
)

__all__ = [
    "MOST_WORK_COUNT",
    "BarAnswer",
    "BarPlanAnswer",
    "CutPlanMade",
    "CutPlanRequest",
    "ProofAnswer",
    "SheetAnswer",
    "SheetPlanAnswer",
    "StockAnswer",
    "answer_cut_plan",
    "bar_plan_answer",
    "sheet_plan_answer",
]
