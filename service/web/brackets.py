"""GET /v1/brackets: the screen brackets that the shop knows."""

from __future__ import annotations

from typing import Annotated

from litestar import Response, get
from litestar.di import NamedDependency
from litestar.params import QueryParameter

from service.catalogue import Sought
from service.web.catalogue_answers import Asked, Wish
from service.web.catalogue_wire import BracketPage
from service.web.parameters import CodeInPath, Cursor, GreatestDepth, Limit

KIND_PATTERN = r"^[a-z_]{1,40}(?!\n)$"
Kind = Annotated[str | None, QueryParameter(pattern=KIND_PATTERN, description="Only this kind, such as `fixed` or `tilt`.")]
LeastRating = Annotated[int | None, QueryParameter(ge=0, le=1_000, description="Only those that carry at least this, kg.")]


@get("/v1/brackets", operation_id="list_brackets", tags=["catalogue"], summary="List screen brackets")
async def list_brackets(
    asked: NamedDependency[Asked],
    *,
    cursor: Cursor = None,
    limit: Limit = 50,
    kind: Kind = None,
    least_rating_kg: LeastRating = None,
    greatest_depth_mm: GreatestDepth = None,
) -> Response[bytes | None]:
    """List the screen brackets that the shop knows, by model."""
    sought = Sought(words=(("kind", kind),), sizes=(("rating_kg", least_rating_kg, None), ("depth_mm", None, greatest_depth_mm)))
    return asked.page(asked.catalogue.brackets, Wish(cursor=cursor, limit_count=limit, sought=sought), BracketPage)


@get("/v1/brackets/{code:str}", operation_id="get_bracket", tags=["catalogue"], summary="One screen bracket")
async def get_bracket(asked: NamedDependency[Asked], code: CodeInPath) -> Response[bytes | None]:
    """One screen bracket, by model."""
    return asked.item(asked.catalogue.brackets, code)
