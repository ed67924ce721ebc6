"""The bounded queue of jobs that wait for a worker."""

from __future__ import annotations

import asyncio
import math
from collections import deque
from typing import TYPE_CHECKING, Final

from service.workers.errors import overloaded

if TYPE_CHECKING:
    from service.workers.job import Job
    from service.workers.messages import Reply

LONGEST_RETRY_AFTER_SECONDS: Final = 30
MEMORY_OF_MEAN_RATIO: Final = 0.1  # weight of the newest job in the running mean of job times


class Ticket:
    """A job that waits, and the future that its caller awaits."""

    def __init__(self, job: Job) -> None:
        """Make the future in the running event loop."""
        self.job = job
        self.reply: asyncio.Future[Reply] = asyncio.get_running_loop().create_future()


class WaitingRoom:
    """First come, first served, up to a number; who gave up waiting is passed over and takes no room."""

    def __init__(self, queue_count: int, workers_count: int) -> None:
        """Bound the room; `workers_count` is only used to reckon when room will be free."""
        self._queue_count = queue_count
        self._workers_count = workers_count
        self._tickets: deque[Ticket] = deque()
        self._came = asyncio.Event()
        self._mean_seconds = 0.2  # house choice: a first guess, soon replaced by what is measured

    def __len__(self) -> int:
        """How many wait."""
        return len(self._tickets)

    def admit(self, job: Job) -> Ticket:
        """Let a job in.

        Raises:
            service.workers.errors.WorkError: the room is full.
        """
        if len(self._tickets) >= self._queue_count:
            raise overloaded(len(self._tickets), self._retry_after_seconds())
        ticket = Ticket(job)
        self._tickets.append(ticket)
        self._came.set()
        return ticket

    def leave(self, ticket: Ticket) -> None:
        """Take back a ticket whose caller gave up; nothing happens if a worker has it already."""
        ticket.reply.cancel()
        if ticket in self._tickets:
            self._tickets.remove(ticket)

    async def take(self) -> Ticket:
        """The next ticket; waits for one."""
        while not self._tickets:
            self._came.clear()
            await self._came.wait()
        return self._tickets.popleft()

    def put_back(self, ticket: Ticket) -> None:
        """Back to the head of the queue: its worker was gone before it began. Not if its caller gave up."""
        if not ticket.reply.done():
            self._tickets.appendleft(ticket)
            self._came.set()

    def note_time(self, seconds: float) -> None:
        """Learn how long a job took."""
        self._mean_seconds += (seconds - self._mean_seconds) * MEMORY_OF_MEAN_RATIO

    def _retry_after_seconds(self) -> int:
        wait_seconds = self._mean_seconds * len(self._tickets) / self._workers_count
        return min(LONGEST_RETRY_AFTER_SECONDS, max(1, math.ceil(wait_seconds)))
