"""POST /v1/estimates: a handful of answers in, a price range out."""

from __future__ import annotations

from typing import Any

from litestar import Request, Response, post
from litestar.di import NamedDependency
from litestar.params import JSONBody

from service.offers import EstimateRequest
from service.web.workshop import Workshop


@post("/v1/estimates", status_code=200, operation_id="create_estimate", tags=["calculations"], summary="Estimate a price")
async def create_estimate(
    data: JSONBody[EstimateRequest], request: Request[Any, Any, Any], workshop: NamedDependency[Workshop]
) -> Response[bytes]:
    """Put a price range with tax on a handful of answers: a real design, laid out, checked, cut and taken off.

    Low and high are the 10th and the 90th percentile of what it may come to once the room is surveyed. The answer lists what was
    assumed with its effect on the price, what to ask next, and cautions for a buyer. Its cuts are greedy and not proven to cost
    least. `request` in the answer is the survey that was designed, for `POST /v1/quotes`; patches of alternatives are on it.
    The same answers give the same bytes. A browser key may call it: it tells nothing of what the shop pays.
    """
    return await workshop.estimate(data, request)
