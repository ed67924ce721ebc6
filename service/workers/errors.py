"""Why heavy work was not done. Each carries the reason that its caller is told."""

from __future__ import annotations

from service.errors import Reason


class WorkError(Exception):
    """Work that was not done."""

    def __init__(self, reason: Reason, detail: str, *, retry_after_seconds: int | None = None) -> None:
        """Keep the reason, a sentence for the caller, and when trying again makes sense (None: it does not)."""
        super().__init__(detail)
        self.reason = reason
        self.detail = detail
        self.retry_after_seconds = retry_after_seconds


class WorkerStartError(RuntimeError):
    """A worker process that ended before it was ready: the service cannot start."""


def overloaded(waiting_count: int, retry_after_seconds: int) -> WorkError:
    """The queue is full."""
    detail = f"{waiting_count} calculations are waiting already; this one was not begun."
    return WorkError(Reason.OVERLOADED, detail, retry_after_seconds=retry_after_seconds)


def past_deadline(deadline_seconds: float) -> WorkError:
    """The caller waited as long as was allowed."""
    detail = f"The calculation was not finished within {deadline_seconds:g} s."
    return WorkError(Reason.DEADLINE, detail, retry_after_seconds=1)


def lost() -> WorkError:
    """The process that did the work ended in the middle of it."""
    detail = "The process that did this calculation ended before it was finished. Other requests are not affected."
    return WorkError(Reason.WORKER_LOST, detail, retry_after_seconds=1)


def failed() -> WorkError:
    """The work raised what it never should: our mistake; the log has the traceback."""
    return WorkError(Reason.INTERNAL, "The calculation failed through a mistake of ours, which was logged.")
