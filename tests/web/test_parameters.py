"""Parameters: only those that there are, each once, each within its bounds; all faults at once."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    import httpx

pytestmark = pytest.mark.anyio


@pytest.mark.parametrize(
    ("query", "names"),
    [
        ("limit=0", ["limit"]),
        ("limit=201", ["limit"]),
        ("limit=-1", ["limit"]),
        ("limit=1.5", ["limit"]),
        ("limit=1e1", ["limit"]),
        ("limit=%2B5", ["limit"]),
        ("limit=%D9%A3", ["limit"]),
        ("limit=", ["limit"]),
        ("limit=" + "9" * 4_500, ["limit"]),
        ("limit=5&limit=6", ["limit"]),
        ("cursor=xyz", ["cursor"]),
        ("cursor=ABCD", ["cursor"]),
        ("cursor=", ["cursor"]),
        ("cursor=ab%0A", ["cursor"]),
        ("kind=Timber", ["kind"]),
        ("kind=timber%0A", ["kind"]),
        ("page=2", ["page"]),
        ("=x", [""]),
        ("Limit=5", ["Limit"]),
        ("page=2&limit=0&cursor=%00", ["page", "limit", "cursor"]),
    ],
)
async def test_bad_parameters_are_all_named(client: httpx.AsyncClient, query: str, names: list[str]) -> None:
    answer = await client.get(f"/v1/materials?{query}")
    problem = answer.json()

    assert (400, "BAD_PARAMETER") == (answer.status_code, problem["reason"])
    assert names == [error["parameter"] for error in problem["errors"]]
    assert all(error["detail"] and error["remedy"] for error in problem["errors"])


async def test_an_operation_without_parameters_takes_none(client: httpx.AsyncClient) -> None:
    for method, path in (("POST", "/v1/frames"), ("GET", "/health/live"), ("GET", "/openapi.json"), ("GET", "/docs")):
        answer = await client.request(method, f"{path}?x=1")

        assert answer.status_code == 400, path


@pytest.mark.parametrize("code", ["a%20b", "a.b", "%E9", "%EF%BC%A1", "x" * 33, "TM-1035A%0A", "a%3Fb"])
async def test_a_code_that_can_be_none_is_a_bad_parameter(client: httpx.AsyncClient, code: str) -> None:
    answer = await client.get(f"/v1/materials/{code}")

    assert answer.status_code in {400, 404}
    assert answer.headers["content-type"] == "application/problem+json"


async def test_a_good_code_that_nothing_has_is_not_found(client: httpx.AsyncClient) -> None:
    answer = await client.get("/v1/materials/TM-0000")

    assert (404, "NOT_FOUND") == (answer.status_code, answer.json()["reason"])
