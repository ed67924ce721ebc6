"""GET /v1/materials: what the shop sells, with prices."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Annotated

from litestar import Response, get
from litestar.di import NamedDependency
from litestar.params import QueryParameter

from service.catalogue import Sought
from service.web.catalogue_answers import Asked, Wish
from service.web.catalogue_wire import MaterialPage, priced
from service.web.parameters import CodeInPath, Cursor, GreatestWidth, Limit

if TYPE_CHECKING:
    from service.catalogue import Catalogue, Material

KIND_PATTERN = r"^[a-z_]{1,40}(?!\n)$"
LeastLength = Annotated[int | None, QueryParameter(ge=0, le=20_000, description="Only what is at least this long, mm.")]
GreatestLength = Annotated[int | None, QueryParameter(ge=0, le=20_000, description="Only what is at most this long, mm.")]
Kind = Annotated[str | None, QueryParameter(pattern=KIND_PATTERN, description="Only this kind, such as `timber` or `board`.")]


@get("/v1/materials", operation_id="list_materials", tags=["catalogue"], summary="List materials")
async def list_materials(
    asked: NamedDependency[Asked],
    *,
    cursor: Cursor = None,
    limit: Limit = 50,
    kind: Kind = None,
    least_length_mm: LeastLength = None,
    greatest_length_mm: GreatestLength = None,
    greatest_width_mm: GreatestWidth = None,
) -> Response[bytes | None]:
    """List what the shop sells, by code, with the price of a pack from each number of packs on."""
    sought = Sought(
        words=(("kind", kind),), sizes=(("length_mm", least_length_mm, greatest_length_mm), ("width_mm", None, greatest_width_mm))
    )
    wish = Wish(cursor=cursor, limit_count=limit, sought=sought)
    return asked.page(asked.catalogue.materials, wish, partial(_page, asked.catalogue))


def _page(catalogue: Catalogue, *, items: tuple[Material, ...], next_cursor: str | None, catalogue_revision: str) -> MaterialPage:
    found = tuple(priced(item, catalogue) for item in items)
    return MaterialPage(items=found, next_cursor=next_cursor, catalogue_revision=catalogue_revision)


@get("/v1/materials/{code:str}", operation_id="get_material", tags=["catalogue"], summary="One material")
async def get_material(asked: NamedDependency[Asked], code: CodeInPath) -> Response[bytes | None]:
    """One thing that the shop sells, with its prices."""
    found = asked.catalogue.materials.get(code)
    return asked.item({} if found is None else {code: priced(found, asked.catalogue)}, code)
