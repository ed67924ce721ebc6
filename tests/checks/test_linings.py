"""Wood-based board in sight: `knowledge/cautions.md`, H16."""

from __future__ import annotations

import msgspec
import pytest

from service.checks import Verdict
from service.checks.linings import LININGS, lining_checks
from tests.checks.grounds import ground_of
from tests.checks.results import the_check, values
from tests.checks.words_of import reviewed, words_of
from tests.sold_examples import sold


def test_board_in_sight_against_half_of_the_floor() -> None:
    """A: 1.357 x (0.43 + 1.595) + 2 x 0.43 x (0.43 + 1.595), openings counted in; floor 3.9 x 4.2."""
    found = the_check(lining_checks, ground_of(sold("A")), LININGS)

    assert pytest.approx((1.357 * 2.025 + 2 * 0.43 * 2.025, 3.9 * 4.2 / 2)) == values(found)
    assert (Verdict.PASS, "") == (found.verdict, found.remedy)


def test_a_room_that_was_not_told_and_gypsum() -> None:
    """20 m2 at most; plasterboard is no class D board."""
    found = the_check(lining_checks, ground_of(sold("B")), LININGS)

    assert (0, 20) == values(found)


def test_a_small_room() -> None:
    small = ground_of(sold("A", survey__room__wall_length_mm=3900, survey__room__depth_mm=1500))
    found = the_check(lining_checks, small, LININGS)

    assert pytest.approx(2.925) == values(found)[1]
    assert Verdict.ADVISE is found.verdict
    assert "building control" in found.remedy


def test_the_words_are_those_that_were_read() -> None:
    assert reviewed("linings") == words_of("linings"), "python -m tests.checks.words_of, then read the diff"


def test_just_as_much_as_is_allowed() -> None:
    """What is equal passes, and needs no remedy."""
    ground = ground_of(sold("A", survey__room__depth_mm=None))
    area_m2 = the_check(lining_checks, ground, LININGS).demand.value
    heat = msgspec.structs.replace(ground.rules.heat, lining_most_m2=area_m2)
    found = the_check(
        lining_checks, msgspec.structs.replace(ground, rules=msgspec.structs.replace(ground.rules, heat=heat)), LININGS
    )

    assert (Verdict.PASS, "") == (found.verdict, found.remedy)
