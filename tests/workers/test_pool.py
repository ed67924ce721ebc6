"""The pool with real processes: whatever a job does to its worker, only that job suffers."""

from __future__ import annotations

import asyncio
import os
import signal
import time
from contextlib import asynccontextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
import pytest
import uvloop

from service.catalogue import demo_catalogue
from service.errors import Reason, RequestFaultsError
from service.workers import Job, PoolPlan, Snapshot, WorkerPlan, WorkerPool, WorkError, WorkerStartError
from tests.workers.doubles import BROKEN_NAME, NAME

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Awaitable, Callable

SNAPSHOT = Snapshot(demo_catalogue())
PLAN = PoolPlan(
    workers_count=2,
    queue_count=40,
    budget_seconds=5.0,
    worker=WorkerPlan(registry=NAME, memory_bytes=1 << 30, start_seconds=60.0),
)


def job(kind: str, payload: bytes = b"", *, deadline_seconds: float = 30.0, snapshot: Snapshot = SNAPSHOT) -> Job:
    return Job(kind=kind, payload=payload, snapshot=snapshot, deadline_seconds=deadline_seconds)


@asynccontextmanager
async def running(plan: PoolPlan = PLAN) -> AsyncIterator[WorkerPool]:
    pool = WorkerPool(plan)
    await pool.start()
    pids = pool.pids
    assert len(pids) == plan.workers_count
    try:
        yield pool
    finally:
        pids |= pool.pids
        await pool.stop()
        assert not [pid for pid in pids if is_alive(pid)]


def is_alive(pid: int) -> bool:
    return Path(f"/proc/{pid}").exists()


async def until(condition: Callable[[], bool]) -> None:
    async with asyncio.timeout(20):
        while not condition():  # noqa: ASYNC110 - what is waited for is in another process
            await asyncio.sleep(0.01)


async def reason_of(work: Awaitable[bytes]) -> Reason:
    with pytest.raises(WorkError) as caught:
        await work
    return caught.value.reason


async def healthy(pool: WorkerPool) -> None:
    """All places are filled again and answer."""
    await until(lambda: pool.state.workers_count == 2)
    answers = await asyncio.gather(*(pool.run(job("echo", b"%d" % i)) for i in range(10)))

    assert [f"{SNAPSHOT.revision} {i}".encode() for i in range(10)] == answers


@pytest.mark.parametrize("loop_factory", [asyncio.new_event_loop, uvloop.new_event_loop], ids=["asyncio", "uvloop"])
def test_thirty_parallel_jobs_each_get_their_own_answer(loop_factory: Callable[[], asyncio.AbstractEventLoop]) -> None:
    async def scenario() -> None:
        async with running() as pool:
            answers = await asyncio.gather(*(pool.run(job("echo", b"%d" % i)) for i in range(30)))
            workers = set(await asyncio.gather(*(pool.run(job("process_id")) for _ in range(30))))

            assert [f"{SNAPSHOT.revision} {i}".encode() for i in range(30)] == answers
            assert workers <= {str(pid).encode() for pid in pool.pids}

    asyncio.run(scenario(), loop_factory=loop_factory)


def test_a_worker_killed_in_the_middle_costs_one_request(tmp_path: Path) -> None:
    async def scenario() -> None:
        async with running() as pool:
            mark = tmp_path / "pid"
            doomed = asyncio.create_task(pool.run(job("doze", b"20 %s" % bytes(mark))))
            await until(lambda: mark.exists() and mark.read_text() != "")
            others = [asyncio.create_task(pool.run(job("echo", b"%d" % i))) for i in range(10)]
            os.kill(int(mark.read_text()), signal.SIGKILL)

            assert await reason_of(doomed) is Reason.WORKER_LOST
            assert [f"{SNAPSHOT.revision} {i}".encode() for i in range(10)] == await asyncio.gather(*others)
            await healthy(pool)
            assert pool.state.replaced_count == 1

    asyncio.run(scenario())


