"""Tax on the lines of a sale (`knowledge/labour.md`, section 7). The rates are the shop's; nothing here is tax advice."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.price.rounding import percent, share, text
from service.survey.terms import TaxKind, TaxRounding

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.brief import Deal
    from service.catalogue import Account
    from service.price.price import SaleLine


def taxed_lines(lines: Iterable[SaleLine], deal: Deal) -> tuple[SaleLine, ...]:
    """The lines with the tax of each, rounded line by line."""
    return tuple(
        msgspec.structs.replace(line, tax_ratio=deal.tax_ratio, tax_minor=share(line.net_minor, deal.tax_ratio)) for line in lines
    )


def tax_of(lines: Iterable[SaleLine], deal: Deal) -> int:
    """Tax of the sale: the sum of the lines' own, or one on the whole net."""
    if deal.tax_rounding is TaxRounding.PER_LINE:
        return sum(line.tax_minor for line in lines)
    return share(sum(line.net_minor for line in lines), deal.tax_ratio)


def tax_note(net: int, deal: Deal, account: Account) -> str:
    """How the tax was reckoned, or why there is none."""
    rounded = f"rounded {deal.tax_rounding.value.replace('_', ' ')}"
    standard = account.tax_standard_ratio
    return {
        TaxKind.NOT_REGISTERED: "no tax: the seller is not registered, and the tax on what is bought is part of the cost",
        TaxKind.REVERSE_CHARGE: (
            f"reverse charge: customer to pay the VAT to HMRC, {percent(standard)} of {text(net)} = {text(share(net, standard))}"
        ),
        TaxKind.ZERO: "zero rate, on the evidence named in the terms",
        TaxKind.REDUCED: f"reduced rate {percent(deal.tax_ratio)}, on the evidence named in the terms, {rounded}",
        TaxKind.STANDARD: f"{percent(deal.tax_ratio)}, {rounded}",
    }[deal.tax_kind]
