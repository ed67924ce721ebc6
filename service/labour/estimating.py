"""estimate: inputs times rates, task by task; trades, lifts, visit days and the likely range.

Rules: `knowledge/labour.md`, sections 1, 2 and 5. All rates are the shop's, from its catalogue.
"""

from __future__ import annotations

import math
from decimal import Decimal
from itertools import groupby
from typing import TYPE_CHECKING

from service.brief import provenance_of
from service.checks import count_lifts
from service.labour.labour import Labour, Task, TaskTerm, TradeHours
from service.labour.tasks import Input, Site, task_inputs
from service.survey.survey import Provenance
from service.survey.terms import Scope
from service.survey.wall import WallConstruction
from service.survey.wishes import Finish
from service.units import round_half_up

if TYPE_CHECKING:
    from service.bill import Bill
    from service.brief import Deal, Job
    from service.catalogue import Catalogue, LabourRate
    from service.cutting.of_frame import FramePlan
    from service.frame import Frame
    from service.rules import RuleSet

ELECTRICIAN = "electrician"
LOW_RATIO, HIGH_RATIO, HIGH_UNVERIFIED_RATIO, HIGH_MEASURED_RATIO = 0.8, 1.45, 1.8, 1.3  # from memory (labour.md, section 5)
TOGETHER_RATIO = 0.10  # tasks are slow together: from memory (labour.md, section 5)
PERCENTILE_SD_RATIO = 1.2816  # of a normal distribution, 10 and 90 percent
WALL_TASKS = frozenset({"L07", "L08", "L13"})


def estimate(site: Site, deal: Deal, catalogue: Catalogue) -> Labour:
    """Hours of every task, by trade, with lifts, visits and the range."""
    tasks = _tasks(task_inputs(site), catalogue, site)
    own = [task for task in tasks if task.trade != ELECTRICIAN]
    visits = tuple(_charged(task.person_hours, ELECTRICIAN, catalogue) for task in tasks if task.trade == ELECTRICIAN)
    likely = sum((Decimal(str(task.person_hours)) for task in own), Decimal(0))
    mean, low, high = _range([task for task in own], site.job)
    lifted = {lift.what for lift in site.lifts if lift.help == "lifter"} if site.scope is Scope.SUPPLY_AND_FIT else set()
    return Labour(
        tasks=tasks,
        trades=_trades(own, catalogue),
        lifts=site.lifts,
        lifter_days=bool(lifted & {"base frame", "upper frame"}) + bool(lifted & {"fire", "screen"}),
        electrician_visit_hours=visits,
        person_hours=float(likely),
        mean_hours=mean,
        low_hours=low,
        high_hours=high,
        visit_days=_visit_days(float(likely), site, deal),
    )


def make_site(frame: Frame, plan: FramePlan, bill: Bill, facts: tuple[Job, RuleSet, Scope]) -> Site:
    """What the tasks are read from; facts are the job, the rules and the scope of the sale."""
    job, rules, scope = facts
    return Site(frame=frame, plan=plan, bill=bill, job=job, rules=rules, lifts=count_lifts(frame, job, rules), scope=scope)


def _tasks(inputs: tuple[Input, ...], catalogue: Catalogue, site: Site) -> tuple[Task, ...]:
    rates = {(rate.task, rate.input): rate for rate in catalogue.labour_rates}
    tasks = []
    for code, rows in groupby(inputs, key=lambda row: row[0]):
        found = [(rates[code, name], quantity, factor) for _task, name, quantity, factor in rows if (code, name) in rates]
        if found:
            tasks.append(_task(found, site))
    return tuple(tasks)


def _task(found: list[tuple[LabourRate, float, float]], site: Site) -> Task:
    first = found[0][0]
    terms = tuple(
        TaskTerm(input=rate.input, quantity=round(float(quantity), 3), quantity_unit=rate.input, rate_hours=round(rate.rate_hours * factor, 4))
        for rate, quantity, factor in found
    )
    hours = sum(Decimal(repr(float(quantity))) * Decimal(repr(rate.rate_hours)) * Decimal(repr(float(factor))) for rate, quantity, factor in found)
    return Task(
        task=first.task,
        name=first.term,
        trade=first.trade,
        crew_count=2 if first.task == "L10" and _heavy_board(site) else first.crew_count,
        person_hours=float(round_half_up(Decimal(hours), 2)),
        terms=terms,
    )


def _heavy_board(site: Site) -> bool:
    """A board that two carry: over 1.5 m2, or long and heavy (`knowledge/handling.md`, section 1)."""
    at = site.rules.handling
    for panel in site.frame.panels:
        area_m2 = panel.width_tenth_mm * panel.height_tenth_mm / 1e8
        long_m = max(panel.width_tenth_mm, panel.height_tenth_mm) / 10_000
        if area_m2 > at.two_person_board_m2 or (long_m > at.two_person_length_m and area_m2 * site.job.board.mass_kg_m2 > at.two_person_mass_kg):
            return True
    return False


def _trades(tasks: list[Task], catalogue: Catalogue) -> tuple[TradeHours, ...]:
    """A task of two is half the joiner's and half the mate's."""
    hours: dict[str, Decimal] = {}
    for task in tasks:
        each = Decimal(str(task.person_hours))
        shares = {task.trade: each / 2, "mate": each / 2} if task.crew_count == 2 and task.trade == "joiner" else {task.trade: each}
        for trade, share in shares.items():
            hours[trade] = hours.get(trade, Decimal(0)) + share
    order = ["joiner", "mate", "decorator", "plasterer", "tiler"]
    return tuple(
        TradeHours(trade=trade, person_hours=float(hours[trade]), charged_hours=_charged(float(hours[trade]), trade, catalogue))
        for trade in sorted(hours, key=lambda name: (order.index(name) if name in order else len(order), name))
    )


def _charged(hours: float, trade: str, catalogue: Catalogue) -> float:
    row = catalogue.trades.get(trade)
    least = row.least_hours_per_visit_hours if row and row.least_hours_per_visit_hours else 0.0
    return max(hours, least)


def _range(tasks: list[Task], job: Job) -> tuple[float, float, float]:
    """Mean, 10th and 90th percentile of the hours (three-point rule of network planning, from memory)."""
    unsure = job.wall_construction is WallConstruction.UNKNOWN
    measured = provenance_of(job.survey, "/survey") is Provenance.MEASURED
    mean = variance = likely = 0.0
    for task in tasks:
        high = HIGH_MEASURED_RATIO if measured else HIGH_RATIO
        if unsure and task.task in WALL_TASKS:
            high = HIGH_UNVERIFIED_RATIO
        mean += task.person_hours * (LOW_RATIO + 4 + high) / 6
        variance += (task.person_hours * (high - LOW_RATIO) / 6) ** 2
        likely += task.person_hours
    spread = PERCENTILE_SD_RATIO * math.sqrt(variance + (TOGETHER_RATIO * likely) ** 2)
    return round(mean, 2), round(mean - spread, 1), round(mean + spread, 1)


def _visit_days(hours: float, site: Site, deal: Deal) -> int:
    if deal.visit_days_count is not None:
        return deal.visit_days_count
    if site.scope is not Scope.SUPPLY_AND_FIT:
        return 0
    take = site.rules.take_off
    drying = take.drying_days_skimmed_count if site.job.finish is Finish.SKIMMED else take.drying_days_painted_count
    return math.ceil(hours / (take.working_day_hours * deal.crew_count)) + drying
