"""Cautions that need no calculation, each with its trigger (`knowledge/cautions.md`; every row's source stands in it).

The service informs; it does not certify safety. Rows are functions of the job and the frame; one that does not fire is None.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.brief import supply_of
from service.checks.caution_rows import CLEARED_BY, Facts, Row, rows_of
from service.checks.result import Caution, CautionState, NotMade, Stops
from service.errors import Unmet
from service.survey.services import Flue, GasState, SupplyWanted, VentServes
from service.survey.wall import Damp

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame import Frame
    from service.rules import RuleSet

CHECKS_NOT_MADE = (
    NotMade(family="structure", says="strength, sag and stability of members, joints and the hung frame are not checked"),
    NotMade(family="fixings", says="resistance of wall and ceiling fixings is not checked: counts are a pattern, not a proof"),
    NotMade(family="heat", says="cavity temperature, air and the maker's clearances beyond outlet and gaps are not checked"),
    NotMade(family="power", says="circuit load, zones and access to connections are not checked"),
    NotMade(family="viewing", says="viewing height and distance are not checked"),
    NotMade(family="handling", says="the way in, corners and work at height are not checked; lifting masses are"),
)
ORDER = (Stops.DESIGN, Stops.FIRM_QUOTE, Stops.THIS_WORK, Stops.EARLY_START, Stops.NOTHING)
SECTIONS = "HESBVWM"


def cautions_of(job: Job, frame: Frame, rules: RuleSet) -> tuple[Caution, ...]:
    """Every caution that fires or cannot be verified: what stops most first, then by section and code."""
    facts = Facts(job=job, frame=frame, rules=rules)
    made = [_caution(row, job) for row in rows_of(facts)]
    return tuple(sorted(made, key=lambda one: (ORDER.index(one.stops), SECTIONS.index(one.code[0]), one.code)))


def refusals_of(job: Job) -> tuple[Unmet, ...]:
    """What the trade does not build over until it is cleared: gas, a live flue, an appliance's vent, damp (services.md, section 7)."""
    cleared = {item.code for item in job.survey.cleared or () if item.role.value in CLEARED_BY.get(item.code, ())}
    survey = job.survey
    found = []
    if survey.services and survey.services.gas is GasState.PRESENT and "B03" not in cleared:
        found.append(("B03", "there is gas at this wall: nothing is built over it", "a certificate of a registered gas engineer that it is capped off, sent in `cleared` as B03"))
    if survey.chimney and survey.chimney.flue is Flue.IN_USE:
        found.append(("B01", "the flue is in use: a live flue is never boxed in", "another wall, or the appliance on that flue taken out of use"))
    if survey.wall and survey.wall.damp is Damp.SHOWING and "B05" not in cleared:
        found.append(("B05", "damp is showing on this wall", "the cause found and cured, sent in `cleared` as B05"))
    if _covers_appliance_vent(job) and "B04" not in cleared:
        found.append(("B04", "the breast would cover an air vent that serves an appliance", "another place, or the vent moved by a gas engineer"))
    return tuple(
        Unmet(code=f"refused_{code.lower()}", says=says, asked_mm=0.0, available_mm=0.0, short_by_mm=0.0, offer=offer) for code, says, offer in found
    )


def _covers_appliance_vent(job: Job) -> bool:
    vents = (job.survey.services.air_vents if job.survey.services else None) or ()
    half = (job.width_tenth_mm or 0) / 2 or job.appliance.body_width_mm * 10 / 2 + 200
    return any(vent.serves is VentServes.APPLIANCE and abs(vent.x_mm * 10 - job.wall_centre_tenth_mm) <= half for vent in vents)


def _caution(row: Row, job: Job) -> Caution:
    allowed = CLEARED_BY.get(row.code, ())
    by = next((item for item in job.survey.cleared or () if item.code == row.code and item.role.value in allowed), None)
    return Caution(
        code=row.code,
        state=CautionState.CLEARED if by else row.state,
        says=row.says,
        stops=row.stops,
        audience=row.audience,
        who_clears=row.who_clears,
        source=row.source,
        cleared_by=f"{by.name}, {by.role.value}, {by.on}: {by.evidence}" if by else "",
    )


def needs_new_circuit(job: Job) -> bool:
    """Whether the electrician's work is notifiable in England (Approved Document P, 2013: seen in summaries)."""
    return supply_of(job) is SupplyWanted.NEW_CIRCUIT
