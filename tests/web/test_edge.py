"""What the outermost layer holds for every request, routed or not."""

from __future__ import annotations

import asyncio
import json
import logging
import uuid
from typing import TYPE_CHECKING, Any

import pytest

from service.web import Edge, EdgeLimits
from service.web.access_log import JsonFormatter
from tests.web.client import application, client_of, survey_body

if TYPE_CHECKING:
    from collections.abc import Callable

    import httpx

    from service.web.asgi import Message, Receive, Scope, Send

pytestmark = pytest.mark.anyio
LIMITS = EdgeLimits(deadline_seconds=0.3)


class Wire:
    """A connection of ASGI by hand: what the server gives, and what it was given."""

    def __init__(self, *messages: Message, then_gone: asyncio.Event | None = None) -> None:
        """The client sends these, then waits; it goes when the event is set."""
        self.coming = list(messages) or [{"type": "http.request", "body": b"", "more_body": False}]
        self.gone = then_gone or asyncio.Event()
        self.sent: list[Message] = []

    async def receive(self) -> Message:
        if self.coming:
            return self.coming.pop(0)
        await self.gone.wait()
        return {"type": "http.disconnect"}

    async def send(self, message: Message) -> None:
        self.sent.append(message)

    @property
    def status(self) -> int:
        status: int = self.sent[0]["status"]
        return status

    @property
    def headers(self) -> dict[str, str]:
        return {name.decode(): text.decode() for name, text in self.sent[0]["headers"]}

    @property
    def problem(self) -> dict[str, Any]:
        document: dict[str, Any] = json.loads(self.sent[1]["body"])
        return document


def scope(
    method: str = "GET", path: str = "/x", *, headers: tuple[tuple[bytes, bytes], ...] = ((b"host", b"shop.example"),)
) -> Scope:
    return {
        "type": "http",
        "asgi": {"version": "3.0"},
        "http_version": "1.1",
        "method": method,
        "path": path,
        "raw_path": path.encode(),
        "query_string": b"",
        "root_path": "",
        "headers": list(headers),
        "client": ("192.0.2.7", 5),
        "server": ("shop.example", 80),
        "scheme": "http",
        "state": {},
    }


async def serve(app: Callable[[Scope, Receive, Send], Any], given: Scope, wire: Wire, limits: EdgeLimits = LIMITS) -> Wire:
    await Edge(app, limits)(given, wire.receive, wire.send)
    return wire


async def answer(_scope: Scope, receive: Receive, send: Send) -> None:
    await receive()
    await send({"type": "http.response.start", "status": 200, "headers": []})
    await send({"type": "http.response.body", "body": b"done", "more_body": False})


async def dawdle(_scope: Scope, receive: Receive, send: Send) -> None:
    while (await receive()).get("more_body", False):
        pass
    await asyncio.sleep(60)
    await send({"type": "http.response.start", "status": 200, "headers": []})


async def fail(_scope: Scope, _receive: Receive, _send: Send) -> None:
    message = "a secret"
    raise RuntimeError(message)


@pytest.mark.parametrize(
    "path", ["/", "/nope", "/v1", "/v1/frames/", "/v1//frames", "//v1/frames", "/docs/", "/v1/materials/%00", "/%ff"]
)
async def test_unknown_addresses_are_problems_with_every_header(client: httpx.AsyncClient, path: str) -> None:
    got = await client.get(f"http://shop.example{path}")

    assert (404, "NOT_FOUND", "application/problem+json") == (got.status_code, got.json()["reason"], got.headers["content-type"])
    assert got.headers["cache-control"] == "no-store"
    assert got.headers["x-content-type-options"] == "nosniff"
    assert got.headers["access-control-allow-origin"] == "*"
    assert got.json()["instance"] == f"urn:uuid:{got.headers['x-request-id']}"


