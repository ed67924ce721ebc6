"""A desk of price books on a real database that has what a made-up request asks for: a draft, its digest, a revision.

A tool that makes up requests never guesses the digest of a draft or the name of a revision, so that it would only ever see
refusals. Here the names of the contract's examples stand for what is there.
"""

from __future__ import annotations

import datetime as dt
from functools import cache
from typing import TYPE_CHECKING

import msgspec
from sqlalchemy import NullPool
from sqlalchemy.ext.asyncio import create_async_engine

from service.catalogue import Faults, RowKind
from service.store import BookDesk, ImportMode, ImportOrder, PublishOrder, database_url
from service.store.books import WRITE_LIMITS
from service.store.engine import connect_arguments
from tests.postgres import as_service, run_sql, shared_server, template

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Sequence

    from sqlalchemy.ext.asyncio import AsyncEngine

    from service.catalogue import Row
    from service.store import Draft, WithdrawOrder

DIGEST = "0123456789abcdef"
REVISION = "demo:demo:2026-09-01:0123456789abcdef"
ACTOR = "key:0123456789ab"


@cache
def make_books_engine() -> AsyncEngine:
    """Of a database with the demo in it; it goes with the server of this run."""
    run_sql(f'create database "contract" template "{template(with_demo=True)}"')
    url = database_url(as_service(shared_server().url_of("contract")))
    return create_async_engine(url, poolclass=NullPool, connect_args=connect_arguments(WRITE_LIMITS))


class WillingDesk(BookDesk):
    """Begins the draft of the demo's book when one is asked for, and takes the examples' names for the real ones."""

    async def read_draft(self, account: str, price_book: str) -> Draft:
        await self._begin(account, price_book)
        return await super().read_draft(account, price_book)

    async def read_own_rows(self, account: str, price_book: str, kind: RowKind) -> tuple[Row, ...]:
        await self._begin(account, price_book)
        return await super().read_own_rows(account, price_book, kind)

    async def discard_draft(self, account: str, price_book: str, *, actor: str) -> None:
        await self._begin(account, price_book)
        await super().discard_draft(account, price_book, actor=actor)

    async def publish(self, order: PublishOrder) -> str:
        draft = await self.read_draft(order.account, order.price_book)
        digest = draft.draft_digest if order.draft_digest == DIGEST else order.draft_digest
        return await super().publish(msgspec.structs.replace(order, draft_digest=digest))

    async def withdraw(self, order: WithdrawOrder) -> dt.date:
        if order.catalogue_revision != REVISION:
            return await super().withdraw(order)
        draft = await self.read_draft(order.account, order.price_book)
        day = dt.datetime.now(dt.UTC).date() + dt.timedelta(days=1)
        wanted = PublishOrder(
            account=order.account,
            price_book=order.price_book,
            effective_from=day,
            draft_digest=draft.draft_digest,
            actor=order.actor,
        )
        name = await super().publish(wanted)
        return await super().withdraw(msgspec.structs.replace(order, catalogue_revision=name))

    async def _begin(self, account: str, price_book: str) -> None:
        order = ImportOrder(
            account=account,
            price_book=price_book,
            kind=RowKind.PRICES,
            mode=ImportMode.MERGE,
            file_digest="0" * 64,
            actor=ACTOR,
        )
        await self.import_rows(order, _nothing(), Faults())


async def _nothing() -> AsyncIterator[Sequence[Row]]:
    nothing: tuple[Sequence[Row], ...] = ()
    for piece in nothing:
        yield piece
