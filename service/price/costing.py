"""From bill and labour to cost: the shop's own steps (`knowledge/labour.md`, section 6)."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from service.bill import LineGroup
from service.checks import survey_known
from service.price.price import Step, StepKind
from service.price.rounding import percent, share, text, to_minor_units
from service.survey.survey import Provenance
from service.survey.terms import Scope

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.catalogue import Account
    from service.price.price import PricedLine
    from service.price.purse import Purse

ELECTRICIAN = "electrician"


def cost_steps(purse: Purse, priced: tuple[PricedLine, ...]) -> tuple[Step, ...]:
    """Every step from materials to cost; each rounded when formed, sums exact."""
    steps = (*_materials(purse, priced), *_labour(purse), *_preliminaries(purse, priced))
    steps += _tool_wear(purse, steps)
    return (*steps, *_totals(purse, sum(step.amount_minor for step in steps)))


def unpriced_work(purse: Purse) -> tuple[str, ...]:
    """Hours that the shop has no rate or no charge for."""
    trades = [row.trade for row in purse.labour.trades] + [ELECTRICIAN] * bool(purse.labour.electrician_visit_hours)
    unknown = tuple(f"hours of the {trade}" for trade in trades if trade not in purse.catalogue.trades)
    return (*purse.labour.unrated, *unknown)


def _materials(purse: Purse, priced: tuple[PricedLine, ...]) -> Iterator[Step]:
    goods = sum(line.charged_minor for line in priced if purse.group_of(line) is LineGroup.MATERIAL)
    ratio = purse.catalogue.account.handling_ratio
    yield Step(kind=StepKind.MATERIALS, name="materials", working="bill", amount_minor=goods)
    yield Step(
        kind=StepKind.HANDLING, name="handling", working=f"{percent(ratio)} of materials", amount_minor=share(goods, ratio)
    )


def _labour(purse: Purse) -> Iterator[Step]:
    for row in purse.labour.trades:
        trade = purse.catalogue.trades.get(row.trade)
        if trade is None:
            continue  # named as unpriced
        rate = trade.charge_per_hour_minor
        least = "" if row.charged_hours == row.person_hours else ", the least of a visit"
        yield Step(
            kind=StepKind.LABOUR,
            name=f"labour {row.trade}",
            working=f"{row.charged_hours:g} h x {text(rate)}{least}",
            amount_minor=to_minor_units(Decimal(str(row.charged_hours)) * rate),
        )
    if purse.labour.electrician_visit_hours and ELECTRICIAN in purse.catalogue.trades:
        yield _electrician(purse)


def _electrician(purse: Purse) -> Step:
    """Hours of the visits and the certificate, and the handling of a subcontract on both."""
    account, visits = purse.catalogue.account, purse.labour.electrician_visit_hours
    rate, certificate = purse.catalogue.trades[ELECTRICIAN].charge_per_hour_minor, account.electrician_certificate_minor
    hours = sum((Decimal(str(each)) for each in visits), Decimal(0))
    work = to_minor_units(hours * rate) + certificate
    working = f"{hours.normalize():f} h x {text(rate)} in {len(visits)} visits + certificate {text(certificate)}"
    return Step(
        kind=StepKind.SUBCONTRACT,
        name=ELECTRICIAN,
        working=f"{working} = {text(work)}; + {percent(account.subcontract_handling_ratio)}",
        amount_minor=work + share(work, account.subcontract_handling_ratio),
    )


def _preliminaries(purse: Purse, priced: tuple[PricedLine, ...]) -> Iterator[Step]:
    deal, days = purse.deal, purse.labour.visit_days
    if days:
        working = f"{days} visit days x {text(deal.travel_per_day_minor)}"
        yield Step(kind=StepKind.TRAVEL, name="travel", working=working, amount_minor=days * deal.travel_per_day_minor)
    yield from _delivery(purse, priced)
    if deal.parking_minor and deal.scope is Scope.SUPPLY_AND_FIT:
        yield Step(kind=StepKind.PARKING, name="parking", working="as surveyed", amount_minor=deal.parking_minor)
    kinds = {LineGroup.DISPOSAL: (StepKind.DISPOSAL, "disposal"), LineGroup.HIRE: (StepKind.HIRE, "hire of lifter")}
    for line in priced:
        if purse.group_of(line) in kinds:
            kind, name = kinds[purse.group_of(line)]
            working = f"{line.packs_count} x {text(line.each_minor)}"
            yield Step(kind=kind, name=name, working=working, amount_minor=line.charged_minor)


def _delivery(purse: Purse, priced: tuple[PricedLine, ...]) -> Iterator[Step]:
    """A charge for every supplier whose goods stay small."""
    account: Account = purse.catalogue.account
    small = []
    for supplier in account.delivery_suppliers:
        bought = [line for line in priced if line.supplier == supplier and purse.group_of(line) is LineGroup.MATERIAL]
        goods = sum(line.charged_minor for line in bought)
        if 0 < goods < account.delivery_free_from_minor:
            small.append(f"{supplier} {text(goods)}")
    if small:
        least = f"{text(account.delivery_minor)} for each supplier with goods below {text(account.delivery_free_from_minor)}"
        working = f"{least}: {', '.join(small)}"
        yield Step(kind=StepKind.DELIVERY, name="delivery", working=working, amount_minor=len(small) * account.delivery_minor)


def _tool_wear(purse: Purse, steps: tuple[Step, ...]) -> tuple[Step, ...]:
    labour = sum(step.amount_minor for step in steps if step.kind is StepKind.LABOUR)
    if not labour:
        return ()
    ratio = purse.catalogue.account.tool_wear_ratio
    working = f"{percent(ratio)} of labour {text(labour)}"
    return (Step(kind=StepKind.TOOL_WEAR, name="tool wear", working=working, amount_minor=share(labour, ratio)),)


def _totals(purse: Purse, direct: int) -> tuple[Step, ...]:
    """Risk by how well the survey is known, then overhead."""
    account, overhead_ratio = purse.catalogue.account, purse.deal.overhead_ratio
    known = survey_known(purse.job)
    risk_ratio = {
        Provenance.MEASURED: account.risk_measured_ratio,
        Provenance.STATED: account.risk_stated_ratio,
        Provenance.ASSUMED: account.risk_assumed_ratio,
    }[known]
    risk = share(direct, risk_ratio)
    overhead = share(direct + risk, overhead_ratio)
    on_risk = f"{percent(risk_ratio)} of direct cost: survey {known.value}{' in part' if known is Provenance.ASSUMED else ''}"
    on_cost = f"{percent(overhead_ratio)} of direct cost and risk"
    return (
        Step(kind=StepKind.DIRECT_COST, name="direct cost", working="sum", amount_minor=direct, sum=True),
        Step(kind=StepKind.RISK, name="risk", working=on_risk, amount_minor=risk),
        Step(kind=StepKind.OVERHEAD, name="overhead", working=on_cost, amount_minor=overhead),
        Step(
            kind=StepKind.COST,
            name="cost",
            working="direct cost + risk + overhead",
            amount_minor=direct + risk + overhead,
            sum=True,
        ),
    )
