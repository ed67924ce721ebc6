"""One request and its answer as the edge sees them: what came in, what has gone out, and what is added on the way.

The headers that every answer carries are added here, so that an answer made anywhere has them.
"""

from __future__ import annotations

import asyncio
import re
import time
import uuid
from typing import TYPE_CHECKING, Final

from service.web.problems import MEDIA_TYPE, ProblemError, problem_body

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.web.asgi import Message, Receive, Scope, Send

REQUEST_ID_KEY: Final = "inglewright.request_id"
DEADLINE_KEY: Final = "inglewright.deadline"  # when the request ends, in the time of the event loop
_UUID: Final = re.compile(rb"[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}")
_CLOSED_POLICY: Final = b"default-src 'none'; frame-ancestors 'none'"
EXPOSED: Final = b"Catalogue-Age-Seconds, Catalogue-Revision, ETag, Retry-After, WWW-Authenticate, X-Request-Id"
_ALWAYS: Final = (
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"cross-origin-resource-policy", b"cross-origin"),
    (b"access-control-allow-origin", b"*"),  # the key is in a header, never in a cookie: no origin is told apart
    (b"access-control-expose-headers", EXPOSED),
    (b"vary", b"Authorization, Origin"),  # the key says whose answer it is; the origin, whether a browser key may have it
)


class Exchange:
    """A request in flight."""

    def __init__(self, scope: Scope, receive: Receive, send: Send, *, deadline_seconds: float) -> None:
        """Number the request and set its deadline."""
        self.scope = scope
        self.method: str = scope["method"]
        self.began = time.perf_counter()
        self.request_id = _request_id(scope)
        self.status = 0  # 0: nothing has been sent
        self.body_arrived = False
        self.is_over = False
        self.client_gone = False
        self._receive = receive
        self._send = send
        self._close = False
        self.deadline = asyncio.get_running_loop().time() + deadline_seconds

    def inner_scope(self, method: str) -> Scope:
        """A copy for the application. The server reads its own again, so that one is left alone."""
        scope = dict(self.scope)
        scope["method"] = method
        scope["state"] = {**scope.get("state", {}), REQUEST_ID_KEY: self.request_id, DEADLINE_KEY: self.deadline}
        return scope

    async def receive(self) -> Message:
        """The next piece of the body; notes when the whole has come."""
        message = await self.listen()
        self.body_arrived = message["type"] != "http.request" or not message.get("more_body", False)
        return message

    async def listen(self) -> Message:
        """The next message of the client, whatever it is."""
        return await self._receive()

    async def send(self, message: Message) -> None:
        """Send on, with the headers that every answer has; no body for HEAD."""
        if message["type"] == "http.response.start":
            self.status = message["status"]
            message["headers"] = self._headers(message["headers"])
        elif message["type"] == "http.response.body":
            self.is_over = not message.get("more_body", False)
            if self.method == "HEAD":
                message["body"] = b""
        await self._send(message)

    async def refuse(self, error: ProblemError, *, close: bool = False) -> None:
        """Answer with a problem document."""
        self._close = close
        body = problem_body(error, self.request_id)
        headers = [(name.lower().encode("latin-1"), text.encode("latin-1")) for name, text in error.headers.items()]
        headers += [(b"content-type", MEDIA_TYPE.encode()), (b"content-length", str(len(body)).encode())]
        await self.send({"type": "http.response.start", "status": error.status, "headers": headers})
        await self.send({"type": "http.response.body", "body": body, "more_body": False})

    def _headers(self, headers: Iterable[tuple[bytes, bytes]]) -> list[tuple[bytes, bytes]]:
        sent = [(bytes(name).lower(), bytes(text)) for name, text in headers]
        names = {name for name, _ in sent}
        added = [*_ALWAYS, (b"x-request-id", self.request_id.encode())]
        if b"content-security-policy" not in names:
            added.append((b"content-security-policy", _CLOSED_POLICY))
        if b"cache-control" not in names:
            added.append((b"cache-control", b"no-store"))
        if self._close:
            added.append((b"connection", b"close"))
        return [(name, with_head(text) if name == b"allow" else text) for name, text in sent] + added


def with_head(text: bytes) -> bytes:
    """The methods of an address, sorted; HEAD goes wherever GET does (RFC 9110 section 9.1)."""
    methods = {part.strip() for part in text.split(b",")} | {b"OPTIONS"}
    return b", ".join(sorted(methods | {b"HEAD"} if b"GET" in methods else methods))


def _request_id(scope: Scope) -> str:
    """The caller's number if it is a UUID, else a new one."""
    given = next((text for name, text in scope["headers"] if name == b"x-request-id"), b"")
    return given.decode("ascii").lower() if _UUID.fullmatch(given) else str(uuid.uuid4())
