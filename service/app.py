"""Wiring: settings in, the ASGI application out."""

from __future__ import annotations

import asyncio
from contextlib import asynccontextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from service.store import WRITE_LIMITS, BookDesk, CatalogueKeeper, KeyDesk, KeyRing, KeyUses, make_engine
from service.web import EdgeLimits, KeyParts, WebParts, make_application
from service.workers import PoolPlan, WorkerPlan, WorkerPool

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from service.settings import Settings
    from service.web import Edge

REGISTRY: Final = "service.workers.jobs:JOBS"
FIRST_LOAD_SECONDS: Final = 5.0  # then the service starts anyway, and is not ready until the catalogue comes
_SOURCE_TREE: Final = Path(__file__).parents[1] / "openapi" / "openapi.json"
_INSTALLED: Final = Path(__file__).parent / "openapi" / "openapi.json"  # where the wheel carries it


def create_app(settings: Settings, database_url: str, *, registry: str = REGISTRY) -> Edge:
    """The application. Keeper, keys and workers start and stop with its lifespan.

    Args:
        settings: see `service.settings`.
        database_url: of the server that the settings name, or of the embedded one; for the service's own user.
        registry: what the workers can do, `module:name`.
    """
    keeper = CatalogueKeeper(database_url)
    ring = KeyRing(database_url)
    engine = make_engine(database_url)
    book_engine = make_engine(database_url, WRITE_LIMITS)
    uses = KeyUses(engine)
    pool = WorkerPool(pool_plan(settings, registry))

    @asynccontextmanager
    async def lifespan(_app: Any) -> AsyncIterator[None]:  # noqa: ANN401 - Litestar's application
        try:
            async with keeper, ring, uses:
                await pool.start()
                try:
                    await asyncio.gather(*(follower.wait_until_loaded(FIRST_LOAD_SECONDS) for follower in (keeper, ring)))
                    yield
                finally:
                    await pool.stop()
        finally:
            await asyncio.gather(engine.dispose(), book_engine.dispose())

    return make_application(
        WebParts(
            runner=pool,
            keeper=keeper,
            keys=KeyParts(ring=ring, uses=uses, desk=KeyDesk(engine)),
            books=BookDesk(book_engine),
            demo_account=settings.demo_account,
            contract=contract_path().read_bytes(),
            body_limit_bytes=settings.body_limit_bytes,
            limits=EdgeLimits(deadline_seconds=settings.deadline_seconds, allowed_hosts=settings.allowed_hosts),
            cut_work_count=settings.cut_work_count,
            lifespan=lifespan,
        )
    )


def pool_plan(settings: Settings, registry: str = REGISTRY) -> PoolPlan:
    """Size and limits of the pool."""
    return PoolPlan(
        workers_count=settings.workers_count,
        queue_count=settings.queue_count,
        budget_seconds=settings.deadline_seconds,
        worker=WorkerPlan(
            registry=registry, memory_bytes=settings.worker_memory_mib * (1 << 20), start_seconds=settings.start_seconds
        ),
    )


def contract_path() -> Path:
    """Where the committed OpenAPI document is."""
    return _SOURCE_TREE if _SOURCE_TREE.exists() else _INSTALLED
