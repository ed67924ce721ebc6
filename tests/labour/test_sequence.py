from __future__ import annotations

import pytest

from service.catalogue import demo_catalogue
from service.labour import Step, build_sequence, make_site
from service.labour.activities import make_activities
from service.rules import load_rules
from service.survey.terms import Scope
from tests.sold_examples import made

NAMES = ("A", "B", "C", "C0")
CATALOGUE = demo_catalogue()


def sequence(name: str) -> tuple[Step, ...]:
    one = made(name)
    return build_sequence(make_site(one.frame, one.plan, one.bill, job=one.job, rules=load_rules(), scope=Scope.SUPPLY_AND_FIT))


def step(name: str, wanted: str) -> Step:
    return next(one for one in sequence(name) if one.name == wanted)


@pytest.mark.parametrize("name", NAMES)
def test_every_timber_and_board_is_added_once(name: str) -> None:
    frame, steps = made(name).frame, sequence(name)
    members = [mark for one in steps for mark in one.members]
    panels = [mark for one in steps for mark in one.panels]

    assert sorted(member.mark for member in frame.members) == sorted(members)
    assert sorted(panel.mark for panel in frame.panels) == sorted(panels)


@pytest.mark.parametrize("name", NAMES)
def test_every_fixing_of_the_frame_is_driven_once(name: str) -> None:
    counts = made(name).bill.counts
    driven = {fixing.what: 0 for one in sequence(name) for fixing in one.fixings}
    for one in sequence(name):
        for fixing in one.fixings:
            driven[fixing.what] += fixing.fixings_count

    assert counts.wall_fixings_count == driven["fixings into the wall"]
    assert counts.ceiling_screws_count == driven.get("screws into the ceiling joists", 0)
    assert counts.face_screws_count == driven["screws of faces and returns"]
    assert counts.rail_brackets_count == driven.get("brackets at rail ends", 0)


@pytest.mark.parametrize("name", NAMES)
def test_steps_are_numbered_and_belong_to_activities(name: str) -> None:
    one, steps = made(name), sequence(name)
    activities = {activity.activity for activity in make_activities(one.labour.tasks, one.job.finish, 2)}

    assert [str(place) for place in range(1, len(steps) + 1)] == [found.number for found in steps]
    assert activities - {"N02"} <= {found.activity for found in steps}


def test_worked_diagonals() -> None:
    """By hand: base A 1327 x 420: sqrt(1327^2 + 420^2) = 1391.9; ladder A 1585 x 420: 1639.7 (worked-examples.md, A)."""
    base = step("A", "assemble_base").measures[0]
    ladders = step("A", "assemble_upper_frame").measures

    assert (1391.9, 3.0) == (base.value_mm, base.tolerance_mm)
    assert [1639.7, 1639.7] == [one.value_mm for one in ladders]


def test_a_hung_frame_is_propped_and_one_on_closed_ends_is_not() -> None:
    """framing.md, section 12: 4 props; handling.md, section 8: never overnight."""
    assert 4 == step("A", "raise_and_fix_upper_frame").props_count
    assert 0 == step("C", "raise_and_fix_upper_frame").props_count
    assert any("overnight" in words for words in step("A", "raise_and_fix_upper_frame").does)


def test_what_depends_on_the_ceiling_is_measured_and_cut_before_it_is_used() -> None:
    """worked-examples.md, A: z1 920, gap 10: the fire's top at 910 under 2515 leaves 1605."""
    order = [one.name for one in sequence("A")]
    waited = step("A", "cut_what_waited").does[0]
    later = [member.mark for member in made("A").frame.members if member.cut_when == "after_measure"]

    assert order.index("measure_above_the_fire") < order.index("cut_what_waited") < order.index("assemble_upper_frame")
    assert all(mark in waited for mark in later)
    assert 1605.0 == step("A", "measure_above_the_fire").measures[0].value_mm
    assert "measure_above_the_fire" not in [one.name for one in sequence("C")]  # part height: nothing depends on the ceiling


def test_the_electrician_comes_before_the_boards_and_after_the_fire() -> None:
    order = [one.name for one in sequence("A")]

    assert order.index("electrical_first_fix") < order.index("returns")
    assert order.index("fire_in") < order.index("electrical_second_fix_and_test") < order.index("screen")
