"""From bill and labour to cost: the shop's own steps (`knowledge/labour.md`, section 6)."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

import msgspec

from service.bill import Bill, LineGroup
from service.brief import Deal, Job, provenance_of
from service.catalogue import Catalogue
from service.labour import Labour
from service.price.price import PricedLine, Step, StepKind
from service.price.rounding import share, text, to_minor_units
from service.survey.survey import Provenance
from service.survey.terms import PacksCharged, Scope, TaxKind

if TYPE_CHECKING:
    from service.bill import BillLine
    from service.catalogue import PriceStep


class Purse(msgspec.Struct, frozen=True, kw_only=True):
    """What the price is reckoned from."""

    bill: Bill
    labour: Labour
    job: Job
    deal: Deal
    catalogue: Catalogue


def price_step(code: str, count: int, catalogue: Catalogue, date: str) -> PriceStep | None:
    """The price step of a code that holds for a number of packs on a day, or None."""
    steps = [step for step in catalogue.prices.get(code, ()) if step.valid_from <= date and step.from_count <= max(count, 1)]
    return max(steps, key=lambda step: (step.from_count, step.valid_from), default=None)


def bought_minor(amount_minor: int, purse: Purse) -> int:
    """A catalogue price as it costs the shop: one that is not registered for tax bears it."""
    if purse.deal.tax_kind is TaxKind.NOT_REGISTERED:
        return amount_minor + share(amount_minor, purse.catalogue.account.tax_standard_ratio)
    return amount_minor


def price_bill(purse: Purse) -> tuple[tuple[PricedLine, ...], tuple[str, ...]]:
    """Price every line of the bill; what the book does not price is named, never taken as nothing."""
    priced, unpriced = [], []
    for line in purse.bill.lines:
        step = price_step(line.code, line.packs_count, purse.catalogue, purse.deal.date) if line.code else None
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
    packs = Decimal(repr(line.used_packs_ratio)) if deal.packs_charged is PacksCharged.PRO_RATA else Decimal(line.packs_count)
    return to_minor_units(packs * each_minor * Decimal(repr(line.charged_ratio)))


def cost_steps(purse: Purse, priced: tuple[PricedLine, ...]) -> tuple[Step, ...]:
    """Every step from materials to cost; each rounded when formed, sums exact."""
    groups = {line.code: line.group for line in purse.bill.lines}
    materials = [line for line in priced if groups[line.code] is LineGroup.MATERIAL]
    goods = sum(line.charged_minor for line in materials)
    account = purse.catalogue.account
    steps = [
        _step(StepKind.MATERIALS, "materials", "bill", goods),
        _step(StepKind.HANDLING, "handling", f"{account.handling_ratio:.0%} of materials", share(goods, account.handling_ratio)),
        *_labour_steps(purse),
        *_preliminaries(purse, materials),
        *(_step(StepKind.DISPOSAL, "disposal", f"{line.packs_count} x {text(line.each_minor)}", line.charged_minor) for line in priced if groups[line.code] is LineGroup.DISPOSAL and _fits(purse)),
        *_hire(purse),
    ]
    steps += _tool_wear(purse, steps)
    return (*steps, *_totals(purse, sum(step.amount_minor for step in steps)))


def _fits(purse: Purse) -> bool:
    return purse.deal.scope is Scope.SUPPLY_AND_FIT


def _step(kind: StepKind, name: str, working: str, amount_minor: int, *, total: bool = False) -> Step:  # noqa: PLR0917 - the parts of a step
    return Step(kind=kind, name=name, working=working, amount_minor=amount_minor, sum=total)


def _labour_steps(purse: Purse) -> list[Step]:
    steps = []
    for trade in purse.labour.trades:
        rate = purse.catalogue.trades[trade.trade].charge_per_hour_minor
        amount = to_minor_units(Decimal(str(trade.charged_hours)) * rate)
        least = "" if trade.charged_hours == trade.person_hours else " (least of a visit)"
        steps.append(_step(StepKind.LABOUR, f"labour {trade.trade}", f"{trade.charged_hours:g} h x {text(rate)}{least}", amount))
    visits = purse.labour.electrician_visit_hours
    if visits:
        steps.append(_electrician(purse, sum(visits), len(visits)))
    return steps


def _electrician(purse: Purse, hours: float, visits: int) -> Step:
    account = purse.catalogue.account
    rate = purse.catalogue.trades["electrician"].charge_per_hour_minor
    work = to_minor_units(Decimal(str(hours)) * rate) + account.electrician_certificate_minor
    amount = work + share(work, account.subcontract_handling_ratio)
    working = f"{hours:g} h x {text(rate)} in {visits} visits + certificate {text(account.electrician_certificate_minor)}; + {account.subcontract_handling_ratio:.0%}"
    return _step(StepKind.SUBCONTRACT, "electrician", working, amount)


def _preliminaries(purse: Purse, materials: list[PricedLine]) -> list[Step]:
    account, deal, days = purse.catalogue.account, purse.deal, purse.labour.visit_days
    steps = []
    if days and _fits(purse):
        steps.append(_step(StepKind.TRAVEL, "travel", f"{days} visit days x {text(deal.travel_per_day_minor)}", days * deal.travel_per_day_minor))
    small = []
    for supplier in account.delivery_suppliers:
        goods = sum(line.charged_minor for line in materials if line.supplier == supplier)
        if 0 < goods < account.delivery_free_from_minor:
            small.append(f"{supplier} {text(goods)}")
    if small:
        working = f"{text(account.delivery_minor)} for each supplier with goods below {text(account.delivery_free_from_minor)}: {', '.join(small)}"
        steps.append(_step(StepKind.DELIVERY, "delivery", working, len(small) * account.delivery_minor))
    if deal.parking_minor and _fits(purse):
        steps.append(_step(StepKind.PARKING, "parking", "as surveyed", deal.parking_minor))
    return steps


def _hire(purse: Purse) -> list[Step]:
    days = purse.labour.lifter_days
    code = next((code for code in sorted(purse.catalogue.materials) if "lifter" in purse.catalogue.materials[code].uses), "")
    step = price_step(code, days, purse.catalogue, purse.deal.date)
    if not days or step is None:
        return []
    each = bought_minor(step.amount_minor, purse)
    return [_step(StepKind.HIRE, "hire of lifter", f"{days} x {text(each)}", days * each)]


def _tool_wear(purse: Purse, steps: list[Step]) -> list[Step]:
    labour = sum(step.amount_minor for step in steps if step.kind is StepKind.LABOUR)
    if not labour:
        return []
    ratio = purse.catalogue.account.tool_wear_ratio
    return [_step(StepKind.TOOL_WEAR, "tool wear", f"{ratio:.1%} of labour {text(labour)}", share(labour, ratio))]


def risk_ratio(job: Job, catalogue: Catalogue) -> float:
    """Share of the cost for surprises: least for a measured survey, more for a stated one, most where fields are assumed."""
    account = catalogue.account
    if any(note.needed_for_firm for note in job.assumptions):
        return account.risk_assumed_ratio
    measured = provenance_of(job.survey, "/survey") is Provenance.MEASURED
    return account.risk_measured_ratio if measured else account.risk_stated_ratio


def _totals(purse: Purse, direct: int) -> tuple[Step, ...]:
    ratio = risk_ratio(purse.job, purse.catalogue)
    risk = share(direct, ratio)
    overhead = share(direct + risk, purse.deal.overhead_ratio)
    return (
        _step(StepKind.DIRECT_COST, "direct cost", "sum", direct, total=True),
        _step(StepKind.RISK, "risk", f"{ratio:.0%} of direct cost", risk),
        _step(StepKind.OVERHEAD, "overhead", f"{purse.deal.overhead_ratio:.0%} of direct cost and risk", overhead),
        _step(StepKind.COST, "cost", "direct cost + risk + overhead", direct + risk + overhead, total=True),
    )
