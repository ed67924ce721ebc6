"""How far the hours of a job may lie from the likely ones (`knowledge/labour.md`, section 5)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from service.checks import survey_known
from service.survey.survey import Provenance
from service.survey.wall import WallConstruction

if TYPE_CHECKING:
    from collections.abc import Sequence

    from service.brief import Job
    from service.labour.labour import Task

LOW_RATIO, HIGH_RATIO, HIGH_UNVERIFIED_RATIO, HIGH_MEASURED_RATIO = 0.8, 1.45, 1.8, 1.3  # from memory (labour.md, section 5)
TOGETHER_RATIO = 0.10  # tasks are slow together: from memory (labour.md, section 5)
PERCENTILE_SD_RATIO = 1.2816  # of a normal distribution, 10 and 90 percent
WALL_TASKS = frozenset({"L07", "L08", "L13"})


class Spread(NamedTuple):
    """Hours."""

    mean_hours: float
    deviation_hours: float
    low_hours: float  # 10th percentile
    high_hours: float  # 90th percentile


def spread_of(tasks: Sequence[Task], job: Job) -> Spread:
    """Mean, deviation and percentiles of the hours (three-point rule of network planning, from memory)."""
    mean = variance = likely = 0.0
    for task in tasks:
        high = _high_ratio(task.task, job)
        mean += task.person_hours * (LOW_RATIO + 4 + high) / 6
        variance += (task.person_hours * (high - LOW_RATIO) / 6) ** 2
        likely += task.person_hours
    deviation = math.sqrt(variance + (TOGETHER_RATIO * likely) ** 2)
    off = PERCENTILE_SD_RATIO * deviation
    return Spread(round(mean, 2), round(deviation, 2), round(mean - off, 1), round(mean + off, 1))


def _high_ratio(task: str, job: Job) -> float:
    if task in WALL_TASKS and job.wall_construction is WallConstruction.UNKNOWN:
        return HIGH_UNVERIFIED_RATIO
    return HIGH_MEASURED_RATIO if survey_known(job) is Provenance.MEASURED else HIGH_RATIO
