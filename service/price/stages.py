"""When the total is paid, and how long it holds (`knowledge/labour.md`, sections 6 and 8)."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from service.price.price import SaleKind, Stage
from service.price.rounding import share
from service.survey.terms import Scope

if TYPE_CHECKING:
    from service.brief import Deal
    from service.price.price import PricedLine, SaleLine
    from service.price.purse import Purse


def stages_of(total: int, sale: tuple[SaleLine, ...], priced: tuple[PricedLine, ...], purse: Purse) -> tuple[Stage, ...]:
    """Deposit: the larger of a share of the total and fire and boards with tax, at most half; then the frame; then the rest.

    What is not fitted is paid for when it is delivered: there is no frame to be complete.
    """
    account, deal, materials = purse.catalogue.account, purse.deal, purse.catalogue.materials
    model = purse.job.appliance.model
    fire = sum(line.net_minor for line in sale if line.kind is SaleKind.SUPPLY and line.code == model)
    boards = sum(line.charged_minor for line in priced if materials[line.code].kind == "board")
    with_tax = fire + boards + share(fire + boards, deal.tax_ratio)
    deposit = min(max(share(total, deal.deposit_ratio), with_tax), share(total, account.deposit_greatest_ratio))
    if deal.scope is not Scope.SUPPLY_AND_FIT:
        return (Stage(name="deposit", amount_minor=deposit), Stage(name="delivery", amount_minor=total - deposit))
    frame = min(share(total, account.stage_ratio), total - deposit)
    return (
        Stage(name="deposit", amount_minor=deposit),
        Stage(name="frame complete", amount_minor=frame),
        Stage(name="hand-over", amount_minor=total - deposit - frame),
    )


def valid_until(deal: Deal) -> str:
    """The last day on which the price holds."""
    return (datetime.date.fromisoformat(deal.date) + datetime.timedelta(days=deal.validity_days)).isoformat()
