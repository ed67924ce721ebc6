"""POST /v1/cut-plans: the cutting stage on its own."""

from __future__ import annotations

from typing import Any

from litestar import Request, Response, post
from litestar.di import NamedDependency
from litestar.params import JSONBody

from service.cut_plans import CutPlanRequest
from service.web.workshop import Workshop


@post("/v1/cut-plans", status_code=200, operation_id="create_cut_plan", tags=["calculations"], summary="Plan the cuts")
async def create_cut_plan(
    data: JSONBody[CutPlanRequest], request: Request[Any, Any, Any], workshop: NamedDependency[Workshop]
) -> Response[bytes]:
    """Cut lengths from bars, rectangles from sheets, or both, at least cost: every cut placed, and how good the plan provably is.

    Needs no catalogue: stock and prices come with the request. `proven` means that the value of the plan equals a lower bound of
    our own. The same request gives the same bytes, unless the clock ended a search: `stopped` then says `clock_guard`.
    """
    return await workshop.cut(data, request)
