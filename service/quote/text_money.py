"""Bill, hours and price as text."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.quote.text_layout import amount, number, row, title, words, wrapped

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.labour import Task
    from service.quote.wire import BillBody, BillLineAnswer, LabourBody
    from service.quote.wire_money import PriceBody

UNLISTED = "nobody on the list"
JOB = "job"
COUNTED = frozenset({"pieces", "packs"})


def bill_text(bill: BillBody) -> Iterator[str]:
    """What to buy, from whom."""
    yield from title("WHAT TO BUY (prices before tax)")
    by_supplier: dict[str, list[BillLineAnswer]] = {}
    for line in bill.lines:
        by_supplier.setdefault(line.supplier or UNLISTED, []).append(line)
    for supplier, lines in sorted(by_supplier.items()):
        days = max((line.lead_days or 0 for line in lines), default=0)
        yield f"from {supplier}{f', {days} days' if days > 1 else ''}:"
        for line in lines:
            yield _bill_line(line)
    yield f"{'materials, without disposal and hire':88}{bill.materials.amount:>10}"
    yield from _unpriced(bill.unpriced)


def _bill_line(line: BillLineAnswer) -> str:
    unit = "" if line.need_unit in COUNTED else f" {line.need_unit}"
    need = "" if line.need is None or line.need_unit == "packs" else f"{number(round(line.need, 2))}{unit}"
    packs = "" if line.unit in {"each", ""} else line.unit
    return f"{line.code or '?':10}{line.description:54}{need:>11}{line.packs_count:5} {packs:8}{amount(line.charged):>10}"


def _unpriced(things: tuple[str, ...]) -> Iterator[str]:
    if things:
        yield from wrapped(f"NO PRICE for: {'; '.join(things)}")


def hours_text(labour: LabourBody) -> Iterator[str]:
    """Hours by task, then by trade."""
    yield from title("HOURS")
    for task in labour.tasks:
        lead = f"{task.task:6}{words(task.name):32}{task.person_hours:6.2f}  {_crew(task):16}"
        yield from row(lead, _terms(task), len(lead))
    yield f"{'':6}{'together, electrician apart':32}{labour.person_hours:6.2f}"
    trades = [f"{one.trade} {number(one.person_hours)}" for one in labour.trades]
    visits = [f"electrician {len(labour.electrician_visit_hours)} visits"] if labour.electrician_visit_hours else []
    days = [f"{labour.visit_days} visit days"] if labour.visit_days else []
    yield from wrapped("; ".join([", ".join([*trades, *visits]) or "no hours", *days]))
    yield from wrapped(
        f"mean {labour.mean_hours:g} h; in eight jobs of ten between {labour.low_hours:g} and {labour.high_hours:g} h"
    )


def _crew(task: Task) -> str:
    return f"{task.trade} + mate" if task.crew_count > 1 else task.trade


def _terms(task: Task) -> str:
    """What the hours are for; the plain `job` says nothing."""
    terms = [(words(term.input.removeprefix(f"{JOB}_")), term) for term in task.terms if term.input != JOB]
    return ", ".join(f"{name} {number(term.quantity)}" if not term.input.startswith(JOB) else name for name, term in terms)


def price_text(price: PriceBody) -> Iterator[str]:
    """The shop's reckoning, then what the customer sees."""
    yield from title(f"PRICE ({price.total.currency}): the shop's own reckoning, not for the customer")
    for step in price.build_up:
        lead = f"{'= ' if step.sum else '  '}{step.name:24}{step.amount.amount:>10}  "
        yield from row(lead, step.working, len(lead))
    yield from title(f"PRICE ({price.total.currency}): what the customer sees")
    for line in price.lines:
        lead = f"  {line.name:50}{line.net.amount:>10}  "
        yield lead.rstrip()
    yield f"= {'net':50}{price.net.amount:>10}"
    yield from row(f"  {'tax':50}{price.tax.amount:>10}  ", price.tax_note, 64)
    yield f"= {'TOTAL':50}{price.total.amount:>10}  {'' if price.complete else 'NOT COMPLETE'}"
    if price.unpriced:
        yield from wrapped("; ".join(price.unpriced))
    stages = ", ".join(f"{stage.name} {stage.amount.amount}" for stage in price.stages)
    yield from row("payments", stages)
    yield from row("valid", f"until {price.valid_until}")
