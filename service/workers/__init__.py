"""Heavy work away from the web process: bytes in, bytes out, with a deadline."""

from service.workers.errors import WorkError, WorkerStartError
from service.workers.inline import InlineRunner
from service.workers.job import Job, JobFunction, Registry, Runner, Snapshot
from service.workers.pool import PoolPlan, PoolState, WorkerPool
from service.workers.process import WorkerPlan

__all__ = [
    "InlineRunner",
    "Job",
    "JobFunction",
    "PoolPlan",
    "PoolState",
    "Registry",
    "Runner",
    "Snapshot",
    "WorkError",
    "WorkerPlan",
    "WorkerPool",
    "WorkerStartError",
]
