"""The checks stage. Structural and heat checks are not made yet; cautions, refusals and handling are."""

from service.checks.cautions import CHECKS_NOT_MADE, cautions_of
from service.checks.cleared import faults_of_cleared
from service.checks.handling import Lift, boards_for_two, count_lifts, lifter_days, may_be_tilted, unit_mass_kg
from service.checks.known import open_pointers, survey_known
from service.checks.refusals import refusals_of
from service.checks.result import Audience, Caution, CautionState, Clears, NotMade, Stops

__all__ = [
    "CHECKS_NOT_MADE",
    "Audience",
    "Caution",
    "CautionState",
    "Clears",
    "Lift",
    "NotMade",
    "Stops",
    "boards_for_two",
    "cautions_of",
    "count_lifts",
    "faults_of_cleared",
    "lifter_days",
    "may_be_tilted",
    "open_pointers",
    "refusals_of",
    "survey_known",
    "unit_mass_kg",
]
