"""A process that imports and publishes until it is killed: `python -m tests.store.import_and_publish <url> <first amount>`.

Each round every price has one and the same amount, another than in the round before: a book that was changed in part shows it.
"""

from __future__ import annotations

import asyncio
import sys

import msgspec

from service.catalogue import demo_rows
from service.store import make_engine
from service.store.books import WRITE_LIMITS
from service.store.importing import ImportMode
from tests.store.book_facts import order, publish_draft, take

COPIES_COUNT = 20  # 3 120 prices: long enough to be killed in


def rows_at(amount_minor: int) -> list[msgspec.Struct]:
    steps = demo_rows().prices
    return [
        msgspec.structs.replace(step, from_count=step.from_count + 100 * copy, amount_minor=amount_minor)
        for copy in range(COPIES_COUNT)
        for step in steps
    ]


async def run(url: str, amount_minor: int) -> None:
    engine = make_engine(url, WRITE_LIMITS)
    async with engine.connect():
        print("ready", flush=True)  # noqa: T201 - read by the test
    while True:
        wanted = order(mode=ImportMode.REPLACE, file_digest=f"{amount_minor:064x}")
        await take(engine, rows_at(amount_minor), wanted)  # type: ignore[arg-type]  # rows
        await publish_draft(engine)
        print(f"done {amount_minor}", flush=True)  # noqa: T201 - as above
        amount_minor += 1


if __name__ == "__main__":
    asyncio.run(run(sys.argv[1], int(sys.argv[2])))
