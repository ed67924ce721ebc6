"""Doors for bars; written next."""
from service.cutting.pieces import STANDARD, BarJob, Effort, Stop, never
from service.cutting.plan import BarPlan
from service.errors import Fault


def cut_bars(job: BarJob, effort: Effort = STANDARD, stop: Stop = never) -> BarPlan:
    """Cut bars."""
    raise NotImplementedError


def faults_of_bars(job: BarJob) -> tuple[Fault, ...]:
    """Find all faults."""
    raise NotImplementedError
