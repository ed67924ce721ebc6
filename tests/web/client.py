"""A client in the same process, and the smallest body that is a survey."""

from __future__ import annotations

from contextlib import asynccontextmanager
from typing import TYPE_CHECKING, Any

import httpx

from service.store import BookDesk, make_engine
from service.web import EdgeLimits, KeyParts, WebParts, make_application
from service.workers import InlineRunner
from tests.web.doubles import NAME, HeldKeeper, HeldKeys, demo_keeper

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from service.web import Edge
    from service.workers import Runner

BODY_LIMIT_BYTES = 64 * 1024
NO_BOOKS = BookDesk(make_engine("postgresql://nobody@/none?host=/nowhere"))
CONTRACT = b'{"openapi": "3.1.0"}'


def survey_body(**brief: object) -> dict[str, Any]:
    """The smallest survey, with wishes."""
    return {"survey": {"brief": {"appliance": {"kind": "catalogue", "model": "AF-302"}, **brief}}}


def application(
    *,
    runner: Runner | None = None,
    keeper: HeldKeeper | None = None,
    keys: HeldKeys | None = None,
    books: BookDesk | None = None,
    demo_account: str | None = "demo",
    deadline_seconds: float = 10.0,
    hosts: tuple[str, ...] = (),
) -> Edge:
    known = keys or HeldKeys()
    parts = WebParts(
        runner=runner or InlineRunner(NAME),
        keeper=keeper or demo_keeper(),
        keys=KeyParts(ring=known, uses=known, desk=known),
        books=books or NO_BOOKS,
        demo_account=demo_account,
        contract=CONTRACT,
        body_limit_bytes=BODY_LIMIT_BYTES,
        limits=EdgeLimits(deadline_seconds=deadline_seconds, allowed_hosts=hosts),
    )
    return make_application(parts)


@asynccontextmanager
async def client_of(app: Edge) -> AsyncIterator[httpx.AsyncClient]:
    transport = httpx.ASGITransport(app=app, raise_app_exceptions=False)
    async with httpx.AsyncClient(transport=transport, base_url="http://shop.example") as client:
        yield client
