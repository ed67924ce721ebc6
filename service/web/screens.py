"""GET /v1/screens: the screens that the shop knows."""

from __future__ import annotations

from typing import Annotated

from litestar import Response, get
from litestar.di import NamedDependency
from litestar.params import QueryParameter

from service.catalogue import Sought
from service.web.catalogue_answers import Asked, Wish
from service.web.catalogue_wire import ScreenPage
from service.web.parameters import CodeInPath, Cursor, GreatestHeight, GreatestWidth, Limit

LeastDiagonal = Annotated[int | None, QueryParameter(ge=0, le=200, description="Only screens of at least this diagonal, inches.")]
GreatestDiagonal = Annotated[
    int | None, QueryParameter(ge=0, le=200, description="Only screens of at most this diagonal, inches.")
]


@get("/v1/screens", operation_id="list_screens", tags=["catalogue"], summary="List screens")
async def list_screens(
    asked: NamedDependency[Asked],
    *,
    cursor: Cursor = None,
    limit: Limit = 50,
    least_diagonal_in: LeastDiagonal = None,
    greatest_diagonal_in: GreatestDiagonal = None,
    greatest_width_mm: GreatestWidth = None,
    greatest_height_mm: GreatestHeight = None,
) -> Response[bytes | None]:
    """List the screens that the shop knows, by model."""
    sought = Sought(
        sizes=(
            ("diagonal_in", least_diagonal_in, greatest_diagonal_in),
            ("body_width_mm", None, greatest_width_mm),
            ("body_height_mm", None, greatest_height_mm),
        )
    )
    return asked.page(asked.catalogue.screens, Wish(cursor=cursor, limit_count=limit, sought=sought), ScreenPage)


@get("/v1/screens/{code:str}", operation_id="get_screen", tags=["catalogue"], summary="One screen")
async def get_screen(asked: NamedDependency[Asked], code: CodeInPath) -> Response[bytes | None]:
    """One screen, by model."""
    return asked.item(asked.catalogue.screens, code)
