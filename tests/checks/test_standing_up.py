from __future__ import annotations

import math
from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks.check import Verdict
from service.checks.standing_up import LOOSE, ROW, standing_checks
from service.rules import load_rules
from service.survey.wishes import Extra, ExtraKind
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import example, with_wall_load
from tests.checks.results import the_check, values, why_skipped
from tests.sold_examples import ADDITIONS, sold

if TYPE_CHECKING:
    from service.checks.ground import Ground


def british(name: str) -> Ground:
    """0.36 kN/m on the face, as the worked examples."""
    rules = load_rules()
    line = msgspec.structs.replace(rules.actions, face_line_n_per_m=360)
    return ground_of(sold(name), ADDITIONS[name], msgspec.structs.replace(rules, actions=line))


@pytest.mark.parametrize(("name", "each_n", "used"), [("C", 179.6, 0.285), ("C0", 181.3, 0.288)])
def test_top_row(name: str, each_n: float, used: float) -> None:
    """worked-examples.md, C, row 5.8, and C0: T on the 4 of the top row, z 1143."""
    check = the_check(standing_checks, british(name), ROW)

    assert pytest.approx((each_n, 630), abs=0.1) == values(check)
    assert pytest.approx(used, abs=5e-4) == check.demand.value / 630


def test_recommended_line_load() -> None:
    """worked-examples.md, C: with 0.5 kN/m 1012.4 N, 0.402."""
    check = the_check(standing_checks, example("C"), ROW)

    assert pytest.approx(1012.4 / 4, abs=0.1) == check.demand.value
    assert pytest.approx(0.402, abs=5e-4) == check.demand.value / 630


def test_standing_loose() -> None:
    """worked-examples.md, C, row 5.9: r = 42.1 / 863.4 = 0.049: prop until fixed; advice only."""
    check = the_check(standing_checks, british("C"), LOOSE)

    assert pytest.approx((863_400, 42_100), rel=2e-3) == values(check)
    assert (Verdict.ADVISE, "prop it until it is fixed") == (check.verdict, check.remedy)
    assert "0.05 of a pull on its face: it stands only because it is fixed" in check.says


def test_the_remedy_is_the_least_number_that_passes() -> None:
    weak = with_wall_load(example("C"), 0.1, 0.2)  # 140 N each
    check = the_check(standing_checks, weak, ROW)
    more = int(check.remedy.split()[1])

    assert Verdict.FAIL is check.verdict
    assert 1012.4 / (4 + more) <= 140 < 1012.4 / (4 + more - 1)
    assert math.ceil(1012.4 / 140) - 4 == more


def test_walls_that_are_unknown_or_hold_nothing() -> None:
    unknown = ground_of(sold("C", survey__wall__construction="unknown"), ADDITIONS["C"])
    boards = ground_of(sold("C", survey__wall__construction="boarded_behind_plasterboard"), ADDITIONS["C"])
    zero = with_wall_load(example("C"), 0.0, 0.0)

    assert Verdict.PROVISIONAL is the_check(standing_checks, unknown, ROW).verdict
    assert "find out what the wall is" in the_check(standing_checks, unknown, ROW).remedy
    assert Verdict.FAIL is the_check(standing_checks, boards, ROW).verdict
    assert "a fixing that is declared for this wall" in the_check(standing_checks, zero, ROW).remedy


def test_a_person_on_a_wide_shelf() -> None:
    """By hand: 1.5 x 1000 N at 700 beyond the face topples more than the line load, 1.5 x 677.5 x 1180."""
    ground = example("C")
    brief = msgspec.structs.replace(ground.job.survey.brief, extras=(Extra(kind=ExtraKind.SHELF, depth_mm=900),))
    job = msgspec.structs.replace(ground.job, survey=msgspec.structs.replace(ground.job.survey, brief=brief))

    assert pytest.approx(1500 * 900) == the_check(standing_checks, msgspec.structs.replace(ground, job=job), LOOSE).demand.value


def test_a_hung_breast_is_judged_by_its_wall_path() -> None:
    assert "an end is open" in why_skipped(standing_checks, example("A"), ROW)


def test_wider_is_never_less() -> None:
    used = [
        the_check(
            standing_checks, ground_of(sold("C", survey__brief__breast_width_mm=width_mm), ADDITIONS["C"]), LOOSE
        ).demand.value
        for width_mm in (1355, 1500, 1700)
    ]

    assert sorted(used) == used
