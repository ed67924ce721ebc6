"""price: cost to sale lines, rounding, tax, deposit and stages (`knowledge/labour.md`, sections 6 to 8)."""

from __future__ import annotations

import datetime
from decimal import Decimal
from typing import TYPE_CHECKING

from service.price.costing import Purse, bought_minor, cost_steps, price_bill, price_step
from service.price.price import Price, SaleKind, SaleLine, Stage, StepKind
from service.price.rounding import share, text, to_minor_units
from service.survey.terms import SuppliedBy, TaxKind, TaxRounding

if TYPE_CHECKING:
    from service.bill import Bill
    from service.brief import Deal, Job
    from service.catalogue import Catalogue
    from service.labour import Labour
    from service.price.price import PricedLine


def price(bill: Bill, labour: Labour, facts: tuple[Job, Deal, Catalogue]) -> Price:
    """Build the price up, each line rounded half up when it is formed, and nothing else rounded."""
    job, deal, catalogue = facts
    purse = Purse(bill=bill, labour=labour, job=job, deal=deal, catalogue=catalogue)
    priced, unpriced = price_bill(purse)
    steps = cost_steps(purse, priced)
    cost = next(step.amount_minor for step in steps if step.kind is StepKind.COST)
    supplies, missing = _supplies(purse)
    lines = [_works(cost, deal), *supplies, *_provisional(deal)]
    lines += _discount(lines, deal)
    lines += _rounding(lines, deal)
    sale = tuple(_with_tax(line, deal) for line in lines)
    net = sum(line.net_minor for line in sale)
    tax = _tax(sale, net, deal)
    return Price(
        currency=deal.currency,
        steps=steps,
        bill_lines=priced,
        sale=sale,
        materials_minor=next(step.amount_minor for step in steps if step.kind is StepKind.MATERIALS),
        cost_minor=cost,
        net_minor=net,
        tax_minor=tax,
        total_minor=net + tax,
        tax_note=_tax_note(deal),
        stages=_stages(net + tax, sale, priced, purse),
        valid_until=_valid_until(deal),
        unpriced=(*unpriced, *missing),
    )


def _line(kind: SaleKind, code: str, name: str, working: str, net_minor: int) -> SaleLine:  # noqa: PLR0913, PLR0917 - the parts of a line
    return SaleLine(kind=kind, code=code, name=name, working=working, net_minor=net_minor, tax_ratio=0.0, tax_minor=0)


def _works(cost: int, deal: Deal) -> SaleLine:
    ratio = Decimal(repr(deal.profit_ratio))
    exact = Decimal(cost) / (1 - ratio) if deal.by_margin else Decimal(cost) * (1 + ratio)
    working = f"margin {deal.profit_ratio:.0%}: cost / {1 - ratio}" if deal.by_margin else f"mark-up {deal.profit_ratio:.0%}: cost x {1 + ratio}"
    return _line(SaleKind.WORKS, "", "works", working, to_minor_units(exact))


def _supplies(purse: Purse) -> tuple[list[SaleLine], list[str]]:
    """Fire, screen and bracket that the shop sells: purchase price and handling; no risk, overhead or profit."""
    job, deal = purse.job, purse.deal
    wanted = [(job.appliance.model, job.appliance.name, deal.appliance_supplied_by)]
    if job.screen:
        wanted.append((job.screen.model, "screen", deal.screen_supplied_by))
    if job.bracket:
        wanted.append((job.bracket.model, "screen bracket", deal.bracket_supplied_by))
    ratio = purse.catalogue.account.handling_ratio
    lines, missing = [], []
    for model, name, by in wanted:
        if by is not SuppliedBy.SHOP:
            continue
        step = price_step(model, 1, purse.catalogue, deal.date)
        if step is None:
            missing.append(f"{name} {model}")
            continue
        each = bought_minor(step.amount_minor, purse)
        lines.append(_line(SaleKind.SUPPLY, model, f"supply of {model}", f"{text(each)} + handling {ratio:.0%}", each + share(each, ratio)))
    return lines, missing


def _provisional(deal: Deal) -> list[SaleLine]:
    return [
        _line(SaleKind.PROVISIONAL_SUM, "", f"provisional sum: {item.name}", "stated amount, settled at cost + 10 percent", item.amount_minor)
        for item in deal.provisional_sums
    ]


def _discount(lines: list[SaleLine], deal: Deal) -> list[SaleLine]:
    if not deal.discount_ratio:
        return []
    off = share(sum(line.net_minor for line in lines), deal.discount_ratio)
    return [_line(SaleKind.DISCOUNT, "", "discount", f"{deal.discount_ratio:.1%} of the lines above", -off)]


def _rounding(lines: list[SaleLine], deal: Deal) -> list[SaleLine]:
    if not deal.round_up_to_minor:
        return []
    net = sum(line.net_minor for line in lines)
    up = -net % deal.round_up_to_minor
    return [_line(SaleKind.ROUNDING, "", "rounding", f"up to a whole {text(deal.round_up_to_minor)} before tax", up)] if up else []


def _with_tax(line: SaleLine, deal: Deal) -> SaleLine:
    return SaleLine(
        kind=line.kind, code=line.code, name=line.name, working=line.working, net_minor=line.net_minor, tax_ratio=deal.tax_ratio,
        tax_minor=share(line.net_minor, deal.tax_ratio),
    )  # fmt: skip


def _tax(sale: tuple[SaleLine, ...], net: int, deal: Deal) -> int:
    if deal.tax_rounding is TaxRounding.PER_LINE:
        return sum(line.tax_minor for line in sale)
    return share(net, deal.tax_ratio)


def _tax_note(deal: Deal) -> str:
    return {
        TaxKind.NOT_REGISTERED: "seller is not registered for tax: no tax line; tax on purchases is part of the cost",
        TaxKind.REVERSE_CHARGE: "reverse charge: the customer accounts for the tax",
        TaxKind.ZERO: "zero rate, on the evidence named in the terms",
        TaxKind.REDUCED: f"reduced rate {deal.tax_ratio:.0%}, on the evidence named in the terms; rounded {deal.tax_rounding.value}",
        TaxKind.STANDARD: f"standard rate {deal.tax_ratio:.0%}, rounded {deal.tax_rounding.value}",
    }[deal.tax_kind]


def _stages(total: int, sale: tuple[SaleLine, ...], priced: tuple[PricedLine, ...], purse: Purse) -> tuple[Stage, ...]:
    """Deposit: the larger of a share of the total and fire and boards with tax, at most half; then the frame; then the rest."""
    account, deal = purse.catalogue.account, purse.deal
    fire = sum(line.net_minor for line in sale if line.kind is SaleKind.SUPPLY and line.code == purse.job.appliance.model)
    boards = sum(line.charged_minor for line in priced if purse.catalogue.materials[line.code].kind == "board")
    with_tax = fire + boards + share(fire + boards, deal.tax_ratio)
    least = to_minor_units(Decimal(total) * Decimal(repr(deal.deposit_ratio)))
    deposit = min(max(least, with_tax), share(total, account.deposit_greatest_ratio))
    frame = min(share(total, account.stage_ratio), total - deposit)
    return (
        Stage(name="deposit", amount_minor=deposit),
        Stage(name="frame complete", amount_minor=frame),
        Stage(name="hand-over", amount_minor=total - deposit - frame),
    )


def _valid_until(deal: Deal) -> str:
    return (datetime.date.fromisoformat(deal.date) + datetime.timedelta(days=deal.validity_days)).isoformat()

