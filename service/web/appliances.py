"""GET /v1/appliances: the electric fires that the shop knows."""

from __future__ import annotations

from typing import Annotated

from litestar import Response, get
from litestar.di import NamedDependency
from litestar.params import QueryParameter

from service.web.catalogue_answers import Asked, Wish
from service.web.catalogue_wire import AppliancePage
from service.web.parameters import CodeInPath, Cursor, Limit

OpenEnds = Annotated[int | None, QueryParameter(ge=0, le=2, description="Only this number of open ends.")]
Width = Annotated[int | None, QueryParameter(ge=0, le=20_000, description="Only bodies of at most this width, mm.")]


@get("/v1/appliances", operation_id="list_appliances", tags=["catalogue"], summary="List fires")
async def list_appliances(
    asked: NamedDependency[Asked],
    *,
    cursor: Cursor = None,
    limit: Limit = 50,
    open_ends_count: OpenEnds = None,
    greatest_width_mm: Width = None,
) -> Response[bytes | None]:
    """List the inset electric fires that the shop knows, by model."""
    rows = asked.catalogue.appliances.items()
    ends = ((model, row) for model, row in rows if open_ends_count in {None, row.open_ends_count})
    items = ((model, row) for model, row in ends if greatest_width_mm is None or row.body_width_mm <= greatest_width_mm)
    return asked.page(items, Wish(cursor=cursor, limit_count=limit, filters=(open_ends_count, greatest_width_mm)), AppliancePage)


@get("/v1/appliances/{code:str}", operation_id="get_appliance", tags=["catalogue"], summary="One fire")
async def get_appliance(asked: NamedDependency[Asked], code: CodeInPath) -> Response[bytes | None]:
    """One inset electric fire, by model."""
    return asked.item(asked.catalogue.appliances, code)
