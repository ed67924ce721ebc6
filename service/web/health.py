"""GET /health/live and /health/ready: for whoever starts, stops and routes to this process."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

import msgspec
from litestar import Response, get
from litestar.di import NamedDependency
from msgspec import Meta

from service.errors import Reason
from service.web.problems import ProblemError
from service.web.shelf import RETRY_AFTER_SECONDS, Shelf


class Readiness(StrEnum):
    """Whether this process should get requests."""

    READY = "ready"
    STALE = "stale"  # yes; but the database has not confirmed the catalogue since the connection was lost


class Alive(msgspec.Struct, frozen=True, kw_only=True):
    """The process answers."""

    status: Annotated[str, Meta(pattern="^alive$")] = "alive"


class Ready(msgspec.Struct, frozen=True, kw_only=True):
    """The process can calculate."""

    status: Readiness
    catalogue_age_seconds: Annotated[int, Meta(ge=0, description="Since the database last confirmed the catalogue.")]


@get("/health/live", operation_id="get_live", tags=["health"], summary="Is the process alive?")
async def get_live() -> Response[bytes]:
    """Answer as long as the process can; touches nothing else."""
    return Response(msgspec.json.encode(Alive()), media_type="application/json")


@get("/health/ready", operation_id="get_ready", tags=["health"], summary="Can the process calculate?")
async def get_ready(shelf: NamedDependency[Shelf]) -> Response[bytes]:
    """Ready as soon as a catalogue is held. A database that is away later only makes it `stale`.

    Were it not so, all replicas would drop out together, though each can go on from the catalogue that it holds.
    """
    state = shelf.state()
    if not state.loaded:
        headers = {"Retry-After": str(RETRY_AFTER_SECONDS)}
        raise ProblemError(Reason.NO_CATALOGUE, "The catalogue has not been read yet.", headers=headers)
    status = Readiness.STALE if state.stale else Readiness.READY
    ready = Ready(status=status, catalogue_age_seconds=round(state.age_seconds or 0))
    return Response(msgspec.json.encode(ready), media_type="application/json")
