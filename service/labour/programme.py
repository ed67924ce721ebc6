"""The programme: earliest and latest times of the network, and the working days it takes (`knowledge/labour.md`, section 4)."""

from __future__ import annotations

import datetime

import msgspec

from service.labour.activities import Activity, After

DAY_HOURS = 24.0
OPEN_HOUR, CLOSE_HOUR, LATEST_HOUR = 8.0, 16.0, 16.5  # house choice (knowledge/labour.md, section 4)
WHOLE_HOURS = 1.0  # shorter activities are not split over two days
LAST_WEEKDAY = 4  # Friday
TINY_HOURS = 1e-6


class Booked(msgspec.Struct, frozen=True, kw_only=True):
    """One activity with its place in the network and in the calendar.

    `start_hours` to `float_hours` ignore nights. `day_count` is the working day of the site, from 1.
    """

    activity: str
    name: str
    trades: tuple[str, ...]
    work_hours: float
    after: tuple[After, ...]
    start_hours: float  # earliest
    end_hours: float
    float_hours: float
    first_day_count: int  # calendar day of its start, from 1
    last_day_count: int
    starts_at: str  # "08:00"
    ends_at: str
    starts_on: str | None  # RFC 3339 full-date, where the first day is known
    ends_on: str | None


class Programme(msgspec.Struct, frozen=True, kw_only=True):
    """All activities in order, and the days on which somebody works."""

    activities: tuple[Booked, ...]
    visit_days: int
    calendar_days: int  # from the first day to the last, both counted
    critical: tuple[str, ...]  # activities without float


class Calendar(msgspec.Struct, frozen=True, kw_only=True):
    """Which days are worked. Without a first day every day of the count is one."""

    first_on: str | None = None  # RFC 3339 full-date
    days_off: frozenset[str] = frozenset()

    def day_of(self, count: int) -> str | None:
        """Date of a calendar day of the job, from 1."""
        if self.first_on is None:
            return None
        return (datetime.date.fromisoformat(self.first_on) + datetime.timedelta(days=count - 1)).isoformat()

    def is_worked(self, count: int) -> bool:
        """Whether a calendar day of the job, from 1, is worked: Monday to Friday, and no day off."""
        day = self.day_of(count)
        return day is None or (datetime.date.fromisoformat(day).weekday() <= LAST_WEEKDAY and day not in self.days_off)


ANY_DAY = Calendar()


def make_programme(activities: tuple[Activity, ...], calendar: Calendar = ANY_DAY) -> Programme:
    """Earliest and latest times, and days; activities stand after all that they follow."""
    starts = _earliest(activities)
    floats = _floats(activities, starts)
    spans = _spans(activities, calendar)
    booked = tuple(
        _book(one, starts[one.activity], floats[one.activity], span=spans[one.activity], calendar=calendar) for one in activities
    )
    worked = {day for start, end in spans.values() for day in range(_day(start), _day(end) + 1) if calendar.is_worked(day)}
    return Programme(
        activities=booked,
        visit_days=len(worked),
        calendar_days=max(worked) - min(worked) + 1 if worked else 0,
        critical=tuple(one.activity for one in booked if one.float_hours <= TINY_HOURS),
    )


def _book(one: Activity, start_hours: float, float_hours: float, *, span: tuple[float, float], calendar: Calendar) -> Booked:
    first, last = _day(span[0]), _day(span[1])
    return Booked(
        activity=one.activity,
        name=one.name,
        trades=one.trades,
        work_hours=one.work_hours,
        after=one.after,
        start_hours=round(start_hours, 2),
        end_hours=round(start_hours + one.work_hours, 2),
        float_hours=round(float_hours, 2),
        first_day_count=first,
        last_day_count=last,
        starts_at=_clock(span[0]),
        ends_at=_clock(span[1]),
        starts_on=calendar.day_of(first),
        ends_on=calendar.day_of(last),
    )


def _earliest(activities: tuple[Activity, ...]) -> dict[str, float]:
    starts: dict[str, float] = {}
    ends: dict[str, float] = {}
    for one in activities:
        starts[one.activity] = max((ends[before.activity] + before.wait_hours for before in one.after), default=0.0)
        ends[one.activity] = starts[one.activity] + one.work_hours
    return starts


def _floats(activities: tuple[Activity, ...], starts: dict[str, float]) -> dict[str, float]:
    """How long each may slip before the end slips."""
    last = max((starts[one.activity] + one.work_hours for one in activities), default=0.0)
    latest = {one.activity: last for one in activities}
    for one in reversed(activities):
        for before in one.after:
            room = latest[one.activity] - one.work_hours - before.wait_hours
            latest[before.activity] = min(latest[before.activity], room)
    return {one.activity: max(latest[one.activity] - one.work_hours - starts[one.activity], 0.0) for one in activities}


def _spans(activities: tuple[Activity, ...], calendar: Calendar) -> dict[str, tuple[float, float]]:
    """Start and end of each in clock hours from midnight before the first day."""
    ends: dict[str, float] = {}
    spans: dict[str, tuple[float, float]] = {}
    for one in activities:
        ready = max((ends[before.activity] + before.wait_hours for before in one.after), default=0.0)
        spans[one.activity] = _booked(ready, one.work_hours, calendar)
        ends[one.activity] = spans[one.activity][1]
    return spans


def _booked(ready: float, hours: float, calendar: Calendar) -> tuple[float, float]:
    """When work of some hours starts and ends if it may start at a time."""
    start = _open(ready, calendar)
    if hours < WHOLE_HOURS and not _fits(start, hours):
        start = _open(_next_morning(start), calendar)
    at, left = start, hours
    while not _fits(at, left):
        left -= max(_morning(at) + CLOSE_HOUR - at, 0.0)
        at = _open(_next_morning(at), calendar)
    return start, at + left


def _fits(at: float, hours: float) -> bool:
    """Whether it ends by the close of the day, or soon after."""
    return at + hours <= _morning(at) + LATEST_HOUR + TINY_HOURS


def _open(at: float, calendar: Calendar) -> float:
    """The first time from then on when the site is open."""
    at = max(at, _morning(at) + OPEN_HOUR)
    while at >= _morning(at) + CLOSE_HOUR - TINY_HOURS or not calendar.is_worked(_day(at)):
        at = _next_morning(at) + OPEN_HOUR
    return at


def _morning(at: float) -> float:
    return at // DAY_HOURS * DAY_HOURS


def _next_morning(at: float) -> float:
    return _morning(at) + DAY_HOURS


def _day(at: float) -> int:
    return int(at // DAY_HOURS) + 1


def _clock(at: float) -> str:
    minutes = round(at % DAY_HOURS * 60)
    return f"{minutes // 60:02d}:{minutes % 60:02d}"