@pytest.mark.parametrize(
    ("method", "path", "allowed"),
    [
        ("PUT", "/v1/frames", "OPTIONS, POST"),
        ("GET", "/v1/quotes", "OPTIONS, POST"),
        ("HEAD", "/v1/quotes", "OPTIONS, POST"),
        ("QUERY", "/v1/quotes", "OPTIONS, POST"),
        ("POST", "/v1/materials", "GET, HEAD, OPTIONS"),
        ("DELETE", "/v1/materials/TM-1035A", "GET, HEAD, OPTIONS"),
        ("TRACE", "/health/live", "GET, HEAD, OPTIONS"),
        ("PATCH", "/openapi.json", "GET, HEAD, OPTIONS"),
    ],
)
async def test_a_wrong_method_is_told_the_right_ones(client: httpx.AsyncClient, method: str, path: str, allowed: str) -> None:
    got = await client.request(method, path)
    options = await client.options(path)

    assert (405, allowed) == (got.status_code, got.headers["allow"])
    assert (204, allowed, b"") == (options.status_code, options.headers["allow"], options.content)
    assert method == "HEAD" or got.json()["reason"] == "METHOD_NOT_ALLOWED"


async def test_options_of_an_unknown_address_is_not_found(client: httpx.AsyncClient) -> None:
    assert (await client.options("/nope")).status_code == 404


async def test_any_origin_may_ask_and_none_is_trusted_with_credentials(client: httpx.AsyncClient) -> None:
    asked = {
        "origin": "https://shop.example",
        "access-control-request-method": "POST",
        "access-control-request-headers": "content-type",
    }
    preflight = await client.options("/v1/quotes", headers=asked)
    got = await client.post("/v1/quotes", json=survey_body(), headers={"origin": "https://shop.example"})

    assert (204, "*") == (preflight.status_code, preflight.headers["access-control-allow-origin"])
    assert preflight.headers["access-control-allow-methods"] == "OPTIONS, POST"
    assert "content-type" in preflight.headers["access-control-allow-headers"]
    assert got.headers["access-control-allow-origin"] == "*"
    assert "Catalogue-Revision" in got.headers["access-control-expose-headers"]
    assert "access-control-allow-credentials" not in {**preflight.headers, **got.headers}


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ((), 400),
        (((b"host", b"a"), (b"host", b"a")), 400),
        (((b"host", b""),), 400),
        (((b"host", b"a b"),), 400),
        (((b"host", b"a/b"),), 400),
        (((b"host", b"user@a"),), 400),
        (((b"host", b"a:99999999"),), 400),
        (((b"host", b"shop.example:8080"),), 200),
        (((b"host", b"[2001:db8::1]:80"),), 200),
        (((b"host", b"192.0.2.1"),), 200),
    ],
)
async def test_exactly_one_good_host(headers: tuple[tuple[bytes, bytes], ...], status: int) -> None:
    """RFC 9112 section 3.2."""
    wire = await serve(answer, scope(headers=headers), Wire())

    assert status == wire.status
    assert status == 200 or wire.problem["reason"] == "BAD_HOST"


async def test_only_the_hosts_that_are_served_and_health_checks_by_address() -> None:
    async with client_of(application(hosts=("shop.example",))) as client:
        served = await client.get("/v1/screens", headers={"host": "SHOP.example:8080"})
        refused = await client.get("/v1/screens", headers={"host": "evil.example"})
        probe = await client.get("/health/live", headers={"host": "10.0.0.7:8080"})

    assert [200, 400, 200] == [served.status_code, refused.status_code, probe.status_code]
    assert "evil" not in refused.text


async def test_a_long_address_is_refused(client: httpx.AsyncClient) -> None:
    got = await client.get("/v1/materials?cursor=" + "ab" * 9_000)

    assert (414, "URI_TOO_LONG") == (got.status_code, got.json()["reason"])


async def test_the_callers_number_is_kept_only_if_it_is_a_uuid(client: httpx.AsyncClient) -> None:
    given = str(uuid.uuid4())
    kept = await client.get("/health/live", headers={"x-request-id": given})
    replaced = await client.get("/health/live", headers={"x-request-id": 'x"}\r\n{"level'})

    assert given == kept.headers["x-request-id"]
    assert uuid.UUID(replaced.headers["x-request-id"]).version == 4


async def test_an_answer_that_is_not_ready_at_the_deadline_is_503() -> None:
    wire = await serve(dawdle, scope("POST"), Wire())

    assert (503, "DEADLINE") == (wire.status, wire.problem["reason"])
    assert wire.headers["retry-after"] == "1"


