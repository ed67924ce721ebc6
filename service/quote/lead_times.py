"""What a quote buys and how long its suppliers take (`knowledge/cautions.md`, W09)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.catalogue import price_step
from service.checks import Awaited
from service.survey.terms import SuppliedBy

if TYPE_CHECKING:
    from service.catalogue import Catalogue
    from service.quote.quote import Made


def awaited_of(made: Made, catalogue: Catalogue) -> tuple[Awaited, ...]:
    """Lines of the bill, and what the shop supplies besides; only what the book gives a lead time for."""
    deal, job = made.deal, made.job
    lines = tuple(Awaited(what=line.description, lead_days=line.lead_days) for line in made.price.bill_lines)
    things = (
        (deal.appliance_supplied_by, "the fire", job.appliance.model),
        (deal.screen_supplied_by, "the screen", job.screen.model if job.screen else ""),
        (deal.bracket_supplied_by, "the screen bracket", job.bracket.model if job.bracket else ""),
    )
    steps = [(what, price_step(catalogue, code, deal.date)) for by, what, code in things if code and by is SuppliedBy.SHOP]
    return (*lines, *(Awaited(what=what, lead_days=step.lead_days) for what, step in steps if step))
