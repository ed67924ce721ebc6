"""Cautions, each with what it stops, for whom it is, and who clears it (`knowledge/cautions.md`).

The service informs; it certifies nothing.
"""

from __future__ import annotations

from itertools import chain
from typing import TYPE_CHECKING

from service.checks.building_rows import building_rows
from service.checks.caution_table import KINDS
from service.checks.cleared import cleared_by
from service.checks.finding import Facts
from service.checks.heat_rows import heat_rows
from service.checks.money_rows import money_rows
from service.checks.power_rows import power_rows
from service.checks.result import Caution, CautionState, Stops
from service.checks.strength_rows import strength_rows
from service.checks.structure_rows import structure_rows
from service.checks.use_rows import use_rows
from service.checks.work_rows import work_rows

if TYPE_CHECKING:
    from service.brief import Job
    from service.checks.finding import Awaited, Finding
    from service.checks.report import Report
    from service.frame import Frame
    from service.rules import RuleSet

SECTIONS = (heat_rows, power_rows, structure_rows, strength_rows, building_rows, use_rows, work_rows, money_rows)
LETTERS = "HESBVWM"
ORDER = (Stops.DESIGN, Stops.FIRM_QUOTE, Stops.THIS_WORK, Stops.EARLY_START, Stops.NOTHING)
ALL_ASSUMED = "M01"
SIZE_CLASS = "size_class"


def cautions_of(
    job: Job, frame: Frame, rules: RuleSet, report: Report, *, awaited: tuple[Awaited, ...] = ()
) -> tuple[Caution, ...]:
    """Every caution that fires or cannot be verified: what stops most first, then by section and code."""
    facts = Facts(job=job, frame=frame, rules=rules, report=report, awaited=awaited)
    found = list(chain.from_iterable(section(facts) for section in SECTIONS))
    if SIZE_CLASS in {job.appliance_standing, job.screen_standing}:
        found = _gathered(found)
    made = [_caution(finding, job) for finding in found]
    return tuple(sorted(made, key=lambda one: (ORDER.index(one.stops), LETTERS.index(one.code[0]), one.code, one.says)))


def _gathered(found: list[Finding]) -> list[Finding]:
    """In an estimate all that is not verified is one line, and none of it a stop (cautions.md, section 0, rule 2)."""
    unsure = sorted({one.code for one in found if one.state is CautionState.NOT_VERIFIED and one.code != ALL_ASSUMED})
    kept = [one for one in found if one.state is not CautionState.NOT_VERIFIED or one.code == ALL_ASSUMED]
    if not unsure:
        return kept
    note = f" Not verified: {', '.join(unsure)}."
    return [one._replace(says=one.says + note) if one.code == ALL_ASSUMED else one for one in kept]


def _caution(finding: Finding, job: Job) -> Caution:
    kind = KINDS[finding.code]
    by = cleared_by(finding.code, job.survey)
    return Caution(
        code=finding.code,
        state=CautionState.CLEARED if by else finding.state,
        says=finding.says,
        stops=finding.stops or kind.stops,
        audience=kind.audience,
        who_clears=kind.who_clears,
        source=kind.source,
        cleared_by=f"{by.name}, {by.role.value.replace('_', ' ')}, {by.on}: {by.evidence}" if by else "",
    )