def test_a_worker_killed_while_idle_costs_nothing() -> None:
    async def scenario() -> None:
        async with running() as pool:
            for pid in pool.pids:
                os.kill(pid, signal.SIGKILL)
            await healthy(pool)

            assert pool.state.replaced_count == 2

    asyncio.run(scenario())


@pytest.mark.parametrize("kind", ["crash", "eat_memory"])
def test_a_job_that_ends_its_worker_costs_one_request(kind: str) -> None:
    async def scenario() -> None:
        async with running() as pool:
            assert await reason_of(pool.run(job(kind))) is Reason.WORKER_LOST
            await healthy(pool)
            assert pool.state.replaced_count == 1

    asyncio.run(scenario())


def test_a_job_that_hangs_is_answered_at_its_deadline_and_its_worker_killed_past_twice_the_budget() -> None:
    async def scenario() -> None:
        async with running(msgspec.structs.replace(PLAN, budget_seconds=0.5)) as pool:
            began = time.perf_counter()
            reason = await reason_of(pool.run(job("spin", deadline_seconds=0.3)))
            answered = time.perf_counter() - began
            await until(lambda: pool.state.replaced_count == 1)
            killed = time.perf_counter() - began

            assert reason is Reason.DEADLINE
            assert 0.3 <= answered < 0.9
            assert 1.0 <= killed < 3.0
            await healthy(pool)

    asyncio.run(scenario())


def test_a_job_past_its_deadline_but_within_twice_its_budget_keeps_its_worker() -> None:
    async def scenario() -> None:
        async with running() as pool:
            assert await reason_of(pool.run(job("doze", b"0.5", deadline_seconds=0.1))) is Reason.DEADLINE
            await until(lambda: pool.state.busy_count == 0)
            assert pool.state.replaced_count == 0
            await healthy(pool)

    asyncio.run(scenario())


def test_a_job_that_raises_is_our_mistake_and_its_words_go_to_the_log_only(caplog: pytest.LogCaptureFixture) -> None:
    async def scenario() -> None:
        async with running() as pool:
            with pytest.raises(WorkError) as caught:
                await pool.run(job("stumble"))

            assert caught.value.reason is Reason.INTERNAL
            assert "secret" not in str(caught.value)
            assert "ZeroDivisionError: a mistake with a secret in it" in caplog.text
            assert pool.state.replaced_count == 0

    asyncio.run(scenario())


def test_faults_come_back_as_they_were_raised() -> None:
    async def scenario() -> None:
        async with running() as pool:
            with pytest.raises(RequestFaultsError) as caught:
                await pool.run(job("refuse"))

            assert [("/survey/brief", Reason.CONTRADICTION, ("/survey/room",)), ("", Reason.NO_PRICE, ())] == [
                (fault.pointer, fault.reason, fault.related) for fault in caught.value.faults
            ]

    asyncio.run(scenario())


def test_the_queue_is_bounded_and_says_when_to_come_again() -> None:
    async def scenario() -> None:
        async with running(msgspec.structs.replace(PLAN, queue_count=3)) as pool:
            busy = [asyncio.create_task(pool.run(job("doze", b"0.6"))) for _ in range(2)]
            await until(lambda: pool.state.busy_count == 2)
            waiting = [asyncio.create_task(pool.run(job("echo"))) for _ in range(3)]
            await asyncio.sleep(0)
            with pytest.raises(WorkError) as caught:
                await pool.run(job("echo"))

            assert caught.value.reason is Reason.OVERLOADED
            assert caught.value.retry_after_seconds is not None
            assert 1 <= caught.value.retry_after_seconds <= 30
            assert len(await asyncio.gather(*busy, *waiting)) == 5

    asyncio.run(scenario())


