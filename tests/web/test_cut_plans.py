"""POST /v1/cut-plans over HTTP: without any catalogue, with every fault at once."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from service.web import EdgeLimits, KeyParts, WebParts, make_application
from service.workers import InlineRunner
from tests.cut_plans.cut_requests import bars_body, pounds, sheets_body
from tests.web.client import NO_BOOKS, application, client_of
from tests.web.doubles import HeldKeeper, HeldKeys

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    import httpx

pytestmark = pytest.mark.anyio
PATH = "/v1/cut-plans"


@pytest.fixture
async def client() -> AsyncIterator[httpx.AsyncClient]:
    """The real jobs, and a keeper that has never reached the database."""
    async with client_of(application(runner=InlineRunner("service.workers.jobs:JOBS"), keeper=HeldKeeper())) as client:
        yield client


async def test_a_plan_needs_no_catalogue(client: httpx.AsyncClient) -> None:
    answer = await client.post(PATH, json=bars_body() | sheets_body())
    plan = answer.json()

    assert (200, "application/json") == (answer.status_code, answer.headers["content-type"])
    assert (pounds("11.00"), pounds("10.00")) == (plan["bars"]["cost"], plan["sheets"]["cost"])
    assert "catalogue-revision" not in answer.headers
    assert 64 == len(plan["origin"]["request_digest"])


async def test_the_same_request_has_the_same_bytes(client: httpx.AsyncClient) -> None:
    first, second = [await client.post(PATH, json=bars_body()) for _ in range(2)]

    assert first.content == second.content


async def test_faults_of_shape_come_all_at_once(client: httpx.AsyncClient) -> None:
    pieces = [{"label": "a", "length_mm": -1}, {"label": "b", "length_mm": 0}, {"label": "c", "length_mm": 5, "colour": "red"}]
    answer = await client.post(PATH, json=bars_body(pieces=pieces, kerf_mm=4000))
    errors = answer.json()["errors"]

    expected = {"/bars/pieces/0/length_mm", "/bars/pieces/1/length_mm", "/bars/pieces/2/colour", "/bars/kerf_mm"}
    assert (422, expected) == (answer.status_code, {error["pointer"] for error in errors})
    assert all(error["remedy"] for error in errors)


async def test_faults_of_sense_come_all_at_once(client: httpx.AsyncClient) -> None:
    pieces = [{"label": "too long", "length_mm": 4801}]
    board = {"code": "b", "width_mm": 2400, "height_mm": 1200, "price": pounds("1.00", "EUR")}
    answer = await client.post(PATH, json=bars_body(pieces=pieces) | sheets_body(stock=[board]))
    problem = answer.json()

    assert (422, "application/problem+json") == (answer.status_code, answer.headers["content-type"])
    assert ["/sheets/stock/0/price/currency", "/bars/pieces/0/length_mm"] == [error["pointer"] for error in problem["errors"]]


async def test_the_work_limit_of_the_server_reaches_the_job() -> None:
    known = HeldKeys()
    parts = WebParts(
        runner=InlineRunner("service.workers.jobs:JOBS"),
        keeper=HeldKeeper(),
        keys=KeyParts(ring=known, uses=known, desk=known),
        books=NO_BOOKS,
        demo_account="demo",
        contract=b"{}",
        body_limit_bytes=65_536,
        limits=EdgeLimits(deadline_seconds=10.0),
        cut_work_count=150,
    )
    async with client_of(make_application(parts)) as client:
        answer = await client.post(PATH, json=bars_body() | {"effort": "thorough"})

    assert 150 == answer.json()["origin"]["work_limit_count"]


async def test_there_is_no_get(client: httpx.AsyncClient) -> None:
    assert 405 == (await client.get(PATH)).status_code
