"""Doors for sheets; written next."""
from service.cutting.pieces import STANDARD, Effort, SheetJob, Stop, never
from service.cutting.plan import SheetPlan
from service.errors import Fault


def cut_sheets(job: SheetJob, effort: Effort = STANDARD, stop: Stop = never) -> SheetPlan:
    """Cut sheets."""
    raise NotImplementedError


from service.cutting.faults import faults_of_sheets
__all__=["cut_sheets","faults_of_sheets"]
