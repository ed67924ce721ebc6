from __future__ import annotations

import math

import pytest

from service.checks.hung_weight import hung_load
from service.checks.situations import person, push
from service.checks.wall_rows import (
    Action,
    Held,
    held_fixings,
    hung_action,
    ladder_fixings,
    pivot_mm,
    weight_count,
    worst_fixing,
)
from service.checks.wall_values import FixingValue
from service.engineering.fixing_groups import sum_of_squares_mm2
from tests.checks.hung_grounds import OFF, ON, example

VALUE = FixingValue(tension_n=630, shear_n=980)


def squares(held: tuple[Held, ...]) -> float:
    return sum(one.share * sum_of_squares_mm2((one.above_mm,)) for one in held)


def test_rows_of_the_worked_examples() -> None:
    """worked-examples.md, "wall alone": sum n y^2 of A 13 253 910, B with the rail 13 371 700, without 3 907 786."""
    found = [squares(held_fixings(example(name))) for name in ("A", "B")]

    assert pytest.approx([13_253_910, 13_371_700], rel=1e-4) == found
    assert pytest.approx(3_907_786, rel=1e-4) == squares(held_fixings(example("B", laid_out=True)))
    assert [920, 865] == [pivot_mm(example(name)) for name in ("A", "B")]


def test_moment_and_shear() -> None:
    """A: 1.0216 kNm, 2733.5 N; B: 1.0988 kNm, 3361.5 N."""
    found = [hung_action(example(name), hung_load(example(name)), person(OFF)) for name in ("A", "B")]

    assert pytest.approx([1021.6, 1098.8], rel=1e-4) == [one.moment_n_mm / 1000 for one in found]
    assert pytest.approx([2733.5, 3361.5], rel=1e-4) == [one.shear_n for one in found]


def test_a_pull_on_the_face() -> None:
    """By hand, A: 1.5 x 0.5 kN/m x 1.357 m at 1200 - 920 above the pivot, recommended line load."""
    ground = example("A")
    found = hung_action(ground, hung_load(ground), push(OFF))
    weight_n_mm = 1.35 * 913.7 * 299.26

    assert pytest.approx(weight_n_mm + 1.5 * 500 * 1.357 * 280, rel=1e-3) == found.moment_n_mm


def test_one_side_ladder() -> None:
    """worked-examples.md, B, "hung corner alone": 8 fixings, sum n y^2 6 685 850."""
    held = ladder_fixings(example("B"), left=False)

    assert pytest.approx((8, 6_685_850), rel=1e-4) == (weight_count(held, example("B")), squares(held))
    assert 6 + 3 == weight_count(ladder_fixings(example("B"), left=True), example("B"))


def test_with_5_13_on_the_weight_goes_through_the_uprights() -> None:
    """worked-examples.md, section 0: A 10 of 16, B 11 of 17."""
    assert (16, 10) == tuple(weight_count(held_fixings(example("A")), example("A", ladder=on)) for on in (False, True))
    assert (17, 11) == tuple(weight_count(held_fixings(example("B")), example("B", ladder=on)) for on in (False, True))


def test_the_worst_is_the_highest_that_takes_both() -> None:
    """By hand: rail at 2000, uprights at 1000: 3e6 N mm on 4 + 1 + 1 = 6e6 mm2; 5.13 g: no shear in rails."""
    held = (Held(2000, through_upright=False), Held(1000, through_upright=True), Held(1000, through_upright=True))
    both, apart = (worst_fixing(held, Action(3e6, 600), VALUE, example("A", ladder=on)) for on in (False, True))

    assert pytest.approx((1000, 200)) == (both.tension_n, both.shear_n)
    assert pytest.approx((1000, 0)) == (apart.tension_n, apart.shear_n)
    assert pytest.approx(1000 / 630 + 200 / 980) == both.utilisation_ratio


def test_nothing_bears_without_fixings_above_the_pivot() -> None:
    low = (Held(0, through_upright=True),)

    assert math.inf == worst_fixing(low, Action(1, 1), VALUE, example("A")).utilisation_ratio
    assert math.inf == worst_fixing((), Action(1, 1), VALUE, example("A")).utilisation_ratio
    assert ON.members.hung_ladder_count != OFF.members.hung_ladder_count
