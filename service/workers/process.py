"""The parent's side of one worker process: start it, ask it, notice its end, end it."""

from __future__ import annotations

import asyncio
import os
import socket
import subprocess
import sys
from typing import TYPE_CHECKING, Final

import msgspec

from service.workers.errors import WorkError, WorkerStartError, lost
from service.workers.messages import Ask, Drop, Hand, Outcome, Reply, pack, read_reply

if TYPE_CHECKING:
    from service.workers.job import Job

END_GRACE_SECONDS: Final = 2.0
# One thread each: the pool is the parallelism, and idle threads of a numeric library only eat address space.
_ONE_THREAD: Final = {"OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1", "MKL_NUM_THREADS": "1", "MALLOC_ARENA_MAX": "2"}


class WorkerPlan(msgspec.Struct, frozen=True, kw_only=True):
    """How a worker process is started."""

    registry: str  # `module:name`
    memory_bytes: int  # bound of its address space; 0: none
    start_seconds: float  # how long it may take to warm up


class NeverBegunError(Exception):
    """A worker that was gone before it took its job."""


class WorkerProcess:
    """One live worker. It does one job at a time."""

    def __init__(self, process: subprocess.Popen[bytes], line: socket.socket) -> None:
        """Take over a process that was just started; `start` is the door."""
        self._process = process
        self._line = line
        self._replies: asyncio.Queue[Reply | None] = asyncio.Queue()  # None: the process is gone
        self._reading: asyncio.Task[None] | None = None
        self._writer: asyncio.StreamWriter | None = None

    @classmethod
    async def start(cls, plan: WorkerPlan) -> WorkerProcess:
        """Start a process and wait until it is warm.

        Raises:
            WorkerStartError: it ended, or was not ready in time.
        """
        ours, theirs = socket.socketpair()
        spawning = asyncio.ensure_future(asyncio.to_thread(_spawn, plan, theirs))
        try:
            process = await asyncio.shield(spawning)
        except asyncio.CancelledError:  # what was begun must be ended
            await cls(await spawning, ours).end(at_once=True)
            raise
        finally:
            theirs.close()
        worker = cls(process, ours)
        try:
            await worker._greet(plan.start_seconds)
        except BaseException:
            await worker.end()
            raise
        return worker

    @property
    def pid(self) -> int:
        """Process id."""
        return self._process.pid

    async def wait_gone(self) -> None:
        """Return when the process has closed its line: it ended, however."""
        if self._reading is not None:
            await asyncio.wait({self._reading})

    async def ask(self, job: Job) -> Reply:
        """Have one job done.

        Raises:
            NeverBegunError: the process was gone before it took the job; another may do it.
            service.workers.errors.WorkError: the process ended in the middle of the job.
        """
        snapshot = job.snapshot
        account, revision = (snapshot.account, snapshot.revision) if snapshot else ("", "")
        self._send(Ask(kind=job.kind, account=account, revision=revision, payload=job.payload))
        try:
            await self._reply()  # begun
        except WorkError as error:
            raise NeverBegunError from error
        reply = await self._reply()
        if snapshot and reply.outcome is Outcome.NEED_SNAPSHOT:
            self._send(Hand(encoded=snapshot.encoded))
            reply = await self._reply()
        return reply

    def drop(self) -> None:
        """Tell the process that nobody waits for its job any more; the job still ends with a reply, soon."""
        self._send(Drop())

    async def end(self, *, at_once: bool = False) -> int:
        """End the process, forgivingly unless `at_once`, and return its exit code (negative: the signal that ended it)."""
        if self._writer is None:
            self._line.close()
        else:
            self._writer.close()
        if at_once:
            self._process.kill()
        code = await asyncio.to_thread(self._reap)
        if self._reading is not None:
            self._reading.cancel()
        return code

    def _reap(self) -> int:
        try:
            return self._process.wait(END_GRACE_SECONDS)
        except subprocess.TimeoutExpired:
            self._process.kill()
            return self._process.wait()

    async def _greet(self, start_seconds: float) -> None:
        reader, self._writer = await asyncio.open_connection(sock=self._line)
        self._reading = asyncio.create_task(self._read(reader))
        try:
            async with asyncio.timeout(start_seconds):
                await self._reply()
        except TimeoutError as error:
            message = f"a worker process was not ready within {start_seconds:g} s"
            raise WorkerStartError(message) from error
        except WorkError as error:
            message = "a worker process ended before it was ready; its last words stand above in the log"
            raise WorkerStartError(message) from error

    async def _read(self, reader: asyncio.StreamReader) -> None:
        try:
            while True:
                self._replies.put_nowait(await read_reply(reader))
        except (asyncio.IncompleteReadError, ConnectionError):
            self._replies.put_nowait(None)

    async def _reply(self) -> Reply:
        reply = await self._replies.get()
        if reply is None:
            self._replies.put_nowait(None)
            raise lost()
        return reply

    def _send(self, message: Ask | Hand | Drop) -> None:
        if self._writer is not None and not self._writer.is_closing():
            self._writer.write(pack(message))


def _spawn(plan: WorkerPlan, theirs: socket.socket) -> subprocess.Popen[bytes]:
    command = [sys.executable, "-m", "service.workers.worker", str(theirs.fileno()), plan.registry, str(plan.memory_bytes)]
    return subprocess.Popen(  # noqa: S603 - our own interpreter and module, no text from outside
        command,
        pass_fds=(theirs.fileno(),),
        stdin=subprocess.DEVNULL,
        env={**os.environ, **_ONE_THREAD},
    )
