"""What the web's tests share."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.web.client import application, client_of

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    import httpx


@pytest.fixture
def anyio_backend() -> str:
    """Tests marked `anyio` run on asyncio, as the service does."""
    return "asyncio"


@pytest.fixture
async def client() -> AsyncIterator[httpx.AsyncClient]:
    """A client of the application with doubles below it."""
    async with client_of(application()) as client:
        yield client
