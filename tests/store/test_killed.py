"""A process that is killed while it imports and publishes leaves a book that is wholly old or wholly new."""

from __future__ import annotations

import random
import subprocess
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from sqlalchemy import func, select

from service.catalogue import demo_catalogue, demo_rows
from service.store import make_engine, read_catalogue, tables
from service.store.audit import read_audit
from service.store.books import WRITE_LIMITS, writing
from tests.postgres import as_service
from tests.store.import_and_publish import COPIES_COUNT

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from sqlalchemy.ext.asyncio import AsyncEngine

    from service.catalogue import Catalogue

pytestmark = pytest.mark.anyio
KILLS_COUNT = 20
ROOT = Path(__file__).parents[2]
ROWS_COUNT = COPIES_COUNT * len(demo_rows().prices)
CHANCE = random.Random(6)  # noqa: S311 - no secret: the same moments each time, as far as a machine has the same time twice


@pytest.fixture
async def engine(demo_database_url: str) -> AsyncIterator[AsyncEngine]:
    engine = make_engine(as_service(demo_database_url), WRITE_LIMITS)
    yield engine
    await engine.dispose()


def run_and_kill(url: str, amount_minor: int, after_seconds: float) -> list[str]:
    """What a process said before it was killed, some time after it was ready."""
    command = [sys.executable, "-m", "tests.store.import_and_publish", url, str(amount_minor)]
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        assert process.stdout.readline() == "ready\n"
        time.sleep(after_seconds)
        process.kill()
        return process.stdout.read().split("\n")


def amount_of(catalogue: Catalogue) -> int | None:
    """The one amount of all prices; None for the demo as it was loaded."""
    if catalogue == demo_catalogue():
        return None
    amounts = [step.amount_minor for steps in catalogue.prices.values() for step in steps]
    assert len(amounts) == ROWS_COUNT
    assert 1 == len(set(amounts)), "old and new prices in one book"
    return amounts[0]


async def draft_amounts(engine: AsyncEngine) -> tuple[int, set[int]]:
    """How many prices the draft has, and their amounts, once the server has let go of what the killed process held."""
    revision, price = tables.price_book_revision.c, tables.price.c
    own = select(revision.revision_id).where(revision.state == "draft")
    async with writing(engine, "demo") as connection:
        query = select(func.count(), func.array_agg(price.amount_minor.distinct())).where(price.revision_id.in_(own))
        count, amounts = (await connection.execute(query)).one()
    return count, set(amounts or ())


async def test_a_killed_process_leaves_the_book_wholly_old_or_wholly_new(engine: AsyncEngine, demo_database_url: str) -> None:
    url = as_service(demo_database_url)
    expected, first = None, 1_000
    ends = set()
    for _ in range(KILLS_COUNT):
        said = run_and_kill(url, first, CHANCE.uniform(0.02, 1.2))
        count, amounts = await draft_amounts(engine)
        held = amount_of(await read_catalogue(engine))

        done = [int(line.split()[1]) for line in said if line.startswith("done ")]
        last = done[-1] if done else expected
        assert held in {last, max(done, default=first - 1) + 1}, "what was said to be done is done, and at most one more"
        assert (count, len(amounts)) in {(0, 0), (ROWS_COUNT, 1)}
        ends.add((bool(count), held == last))
        expected, first = held, first + 1_000

    published = [one for one in await read_audit(engine, "demo", limit_count=1_000) if one.action == "published"]
    assert expected is not None
    assert len(published) == len(
        {one.catalogue_revision for one in published}
    )  # an entry for each publish, and none for a killed one
    assert len(ends) > 1, "killed at one and the same point each time: that shows nothing"
