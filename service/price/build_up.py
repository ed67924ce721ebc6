"""price: cost to sale lines, tax, deposit and stages (`knowledge/labour.md`, sections 6 to 8)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.price.costing import cost_steps, unpriced_work
from service.price.price import Price, StepKind
from service.price.purse import Purse, price_bill
from service.price.sale import sale_lines
from service.price.stages import stages_of, valid_until
from service.price.tax import tax_note, tax_of, taxed_lines

if TYPE_CHECKING:
    from service.bill import Bill
    from service.brief import Deal, Job
    from service.catalogue import Catalogue
    from service.labour import Labour


def price(bill: Bill, labour: Labour, *, job: Job, deal: Deal, catalogue: Catalogue) -> Price:
    """Build the price up, each line rounded half up when it is formed, and nothing else rounded."""
    purse = Purse(bill=bill, labour=labour, job=job, deal=deal, catalogue=catalogue)
    priced, unpriced = price_bill(purse)
    steps = cost_steps(purse, priced)
    amounts = {step.kind: step.amount_minor for step in steps}
    lines, missing = sale_lines(amounts[StepKind.COST], purse)
    sale = taxed_lines(lines, deal)
    net, tax = sum(line.net_minor for line in sale), tax_of(sale, deal)
    return Price(
        currency=deal.currency,
        steps=steps,
        bill_lines=priced,
        sale=sale,
        materials_minor=amounts[StepKind.MATERIALS],
        cost_minor=amounts[StepKind.COST],
        net_minor=net,
        tax_minor=tax,
        total_minor=net + tax,
        tax_note=tax_note(net, deal, catalogue.account),
        stages=stages_of(net + tax, sale, priced, purse),
        valid_until=valid_until(deal),
        unpriced=(*unpriced, *unpriced_work(purse), *missing),
    )
