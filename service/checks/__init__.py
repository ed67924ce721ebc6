"""The checks stage: designs that answer their checks, cautions, refusals and handling."""

from service.checks.cautions import cautions_of
from service.checks.check import Check, Quantity, Skipped, Verdict
from service.checks.cleared import faults_of_cleared
from service.checks.finding import Awaited
from service.checks.handling import Lift, boards_for_two, count_lifts, lifter_days, may_be_tilted, unit_mass_kg
from service.checks.known import open_pointers, survey_known
from service.checks.refusals import refusals_of
from service.checks.report import FAMILIES, Report
from service.checks.result import Audience, Caution, CautionState, Clears, NotMade, Stops
from service.checks.settle import NOGGINS, Content, Settled, Strengthened, settle

__all__ = [
    "FAMILIES",
    "NOGGINS",
    "Audience",
    "Awaited",
    "Caution",
    "CautionState",
    "Check",
    "Clears",
    "Content",
    "Lift",
    "NotMade",
    "Quantity",
    "Report",
    "Settled",
    "Skipped",
    "Stops",
    "Strengthened",
    "Verdict",
    "boards_for_two",
    "cautions_of",
    "count_lifts",
    "faults_of_cleared",
    "lifter_days",
    "may_be_tilted",
    "open_pointers",
    "refusals_of",
    "settle",
    "survey_known",
    "unit_mass_kg",
]
