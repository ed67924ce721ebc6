from __future__ import annotations

from service.labour.activities import After, make_activities
from service.survey.wishes import Finish
from tests.sold_examples import made

TASKS = made("A").labour.tasks


def test_a_task_of_one_is_shared_by_two_at_most() -> None:
    """Assembling, L05 4.48 h: two people 2.25 h, four as two; paint is one person's."""
    by_crew = {crew: {one.activity: one.work_hours for one in make_activities(TASKS, Finish.PAINTED, crew)} for crew in (1, 2, 4)}

    assert (4.5, 2.25, 2.25) == tuple(by_crew[crew]["N04"] for crew in (1, 2, 4))
    assert by_crew[1]["N12"] == by_crew[4]["N12"]


def test_a_task_of_two_takes_two_also_where_one_comes() -> None:
    """Raising needs two (labour.md, section 1: L07 J 2): the half of 4 h, and the fixings of one person."""
    alone = {one.activity: one.work_hours for one in make_activities(TASKS, Finish.PAINTED, 1)}

    assert alone["N06"] > alone["N15"] > 1


def test_what_follows_nothing_done_follows_what_stood_before() -> None:
    without_paint = tuple(task for task in TASKS if task.task not in {"L16", "L15"})
    by_name = {one.activity: one for one in make_activities(without_paint, Finish.PAINTED, 2)}

    assert (After(activity="N10", wait_hours=12.0), After(activity="N11", wait_hours=12.0)) == by_name["N15"].after


def test_trades_of_an_activity_are_those_of_its_tasks() -> None:
    by_name = {one.activity: one.trades for one in make_activities(TASKS, Finish.PAINTED, 2)}

    assert ("electrician",) == by_name["N07"]
    assert ("decorator",) == by_name["N13"]
