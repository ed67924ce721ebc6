"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of C, at its printed precision."""

from __future__ import annotations

import pytest

from service.checks.check import Verdict
from service.checks.lid import LID_BOARD, LID_JOIST, LID_RAIL, LID_SAG, board_gap_mm, lid_checks, lid_load_n
from service.frame import Additions
from tests.checks.after_checks import after_checks, check_of, checks_of, exact_ratio, skipped_of
from tests.checks.grounds import ground_of
from tests.examples_of import changed, example_c

DEEP = changed(example_c(), {"/survey/brief/breast_depth_mm": 600})


def test_rails_under_a_person_on_the_lid() -> None:
    """C: the rear top rail between plugs 418.3 apart 0.719; the front one between studs like the rail at the upstand, 0.555."""
    front, rear = checks_of(lid_checks(after_checks("C")), LID_RAIL)

    assert pytest.approx(0.719, abs=0.0006) == exact_ratio(rear)
    assert pytest.approx(0.555, abs=0.0006) == exact_ratio(front)


def test_board_without_joists() -> None:
    """C: rails 162 apart (<= 400): no joist needed."""
    assert pytest.approx(162 / 400) == exact_ratio(check_of(lid_checks, after_checks("C"), LID_BOARD))
    assert {LID_JOIST} == set(skipped_of(lid_checks, after_checks("C")))


def test_a_deep_lid_wants_joists_and_passes_with_them() -> None:
    bare, joisted = ground_of(DEEP), ground_of(DEEP, Additions(lid_joist_pitch_tenth_mm=4000))
    failing, joist = check_of(lid_checks, bare, LID_BOARD), check_of(lid_checks, joisted, LID_JOIST)

    assert Verdict.FAIL is failing.verdict
    assert "joists between the rails, at most 400 mm apart" == failing.remedy
    assert Verdict.PASS is check_of(lid_checks, joisted, LID_BOARD).verdict
    assert board_gap_mm(joisted) < 400 < board_gap_mm(bare)
    assert pytest.approx(1500 * board_gap_mm(bare) / 4) == joist.demand.value


def test_a_lid_out_of_reach_carries_half_a_person() -> None:
    """structure.md, 4: 0.5 kN above 1.8 m."""
    high = ground_of(changed(example_c(), {"/survey/brief/top/height_mm": 2000}))

    assert 500 == lid_load_n(high)
    assert 1000 == lid_load_n(after_checks("C"))


def test_no_lid_under_a_ceiling() -> None:
    assert {LID_RAIL, LID_SAG, LID_JOIST, LID_BOARD} == set(skipped_of(lid_checks, after_checks("A")))
