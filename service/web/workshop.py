"""Hands a survey to the workers and their answer back, with the catalogue and the day that go with it."""

from __future__ import annotations

import asyncio
import datetime as dt
from typing import TYPE_CHECKING, Any, Final

from litestar import Request, Response

from service.errors import RequestFaultsError
from service.offers import fault_as_asked
from service.survey import Terms
from service.web.callers import caller_of
from service.web.exchange import DEADLINE_KEY
from service.workers import (
    CutPlanTask,
    DrawingRequest,
    DrawingTask,
    EstimateTask,
    Job,
    JobKind,
    ShortlistTask,
    SurveyTask,
    encode_task,
)

if TYPE_CHECKING:
    from service.cut_plans import CutPlanRequest
    from service.offers import EstimateRequest, ShortlistRequest
    from service.survey import SurveyRequest
    from service.web.shelf import Shelf
    from service.workers import Runner

JSON: Final = "application/json"
SVG: Final = "image/svg+xml"
DRAWING_POLICY: Final = "default-src 'none'; style-src 'unsafe-inline'"  # a page may frame it; it runs and fetches nothing
SEARCH_RATIO: Final = 0.7  # house choice: of the time left, for searches; the rest is for everything else
LEAST_SECONDS: Final = 0.05  # a deadline that is nearly over still gives the queue a chance to say so


class Workshop:
    """The way from a decoded request to the bytes of its answer."""

    def __init__(self, runner: Runner, shelf: Shelf, cut_work_count: int) -> None:
        """Work with these; `cut_work_count` is the most work of one cut plan."""
        self._runner = runner
        self._shelf = shelf
        self._cut_work_count = cut_work_count

    async def answer(self, kind: JobKind, survey: SurveyRequest, request: Request[Any, Any, Any]) -> Response[bytes]:
        """Have a frame, bill or quote made.

        Raises:
            ProblemError, RequestFaultsError, WorkError: see `Shelf.take` and `Runner.run`.
        """
        task = SurveyTask(request=survey, today=_today(), search_seconds=_seconds_left(request) * SEARCH_RATIO)
        body, headers = await self._make(kind, task, request)
        return Response(body, media_type=JSON, headers=headers)

    async def draw(self, drawing: DrawingRequest, request: Request[Any, Any, Any]) -> Response[bytes]:
        """Have a drawing made; raises as `answer`."""
        body, headers = await self._make(JobKind.DRAWING, DrawingTask(request=drawing, today=_today()), request)
        return Response(body, media_type=SVG, headers={**headers, "Content-Security-Policy": DRAWING_POLICY})

    async def estimate(self, asked: EstimateRequest, request: Request[Any, Any, Any]) -> Response[bytes]:
        """Have a price range made; raises as `answer`."""
        task = EstimateTask(request=asked, today=_today(), search_seconds=_seconds_left(request) * SEARCH_RATIO)
        return await self._offer(JobKind.ESTIMATE, task, request)

    async def list_fitting(self, asked: ShortlistRequest, request: Request[Any, Any, Any]) -> Response[bytes]:
        """Have a shortlist made; raises as `answer`."""
        task = ShortlistTask(request=asked, today=_today(), search_seconds=_seconds_left(request) * SEARCH_RATIO)
        return await self._offer(JobKind.SHORTLIST, task, request)

    async def _offer(self, kind: JobKind, task: EstimateTask | ShortlistTask, request: Request[Any, Any, Any]) -> Response[bytes]:
        """With the catalogue of its day; a day that there is not points into the answers, which have no terms."""
        try:
            held = await self._shelf.take_for(caller_of(request).account, Terms(date=task.request.date))
        except RequestFaultsError as error:
            raise RequestFaultsError(tuple(fault_as_asked(fault) for fault in error.faults)) from error
        job = Job(kind=kind, payload=encode_task(task), snapshot=held.snapshot, deadline_seconds=_seconds_left(request))
        return Response(await self._runner.run(job), media_type=JSON, headers=held.headers)

    async def cut(self, plan: CutPlanRequest, request: Request[Any, Any, Any]) -> Response[bytes]:
        """Have a cutting plan made; raises as `Runner.run`."""
        seconds = _seconds_left(request)
        task = CutPlanTask(request=plan, search_seconds=seconds * SEARCH_RATIO, most_work_count=self._cut_work_count)
        job = Job(kind=JobKind.CUT_PLAN, payload=encode_task(task), deadline_seconds=seconds)
        return Response(await self._runner.run(job), media_type=JSON)

    async def _make(
        self, kind: JobKind, task: SurveyTask | DrawingTask, request: Request[Any, Any, Any]
    ) -> tuple[bytes, dict[str, str]]:
        held = await self._shelf.take_for(caller_of(request).account, task.request.terms)
        job = Job(kind=kind, payload=encode_task(task), snapshot=held.snapshot, deadline_seconds=_seconds_left(request))
        return await self._runner.run(job), held.headers


def _today() -> str:
    return dt.datetime.now(dt.UTC).date().isoformat()


def _seconds_left(request: Request[Any, Any, Any]) -> float:
    deadline: float = request.scope["state"][DEADLINE_KEY]
    return max(LEAST_SECONDS, deadline - asyncio.get_running_loop().time())
