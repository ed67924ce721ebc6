"""Cautions W: work, handling, dust (`knowledge/cautions.md`, section 6; `knowledge/handling.md`)."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from service.checks.finding import Finding, said
from service.checks.handling import boards_for_two, count_lifts
from service.checks.handling_checks import BAR, BOARD, CARTON, TILT
from service.survey.services import AlarmKind
from service.survey.site import Workspace
from service.survey.terms import SuppliedBy, TaxKind
from service.survey.wishes import SizeClassScreen

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.finding import Facts
    from service.checks.handling import Lift

HIGH_TENTH_MM = 20_000  # Work at Height Regulations 2005 name no height; 2 m from memory
HELP = {"none": "two people", "third_person": "three people", "lifter": "a lifter"}


def work_rows(facts: Facts) -> Iterator[Finding]:
    """Rows of work, handling and dust."""
    yield from _lifting(facts)
    if facts.unmet(TILT):
        yield Finding(
            "W02", "The upper frame cannot be tilted up whole under this ceiling. It is built in place, ladder by ladder."
        )
    for check in facts.unmet(BAR, BOARD, CARTON):
        yield Finding("W03", said(check))
    yield from _dust(facts)
    if facts.frame.levels.finished_top_tenth_mm > HIGH_TENTH_MM:
        yield Finding("W06", "Work above 2 m: steps or a platform, and two people under a hung frame.")
    yield from _stored(facts)
    yield from _site(facts)
    yield from _late(facts)
    if any(one.kind is AlarmKind.SMOKE for one in facts.services.alarms or ()):
        yield Finding("W11", "Cover the smoke alarm while sanding, and uncover it the same day.")


def _lifting(facts: Facts) -> Iterator[Finding]:
    for lift in count_lifts(facts.frame, facts.job, facts.rules):
        if lift.mass_kg > lift.one_person_kg:
            yield Finding("W01", _lift_text(lift))
    marks = boards_for_two(facts.frame, facts.job, facts.rules)
    if marks:
        yield Finding("W01", f"Boards that two people carry and fix: {', '.join(marks)}.")


def _lift_text(lift: Lift) -> str:
    takes = f"two people take about {lift.two_people_kg:g} and three {lift.three_people_kg:g}"
    return f"The {lift.what} weighs {lift.mass_kg:g} kg; at {lift.zone} height {takes}. It wants {HELP[lift.help]}."


def _dust(facts: Facts) -> Iterator[Finding]:
    if facts.site.workspace in {Workspace.IN_ROOM, Workspace.NONE}:
        yield Finding(
            "W04", "Cutting indoors: M-class extraction and masks. Limits: 3 mg/m3 for MDF and hardwood dust, 5 for softwood."
        )
    if facts.job.board.board_kind in {"cement_board", "calcium_silicate"}:
        yield Finding("W05", "Cutting this board frees silica dust: extraction of class M or H, and FFP3 masks.")


def _stored(facts: Facts) -> Iterator[Finding]:
    kind = facts.job.board.board_kind
    if kind in {"mdf", "plasterboard"}:
        yield Finding("W10", "Boards lie 48 hours in the room before they are fixed. Reject wet ones.")
    if kind == "plasterboard":
        yield Finding("W12", "Gypsum waste is kept apart from the rest.")


def _site(facts: Facts) -> Iterator[Finding]:
    """Duties on a domestic site, and what must be there before the breast is closed."""
    terms, brief, awaited = facts.job.terms, facts.job.survey.brief, []
    if terms.tax is None or terms.tax.kind is not TaxKind.REVERSE_CHARGE:
        yield Finding("W07", "For a domestic customer the contractor plans and manages the work: the construction duties hold.")
    if terms.appliance_supplied_by is SuppliedBy.CUSTOMER:
        awaited.append("fire")
    if isinstance(brief.screen, SizeClassScreen) and not brief.screen.bought:
        awaited.append("screen")
    if awaited:
        names = " and ".join(awaited)
        yield Finding("W08", f"The {names} may not be on site when the breast is closed. Wait, or price a second visit.")


def _late(facts: Facts) -> Iterator[Finding]:
    """What its supplier brings only after the first day on site, ordered on the day of the quote."""
    first_day = facts.job.terms.first_day
    if first_day is None:
        return
    left_days = (date.fromisoformat(first_day) - date.fromisoformat(facts.job.today)).days
    late = [one for one in facts.awaited if one.lead_days > left_days]
    if late:
        names = ", ".join(sorted(f"{one.what} ({one.lead_days} days)" for one in late))
        slowest = max(one.lead_days for one in late)
        yield Finding("W09", f"Ordered today, not there on the first day: {names}. Begin {slowest - left_days} days later.")
