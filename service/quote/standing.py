"""Standing of a quote, and what no quote includes (`knowledge/survey.md`, section 1; `knowledge/labour.md`, section 8)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks import CautionState, Stops, open_pointers
from service.survey.terms import Scope, SuppliedBy

if TYPE_CHECKING:
    from service.brief import Deal, Job
    from service.checks import Caution
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


def standing_of(job: Job, cautions: tuple[Caution, ...], price: Price) -> tuple[str, tuple[str, ...]]:
    """`estimate` or `provisional`, with the reasons; never `firm` while checks are not made."""
    reasons = ["strength, fixings, heat, power and viewing are not checked yet"]
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
    return ("estimate" if by_class else "provisional"), tuple(reasons)


def exclusions_of(deal: Deal) -> tuple[str, ...]:
    """What the price does not include, by what is sold and who supplies it."""
    by_customer = tuple(
        name
        for name, by in (("the fire", deal.appliance_supplied_by), ("the screen", deal.screen_supplied_by))
        if by is SuppliedBy.CUSTOMER
    )
    return (*by_customer, *(SITE_EXCLUSIONS if deal.scope is Scope.SUPPLY_AND_FIT else NO_FITTING))
