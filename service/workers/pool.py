"""A pool of worker processes behind a bounded queue.

A worker is killed only when it has worked past twice its budget, or has crashed; it is replaced, and no other request
notices. The caller of a job gets its answer, or one `WorkError`, no later than the job's deadline.
"""

from __future__ import annotations

import asyncio
import logging
import time
from typing import TYPE_CHECKING, Final

import msgspec

from service.workers.errors import WorkError, WorkerStartError, lost, past_deadline
from service.workers.messages import Outcome
from service.workers.perform import answer_of
from service.workers.process import NeverBegunError, WorkerPlan, WorkerProcess
from service.workers.waiting import Ticket, WaitingRoom

if TYPE_CHECKING:
    from service.workers.job import Job
    from service.workers.messages import Reply

BUDGETS_BEFORE_KILL: Final = 2
FIRST_BACK_OFF_SECONDS: Final = 0.2
LONGEST_BACK_OFF_SECONDS: Final = 5.0

log = logging.getLogger(__name__)


class PoolPlan(msgspec.Struct, frozen=True, kw_only=True):
    """Size and limits of a pool."""

    workers_count: int
    queue_count: int  # jobs that may wait besides those at work
    budget_seconds: float  # a worker at work for twice this is killed
    worker: WorkerPlan


class PoolState(msgspec.Struct, frozen=True, kw_only=True):
    """What the pool is doing now."""

    workers_count: int  # warm and alive
    busy_count: int
    waiting_count: int
    replaced_count: int  # workers that crashed or were killed since the start


class WorkerPool:
    """The door to heavy work: `start`, `run`, `stop`."""

    def __init__(self, plan: PoolPlan) -> None:
        """Only keep the plan; `start` starts the processes."""
        self._plan = plan
        self._places: list[asyncio.Task[None]] = []
        self._alive: set[WorkerProcess] = set()
        self._busy_count = 0
        self._replaced_count = 0

    async def start(self) -> None:
        """Start all workers and wait until they are warm.

        Raises:
            WorkerStartError: one of them ended before it was ready.
        """
        self._room = WaitingRoom(self._plan.queue_count, self._plan.workers_count)
        starting = [WorkerProcess.start(self._plan.worker) for _ in range(self._plan.workers_count)]
        started = await asyncio.gather(*starting, return_exceptions=True)
        self._alive = {worker for worker in started if isinstance(worker, WorkerProcess)}
        self._places = [asyncio.create_task(self._keep(worker)) for worker in self._alive]
        if failures := [failure for failure in started if isinstance(failure, BaseException)]:
            await self.stop()
            raise failures[0]

    async def stop(self) -> None:
        """End all workers; whoever still waits is told that the work was lost."""
        for place in self._places:
            place.cancel()
        await asyncio.gather(*self._places, return_exceptions=True)
        self._places = []
        while len(self._room):
            _settle(await self._room.take(), lost())

    async def run(self, job: Job) -> bytes:
        """Do a job; see `Runner`. A caller that is cancelled gives up its place in the queue."""
        ticket = self._room.admit(job)
        try:
            async with asyncio.timeout(job.deadline_seconds):
                reply = await ticket.reply
        except TimeoutError as error:
            raise past_deadline(job.deadline_seconds) from error
        finally:
            self._room.leave(ticket)
        if reply.outcome is Outcome.FAILED:
            log.error("job %s failed\n%s", job.kind, reply.body.decode(errors="replace"))
        return answer_of(reply)

    @property
    def state(self) -> PoolState:
        """What the pool is doing now."""
        return PoolState(
            workers_count=len(self._alive),
            busy_count=self._busy_count,
            waiting_count=len(self._room),
            replaced_count=self._replaced_count,
        )

    @property
    def pids(self) -> frozenset[int]:
        """Process ids of the live workers."""
        return frozenset(worker.pid for worker in self._alive)

    async def _keep(self, worker: WorkerProcess) -> None:
        """Keep one place filled: give jobs to its worker, and put a new worker there when that one is gone."""
        while True:
            try:
                await self._serve(worker)
            finally:
                self._alive.discard(worker)
                code = await asyncio.shield(worker.end(at_once=True))
            log.warning("worker %d ended with code %d and is replaced", worker.pid, code)
            self._replaced_count += 1
            worker = await self._replace()
            self._alive.add(worker)

    async def _serve(self, worker: WorkerProcess) -> None:
        """Give jobs to one worker until it is gone."""
        while (ticket := await self._next(worker)) is not None:
            began = time.perf_counter()
            self._busy_count += 1
            ticket.reply.add_done_callback(lambda reply: worker.drop() if reply.cancelled() else None)
            try:
                async with asyncio.timeout(self._plan.budget_seconds * BUDGETS_BEFORE_KILL):
                    _settle(ticket, await worker.ask(ticket.job))
            except TimeoutError:
                log.warning("worker %d was at %s for twice its budget and is killed", worker.pid, ticket.job.kind)
                return _settle(ticket, past_deadline(self._plan.budget_seconds * BUDGETS_BEFORE_KILL))
            except NeverBegunError:
                return self._room.put_back(ticket)
            except WorkError as error:
                return _settle(ticket, error)
            except asyncio.CancelledError:
                _settle(ticket, lost())
                raise
            finally:
                self._busy_count -= 1
                self._room.note_time(time.perf_counter() - began)
        return None

    async def _next(self, worker: WorkerProcess) -> Ticket | None:
        """The next job for a worker; None when the worker went while it was idle."""
        taking = asyncio.ensure_future(self._room.take())
        going = asyncio.ensure_future(worker.wait_gone())
        try:
            await asyncio.wait({taking, going}, return_when=asyncio.FIRST_COMPLETED)
            if not going.done():
                return taking.result()
            if taking.done():
                self._room.put_back(taking.result())
            return None
        finally:
            taking.cancel()
            going.cancel()

    async def _replace(self) -> WorkerProcess:
        wait_seconds = FIRST_BACK_OFF_SECONDS
        while True:
            try:
                return await WorkerProcess.start(self._plan.worker)
            except (WorkerStartError, OSError):
                log.exception("a worker could not be replaced; next try in %.1f s", wait_seconds)
            await asyncio.sleep(wait_seconds)
            wait_seconds = min(LONGEST_BACK_OFF_SECONDS, wait_seconds * 2)


def _settle(ticket: Ticket, result: Reply | WorkError) -> None:
    """Tell a caller, unless it gave up."""
    if ticket.reply.done():
        return
    if isinstance(result, WorkError):
        ticket.reply.set_exception(result)
    else:
        ticket.reply.set_result(result)
