"""POST /v1/quotes: the whole quote of one design."""

from __future__ import annotations

from typing import Any

from litestar import Request, Response, post
from litestar.di import NamedDependency
from litestar.params import JSONBody

from service.survey import SurveyRequest
from service.web.workshop import Workshop
from service.workers import JobKind


@post("/v1/quotes", status_code=200, operation_id="create_quote", tags=["calculations"], summary="Make a quote")
async def create_quote(
    data: JSONBody[SurveyRequest], request: Request[Any, Any, Any], workshop: NamedDependency[Workshop]
) -> Response[bytes]:
    """Design, cut, take off and price one false chimney breast.

    A survey that is sound but cannot be built is answered with 200 and `outcome: "unbuildable"`.
    """
    return await workshop.answer(JobKind.QUOTE, data, request)
