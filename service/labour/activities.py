"""The work of one job as activities with what must be done before each (`knowledge/labour.md`, sections 3 and 4).

Durations come from the task hours. Waiting counts clock hours, also overnight; its figures are common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import msgspec

from service.survey.wishes import Finish
from service.units import round_half_up

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from service.labour.labour import Task

QUARTERS = 20  # durations are given to a twentieth of an hour: 3 minutes
FILLER, PRIMER, COAT, SKIM, COMPOUND, LAST_COAT, FIRST_HEAT = 2.0, 4.0, 4.0, 72.0, 48.0, 12.0, 168.0  # hours
PAIR = 2


class After(msgspec.Struct, frozen=True, kw_only=True):
    """What must be done before, and how long must be waited then."""

    activity: str
    wait_hours: float = 0.0


class Activity(msgspec.Struct, frozen=True, kw_only=True):
    """One piece of work without a break in it."""

    activity: str  # N06
    name: str
    trades: tuple[str, ...]
    work_hours: float  # of the clock, with the crew
    after: tuple[After, ...]


class Share(NamedTuple):
    """A part of a task's person-hours that one activity takes."""

    task: str
    ratio: float = 1.0
    people_count: int | None = None  # None: the crew


class _Plan(NamedTuple):
    activity: str
    name: str
    shares: tuple[Share, ...]
    after: tuple[tuple[str, float], ...]


def _finish_plans(finish: Finish) -> tuple[_Plan, ...]:
    """Filling, plaster and paint; every paint coat by one person."""
    skirting = _Plan("N11", "skirting", (Share("L17"),), (("N09", 0),))
    if finish is Finish.SKIMMED:
        return (
            _Plan("N10", "beads_and_skim", (Share("L14b", people_count=1), Share("L14a")), (("N09", 0),)),
            skirting,
            _Plan("N12", "mist_coat", (Share("L16", 1 / 3, 1),), (("N10", SKIM), ("N11", 0))),
            *_coats(),
        )
    lag = COMPOUND if finish is Finish.TAPED else FILLER
    name = "tape_and_fill" if finish is Finish.TAPED else "fill_and_sand"
    return (
        _Plan("N10", name, (Share("L14a"), Share("L14b")), (("N09", 0),)),
        skirting,
        _Plan("N12", "prime", (Share("L16", 1 / 3, 1),), (("N10", lag), ("N11", 0))),
        *_coats(),
    )


def _coats() -> tuple[_Plan, ...]:
    return (
        _Plan("N13", "caulk_and_first_coat", (Share("L15"), Share("L16", 1 / 3, 1)), (("N12", PRIMER),)),
        _Plan("N14", "second_coat", (Share("L16", 1 / 3, 1),), (("N13", COAT),)),
    )


def _plans(finish: Finish) -> tuple[_Plan, ...]:
    heat = (("N10", FIRST_HEAT),) if finish is Finish.SKIMMED else ()
    return (
        _Plan("N01", "carry_in_protect_set_out", (Share("L01"), Share("L02")), ()),
        _Plan("N02", "strip_skirting", (Share("L03"),), (("N01", 0),)),
        _Plan("N03", "cut_timber", (Share("L04"),), (("N01", 0),)),
        _Plan("N04", "assemble_base_and_upper", (Share("L05"), Share("L22")), (("N03", 0),)),
        _Plan("N05", "fix_base", (Share("L06"),), (("N02", 0), ("N04", 0))),
        _Plan(
            "N06", "raise_and_fix_upper", (Share("L07"), Share("L08"), Share("L23", 0.5), Share("L24", 0.5)), (("N05", 0),)
        ),
        _Plan("N07", "electrical_first_fix", (Share("L09", people_count=1),), (("N06", 0),)),
        _Plan("N08", "boards_openings_scribing", (Share("L10"), Share("L12"), Share("L13")), (("N07", 0),)),
        _Plan("N09", "linings_and_backboard", (Share("L11"),), (("N08", 0),)),
        *_finish_plans(finish),
        _Plan("N15", "fire_in", (Share("L18"), Share("L23", 0.5), Share("L24", 0.5)), (("N14", LAST_COAT), *heat)),
        _Plan("N16", "electrical_second_fix_and_test", (Share("L19", people_count=1),), (("N15", 0),)),
        _Plan("N17", "screen", (Share("L20"),), (("N16", 0),)),
        _Plan("N18", "clean_and_hand_over", (Share("L21"),), (("N17", 0),)),
    )  # fmt: skip


def make_activities(tasks: Iterable[Task], finish: Finish, crew_count: int) -> tuple[Activity, ...]:
    """Activities with work in them; what has none is left out and its waits are handed on to what follows it.

    Args:
        tasks: with their person-hours.
        finish: decides what dries how long.
        crew_count: people on site; a task of one person is shared by two at most, in a room of this size.
    """
    by_code = {task.task: task for task in tasks}
    made: dict[str, Activity] = {}
    gone: dict[str, tuple[After, ...]] = {}
    for plan in _plans(finish):
        hours = sum(_clock_hours(share, by_code, crew_count) for share in plan.shares)
        after = _bridged(plan.after, gone)
        if hours <= 0:
            gone[plan.activity] = after
            continue
        trades = tuple(dict.fromkeys(by_code[share.task].trade for share in plan.shares if share.task in by_code))
        made[plan.activity] = Activity(
            activity=plan.activity, name=plan.name, trades=trades, work_hours=_twentieths(hours), after=after
        )  # fmt: skip
    return tuple(made.values())


def _clock_hours(share: Share, tasks: Mapping[str, Task], crew_count: int) -> float:
    task = tasks.get(share.task)
    if task is None:
        return 0.0
    people = share.people_count or max(min(crew_count, PAIR), task.crew_count)
    return task.person_hours * share.ratio / people


def _bridged(after: Iterable[tuple[str, float]], gone: Mapping[str, tuple[After, ...]]) -> tuple[After, ...]:
    """What stands before an activity; where that has no work, what stood before it, with both waits at their greatest."""
    waits: dict[str, float] = {}
    for activity, wait in after:
        for one in gone.get(activity, (After(activity=activity),)):
            waits[one.activity] = max(waits.get(one.activity, 0.0), wait, one.wait_hours)
    return tuple(After(activity=name, wait_hours=wait) for name, wait in sorted(waits.items()))


def _twentieths(hours: float) -> float:
    """To 3 minutes, halves up, and never nothing."""
    return max(float(round_half_up(hours * QUARTERS)), 1.0) / QUARTERS
