from __future__ import annotations

import msgspec
import pytest

from service.checks.check import Verdict
from service.checks.hanging import hanging_checks
from service.checks.ladder_timber import NO_BRACKETS, PITCH, TIMBER, WIDTH
from tests.checks.hung_grounds import example, held_by_brackets
from tests.checks.results import the_check, values, why_skipped
from tests.checks.test_bracketed_noggins import with_bracket

GROUND = held_by_brackets("A", halved=True)


def test_timber_at_the_brackets_of_a() -> None:
    """By hand: (1.35 x 467.7 x (297.2 - 44.5) + 1500 x 242) / 16 / 71.2 N on 17.8 x 38, against 2.2 x 0.9 / 1.3."""
    check = the_check(hanging_checks, GROUND, TIMBER, "left ladder")

    assert pytest.approx((522_545 / 16 / 71.2 / (17.8 * 38) / (2.2 * 0.9 / 1.3), 1.0), rel=2e-3) == values(check)
    assert "the noggins pressing on the upright are asked most" in check.says


def test_room_for_brackets() -> None:
    """structure.md, 5.13 b: pitch of d + 60; A 200 between its noggins at 1329 and 1529; bracket 40 on 38 + 2."""
    assert pytest.approx((149, 200)) == values(the_check(hanging_checks, GROUND, PITCH, "left ladder"))
    assert (40, 40) == values(the_check(hanging_checks, GROUND, WIDTH, "right ladder"))


def test_the_heavy_bracket_does_not_fit() -> None:
    """worked-examples.md, section 0: 65 wide does not fit 38."""
    check = the_check(hanging_checks, with_bracket(GROUND, width_mm=65.0, length_mm=150.0), WIDTH, "left ladder")
    pitch = the_check(hanging_checks, with_bracket(GROUND, length_mm=150.0), PITCH, "left ladder")

    assert (Verdict.FAIL, "a bracket of at most 40 mm") == (check.verdict, check.remedy)
    assert (Verdict.FAIL, "leave the brackets of one of these noggins out") == (pitch.verdict, pitch.remedy)


def test_an_upright_without_wall_fixings_bends_over_its_length() -> None:
    bare = msgspec.structs.replace(GROUND, frame=msgspec.structs.replace(GROUND.frame, wall_fixings=()))
    free = {one.symbol: one.value for one in the_check(hanging_checks, bare, TIMBER, "left ladder").inputs}

    assert 1585 == free["l"]


def test_where_it_does_not_apply() -> None:
    assert NO_BRACKETS == why_skipped(hanging_checks, example("A", ladder=True), TIMBER)
    assert NO_BRACKETS == why_skipped(hanging_checks, example("C", ladder=True), PITCH)
