"""Standing of a quote, and what no quote includes (`knowledge/survey.md`, section 1; `knowledge/labour.md`, section 8)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks import CautionState, Stops, open_pointers
from service.survey.terms import Scope, SuppliedBy

if TYPE_CHECKING:
    from service.brief import Deal, Job
    from service.checks import Caution, Report
    from service.price import Price

SITE_EXCLUSIONS = (
    "asbestos testing and removal",
    "making good beyond 300 mm of the breast",
    "moving radiators, gas or alarms",
    "floor repair",
    "upgrade of the electrical supply",
    "decoration of other walls",
    "curved or tiled work",
    "parking fines",
    "consents",
    "aerial and data beyond the recess",
    "hidden defects",
)


NO_FITTING = ("all work on site", "connection, tests and certificate by an electrician", "removal of waste")
SIZE_CLASS = "size_class"


def standing_of(job: Job, cautions: tuple[Caution, ...], price: Price, report: Report) -> tuple[str, tuple[str, ...]]:
    """`estimate`, `provisional` or `firm`, with the reasons that it is not firm."""
    reasons = _open_checks(report)
    by_class = SIZE_CLASS in {job.appliance_standing, job.screen_standing}
    counts = (
        ("values assumed that a firm price needs", len(open_pointers(job))),
        ("figures that the makers do not state", len(job.missing_figures)),
        ("values to be confirmed", len(job.doubts)),
        ("things or works without a price", len(price.unpriced)),
    )
    if by_class:
        reasons.append("fire or screen is known by its size class only")
    reasons += [f"{what}: {count}" for what, count in counts if count]
    stops = {Stops.DESIGN, Stops.FIRM_QUOTE}
    uncleared = sorted({one.code for one in cautions if one.stops in stops and one.state is not CautionState.CLEARED})
    if uncleared:
        reasons.append(f"not cleared: {', '.join(uncleared)}")
    return ("estimate" if by_class else "provisional" if reasons else "firm"), tuple(reasons)


def _open_checks(report: Report) -> list[str]:
    """Checks that keep a price from being firm: not made, failed, not verified."""
    not_made = [family.family for family in report.not_made]
    failing, unsure = ({one.code for one in found} for found in (report.failing, report.provisional))
    parts = (("not checked yet", not_made), ("checks that fail", failing), ("checks that are not verified", unsure))
    return [f"{what}: {', '.join(sorted(names))}" for what, names in parts if names]


def exclusions_of(deal: Deal) -> tuple[str, ...]:
    """What the price does not include, by what is sold and who supplies it."""
    by_customer = tuple(
        name
        for name, by in (("the fire", deal.appliance_supplied_by), ("the screen", deal.screen_supplied_by))
        if by is SuppliedBy.CUSTOMER
    )
    return (*by_customer, *(SITE_EXCLUSIONS if deal.scope is Scope.SUPPLY_AND_FIT else NO_FITTING))
