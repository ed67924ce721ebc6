"""POST /v1/drawings: one picture of a design, as SVG."""

from __future__ import annotations

from typing import Any

from litestar import Request, Response, post
from litestar.di import NamedDependency
from litestar.params import JSONBody

from service.web.workshop import Workshop
from service.workers import DrawingRequest


@post("/v1/drawings", status_code=200, operation_id="create_drawing", tags=["calculations"], summary="Draw the design")
async def create_drawing(
    data: JSONBody[DrawingRequest], request: Request[Any, Any, Any], workshop: NamedDependency[Workshop]
) -> Response[bytes]:
    """Draw one view of a false chimney breast, to scale and dimensioned, as SVG."""
    return await workshop.draw(data, request)
