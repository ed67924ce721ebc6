"""Example quotes under two catalogues: which totals a change of prices moves, and by how much."""

from __future__ import annotations

import asyncio
from decimal import Decimal
from typing import TYPE_CHECKING, Any, Final

import msgspec

from service.errors import RequestFaultsError
from service.units import Money, round_half_up
from service.web.book_wire import SampleMove
from service.web.exchange import DEADLINE_KEY
from service.workers import Job, JobKind, Runner, Snapshot, SurveyTask, encode_task, sample_requests

if TYPE_CHECKING:
    from litestar import Request

    from service.catalogue import Catalogue
    from service.survey import SurveyRequest

LEAST_SECONDS: Final = 0.05
RATIO_PLACES_COUNT: Final = 4


class _Total(msgspec.Struct, frozen=True, kw_only=True):
    """What is read of a price."""

    total: Money
    complete: bool


class _Quote(msgspec.Struct, frozen=True, kw_only=True):
    """What is read of a quote; None where there is no design."""

    price: _Total | None = None


_QUOTE: Final = msgspec.json.Decoder(_Quote)


class Sampler:
    """Has example quotes made."""

    def __init__(self, runner: Runner) -> None:
        """By these workers."""
        self._runner = runner

    async def moves(
        self, before: Catalogue | None, after: Catalogue, day: str, request: Request[Any, Any, Any]
    ) -> tuple[SampleMove, ...]:
        """Each example under both catalogues; raises WorkError."""
        seconds = max(LEAST_SECONDS, request.scope["state"][DEADLINE_KEY] - asyncio.get_running_loop().time())
        old, new = (None if one is None else Snapshot(one) for one in (before, after))
        found = []
        for name, survey in sample_requests(day):
            (was, _), (becomes, note) = [await self._total(one, survey, day, seconds) for one in (old, new)]
            found.append(_move(name, was, becomes, note))
        return tuple(found)

    async def _total(
        self, snapshot: Snapshot | None, survey: SurveyRequest, day: str, seconds: float
    ) -> tuple[_Total | None, str]:
        """The total of an example, or why there is none."""
        if snapshot is None:
            return None, "no revision holds"
        task = SurveyTask(request=survey, today=day, search_seconds=seconds / 10)
        job = Job(kind=JobKind.QUOTE, payload=encode_task(task), snapshot=snapshot, deadline_seconds=seconds)
        try:
            price = _QUOTE.decode(await self._runner.run(job)).price
        except RequestFaultsError as error:
            return None, error.faults[0].detail
        return price, "" if price else "cannot be built"


def _move(name: str, before: _Total | None, after: _Total | None, note: str) -> SampleMove:
    ratio = None
    if before and after and before.total.currency == after.total.currency and (old := Decimal(before.total.amount)):
        ratio = float(round_half_up(Decimal(after.total.amount) / old - 1, RATIO_PLACES_COUNT))
    return SampleMove(
        name=name,
        before=before.total if before else None,
        after=after.total if after else None,
        total_ratio=ratio,
        before_complete=before is not None and before.complete,
        after_complete=after is not None and after.complete,
        note=note,
    )
