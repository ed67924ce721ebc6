"""The whole application over a real socket, with a real database and real worker processes (their jobs are doubles)."""

from __future__ import annotations

import asyncio
import contextlib
import json
import os
import signal
from contextlib import asynccontextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import httpx
import msgspec
import pytest

from service.app import create_app
from service.settings import load_settings
from service.store import KeyDesk, Scope, load_demo, make_engine, migrate
from service.store.embedded import EmbeddedPostgres
from service.web.serving import Door, StartError, served
from tests.postgres import anyio_backend, as_service, cluster_of, demo_database_url, new_data_dir  # noqa: F401 - fixtures
from tests.store.shops import engine_of, server_key
from tests.web.client import survey_body
from tests.web.doubles import NAME

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Callable

    from service.web.asgi import ASGIApp

pytestmark = pytest.mark.anyio
DOOR = Door(host="127.0.0.1", port=0, shutdown_seconds=2)


def app_on(url: str, **changes: object) -> ASGIApp:
    """As the service's own user, open to callers without a key."""
    usual = msgspec.structs.replace(load_settings({}), workers_count=2, deadline_seconds=3.0, demo_account="demo")
    settings = msgspec.structs.replace(usual, **changes)
    return create_app(settings, as_service(url), registry=NAME)


@asynccontextmanager
async def client_of(app: ASGIApp, door: Door = DOOR) -> AsyncIterator[httpx.AsyncClient]:
    async with served(app, door) as service, httpx.AsyncClient(base_url=service.address, trust_env=False, timeout=30) as client:
        yield client


async def until(condition: Callable[[], object], seconds: float = 20) -> None:
    async with asyncio.timeout(seconds):
        while not condition():  # noqa: ASYNC110 - what is waited for is in another process
            await asyncio.sleep(0.02)


def children() -> set[int]:
    """Worker processes of this process."""
    found = set()
    for status in Path("/proc").glob("[0-9]*/status"):
        with contextlib.suppress(OSError):
            if f"PPid:\t{os.getpid()}\n" in status.read_text():
                found.add(int(status.parent.name))
    return found


async def test_a_survey_goes_in_and_an_answer_comes_out_until_nothing_is_left_running(demo_database_url: str) -> None:  # noqa: F811 - a fixture
    before = children()
    async with client_of(app_on(demo_database_url)) as client:
        ready = await client.get("/health/ready")
        answer = await client.post("/v1/frames", json=survey_body())
        page = await client.get("/v1/materials?limit=1")

    assert (200, "ready") == (ready.status_code, ready.json()["status"])
    assert (200, page.json()["catalogue_revision"]) == (answer.status_code, answer.json()["revision"])
    assert before == children()


async def test_a_worker_that_is_killed_costs_one_request(demo_database_url: str) -> None:  # noqa: F811 - a fixture
    before = children()
    async with client_of(app_on(demo_database_url, deadline_seconds=30.0)) as client:
        dozing = asyncio.create_task(client.post("/v1/frames", json=survey_body() | {"terms": {"reference": "doze"}}))
        await asyncio.sleep(0.5)
        others = [asyncio.create_task(client.post("/v1/quotes", json=survey_body())) for _ in range(5)]
        answers = await asyncio.gather(*others)
        workers = children() - before
        for pid in workers:
            os.kill(pid, signal.SIGKILL)
        lost = await dozing
        after = await client.post("/v1/frames", json=survey_body())

    assert len(workers) == 2
    assert [200] * 5 == [answer.status_code for answer in answers]
    assert (503, "WORKER_LOST") == (lost.status_code, lost.json()["reason"])
    assert after.status_code == 200


async def test_a_client_that_goes_frees_its_place_in_the_queue(demo_database_url: str) -> None:  # noqa: F811 - a fixture
    """One worker, one place: while the worker dozes, a caller waits and goes; the next one finds the place free."""
    async with client_of(app_on(demo_database_url, workers_count=1, queue_count=1)) as client:
        doze = survey_body() | {"terms": {"reference": "doze"}}
        dozing = asyncio.create_task(client.post("/v1/frames", json=doze))
        await asyncio.sleep(0.4)
        waiting = asyncio.create_task(client.post("/v1/frames", json=survey_body()))
        await asyncio.sleep(0.4)
        full = await client.post("/v1/frames", json=survey_body())
        waiting.cancel()
        await asyncio.wait({waiting})
        await asyncio.sleep(0.2)
        next_one = asyncio.create_task(client.post("/v1/frames", json=survey_body()))
        await asyncio.sleep(0.4)
        refused_at_once = next_one.done()
        cheap = await client.get("/v1/screens")
        next_one.cancel()
        late = await dozing

    assert (503, "OVERLOADED") == (full.status_code, full.json()["reason"])
    assert int(full.headers["retry-after"]) >= 1
    assert not refused_at_once
    assert cheap.status_code == 200
    assert (503, "DEADLINE") == (late.status_code, late.json()["reason"])


