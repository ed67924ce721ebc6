"""GET /v1/brackets: the screen brackets that the shop knows."""

from __future__ import annotations

from litestar import Response, get
from litestar.di import NamedDependency

from service.web.catalogue_answers import Asked, Wish
from service.web.catalogue_wire import BracketPage
from service.web.parameters import CodeInPath, Cursor, Limit


@get("/v1/brackets", operation_id="list_brackets", tags=["catalogue"], summary="List screen brackets")
async def list_brackets(asked: NamedDependency[Asked], *, cursor: Cursor = None, limit: Limit = 50) -> Response[bytes | None]:
    """List the screen brackets that the shop knows, by model."""
    return asked.page(asked.catalogue.brackets.items(), Wish(cursor=cursor, limit_count=limit), BracketPage)


@get("/v1/brackets/{code:str}", operation_id="get_bracket", tags=["catalogue"], summary="One screen bracket")
async def get_bracket(asked: NamedDependency[Asked], code: CodeInPath) -> Response[bytes | None]:
    """One screen bracket, by model."""
    return asked.item(asked.catalogue.brackets, code)
