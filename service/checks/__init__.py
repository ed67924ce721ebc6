"""The checks stage. Structural and heat checks are not made yet; cautions, refusals and handling are."""

from service.checks.cautions import CHECKS_NOT_MADE, cautions_of, refusals_of
from service.checks.handling import Lift, count_lifts, may_be_tilted, unit_mass_kg
from service.checks.result import Audience, Caution, CautionState, NotMade, Stops

__all__ = [
    "CHECKS_NOT_MADE",
    "Audience",
    "Caution",
    "CautionState",
    "Lift",
    "NotMade",
    "Stops",
    "cautions_of",
    "count_lifts",
    "may_be_tilted",
    "refusals_of",
    "unit_mass_kg",
]
