"""Labour as a value: hours by task and trade, lifts that need help, visit days, and the likely range."""

from __future__ import annotations

import msgspec

from service.checks import Lift
from service.labour.programme import Programme


class TaskTerm(msgspec.Struct, frozen=True, kw_only=True):
    """One term of a task: so much of an input at so many hours each."""

    input: str
    quantity: float
    quantity_unit: str  # the input again: pieces, m, m2, job
    rate_hours: float


class Task(msgspec.Struct, frozen=True, kw_only=True):
    """One task of the programme with its person-hours, rounded half up to 0.01 h once."""

    task: str  # L04
    name: str  # cut_timber
    trade: str
    crew_count: int  # 2: joiner and mate, half the hours each
    person_hours: float
    terms: tuple[TaskTerm, ...]


class TradeHours(msgspec.Struct, frozen=True, kw_only=True):
    """Hours of one trade, and those charged where a visit has a least length."""

    trade: str
    person_hours: float
    charged_hours: float


class Labour(msgspec.Struct, frozen=True, kw_only=True):
    """All labour of one breast."""

    tasks: tuple[Task, ...]
    trades: tuple[TradeHours, ...]
    lifts: tuple[Lift, ...]
    lifter_days: int
    electrician_visit_hours: tuple[float, ...]  # charged hours of each visit
    person_hours: float  # without the electrician
    mean_hours: float  # three-point estimate
    low_hours: float  # 10th percentile
    high_hours: float  # 90th percentile
    visit_days: int
    programme: Programme
    unrated: tuple[str, ...]  # work that the shop's rates do not know: the hours are not complete
