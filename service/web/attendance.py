"""Work for a client only while it is there. No server cancels a handler when its client goes, so this does."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from service.web.asgi import ASGIApp, Message, Scope
    from service.web.exchange import Exchange


class Attendance:
    """Runs the application for one exchange; cancels it when the client goes before the answer is out."""

    def __init__(self, exchange: Exchange) -> None:
        """Watch nothing yet: the body has to come in first."""
        self._exchange = exchange
        self._gone = asyncio.Event()
        self._watch: asyncio.Task[None] | None = None
        self._work: asyncio.Task[object] | None = None

    async def run(self, app: ASGIApp, scope: Scope) -> None:
        """Run the application to its end, or until the client goes; the exchange then says so."""
        self._work = asyncio.current_task()
        if scope["method"] == "GET":
            self._begin()
        try:
            await app(scope, self._receive, self._exchange.send)
        except asyncio.CancelledError:
            if not self._gone.is_set() or self._work is None:
                raise
            self._work.uncancel()
            self._exchange.client_gone = True
        finally:
            if self._watch is not None:
                self._watch.cancel()

    async def _receive(self) -> Message:
        """What the application reads: the body, then nothing until the client goes."""
        if self._watch is None:
            message = await self._exchange.receive()
            if self._exchange.body_arrived:
                self._begin()
            return message
        if self._exchange.method in {"GET", "HEAD"} and not self._exchange.body_arrived:
            self._exchange.body_arrived = True
            return {"type": "http.request", "body": b"", "more_body": False}
        await self._gone.wait()
        return {"type": "http.disconnect"}

    def _begin(self) -> None:
        self._watch = asyncio.create_task(self._listen())

    async def _listen(self) -> None:
        """Wait for the client to go; a body after a GET means nothing and is passed over."""
        while (await self._exchange.listen())["type"] != "http.disconnect":
            pass
        if not self._exchange.is_over and self._work is not None:
            self._gone.set()
            self._work.cancel()
