"""Checks and strengthening as they go on the wire: numbers rounded for reading, verdict and utilisation beside them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.quote.wire_checks import CheckAnswer, Strengthening

if TYPE_CHECKING:
    from service.checks import Check, Quantity, Report, Settled

DIGITS_COUNT = 6  # of a number on the wire: what is left out is below every tolerance of the trade


def checks_body(report: Report) -> tuple[CheckAnswer, ...]:
    """Every check in the order of the report."""
    return tuple(_check(one) for one in report.checks)


def strengthening_body(settled: Settled) -> Strengthening:
    """What the design was laid out with, what was added and why, what it is settled with."""
    return Strengthening(laid_out=settled.laid_out, steps=settled.steps, settled=settled.content)


def _check(one: Check) -> CheckAnswer:
    return CheckAnswer(
        code=one.code,
        subject=one.subject,
        says=one.says,
        verdict=one.verdict,
        binding=one.binding,
        demand=_rounded(one.demand),
        resistance=_rounded(one.resistance) if one.resistance else None,
        utilisation_ratio=one.utilisation_ratio,
        clause=one.clause,
        inputs=tuple(_rounded(quantity) for quantity in one.inputs),
        unverified=one.unverified,
        remedy=one.remedy,
    )


def _rounded(quantity: Quantity) -> Quantity:
    """To so many digits that count, so that no last bit of a machine is signed."""
    return msgspec.structs.replace(quantity, value=float(f"{quantity.value:.{DIGITS_COUNT}g}"))
