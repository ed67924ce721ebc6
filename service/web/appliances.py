"""GET /v1/appliances: the electric fires that the shop knows."""

from __future__ import annotations

from typing import Annotated

from litestar import Response, get
from litestar.di import NamedDependency
from litestar.params import QueryParameter

from service.catalogue import Sought
from service.web.catalogue_answers import Asked, Wish
from service.web.catalogue_wire import AppliancePage
from service.web.parameters import CodeInPath, Cursor, GreatestDepth, GreatestHeight, GreatestWidth, Limit

OpenEnds = Annotated[int | None, QueryParameter(ge=0, le=2, description="Only this number of open ends.")]


@get("/v1/appliances", operation_id="list_appliances", tags=["catalogue"], summary="List fires")
async def list_appliances(
    asked: NamedDependency[Asked],
    *,
    cursor: Cursor = None,
    limit: Limit = 50,
    open_ends_count: OpenEnds = None,
    greatest_width_mm: GreatestWidth = None,
    greatest_height_mm: GreatestHeight = None,
    greatest_depth_mm: GreatestDepth = None,
) -> Response[bytes | None]:
    """List the inset electric fires that the shop knows, by model."""
    sought = Sought(
        words=(("open_ends_count", open_ends_count),),
        sizes=(
            ("body_width_mm", None, greatest_width_mm),
            ("body_height_mm", None, greatest_height_mm),
            ("body_depth_mm", None, greatest_depth_mm),
        ),
    )
    return asked.page(asked.catalogue.appliances, Wish(cursor=cursor, limit_count=limit, sought=sought), AppliancePage)


@get("/v1/appliances/{code:str}", operation_id="get_appliance", tags=["catalogue"], summary="One fire")
async def get_appliance(asked: NamedDependency[Asked], code: CodeInPath) -> Response[bytes | None]:
    """One inset electric fire, by model."""
    return asked.item(asked.catalogue.appliances, code)
