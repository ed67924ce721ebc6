"""The lines that the customer sees: works, supplies, provisional sums, discount, rounding (`knowledge/labour.md`, section 6)."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING, NamedTuple

from service.catalogue import price_step
from service.price.price import SaleKind, SaleLine
from service.price.purse import bought_minor
from service.price.rounding import percent, share, text, to_minor_units
from service.survey.terms import SuppliedBy

if TYPE_CHECKING:
    from service.brief import Deal
    from service.price.purse import Purse


class Supply(NamedTuple):
    """A fire, screen or bracket of the job."""

    model: str
    name: str
    by: SuppliedBy
    listed: bool  # it is the catalogue's own: one of its name that the customer described, or of a size class, has no price


def sale_lines(cost: int, purse: Purse) -> tuple[tuple[SaleLine, ...], tuple[str, ...]]:
    """Lines without tax, and the supplies that have no price."""
    deal = purse.deal
    supplies, missing = _supplies(purse)
    lines = [_works(cost, deal), *supplies, *_provisional(deal)]
    lines += _discount(lines, deal)
    lines += _rounding(lines, deal)
    return tuple(lines), missing


def _line(kind: SaleKind, name: str, net_minor: int, *, working: str, code: str = "") -> SaleLine:
    return SaleLine(kind=kind, code=code, name=name, working=working, net_minor=net_minor, tax_ratio=0.0, tax_minor=0)


def _works(cost: int, deal: Deal) -> SaleLine:
    """Mark-up is on cost, margin on price."""
    ratio = Decimal(repr(deal.profit_ratio))
    if deal.by_margin:
        exact, working = Decimal(cost) / (1 - ratio), f"margin {percent(deal.profit_ratio)}: cost / {1 - ratio}"
    else:
        exact, working = Decimal(cost) * (1 + ratio), f"mark-up {percent(deal.profit_ratio)}: cost x {1 + ratio}"
    return _line(SaleKind.WORKS, "works", to_minor_units(exact), working=working)


def _wanted(purse: Purse) -> list[Supply]:
    job, deal, catalogue = purse.job, purse.deal, purse.catalogue
    fire, screen, bracket = job.appliance, job.screen, job.bracket
    wanted = [Supply(fire.model, "fire", deal.appliance_supplied_by, catalogue.appliances.get(fire.model) == fire)]
    if screen:
        wanted.append(Supply(screen.model, "screen", deal.screen_supplied_by, catalogue.screens.get(screen.model) == screen))
    if bracket:
        listed = catalogue.brackets.get(bracket.model) == bracket
        wanted.append(Supply(bracket.model, "screen bracket", deal.bracket_supplied_by, listed))
    return [one for one in wanted if one.by is SuppliedBy.SHOP]


def _supplies(purse: Purse) -> tuple[list[SaleLine], tuple[str, ...]]:
    """Fire, screen and bracket that the shop sells: purchase price and handling; no risk, overhead or profit."""
    ratio = purse.catalogue.account.handling_ratio
    lines, missing = [], []
    for one in _wanted(purse):
        step = price_step(purse.catalogue, one.model, purse.deal.date) if one.listed else None
        if step is None:
            missing.append(f"1 x {one.name} {one.model}")
            continue
        each = bought_minor(step.amount_minor, purse)
        working = f"{text(each)} + handling {percent(ratio)}; no risk, overhead or profit"
        name = f"supply of {one.name} {one.model}"
        lines.append(_line(SaleKind.SUPPLY, name, each + share(each, ratio), working=working, code=one.model))
    return lines, tuple(missing)


def _provisional(deal: Deal) -> list[SaleLine]:
    working = "stated amount, settled at cost + 10 percent"
    return [
        _line(SaleKind.PROVISIONAL_SUM, f"provisional sum: {item.name}", item.amount_minor, working=working)
        for item in deal.provisional_sums
    ]


def _discount(lines: list[SaleLine], deal: Deal) -> list[SaleLine]:
    """Off the price before tax."""
    if not deal.discount_ratio:
        return []
    off = share(sum(line.net_minor for line in lines), deal.discount_ratio)
    return [_line(SaleKind.DISCOUNT, "discount", -off, working=f"{percent(deal.discount_ratio)} of the lines above")]


def _rounding(lines: list[SaleLine], deal: Deal) -> list[SaleLine]:
    if not deal.round_up_to_minor:
        return []
    up = -sum(line.net_minor for line in lines) % deal.round_up_to_minor
    working = f"up to a whole {text(deal.round_up_to_minor)} before tax"
    return [_line(SaleKind.ROUNDING, "rounding", up, working=working)] if up else []
