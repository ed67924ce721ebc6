"""POST /v1/frames: every member, panel, level and closure sum of one design."""

from __future__ import annotations

from typing import Any

from litestar import Request, Response, post
from litestar.di import NamedDependency
from litestar.params import JSONBody

from service.survey import SurveyRequest
from service.web.workshop import Workshop
from service.workers import JobKind


@post("/v1/frames", status_code=200, operation_id="create_frame", tags=["calculations"], summary="Lay out the frame")
async def create_frame(
    data: JSONBody[SurveyRequest], request: Request[Any, Any, Any], workshop: NamedDependency[Workshop]
) -> Response[bytes]:
    """Lay out one false chimney breast: members, panels, openings, levels, sizes, closure sums, assumptions.

    A survey that is sound but cannot be built is answered with 200 and `outcome: "unbuildable"`.
    """
    return await workshop.answer(JobKind.FRAME, data, request)
