"""Liveness and readiness."""

from __future__ import annotations

import pytest

from service.catalogue import demo_catalogue
from tests.web.client import application, client_of
from tests.web.doubles import HeldKeeper

pytestmark = pytest.mark.anyio


async def test_ready_with_a_catalogue_and_stale_without_its_database() -> None:
    keeper = HeldKeeper(demo_catalogue(), age_seconds=1.2)
    async with client_of(application(keeper=keeper)) as client:
        ready = (await client.get("/health/ready")).json()
        keeper.stale, keeper.age_seconds = True, 61.0
        answer = await client.get("/health/ready")

    assert ready == {"status": "ready", "catalogue_age_seconds": 1}
    assert answer.status_code == 200, "a database that is away must not take all replicas out at once"
    assert answer.json() == {"status": "stale", "catalogue_age_seconds": 61}


async def test_alive_without_anything() -> None:
    async with client_of(application(keeper=HeldKeeper())) as client:
        answer = await client.get("/health/live")

    assert (200, {"status": "alive"}) == (answer.status_code, answer.json())
