"""Hostile cutting requests against real worker processes, while normal requests run: nobody else notices.

`INGLEWRIGHT_TESTS_LONG=1` asks for the same with the standard effort instead of the quick one.
"""

from __future__ import annotations

import asyncio
import json
import os
import re
from contextlib import asynccontextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import httpx
import pytest

from service.web import EdgeLimits, KeyParts, WebParts, make_application
from service.workers import PoolPlan, WorkerPlan, WorkerPool, example_survey
from tests.cut_plans.cut_requests import bars_body, pounds, sheets_body
from tests.cut_plans.hostile import hostile
from tests.web.client import NO_BOOKS
from tests.web.doubles import HeldKeys, demo_keeper

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

pytestmark = pytest.mark.anyio
LONG = bool(os.environ.get("INGLEWRIGHT_TESTS_LONG"))
DEADLINE_SECONDS = 120.0 if LONG else 30.0
README = Path(__file__).parents[2].joinpath("README.md").read_text("utf-8")
TOTAL_OF_EXAMPLE = re.findall(r'"total": {"amount": "([0-9.]+)"', README)[0]  # what tests/test_readme.py holds to be true


@pytest.fixture
def anyio_backend() -> str:
    return "asyncio"


@asynccontextmanager
async def running(*, budget_seconds: float = DEADLINE_SECONDS) -> AsyncIterator[tuple[WorkerPool, httpx.AsyncClient]]:
    """The whole application over two real worker processes."""
    worker = WorkerPlan(registry="service.workers.jobs:JOBS", memory_bytes=2**31, start_seconds=60)
    pool = WorkerPool(PoolPlan(workers_count=2, queue_count=300, budget_seconds=budget_seconds, worker=worker))
    await pool.start()
    known = HeldKeys()
    parts = WebParts(
        runner=pool,
        keeper=demo_keeper(),
        keys=KeyParts(ring=known, uses=known, desk=known),
        books=NO_BOOKS,
        demo_account="demo",
        contract=b"{}",
        body_limit_bytes=256 * 1024,
        limits=EdgeLimits(deadline_seconds=DEADLINE_SECONDS),
    )
    transport = httpx.ASGITransport(app=make_application(parts), raise_app_exceptions=False)
    try:
        async with httpx.AsyncClient(transport=transport, base_url="http://shop.example", timeout=None) as client:  # noqa: S113 - the service has its own
            yield pool, client
    finally:
        await pool.stop()


async def post(client: httpx.AsyncClient, path: str, body: bytes) -> httpx.Response:
    return await client.post(path, content=body, headers={"content-type": "application/json"})


async def few_at_a_time(client: httpx.AsyncClient, asked: list[tuple[str, bytes]], *, at_once_count: int) -> list[httpx.Response]:
    """Answers in the order of the requests, so many of which are out at a time."""
    room = asyncio.Semaphore(at_once_count)

    async def one(path: str, body: bytes) -> httpx.Response:
        async with room:
            return await post(client, path, body)

    return await asyncio.gather(*(one(path, body) for path, body in asked))


def normal() -> list[tuple[str, bytes, Any]]:
    """Twenty requests whose answers are known: address, body, what the answer must hold."""
    bars = ("/v1/cut-plans", json.dumps(bars_body()).encode(), pounds("11.00"))
    sheets = ("/v1/cut-plans", json.dumps(sheets_body()).encode(), pounds("10.00"))
    quote = ("/v1/quotes", json.dumps(example_survey()).encode(), pounds(TOTAL_OF_EXAMPLE))
    return [*[bars] * 8, *[sheets] * 8, *[quote] * 4]


def value_of(answer: dict[str, Any]) -> Any:  # noqa: ANN401 - any JSON value
    """The amount that a normal answer is known by."""
    return answer["price"]["total"] if "price" in answer else (answer["bars"] or answer["sheets"])["cost"]


def asked_count(body: bytes) -> int:
    wanted = json.loads(body)
    return sum(piece.get("pieces_count", 1) for kind in ("bars", "sheets") for piece in wanted.get(kind, {}).get("pieces", ()))


def planned_count(answer: dict[str, Any]) -> int:
    bars = [cut for bar in (answer["bars"] or {"bars": ()})["bars"] for cut in bar["cuts"]]
    return sum(
        len(piece["marks"])
        for piece in (*bars, *(piece for sheet in (answer["sheets"] or {"sheets": ()})["sheets"] for piece in sheet["pieces"]))
    )


def wrong_with(name: str, body: bytes, answer: httpx.Response) -> str:
    """What is wrong with the answer to a hostile request: neither a whole plan nor a problem document with a remedy."""
    if answer.status_code == 200:
        plan = answer.json()
        proofs = [part["proof"] for part in (plan["bars"], plan["sheets"]) if part]
        sound = all(proof["first_proven"] or proof["gap_ratio"] > 0 for proof in proofs)
        return "" if sound and planned_count(plan) == asked_count(body) else f"{name}: not the plan of what was asked"
    problem = answer.json()
    told = answer.headers["content-type"].startswith("application/problem+json") and problem["remedy"]
    known = answer.status_code in {400, 413, 422, 503} and problem["reason"] != "OVERLOADED"
    return "" if told and known else f"{name}: {answer.status_code} {problem.get('reason')}"


async def test_hostile_requests_disturb_nobody() -> None:
    bodies = [(name, body.replace(b'"effort": "quick"', b'"effort": "standard"') if LONG else body) for name, body in hostile()]
    assert len(bodies) > 90
    async with running() as (pool, client):
        bad = few_at_a_time(client, [("/v1/cut-plans", body) for _, body in bodies], at_once_count=4)
        good = few_at_a_time(client, [(path, body) for path, body, _ in normal()], at_once_count=1)
        hostile_answers, answers = await asyncio.gather(bad, good)
        alive = pool.state.workers_count

    assert [value for _, _, value in normal()] == [value_of(answer.json()) for answer in answers]
    assert [] == [
        wrong for (name, body), answer in zip(bodies, hostile_answers, strict=True) if (wrong := wrong_with(name, body, answer))
    ]
    assert 2 == alive


async def until(pool: WorkerPool, *, busy_count: int) -> None:
    while pool.state.busy_count != busy_count:  # noqa: ASYNC110 - the pool has no event for it
        await asyncio.sleep(0.01)


async def test_a_cancelled_request_ends_its_search() -> None:
    """Without anybody who waits, work that would last seconds ends at the next look at the clock, and the worker stays."""
    pieces = [{"label": "p", "length_mm": 203 + 19 * at, "pieces_count": 6} for at in range(180)]
    body = json.dumps(bars_body(pieces=pieces) | {"effort": "thorough"}).encode()
    async with running() as (pool, client):
        task = asyncio.create_task(post(client, "/v1/cut-plans", body))
        await until(pool, busy_count=1)
        await asyncio.sleep(0.2)
        task.cancel()
        began = asyncio.get_running_loop().time()
        await until(pool, busy_count=0)
        waited_seconds = asyncio.get_running_loop().time() - began
        state = pool.state

    assert waited_seconds < 2.5
    assert (2, 0) == (state.workers_count, state.replaced_count)
