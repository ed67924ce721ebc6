"""Cautions M: money and law (`knowledge/cautions.md`, section 7)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks.finding import Finding, field_name
from service.checks.known import open_pointers
from service.checks.result import CautionState
from service.survey.terms import SuppliedBy, TaxKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.finding import Facts

NAMED_COUNT = 5  # fields named in the row; the assumptions hold all


def money_rows(facts: Facts) -> Iterator[Finding]:
    """Rows of money and law."""
    fields = open_pointers(facts.job)
    if fields:
        names = ", ".join(field_name(pointer) for pointer in fields[:NAMED_COUNT])
        more = f" and {len(fields) - NAMED_COUNT} more" if len(fields) > NAMED_COUNT else ""
        values, are, them = ("value", "is", "it") if len(fields) == 1 else ("values", "are", "them")
        says = f"{len(fields)} {values} that a firm price needs {are} assumed: {names}{more}. Measure or state {them}."
        yield Finding("M01", says, CautionState.NOT_VERIFIED)
    terms = facts.job.terms
    if terms.tax is not None and terms.tax.kind is TaxKind.REVERSE_CHARGE:
        yield Finding(
            "M03", "Reverse charge: the invoice shows no tax to pay and says 'reverse charge: customer to pay the VAT to HMRC'."
        )
    else:
        yield Finding(
            "M02",
            "A consumer who agrees at home or at a distance may cancel for 14 days. Work starts earlier only on written request.",
        )
    yield Finding("M06", "Check that the makers' warranties of fire and screen hold when they are built in.")
    yield from _brought(facts)


def _brought(facts: Facts) -> Iterator[Finding]:
    """What the customer brings; the screen is the customer's unless the terms say otherwise."""
    terms, things = facts.job.terms, []
    if terms.appliance_supplied_by is SuppliedBy.CUSTOMER:
        things.append("fire")
    if facts.job.screen and terms.screen_supplied_by in {None, SuppliedBy.CUSTOMER}:
        things.append("screen")
    if facts.job.bracket and terms.bracket_supplied_by is SuppliedBy.CUSTOMER:
        things.append("screen bracket")
    if things:
        yield Finding(
            "M07",
            f"The customer brings: {', '.join(things)}. We give no warranty on it, and its measured size must match this design.",
        )