async def test_a_body_that_does_not_arrive_is_408_and_the_connection_closed() -> None:
    wire = await serve(dawdle, scope("POST"), Wire({"type": "http.request", "body": b"{", "more_body": True}))

    assert (408, "REQUEST_TIMEOUT") == (wire.status, wire.problem["reason"])
    assert wire.headers["connection"] == "close"


async def test_a_mistake_outside_the_application_is_a_problem_too(caplog: pytest.LogCaptureFixture) -> None:
    wire = await serve(fail, scope(), Wire())

    assert (500, "INTERNAL") == (wire.status, wire.problem["reason"])
    assert b"secret" not in wire.sent[1]["body"]
    assert "a secret" in caplog.text


@pytest.mark.parametrize("method", ["GET", "POST"])
async def test_work_stops_when_the_client_goes(method: str) -> None:
    gone = asyncio.Event()
    wire = Wire(then_gone=gone)
    began = asyncio.get_running_loop().time()
    asyncio.get_running_loop().call_later(0.05, gone.set)
    await serve(dawdle, scope(method), wire, EdgeLimits(deadline_seconds=30))

    assert wire.sent == []
    assert asyncio.get_running_loop().time() - began < 5
    current = asyncio.current_task()
    assert current is not None
    assert current.cancelling() == 0, "the server's task must not stay half cancelled"


async def test_a_client_that_goes_after_the_answer_cancels_nothing() -> None:
    gone = asyncio.Event()
    cleaned = asyncio.Event()

    async def app(_scope: Scope, receive: Receive, send: Send) -> None:
        await answer(_scope, receive, send)
        gone.set()
        await asyncio.sleep(0.05)
        cleaned.set()

    await serve(app, scope("POST"), Wire(then_gone=gone))

    assert cleaned.is_set()


async def test_a_server_that_stops_waiting_still_gets_a_problem_to_send() -> None:
    wire = Wire()
    task = asyncio.create_task(serve(dawdle, scope("POST"), wire, EdgeLimits(deadline_seconds=30)))
    await asyncio.sleep(0.05)
    task.cancel()
    await asyncio.wait({task})

    assert task.cancelled()
    assert (503, "close") == (wire.status, wire.headers["connection"])


async def test_a_body_longer_than_one_message_reaches_the_application_whole() -> None:
    pieces = [{"type": "http.request", "body": bytes([48 + place]), "more_body": place < 4} for place in range(5)]
    read = b""

    async def app(_scope: Scope, receive: Receive, send: Send) -> None:
        nonlocal read
        more = True
        while more:
            message = await receive()
            read += message["body"]
            more = message["more_body"]
        await answer(_scope, _nothing, send)

    async def _nothing() -> Message:
        return {"type": "http.disconnect"}

    wire = await serve(app, scope("POST"), Wire(*pieces))

    assert (200, b"01234") == (wire.status, read)


async def test_there_are_no_web_sockets() -> None:
    sent: list[Message] = []

    async def send(message: Message) -> None:
        sent.append(message)

    await Edge(answer, LIMITS)({**scope(), "type": "websocket"}, Wire().receive, send)

    assert ["websocket.close"] == [message["type"] for message in sent]


async def test_one_line_of_json_for_each_request_without_what_strangers_send(caplog: pytest.LogCaptureFixture) -> None:
    trace = "4bf92f3577b34da6a3ce929d0e0e4736"  # the example of W3C Trace Context, section 3.2.4
    with caplog.at_level(logging.INFO, "inglewright.access"):
        async with client_of(application()) as client:
            traced = {"traceparent": f"00-{trace}-00f067aa0ba902b7-01"}
            await client.get("/v1/materials/TM-1035A?x=secret", headers={**traced, "authorization": "Bearer secret"})
            await client.request("BREW", "/no/such/secret", headers={"traceparent": f"ff-{trace}-00f067aa0ba902b7-01"})
    lines = [JsonFormatter().format(record) for record in caplog.records if record.name == "inglewright.access"]
    known, unknown = (json.loads(line) for line in lines)

    assert ("GET", "/v1/materials/{code}", 401, trace) == (known["method"], known["route"], known["status"], known["trace_id"])
    assert ("other", "(none)", 404, None) == (unknown["method"], unknown["route"], unknown["status"], unknown["trace_id"])
    assert "secret" not in "".join(lines)
    assert all("\n" not in line for line in lines)
