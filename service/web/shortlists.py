"""POST /v1/shortlists: which fires and screens of the catalogue fit a room."""

from __future__ import annotations

from typing import Any

from litestar import Request, Response, post
from litestar.di import NamedDependency
from litestar.params import JSONBody

from service.offers import ShortlistRequest
from service.web.workshop import Workshop


@post("/v1/shortlists", status_code=200, operation_id="create_shortlist", tags=["calculations"], summary="List what fits a room")
async def create_shortlist(
    data: JSONBody[ShortlistRequest], request: Request[Any, Any, Any], workshop: NamedDependency[Workshop]
) -> Response[bytes]:
    """Design every fire of the catalogue with every screen in one room, best first; `ranking` states the rule.

    A pair fits where a design is laid out and all its checks pass: it has sizes and a price range as an estimate has. One that
    does not fit has what stops it, and the nearest change that makes it fit where one was found. Wishes rank, they leave nothing
    out. The same request gives the same bytes. A browser key may call it.
    """
    return await workshop.list_fitting(data, request)
