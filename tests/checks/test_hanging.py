from __future__ import annotations

from service.checks.check import Skipped, Verdict
from service.checks.hanging import PATHS, STANDS, hanging_checks
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import OFF, example, on_wall
from tests.checks.results import the_check, values, why_skipped
from tests.sold_examples import ADDITIONS, sold


def test_two_ways_and_one() -> None:
    """structure.md, 5.1: A wall and ceiling, B the wall alone."""
    both, single = the_check(hanging_checks, example("A"), PATHS), the_check(hanging_checks, example("B"), PATHS)

    assert [(1, 2), (1, 1)] == [values(both), values(single)]
    assert "the wall and the ceiling; the wall is the main path" in both.says
    assert "the only one" in single.says


def test_no_way() -> None:
    """structure.md, 5.1, "Neither"."""
    ground = ground_of(sold("B", survey__wall__construction="boarded_behind_plasterboard"), ADDITIONS["B"], OFF)
    check = the_check(hanging_checks, ground, PATHS)

    assert (Verdict.FAIL, (1, 0)) == (check.verdict, values(check))
    assert "closed ends that stand on the base" in check.remedy
    assert "none" in check.says


def test_nobody_knows() -> None:
    check = the_check(hanging_checks, on_wall("unknown"), PATHS)

    assert (Verdict.PROVISIONAL, None) == (check.verdict, check.resistance)
    assert "find out what the wall is" in check.remedy


def test_a_breast_that_stands() -> None:
    assert STANDS == why_skipped(hanging_checks, example("C"), PATHS)
    assert all(isinstance(one, Skipped) for one in hanging_checks(example("C")))
