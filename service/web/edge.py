"""The outermost layer: what must hold for every request, also for those that Litestar never routes.

Litestar's middleware does not run for an unknown address or method, so number, deadline, host check, HEAD, OPTIONS, headers,
log line and the problem of last resort live here, in a plain ASGI class around the application.
"""

from __future__ import annotations

import asyncio
import logging
from http import HTTPStatus
from typing import TYPE_CHECKING, Final

import msgspec

from service.errors import Reason
from service.web.access_log import log_access
from service.web.attendance import Attendance
from service.web.exchange import Exchange, with_head
from service.web.problems import ProblemError
from service.web.refusals import refusal

if TYPE_CHECKING:
    from service.web.asgi import ASGIApp, Message, Receive, Scope, Send

log = logging.getLogger(__name__)

ASK_WHAT_IS_ALLOWED: Final = "ASK"  # no method of HTTP: the application answers 405 with all that it allows
PREFLIGHT_SECONDS: Final = b"7200"
_PREFLIGHT_HEADERS: Final = b"accept, authorization, content-type, if-none-match, x-request-id"
BOOKS: Final = "/v1/price-books/"
INTERNAL_DETAIL: Final = "The request failed through a mistake of ours, which was logged."


class EdgeLimits(msgspec.Struct, frozen=True, kw_only=True):
    """What the edge holds every request to."""

    deadline_seconds: float
    book_seconds: float = 60.0  # for what reads or writes a whole price book
    allowed_hosts: tuple[str, ...] = ()


class Edge:
    """The application with its outermost layer around it."""

    def __init__(self, app: ASGIApp, limits: EdgeLimits) -> None:
        """Wrap an application."""
        self._app = app
        self._limits = limits

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Serve one connection of ASGI."""
        if scope["type"] == "http":
            await self._serve(scope, receive, send)
        elif scope["type"] == "websocket":
            await send({"type": "websocket.close", "code": 1000, "reason": "there are no web sockets here"})
        else:
            await self._app(scope, receive, send)

    async def _serve(self, scope: Scope, receive: Receive, send: Send) -> None:
        exchange = Exchange(scope, receive, send, deadline_seconds=self._seconds(scope))
        inner = exchange.inner_scope("GET" if exchange.method == "HEAD" else exchange.method)
        try:
            if error := refusal(scope, self._limits.allowed_hosts):
                await exchange.refuse(error)
            elif exchange.method == "OPTIONS":
                await self._tell_allowed(exchange)
            else:
                await self._answer(exchange, inner)
        finally:
            log_access(exchange, inner.get("path_template"))

    def _seconds(self, scope: Scope) -> float:
        """How long a request may take."""
        is_book = scope["path"].startswith(BOOKS)
        return max(self._limits.book_seconds, self._limits.deadline_seconds) if is_book else self._limits.deadline_seconds

    async def _answer(self, exchange: Exchange, inner: Scope) -> None:
        """Let the application answer before the deadline, while the client is there."""
        attendance = Attendance(exchange)
        try:
            async with asyncio.timeout_at(exchange.deadline):
                await attendance.run(self._app, inner)
        except TimeoutError:
            await self._late(exchange)
        except asyncio.CancelledError:  # the server stops and waits no longer
            if exchange.status == 0:
                stopping = "The service is stopping; another replica or a later try will answer."
                await exchange.refuse(ProblemError(Reason.OVERLOADED, stopping, headers={"Retry-After": "5"}), close=True)
            raise
        except Exception:
            log.exception("request %s failed at the edge", exchange.request_id)
            if exchange.status:
                raise
            await exchange.refuse(ProblemError(Reason.INTERNAL, INTERNAL_DETAIL))

    async def _late(self, exchange: Exchange) -> None:
        if exchange.status:
            return  # half an answer is out; the server closes the connection on it
        allowed = f"{self._limits.deadline_seconds:g} s"
        if exchange.body_arrived:
            detail = f"The answer was not ready within {allowed}."
            await exchange.refuse(ProblemError(Reason.DEADLINE, detail, headers={"Retry-After": "1"}))
        else:
            detail = f"The body had not arrived after {allowed}."
            await exchange.refuse(ProblemError(Reason.REQUEST_TIMEOUT, detail), close=True)

    async def _tell_allowed(self, exchange: Exchange) -> None:
        """Answer OPTIONS, and the question of a browser before it sends a request across origins."""
        names = {name for name, _ in exchange.scope["headers"]}
        is_preflight = {b"origin", b"access-control-request-method"} <= names

        async def send(message: Message) -> None:
            if message["type"] == "http.response.start" and message["status"] == HTTPStatus.METHOD_NOT_ALLOWED:
                message["status"] = HTTPStatus.NO_CONTENT
                allowed = b"".join(with_head(text) for name, text in message["headers"] if name == b"allow")
                message["headers"] = [(b"allow", allowed), *(_preflight(allowed) if is_preflight else ())]
                await exchange.send(message)
            elif exchange.status == HTTPStatus.NO_CONTENT and message["type"] == "http.response.body":
                await exchange.send({"type": "http.response.body", "body": b"", "more_body": False})
            else:
                await exchange.send(message)

        await self._app(exchange.inner_scope(ASK_WHAT_IS_ALLOWED), exchange.receive, send)


def _preflight(allowed: bytes) -> tuple[tuple[bytes, bytes], ...]:
    return (
        (b"access-control-allow-methods", allowed),
        (b"access-control-allow-headers", _PREFLIGHT_HEADERS),
        (b"access-control-max-age", PREFLIGHT_SECONDS),
    )
