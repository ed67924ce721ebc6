"""Two shops with books of their own, real workers and a real database: one design, two prices."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.store import NewShop, create_shop, make_engine
from service.workers import PoolPlan, WorkerPlan, WorkerPool
from tests.postgres import as_service, demo_database_url
from tests.web.test_price_books import house_on

if TYPE_CHECKING:
    import httpx

__all__ = ["demo_database_url"]
pytestmark = pytest.mark.anyio
PLAN = PoolPlan(
    workers_count=2,
    queue_count=4,
    budget_seconds=60,
    worker=WorkerPlan(registry="service.workers.jobs:JOBS", memory_bytes=2**31, start_seconds=60),
)


def design_of(quote: httpx.Response) -> bytes:
    """Members, panels and checks, as bytes of the answer."""
    parts = msgspec.json.decode(quote.content, type=dict[str, msgspec.Raw])
    return bytes(parts["frame"]) + bytes(parts["checks"])


async def test_real_workers_give_both_shops_the_same_design_at_their_own_prices(demo_database_url: str) -> None:
    owner = make_engine(demo_database_url)
    for account in ("north", "south"):
        await create_shop(owner, NewShop(account=account, name=account, base_account="demo"))
    await owner.dispose()
    pool = WorkerPool(PLAN)
    await pool.start()
    try:
        async with house_on(as_service(demo_database_url), runner=pool) as house:
            await house.open_for("north", 500)
            await house.open_for("south", 700)
            north, south = await house.quote("north"), await house.quote("south")
    finally:
        await pool.stop()

    assert [200, 200] == [north.status_code, south.status_code]
    assert design_of(north) == design_of(south)
    assert north.json()["price"]["net"] != south.json()["price"]["net"]
