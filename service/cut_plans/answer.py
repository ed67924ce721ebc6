"""The door: a request in, a cutting plan out. Pure, and the same bytes for the same request while the work limits hold."""

from __future__ import annotations

import hashlib
from importlib.metadata import version
from typing import TYPE_CHECKING, Final

import msgspec

from service.cut_plans.bar_body import bar_plan_answer
from service.cut_plans.jobs import bar_job, faults_of, sheet_job
from service.cut_plans.prices import all_priced, currency_of, none_priced
from service.cut_plans.requests import EffortName
from service.cut_plans.sheet_body import sheet_plan_answer
from service.cut_plans.wire import CutPlanMade, CutPlanOrigin
from service.cutting import QUICK, STANDARD, THOROUGH, Effort, SheetLayout, cut_bars, cut_sheets, never
from service.errors import Fault, RequestFaultsError

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.cut_plans.requests import CutPlanRequest
    from service.cut_plans.wire import BarPlanAnswer, SheetPlanAnswer
    from service.cutting import Stop

EFFORTS: Final = {EffortName.QUICK: QUICK, EffortName.STANDARD: STANDARD, EffortName.THOROUGH: THOROUGH}
MOST_WORK_COUNT: Final = 5_000  # house choice: about 5 s for a whole request, within the usual deadline
PLAN_ENGINE: Final = "; ".join(f"{name} {version(name)}" for name in ("inglewright", "packingsolver", "highspy"))
_ENCODER: Final = msgspec.json.Encoder(order="deterministic")


def answer_cut_plan(request: CutPlanRequest, stop: Stop = never, most_work_count: int = MOST_WORK_COUNT) -> CutPlanMade:
    """Cut what is asked for.

    Args:
        request: bars, sheets or both.
        stop: the caller's clock; the best plan so far is then given, marked.
        most_work_count: the server's limit of work, for all searches together.

    Raises:
        RequestFaultsError: with every fault of the request.
    """
    if faults := faults_of(request):
        raise RequestFaultsError(faults)
    effort = Effort(work_count=min(EFFORTS[request.effort].work_count, most_work_count // _searches_count(request)))
    bars, of_bars = _tried("/bars", lambda: _bars(request, effort, stop))
    sheets, of_sheets = _tried("/sheets", lambda: _sheets(request, effort, stop))
    if of_bars or of_sheets:
        raise RequestFaultsError((*of_bars, *of_sheets))
    digest = hashlib.sha256(_ENCODER.encode(request)).hexdigest()
    origin = CutPlanOrigin(engine_version=PLAN_ENGINE, work_limit_count=effort.work_count, request_digest=digest)
    return CutPlanMade(bars=bars, sheets=sheets, origin=origin)


def _searches_count(request: CutPlanRequest) -> int:
    """Bars take one search, sheets another, and a third where a plunge saw is allowed."""
    sheets = request.sheets
    plunge = sheets is not None and sheets.layout is SheetLayout.PLUNGE_SAW
    return (request.bars is not None) + (sheets is not None) + plunge


def _tried[T](stem: str, make: Callable[[], T]) -> tuple[T | None, tuple[Fault, ...]]:
    """A plan, or the faults that only the search could find, such as too few copies; pointers run from the body."""
    try:
        return make(), ()
    except RequestFaultsError as error:
        return None, tuple(msgspec.structs.replace(fault, pointer=f"{stem}{fault.pointer}") for fault in error.faults)


def _bars(request: CutPlanRequest, effort: Effort, stop: Stop) -> BarPlanAnswer | None:
    if request.bars is None:
        return None
    currency = currency_of(request) if all_priced(request.bars.stock) and not none_priced(request.bars.stock) else None
    return bar_plan_answer(cut_bars(bar_job(request.bars), effort, stop), currency=currency, kerf_mm=request.bars.kerf_mm)


def _sheets(request: CutPlanRequest, effort: Effort, stop: Stop) -> SheetPlanAnswer | None:
    if request.sheets is None:
        return None
    currency = None if none_priced(request.sheets.stock) else currency_of(request)
    return sheet_plan_answer(
        cut_sheets(sheet_job(request.sheets), effort, stop), currency=currency, kerf_mm=request.sheets.kerf_mm
    )
