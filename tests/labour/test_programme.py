from __future__ import annotations

import msgspec
import pytest

from service.labour.activities import Activity, make_activities
from service.labour.programme import Calendar, Programme, make_programme
from service.survey.wishes import Finish
from tests.sold_examples import made

# labour.md, section 4: id, hours, ES, EF, float of Example A.
NETWORK = (
    ("N01", 1.1, 0, 1.1, 0), ("N02", 0.3, 1.1, 1.4, 2.75), ("N03", 0.8, 1.1, 1.9, 0), ("N04", 2.25, 1.9, 4.15, 0),
    ("N05", 0.55, 4.15, 4.7, 0), ("N06", 3.5, 4.7, 8.2, 0), ("N07", 2, 8.2, 10.2, 0), ("N08", 2.45, 10.2, 12.65, 0),
    ("N09", 0.7, 12.65, 13.35, 0), ("N10", 0.75, 13.35, 14.1, 0), ("N11", 0.65, 13.35, 14, 2.1), ("N12", 0.65, 16.1, 16.75, 0),
    ("N13", 0.9, 20.75, 21.65, 0), ("N14", 0.65, 25.65, 26.3, 0), ("N15", 1.25, 38.3, 39.55, 0), ("N16", 1.5, 39.55, 41.05, 0),
    ("N17", 0.75, 41.05, 41.8, 0), ("N18", 0.65, 41.8, 42.45, 0),
)  # fmt: skip
# The same with nights: day and clock of the lines that labour.md gives.
DAYS = {
    "N06": (1, "16:12"), "N07": (2, "10:00"), "N10": (2, "13:54"), "N12": (3, "08:39"), "N13": (3, "13:33"), "N14": (4, "08:39"),
    "N18": (5, "12:09"),
}  # fmt: skip


def programme(name: str, calendar: Calendar | None = None, crew: int = 2) -> Programme:
    one = made(name)
    return make_programme(make_activities(one.labour.tasks, one.job.finish, crew), calendar or Calendar())


def as_printed() -> tuple[Activity, ...]:
    """Example A's activities with the durations of the table, which are rounded by hand."""
    printed = {row[0]: float(row[1]) for row in NETWORK}
    one = made("A")
    found = make_activities(one.labour.tasks, one.job.finish, 2)
    return tuple(msgspec.structs.replace(activity, work_hours=printed[activity.activity]) for activity in found)


def test_durations_follow_from_the_hours_of_the_tasks() -> None:
    """`knowledge/labour.md`, section 4: "rounded from the rates for Example A": the same to 3 minutes."""
    found = {one.activity: one.work_hours for one in programme("A").activities}

    assert pytest.approx({row[0]: float(row[1]) for row in NETWORK}, abs=0.0501) == found


def test_the_network_of_example_a() -> None:
    """`knowledge/labour.md`, section 4: earliest times and floats, computed there."""
    found = tuple(
        (one.activity, one.work_hours, one.start_hours, one.end_hours, one.float_hours)
        for one in make_programme(as_printed()).activities
    )

    assert [pytest.approx(row[1:], abs=1e-9) for row in NETWORK] == [row[1:] for row in found]
    assert [row[0] for row in NETWORK] == [row[0] for row in found]


def test_the_working_days_of_example_a() -> None:
    """`knowledge/labour.md`, section 4: N12 would end three minutes too late on day 2; five visit days."""
    found = make_programme(as_printed())
    ends = {one.activity: (one.last_day_count, one.ends_at) for one in found.activities}

    assert DAYS == {name: ends[name] for name in DAYS}
    assert (5, 5) == (found.visit_days, found.calendar_days)
    assert {"N02", "N11"} == {one.activity for one in found.activities} - set(found.critical)


def test_days_off_and_weekends_are_not_worked() -> None:
    """2026-12-03 is a Thursday; with the Friday off, day 2 of the work is the Monday."""
    found = programme("A", Calendar(first_on="2026-12-03", days_off=frozenset({"2026-12-04"})))
    by_name = {one.activity: one for one in found.activities}

    assert ("2026-12-03", "2026-12-07") == (by_name["N06"].ends_on, by_name["N07"].starts_on)
    assert 5 == found.visit_days
    assert 8 == found.calendar_days


def test_skim_dries_before_paint_and_before_the_first_heat() -> None:
    """`knowledge/labour.md`, section 3: skim 72 h before the mist coat, 168 h before the first heating."""
    by_name = {one.activity: one for one in programme("B").activities}

    assert 72 <= by_name["N12"].start_hours - by_name["N10"].end_hours
    assert 168 <= by_name["N15"].start_hours - by_name["N10"].end_hours


def test_what_has_no_work_hands_its_waits_on() -> None:
    """Example C has no screen and no electrician: N15 follows the paint, N18 follows N15."""
    by_name = {one.activity: one for one in programme("C").activities}

    assert not {"N07", "N09", "N16", "N17"} & set(by_name)
    assert ("N15",) == tuple(one.activity for one in by_name["N18"].after)
    assert ("N06",) == tuple(one.activity for one in by_name["N08"].after)


def test_a_single_person_takes_longer() -> None:
    assert programme("A", crew=1).activities[-1].end_hours > programme("A").activities[-1].end_hours


def test_nothing_to_do_takes_no_day() -> None:
    found = make_programme(make_activities((), Finish.PAINTED, 2))

    assert ((), 0, 0) == (found.activities, found.visit_days, found.calendar_days)
