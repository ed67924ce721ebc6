"""What a price is reckoned from, and what things cost the shop."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

import msgspec

from service.bill import Bill, LineGroup
from service.brief import Deal, Job
from service.catalogue import Catalogue, price_step
from service.labour import Labour
from service.price.price import PricedLine
from service.price.rounding import share, to_minor_units
from service.survey.terms import PacksCharged, TaxKind

if TYPE_CHECKING:
    from service.bill import BillLine


class Purse(msgspec.Struct, frozen=True, kw_only=True):
    """What the price is reckoned from."""

    bill: Bill
    labour: Labour
    job: Job
    deal: Deal
    catalogue: Catalogue

    def group_of(self, line: PricedLine) -> LineGroup:
        """What a priced line of the bill is for the build-up."""
        return next(one.group for one in self.bill.lines if one.code == line.code)


def bought_minor(amount_minor: int, purse: Purse) -> int:
    """A catalogue price as it costs the shop: one that is not registered for tax bears the tax (labour.md, section 7)."""
    if purse.deal.tax_kind is TaxKind.NOT_REGISTERED:
        return amount_minor + share(amount_minor, purse.catalogue.account.tax_standard_ratio)
    return amount_minor


def price_bill(purse: Purse) -> tuple[tuple[PricedLine, ...], tuple[str, ...]]:
    """Price every line of the bill; what the book does not price is named, never taken as nothing."""
    priced, unpriced = [], []
    for line in purse.bill.lines:
        step = price_step(purse.catalogue, line.code, purse.deal.date, line.packs_count) if line.code else None
        if step is None:
            unpriced.append(f"{line.packs_count} x {line.description}")
            continue
        each = bought_minor(step.amount_minor, purse)
        priced.append(
            PricedLine(
                code=line.code,
                description=line.description,
                packs_count=line.packs_count,
                each_minor=each,
                charged_minor=_charged(line, each, purse.deal),
                supplier=step.supplier,
                lead_days=step.lead_days,
            )
        )
    return tuple(priced), tuple(unpriced)


def _charged(line: BillLine, each_minor: int, deal: Deal) -> int:
    """Whole packs, or what is used of them."""
    pro_rata = deal.packs_charged is PacksCharged.PRO_RATA
    packs = Decimal(repr(line.used_packs_ratio)) if pro_rata else Decimal(line.packs_count)
    return to_minor_units(packs * each_minor * Decimal(repr(line.charged_ratio)))