def test_a_cancelled_caller_gives_up_its_place_and_its_job_is_never_begun(tmp_path: Path) -> None:
    async def scenario() -> None:
        async with running(msgspec.structs.replace(PLAN, workers_count=1, queue_count=1)) as pool:
            mark = tmp_path / "begun"
            busy = asyncio.create_task(pool.run(job("doze", b"0.5")))
            await until(lambda: pool.state.busy_count == 1)
            dropped = asyncio.create_task(pool.run(job("doze", b"0 %s" % bytes(mark))))
            await until(lambda: pool.state.waiting_count == 1)
            dropped.cancel()
            await asyncio.wait({dropped})

            assert pool.state.waiting_count == 0
            assert await pool.run(job("echo")) != b""  # the only place in the queue is free again
            assert await busy == b"slept"
            assert not mark.exists()

    asyncio.run(scenario())


def test_a_caller_cancelled_while_its_job_runs_leaves_the_worker_whole() -> None:
    async def scenario() -> None:
        async with running() as pool:
            running_job = asyncio.create_task(pool.run(job("doze", b"0.4")))
            await until(lambda: pool.state.busy_count == 1)
            running_job.cancel()
            await until(lambda: pool.state.busy_count == 0)
            await healthy(pool)

            assert pool.state.replaced_count == 0

    asyncio.run(scenario())


def test_the_time_in_the_queue_counts_towards_the_deadline() -> None:
    async def scenario() -> None:
        async with running(msgspec.structs.replace(PLAN, workers_count=1)) as pool:
            busy = asyncio.create_task(pool.run(job("doze", b"0.6")))
            await until(lambda: pool.state.busy_count == 1)

            assert await reason_of(pool.run(job("echo", deadline_seconds=0.1))) is Reason.DEADLINE
            assert pool.state.waiting_count == 0
            await busy

    asyncio.run(scenario())


def test_each_job_sees_the_revision_it_names_whatever_came_between() -> None:
    """More revisions in turn than a worker keeps."""

    async def scenario() -> None:
        snapshots = [Snapshot(msgspec.structs.replace(demo_catalogue(), revision=f"r{i}")) for i in range(7)]
        async with running() as pool:
            for turn in range(3):
                jobs = [job("echo", b"%d" % turn, snapshot=snapshot) for snapshot in snapshots]

                assert [f"r{i} {turn}".encode() for i in range(7)] == await asyncio.gather(*map(pool.run, jobs))

    asyncio.run(scenario())


def test_print_of_a_native_library_does_not_disturb_the_line() -> None:
    async def scenario() -> None:
        async with running() as pool:
            assert await pool.run(job("print_much", b"x")) == b"x"

    asyncio.run(scenario())


def test_large_answers_pass() -> None:
    async def scenario() -> None:
        async with running() as pool:
            payload = bytes(3_000_000)

            assert len(await pool.run(job("echo", payload))) == len(payload) + len(SNAPSHOT.revision) + 1

    asyncio.run(scenario())


def test_stopping_ends_hung_workers_and_tells_who_waits() -> None:
    async def scenario() -> None:
        pool = WorkerPool(PLAN)
        await pool.start()
        pids = pool.pids
        hung = [asyncio.create_task(pool.run(job("spin"))) for _ in range(2)]
        await until(lambda: pool.state.busy_count == 2)
        waiting = asyncio.create_task(pool.run(job("echo")))
        await asyncio.sleep(0)
        await pool.stop()
        results = await asyncio.gather(*hung, waiting, return_exceptions=True)

        assert [Reason.WORKER_LOST] * 3 == [result.reason for result in results if isinstance(result, WorkError)]
        assert not [pid for pid in pids if is_alive(pid)]

    asyncio.run(scenario())


def test_a_worker_that_cannot_start_stops_the_start() -> None:
    async def scenario() -> None:
        plan = msgspec.structs.replace(PLAN, worker=msgspec.structs.replace(PLAN.worker, registry=BROKEN_NAME))
        with pytest.raises(WorkerStartError):
            await WorkerPool(plan).start()

    asyncio.run(scenario())


def test_a_worker_that_is_not_ready_in_time_stops_the_start() -> None:
    async def scenario() -> None:
        plan = msgspec.structs.replace(PLAN, worker=msgspec.structs.replace(PLAN.worker, start_seconds=0.001))
        with pytest.raises(WorkerStartError, match="not ready within"):
            await WorkerPool(plan).start()

    asyncio.run(scenario())
