"""GET /docs and /openapi.json: the contract, for people and for programs. Files of this package, no outside address."""

from __future__ import annotations

import hashlib
from functools import cache
from importlib.resources import files
from typing import Any, Final

import msgspec
from litestar import Request, Response, get
from litestar.di import NamedDependency
from litestar.params import FromPath

from service.errors import Reason
from service.web.conditional import is_held
from service.web.problems import ProblemError

MAY_BE_HELD: Final = "public, max-age=3600"
PAGE_POLICY: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
    "connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'"
)
# Address below /docs: file, media type.
PARTS: Final = {
    "": ("index.html", "text/html"),
    "start.js": ("start.js", "text/javascript"),
    "swagger-ui-bundle.js": ("swagger-ui-bundle.js", "text/javascript"),
    "swagger-ui.css": ("swagger-ui.css", "text/css"),
    "favicon.png": ("favicon-32x32.png", "image/png"),
}


class Document(msgspec.Struct, frozen=True, kw_only=True):
    """A file as it is served."""

    body: bytes
    media_type: str
    tag: str


def document(body: bytes, media_type: str) -> Document:
    """A file with its entity tag."""
    return Document(body=body, media_type=media_type, tag=f'"{hashlib.sha256(body).hexdigest()[:32]}"')


@cache
def part(name: str) -> Document | None:
    """A part of the page by its address below /docs; None: there is none."""
    if name not in PARTS:
        return None
    file, media_type = PARTS[name]
    return document(files("service.web").joinpath("docs_page", file).read_bytes(), media_type)


def serve(request: Request[Any, Any, Any], found: Document, headers: dict[str, str] | None = None) -> Response[bytes | None]:
    """A file, or 304 if the client holds it."""
    all_headers = {"ETag": found.tag, "Cache-Control": MAY_BE_HELD, **(headers or {})}
    if is_held(request.headers.get("if-none-match"), found.tag):
        return Response(None, status_code=304, headers=all_headers)
    return Response(found.body, media_type=found.media_type, headers=all_headers)


@get("/openapi.json", operation_id="get_contract", tags=["contract"], summary="This document")
async def get_contract(request: Request[Any, Any, Any], contract: NamedDependency[Document]) -> Response[bytes | None]:
    """The contract as OpenAPI 3.1."""
    return serve(request, contract)


@get("/docs", include_in_schema=False)
async def get_docs(request: Request[Any, Any, Any]) -> Response[bytes | None]:
    """The contract as a page."""
    return _serve_part(request, "")


@get("/docs/{name:str}", include_in_schema=False)
async def get_docs_part(request: Request[Any, Any, Any], name: FromPath[str]) -> Response[bytes | None]:
    """What the page is made of."""
    return _serve_part(request, name)


def _serve_part(request: Request[Any, Any, Any], name: FromPath[str]) -> Response[bytes | None]:
    found = part(name)
    if found is None:
        raise ProblemError(Reason.NOT_FOUND, "There is nothing at this address.")
    return serve(request, found, {"Content-Security-Policy": PAGE_POLICY})
