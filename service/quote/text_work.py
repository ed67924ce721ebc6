"""The programme and the order of work as text: what a fitter takes along."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from service.quote.text_layout import number, row, runs_of, title, words, wrapped

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.labour import Booked, Programme, Step

INDENT = 5


def programme_text(programme: Programme) -> Iterator[str]:
    """Who does what on which day; nothing where the shop does not work on site."""
    if not programme.activities:
        return
    yield from title("PROGRAMME (days of the calendar from the first; times of the clock)")
    for (day, date), booked in groupby(programme.activities, key=lambda one: (one.first_day_count, one.starts_on)):
        head = f"day {day}{f', {date}' if date else ''}"
        yield from wrapped(f"{head}: {'; '.join(_when(one) for one in booked)}")
    yield from wrapped(f"{programme.visit_days} days of work on site, {programme.calendar_days} from the first to the last")


def _when(one: Booked) -> str:
    days_on = one.last_day_count - one.first_day_count
    end = f"{one.ends_at}{f' of day {one.last_day_count}' if days_on else ''}"
    return f"{one.starts_at} to {end} {words(one.name)} ({', '.join(words(trade) for trade in one.trades)})"


def sequence_text(steps: tuple[Step, ...]) -> Iterator[str]:
    """What is done one after the other, with what each step adds and measures."""
    yield from title("ORDER OF WORK (mm)")
    for step in steps:
        yield from row(f"{step.number:>3}", f"{words(step.name)}{_crew(step)}", INDENT)
        for line in (*step.does, *_adds(step), *_measured(step), *((f"then wait: {step.wait}",) if step.wait else ())):
            yield from wrapped(line, INDENT)


def _crew(step: Step) -> str:
    people = f"{step.people_count} people" if step.people_count > 1 else ""
    props = f"{step.props_count} props" if step.props_count else ""
    trade = "" if step.trade == "joiner" else words(step.trade)
    told = ", ".join(filter(None, (trade, people, props)))
    return f" ({told})" if told else ""


def _adds(step: Step) -> Iterator[str]:
    marks = runs_of((*step.members, *step.panels))
    if marks:
        yield f"adds {marks}"
    if step.fixings:
        yield f"with {', '.join(f'{one.fixings_count} {one.what}' for one in step.fixings)}"


def _measured(step: Step) -> Iterator[str]:
    for one in step.measures:
        within = f", within {number(one.tolerance_mm)}" if one.tolerance_mm else ""
        yield f"measure {one.what}: {number(one.value_mm)}{within}"
