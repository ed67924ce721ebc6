from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks.bracketed_noggins import UNDECLARED
from service.checks.check import Verdict
from service.checks.hanging import hanging_checks
from service.checks.hung_ladder import FRONT, front_sag_mm
from service.frame import EndJoint, Role
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import ON, example, held_by_brackets, with_screen_of
from tests.checks.results import the_check, values, why_skipped
from tests.checks.test_bracketed_noggins import with_bracket
from tests.sold_examples import ADDITIONS, sold

if TYPE_CHECKING:
    from service.checks.ground import Ground

PLYWOOD = {"kind": "catalogue", "code": "BD-2218L"}


def by_hand(ground: Ground) -> Ground:
    """Brackets at both ends of every ladder noggin, without their weight in the layout."""
    members = tuple(
        msgspec.structs.replace(one, start_joint=EndJoint.BRACKET, end_joint=EndJoint.BRACKET)
        if one.role is Role.LADDER_NOGGIN
        else one
        for one in ground.frame.members
    )
    return msgspec.structs.replace(ground, frame=msgspec.structs.replace(ground.frame, members=members))


@pytest.mark.parametrize(("name", "side", "noggins"), [("A", "left", 8), ("A", "right", 8), ("B", "right", 9)])
def test_screws_in_end_grain_hold_nothing(name: str, side: str, noggins: int) -> None:
    """structure.md, 5.13 a: M_R = 0; worked-examples.md: fails in A and B, 8 and 9 noggins with light brackets pass."""
    check = the_check(hanging_checks, example(name, ladder=True), FRONT, f"{side} ladder")

    assert (Verdict.FAIL, 0) == (check.verdict, values(check)[1])
    assert check.remedy.startswith(f"needs brackets at both ends of {noggins} noggins (has 0)")
    assert "until then it may hang only with the ceiling joists confirmed" in check.remedy


def test_brackets_at_every_noggin() -> None:
    """worked-examples.md, section 0: A 5 noggins with a person 1.245, fails; B 1.35 G alone 0.651 of 0.50, and person 1.158."""
    of_a = the_check(hanging_checks, by_hand(example("A", ladder=True)), FRONT, "left ladder")
    of_b = the_check(hanging_checks, by_hand(example("B", ladder=True)), FRONT, "right ladder")

    assert pytest.approx((1.245, 1.0), abs=1e-3) == values(of_a)
    assert pytest.approx((0.651, 0.5), abs=1e-3) == values(of_b)
    assert "3 of them new and half way between two" in of_a.remedy


@pytest.mark.parametrize(("name", "side", "used", "limit"), [("A", "left", 0.786, 1.0), ("B", "right", 0.367, 0.5)])
def test_the_remedy_passes(name: str, side: str, used: float, limit: float) -> None:
    """worked-examples.md, section 0, before the weight of the new noggins: A 0.786, B 0.367 of 0.50."""
    check = the_check(hanging_checks, held_by_brackets(name, halved=True), FRONT, f"{side} ladder")

    assert pytest.approx((used, limit), abs=0.01) == values(check)
    assert (Verdict.PASS, "") == (check.verdict, check.remedy)


def test_drop_of_the_front() -> None:
    """worked-examples.md, section 0: w_f 0.98 in A and 0.67 in B with the noggins half way, here with their own weight."""
    found = [front_sag_mm(held_by_brackets(name, halved=True)) for name in ("A", "B")]

    assert pytest.approx([0.98, 0.67], abs=0.015) == found
    assert [0, 0, 0] == [front_sag_mm(one) for one in (example("A"), example("C", ladder=True), example("A", ladder=True))]


def test_a_plywood_return_holds_the_front() -> None:
    """structure.md, 5.13 c; its density is not declared, so it never passes outright."""
    ground = ground_of(sold("A", survey__brief__board=PLYWOOD), ADDITIONS["A"], ON)
    check = the_check(hanging_checks, ground, FRONT, "left ladder")

    assert (Verdict.PROVISIONAL, 1.0) == (check.verdict, values(check)[1])
    assert "6 screws in each upright" in check.says
    assert 0 < front_sag_mm(ground) < 1


def test_no_makers_pull_is_not_verified() -> None:
    """structure.md, 5.13: no maker's R_4,5: not verified, provisional."""
    check = the_check(hanging_checks, with_bracket(held_by_brackets("A"), bracket_pull_n=None), FRONT, "left ladder")

    assert (Verdict.PROVISIONAL, UNDECLARED) == (check.verdict, check.unverified)


def test_what_brackets_cannot_hold_a_plywood_return_may() -> None:
    weak = with_bracket(example("A", ladder=True), bracket_pull_n=300.0)
    heavy = with_screen_of(weak, 5000.0)
    remedies = [the_check(hanging_checks, one, FRONT, "left ladder").remedy for one in (weak, heavy)]

    assert remedies[0].startswith("needs an 18 mm plywood return with screws at 150 mm in both uprights")
    assert remedies[1].startswith("needs a stronger bracket, deeper timber, or this end closed")


def test_where_it_does_not_apply() -> None:
    assert "the rule set leaves the side ladders unchecked" == why_skipped(hanging_checks, example("A"), FRONT)
    assert "no end is open" == why_skipped(hanging_checks, example("C", ladder=True), FRONT)


def test_a_heavier_screen_never_lowers_it() -> None:
    grounds = [with_screen_of(held_by_brackets("B", halved=True), mass_kg) for mass_kg in (5.0, 19.5, 40.0)]
    used = [the_check(hanging_checks, one, FRONT, "right ladder").demand.value for one in grounds]

    assert sorted(used) == used
