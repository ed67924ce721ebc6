"""Bill, labour and price as they go on the wire."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.catalogue import money
from service.quote.wire import BillBody, BillLineAnswer, LabourBody
from service.quote.wire_money import PriceBody, SaleAnswer, StageAnswer, StepAnswer

if TYPE_CHECKING:
    from service.bill import Bill, BillLine
    from service.labour import Labour
    from service.price import Price, PricedLine

TO_BE_PRICED = "provisional sum, still to be priced"


def bill_body(bill: Bill, price: Price) -> BillBody:
    """The bill with the price of each line; null where the book has none."""
    prices = {line.code: line for line in price.bill_lines}
    return BillBody(
        lines=tuple(_bill_line(line, prices.get(line.code), price.currency) for line in bill.lines),
        counts=bill.counts,
        measures=bill.measures,
        mass_bought_kg=bill.mass_bought_kg,
        waste_kg=bill.waste_kg,
        materials=money(price.materials_minor, price.currency),
        unpriced=price.unpriced,
    )


def _bill_line(line: BillLine, at: PricedLine | None, currency: str) -> BillLineAnswer:
    return BillLineAnswer(
        code=line.code,
        description=line.description,
        group=line.group,
        unit=line.unit,
        need=line.need,
        need_unit=line.need_unit,
        waste_ratio=line.waste_ratio,
        packs_count=line.packs_count,
        charged_ratio=line.charged_ratio,
        rule=line.rule,
        each=money(at.each_minor, currency) if at else None,
        charged=money(at.charged_minor, currency) if at else None,
        supplier=at.supplier if at else None,
        lead_days=at.lead_days if at else None,
    )


def labour_body(labour: Labour) -> LabourBody:
    """Hours as they are."""
    return LabourBody(
        tasks=labour.tasks,
        trades=labour.trades,
        lifts=labour.lifts,
        lifter_days=labour.lifter_days,
        electrician_visit_hours=labour.electrician_visit_hours,
        person_hours=labour.person_hours,
        mean_hours=labour.mean_hours,
        low_hours=labour.low_hours,
        high_hours=labour.high_hours,
        visit_days=labour.visit_days,
        programme=labour.programme,
        unrated=labour.unrated,
    )


def price_body(price: Price) -> PriceBody:
    """The price with every amount as Money."""
    currency = price.currency
    return PriceBody(
        build_up=tuple(
            StepAnswer(
                kind=step.kind, name=step.name, working=step.working, amount=money(step.amount_minor, currency), sum=step.sum
            )
            for step in price.steps
        ),
        lines=tuple(
            SaleAnswer(
                kind=line.kind,
                code=line.code,
                name=line.name,
                working=line.working,
                net=money(line.net_minor, currency),
                tax_ratio=line.tax_ratio,
                tax=money(line.tax_minor, currency),
            )
            for line in price.sale
        ),
        net=money(price.net_minor, currency),
        tax=money(price.tax_minor, currency),
        total=money(price.total_minor, currency),
        tax_note=price.tax_note,
        stages=tuple(StageAnswer(name=stage.name, amount=money(stage.amount_minor, currency)) for stage in price.stages),
        valid_until=price.valid_until,
        complete=not price.unpriced,
        unpriced=tuple(f"{TO_BE_PRICED}: {thing}" for thing in price.unpriced),
    )
