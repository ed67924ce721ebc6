"""Heavy work away from the web process: bytes in, bytes out, with a deadline."""

from service.workers.errors import WorkError, WorkerStartError
from service.workers.example import example_bytes, example_survey
from service.workers.inline import InlineRunner
from service.workers.job import Job, JobFunction, PlainFunction, Registry, Runner, Snapshot
from service.workers.kinds import (
    CutPlanTask,
    DrawingRequest,
    DrawingTask,
    EstimateTask,
    JobKind,
    ShortlistTask,
    SurveyTask,
    encode_task,
)
from service.workers.pool import PoolPlan, PoolState, WorkerPool
from service.workers.process import WorkerPlan
from service.workers.samples import sample_requests

__all__ = [
    "CutPlanTask",
    "DrawingRequest",
    "DrawingTask",
    "EstimateTask",
    "InlineRunner",
    "Job",
    "JobFunction",
    "JobKind",
    "PlainFunction",
    "PoolPlan",
    "PoolState",
    "Registry",
    "Runner",
    "ShortlistTask",
    "Snapshot",
    "SurveyTask",
    "WorkError",
    "WorkerPlan",
    "WorkerPool",
    "WorkerStartError",
    "encode_task",
    "example_bytes",
    "example_survey",
    "sample_requests",
]
