"""Checks that more of the same cannot answer: the design is refused with the inequality and an offer.

Rules: `knowledge/structure.md`, section 6; `knowledge/framing.md`, section 13, code `wall`. Any other check that fails stays a
failed check of a designed breast.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.check import Verdict
from service.errors import Unmet

if TYPE_CHECKING:
    from service.checks.check import Check
    from service.checks.report import Report
    from service.rules import RuleSet

WALL: Final = "wall"
FACING: Final = "facing"
STOPPING: Final = {  # check: code of the refusal
    "structure.hung_paths": WALL,
    "structure.hung_mass": WALL,
    "structure.arm_screen_mass": WALL,
    "structure.facing_mass": FACING,
}


def stopped_by(report: Report, rules: RuleSet) -> tuple[Unmet, ...]:
    """Everything that stops a design, in the order of the report; empty: nothing does."""
    return tuple(_unmet(one) for one in report.checks if _stops(one, rules))


def _stops(one: Check, rules: RuleSet) -> bool:
    """A facing is left to an engineer first, and refused where it is heavier still."""
    if one.code not in STOPPING or one.verdict is not Verdict.FAIL:
        return False
    return STOPPING[one.code] != FACING or one.demand.value > rules.actions.facing_refused_kg_m2


def _unmet(one: Check) -> Unmet:
    there = one.resistance.value if one.resistance else 0.0
    return Unmet(
        code=STOPPING[one.code],
        says=f"{one.says}: {one.demand.value:.4g} asked, {there:.4g} allowed",
        asked_mm=0.0,
        available_mm=0.0,
        short_by_mm=0.0,
        offer=one.remedy,
    )
