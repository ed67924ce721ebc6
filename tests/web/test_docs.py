"""The contract as a page: files of our own, nothing from elsewhere."""

from __future__ import annotations

import re
from importlib.resources import files
from typing import TYPE_CHECKING

import pytest

from tests.web.client import CONTRACT

if TYPE_CHECKING:
    import httpx

pytestmark = pytest.mark.anyio
PARTS = {
    "/docs": "text/html",
    "/docs/start.js": "text/javascript",
    "/docs/swagger-ui-bundle.js": "text/javascript",
    "/docs/swagger-ui.css": "text/css",
    "/docs/favicon.png": "image/png",
}


async def test_the_contract_is_the_file_as_it_is(client: httpx.AsyncClient) -> None:
    answer = await client.get("/openapi.json")
    again = await client.get("/openapi.json", headers={"if-none-match": answer.headers["etag"]})

    assert (200, CONTRACT, "application/json") == (answer.status_code, answer.content, answer.headers["content-type"])
    assert again.status_code == 304


@pytest.mark.parametrize("path", PARTS)
async def test_each_part_of_the_page_is_served_with_its_type(client: httpx.AsyncClient, path: str) -> None:
    answer = await client.get(path)

    assert (200, PARTS[path]) == (answer.status_code, answer.headers["content-type"].partition(";")[0])
    assert answer.headers["x-content-type-options"] == "nosniff"


async def test_the_page_asks_this_host_only(client: httpx.AsyncClient) -> None:
    page = (await client.get("/docs")).text
    policy = (await client.get("/docs")).headers["content-security-policy"]
    asked = re.findall(r'(?:src|href)="([^"]*)"', page)

    assert set(asked) <= {*PARTS, "/openapi.json"}
    assert "http" not in page
    assert "default-src 'none'; script-src 'self';" in policy
    assert "http" not in policy


@pytest.mark.parametrize("path", ["/docs/index.html", "/docs/LICENSE", "/docs/..%2Fdocs.py", "/docs/%2e%2e", "/docs/x"])
async def test_nothing_else_is_served_from_there(client: httpx.AsyncClient, path: str) -> None:
    answer = await client.get(path)

    assert answer.status_code == 404


def test_what_comes_from_elsewhere_has_its_licence_beside_it() -> None:
    folder = files("service.web").joinpath("docs_page")

    assert "Apache License" in folder.joinpath("LICENSE").read_text("utf-8")
    assert "5.35.0" in folder.joinpath("VENDORED.md").read_text("utf-8")
