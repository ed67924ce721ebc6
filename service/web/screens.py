"""GET /v1/screens: the screens that the shop knows."""

from __future__ import annotations

from litestar import Response, get
from litestar.di import NamedDependency

from service.web.catalogue_answers import Asked, Wish
from service.web.catalogue_wire import ScreenPage
from service.web.parameters import CodeInPath, Cursor, Limit


@get("/v1/screens", operation_id="list_screens", tags=["catalogue"], summary="List screens")
async def list_screens(asked: NamedDependency[Asked], *, cursor: Cursor = None, limit: Limit = 50) -> Response[bytes | None]:
    """List the screens that the shop knows, by model."""
    return asked.page(asked.catalogue.screens.items(), Wish(cursor=cursor, limit_count=limit), ScreenPage)


@get("/v1/screens/{code:str}", operation_id="get_screen", tags=["catalogue"], summary="One screen")
async def get_screen(asked: NamedDependency[Asked], code: CodeInPath) -> Response[bytes | None]:
    """One screen, by model."""
    return asked.item(asked.catalogue.screens, code)
