"""POST /v1/bills: what to buy, by code and pack."""

from __future__ import annotations

from typing import Any

from litestar import Request, Response, post
from litestar.di import NamedDependency
from litestar.params import JSONBody

from service.survey import SurveyRequest
from service.web.workshop import Workshop
from service.workers import JobKind


@post("/v1/bills", status_code=200, operation_id="create_bill", tags=["calculations"], summary="Take off the bill")
async def create_bill(
    data: JSONBody[SurveyRequest], request: Request[Any, Any, Any], workshop: NamedDependency[Workshop]
) -> Response[bytes]:
    """Take off what one false chimney breast needs: each line with the rule that its quantity comes from, in packs.

    A survey that is sound but cannot be built is answered with 200 and `outcome: "unbuildable"`.
    """
    return await workshop.answer(JobKind.BILL, data, request)
