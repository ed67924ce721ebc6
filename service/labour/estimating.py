"""estimate: inputs times rates, task by task; trades, lifts, visit days and the likely range.

Rules: `knowledge/labour.md`, sections 1 and 2. All rates are the shop's, from its catalogue.
"""

from __future__ import annotations

from decimal import Decimal
from itertools import groupby
from typing import TYPE_CHECKING

import msgspec

from service.checks import boards_for_two, count_lifts, lifter_days
from service.labour.activities import make_activities
from service.labour.labour import Labour, Task, TaskTerm, TradeHours
from service.labour.programme import Calendar, Programme, make_programme
from service.labour.spread import spread_of
from service.labour.tasks import Input, Site, task_inputs
from service.survey.terms import Scope
from service.units import round_half_up

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.bill import Bill
    from service.brief import Deal, Job
    from service.catalogue import Catalogue, LabourRate
    from service.cutting import FramePlan
    from service.frame import Frame
    from service.rules import RuleSet

ELECTRICIAN, JOINER, MATE = "electrician", "joiner", "mate"
TRADE_ORDER = (JOINER, MATE, "decorator", "plasterer", "tiler")
CLADDING = "L10"
PAIR_COUNT = 2


def make_site(frame: Frame, plan: FramePlan, bill: Bill, *, job: Job, rules: RuleSet, scope: Scope) -> Site:
    """What the tasks are read from; the lifts are counted from the frame."""
    return Site(frame=frame, plan=plan, bill=bill, job=job, rules=rules, lifts=count_lifts(frame, job, rules), scope=scope)


def estimate(site: Site, deal: Deal, catalogue: Catalogue) -> Labour:
    """Hours of every task, by trade, with lifts, visits and the range."""
    inputs = task_inputs(site)
    tasks = _tasks(inputs, catalogue, site)
    own = [task for task in tasks if task.trade != ELECTRICIAN]
    visits = tuple(_charged(task.person_hours, ELECTRICIAN, catalogue) for task in tasks if task.trade == ELECTRICIAN)
    likely = float(sum((Decimal(str(task.person_hours)) for task in own), Decimal(0)))
    spread = spread_of(own, site.job)
    programme = _programme(tasks, site, deal)
    return Labour(
        tasks=tasks,
        trades=_trades(own, catalogue),
        lifts=site.lifts,
        lifter_days=lifter_days(site.lifts) if site.scope is Scope.SUPPLY_AND_FIT else 0,
        electrician_visit_hours=visits,
        person_hours=likely,
        mean_hours=spread.mean_hours,
        low_hours=spread.low_hours,
        high_hours=spread.high_hours,
        visit_days=_visit_days(programme, site, deal),
        programme=programme,
        unrated=tuple(f"hours of {row.task} {row.name.replace('_', ' ')}" for row in inputs if _rate(row, catalogue) is None),
    )


def reckon_again(site: Site, made: Labour, catalogue: Catalogue) -> Labour:
    """Hours of the same breast where something of the place differs; programme, lifts, days and range stay as they were made."""
    tasks = _tasks(task_inputs(site), catalogue, site)
    own = [task for task in tasks if task.trade != ELECTRICIAN]
    visits = tuple(_charged(task.person_hours, ELECTRICIAN, catalogue) for task in tasks if task.trade == ELECTRICIAN)
    return msgspec.structs.replace(made, tasks=tasks, trades=_trades(own, catalogue), electrician_visit_hours=visits)


def _rate(row: Input, catalogue: Catalogue) -> LabourRate | None:
    return next((rate for rate in catalogue.labour_rates if (rate.task, rate.input) == (row.task, row.name)), None)


def _tasks(inputs: tuple[Input, ...], catalogue: Catalogue, site: Site) -> tuple[Task, ...]:
    rated = [(rate, row) for row in inputs if (rate := _rate(row, catalogue)) is not None]
    crew = PAIR_COUNT if boards_for_two(site.frame, site.job, site.rules) else 1
    return tuple(_task(list(group), crew) for _task_code, group in groupby(rated, key=lambda one: one[1].task))


def _task(rated: list[tuple[LabourRate, Input]], cladding_crew: int) -> Task:
    """One task; its hours are the sum of its terms, rounded once."""
    first = rated[0][0]
    hours = sum((_exact(rate.rate_hours) * _exact(row.quantity) * _exact(row.factor) for rate, row in rated), Decimal(0))
    return Task(
        task=first.task,
        name=first.term,
        trade=first.trade,
        crew_count=max(first.crew_count, cladding_crew) if first.task == CLADDING else first.crew_count,
        person_hours=float(round_half_up(hours, 2)),
        terms=tuple(
            TaskTerm(
                input=row.name,
                quantity=round(float(row.quantity), 3),
                quantity_unit=row.name,
                rate_hours=round(rate.rate_hours * row.factor, 4),
            )
            for rate, row in rated
        ),
    )


def _exact(value: float) -> Decimal:
    return Decimal(repr(float(value)))


def _trades(tasks: Iterable[Task], catalogue: Catalogue) -> tuple[TradeHours, ...]:
    """A joiner's task of two is half the joiner's and half the mate's."""
    hours: dict[str, Decimal] = {}
    for task in tasks:
        pair = task.crew_count == PAIR_COUNT and task.trade == JOINER
        each = Decimal(str(task.person_hours)) / (PAIR_COUNT if pair else 1)
        for trade in (JOINER, MATE) if pair else (task.trade,):
            hours[trade] = hours.get(trade, Decimal(0)) + each
    return tuple(
        TradeHours(trade=trade, person_hours=float(hours[trade]), charged_hours=_charged(float(hours[trade]), trade, catalogue))
        for trade in sorted(hours, key=_place)
    )


def _place(trade: str) -> tuple[int, str]:
    return (TRADE_ORDER.index(trade) if trade in TRADE_ORDER else len(TRADE_ORDER), trade)


def _charged(hours: float, trade: str, catalogue: Catalogue) -> float:
    """Hours charged: a visit of some trades has a least length."""
    row = catalogue.trades.get(trade)
    return max(hours, (row.least_hours_per_visit_hours if row else None) or 0.0)


def _programme(tasks: tuple[Task, ...], site: Site, deal: Deal) -> Programme:
    """The network of the work on site; nothing where the shop does not work there."""
    there = tasks if site.scope is Scope.SUPPLY_AND_FIT else ()
    activities = make_activities(there, site.job.finish, deal.crew_count)
    return make_programme(activities, Calendar(first_on=deal.first_day, days_off=frozenset(deal.days_off)))


def _visit_days(programme: Programme, site: Site, deal: Deal) -> int:
    """As agreed, else those of the programme."""
    if site.scope is not Scope.SUPPLY_AND_FIT:
        return 0
    return programme.visit_days if deal.visit_days_count is None else deal.visit_days_count