async def test_requests_in_flight_are_answered_when_the_service_stops(demo_database_url: str) -> None:  # noqa: F811 - a fixture
    async with served(app_on(demo_database_url), DOOR) as service:
        client = httpx.AsyncClient(base_url=service.address, trust_env=False)
        dozing = asyncio.create_task(client.post("/v1/frames", json=survey_body() | {"terms": {"reference": "doze"}}))
        await asyncio.sleep(0.4)
        os.kill(os.getpid(), signal.SIGTERM)
        await service.ended
        answer = await dozing
        with pytest.raises(httpx.ConnectError):
            await client.get("/health/live")
        await client.aclose()

    assert (503, "application/problem+json") == (answer.status_code, answer.headers["content-type"])


async def test_a_port_that_is_taken_is_told(demo_database_url: str) -> None:  # noqa: F811 - a fixture
    async with served(app_on(demo_database_url), DOOR) as service:
        taken = msgspec.structs.replace(DOOR, port=int(service.address.rpartition(":")[2]))
        with pytest.raises(StartError, match="--port"):
            async with served(app_on(demo_database_url), taken):
                pass


async def test_keys_open_the_service_for_their_shop_and_no_longer_than_they_live(demo_database_url: str) -> None:  # noqa: F811 - a fixture
    """Over real sockets and the service's own database user: made by an administrator, used, noted, revoked."""
    async with engine_of(demo_database_url) as owner:
        admin = {"authorization": f"Bearer {(await KeyDesk(owner).create('demo', server_key(Scope.ADMIN))).key}"}
    wish = {"label": "till", "use": {"kind": "server", "scopes": ["quote"]}}
    async with (
        client_of(app_on(demo_database_url, demo_account=None)) as client,
        client_of(app_on(demo_database_url, demo_account=None)) as replica,
    ):
        strange = await client.post("/v1/frames", json=survey_body())
        made = (await client.post("/v1/keys", json=wish, headers=admin)).json()
        till = {"authorization": f"Bearer {made['key']}"}
        seen = [await _until_status(at, till, 200) for at in (client, replica)]
        await client.post(f"/v1/keys/{made['row']['key_id']}/revocations", headers=admin)
        gone = [await _until_status(at, till, 401) for at in (client, replica)]
        revoked = await client.post("/v1/frames", json=survey_body(), headers=till)
    async with engine_of(demo_database_url) as owner:
        rows = await KeyDesk(owner).list("demo")

    assert (401, "KEY_MISSING") == (strange.status_code, strange.json()["reason"])
    assert max(*seen, *gone) < 1.0
    assert (401, "KEY_REVOKED") == (revoked.status_code, revoked.json()["reason"])
    assert all(row.last_used_at is not None for row in rows), "noted at the latest when the service stops"


async def _until_status(client: httpx.AsyncClient, headers: dict[str, str], status: int) -> float:
    """Seconds until a request is answered so."""
    began = asyncio.get_running_loop().time()
    async with asyncio.timeout(5):
        while (await client.post("/v1/frames", json=survey_body(), headers=headers)).status_code != status:  # noqa: ASYNC110 - elsewhere
            await asyncio.sleep(0.01)
    return asyncio.get_running_loop().time() - began


async def test_without_a_database_the_service_starts_and_says_that_it_is_not_ready(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("service.app.FIRST_LOAD_SECONDS", 0.5)
    app = app_on("postgresql://nobody@127.0.0.1:1/none")
    async with client_of(app) as client:
        live = await client.get("/health/live")
        ready = await client.get("/health/ready")
        calculation = await client.post("/v1/quotes", json=survey_body())

    assert live.status_code == 200
    assert [(503, "NO_CATALOGUE")] * 2 == [(answer.status_code, answer.json()["reason"]) for answer in (ready, calculation)]


async def test_calculations_and_lists_go_on_while_the_database_is_away() -> None:
    server = EmbeddedPostgres(new_data_dir(), durable=False)
    url = await asyncio.to_thread(server.start)
    try:
        await asyncio.to_thread(migrate, url)
        engine = make_engine(url)
        await load_demo(engine)
        await engine.dispose()
        async with client_of(app_on(url)) as client:
            before = await client.post("/v1/quotes", json=survey_body())
            await asyncio.to_thread(cluster_of(server).stop)
            stale = await _ready_as(client, "stale")
            during = [await client.post(f"/v1/{name}", json=survey_body()) for name in ("frames", "bills", "quotes")]
            lists = [await client.get(f"/v1/{name}") for name in ("materials", "appliances", "screens", "brackets")]
            await asyncio.to_thread(cluster_of(server).start)
            healed = await _ready_as(client, "ready")
    finally:
        await asyncio.to_thread(server.stop)

    assert before.status_code == 200
    assert [200] * 7 == [answer.status_code for answer in (*during, *lists)]
    assert {before.headers["catalogue-revision"]} == {answer.headers["catalogue-revision"] for answer in (*during, *lists)}
    assert stale["status"] == "stale"
    assert healed["status"] == "ready"


async def _ready_as(client: httpx.AsyncClient, status: str) -> dict[str, object]:
    async with asyncio.timeout(30):
        while True:
            answer = await client.get("/health/ready")
            assert answer.status_code == 200
            found: dict[str, object] = json.loads(answer.content)
            if found["status"] == status:
                return found
            await asyncio.sleep(0.1)
