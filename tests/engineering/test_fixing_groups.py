"""Groups of fixings under moment, against statics and a least of energy."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize  # type: ignore[import-untyped]  # the library has no types

from service.engineering import fixing_groups
from tests.engineering.timber import TENTH_PERCENT

HEIGHTS = st.lists(st.floats(10, 2500), min_size=1, max_size=12).map(tuple)
LINE = st.lists(st.floats(0, 2000), min_size=2, max_size=12, unique_by=round).map(tuple)
FORCE = st.floats(1, 1e4)


def test_d3_hung_on_the_wall_alone() -> None:
    """D3: 78 kg at 165 mm: sum(T_i y_i) = M; rows of three: 114.74 N of weight for each with 1.35."""
    weight = 78 * 9.80665
    moment = 1.35 * weight * 165
    heights = (1080, 600, 150)
    squares = fixing_groups.sum_of_squares_mm2(heights)
    found = [fixing_groups.pulled_share_n(moment, height, squares) for height in heights]

    assert pytest.approx(170_390, rel=TENTH_PERCENT) == moment
    assert pytest.approx((118.8, 66.003, 16.501), rel=TENTH_PERCENT) == tuple(found)
    assert pytest.approx(moment) == math.fsum(force * height for force, height in zip(found, heights, strict=True))
    assert pytest.approx(114.74, rel=TENTH_PERCENT) == 1.35 * weight / 9
    three_each = fixing_groups.sum_of_squares_mm2(heights * 3)
    assert pytest.approx(118.8 / 3, rel=TENTH_PERCENT) == fixing_groups.pulled_share_n(moment, 1080, three_each)


def test_fixings_below_the_pivot_pull_nothing() -> None:
    assert 0 == fixing_groups.pulled_share_n(1000, -50, 100)
    assert fixing_groups.sum_of_squares_mm2((100, -50, 0)) == fixing_groups.sum_of_squares_mm2((100,))


def test_i4_screw_line() -> None:
    """I4: 8 screws 35 to 1365: h, v and R; a rigid plate on springs by a least of energy gives 365.854 N."""
    heights = tuple(35 + 190 * number for number in range(8))
    moment = 1.35 * 420 * 195 + 1500 * 320
    force = 1.35 * 420 + 1500

    assert pytest.approx(259.02, rel=TENTH_PERCENT) == fixing_groups.turned_share_n(moment, heights)
    assert pytest.approx(258.38, rel=TENTH_PERCENT) == force / 8
    assert pytest.approx(365.85, rel=TENTH_PERCENT) == fixing_groups.eccentric_line_n(force, moment, heights)
    assert pytest.approx(energy_minimum_n(force, moment, heights), rel=1e-4) == fixing_groups.eccentric_line_n(
        force, moment, heights
    )


def energy_minimum_n(force: float, moment: float, heights: tuple[float, ...]) -> float:
    """Greatest spring force of a stiff plate that settles where its energy is least (scipy): springs of 1 N/mm."""

    def energy(state: tuple[float, float, float]) -> float:
        down, aside, turn = state[0], state[1], state[2] / 1000
        springs = math.fsum((down**2 + (aside + turn * y) ** 2) / 2 for y in heights)
        return float(springs - force * down - moment * turn)

    down, aside, turn = minimize(energy, (0.0, 0.0, 0.0), method="BFGS", options={"gtol": 1e-6}).x
    return max(math.hypot(down, aside + turn / 1000 * y) for y in heights)


def test_the_fixing_farthest_from_the_middle_counts_also_below_it() -> None:
    """By hand: 0, 100, 110 about 70: 1000 x 70 / (4900 + 900 + 1600)."""
    assert pytest.approx(1000 * 70 / 7400) == fixing_groups.turned_share_n(1000, (0, 100, 110))


def test_prying() -> None:
    """D1: 683.93 N at 510 mm over 240 mm: 1453.4 N on two top fixings, 726.68 each; D2: 2417.3, 1208.7; D7: 916.67."""
    assert pytest.approx(1453.4, rel=TENTH_PERCENT) == fixing_groups.prying_tension_n(683.93, 510, 240, 1)
    assert pytest.approx(726.68, rel=TENTH_PERCENT) == fixing_groups.prying_tension_n(683.93, 510, 240, 2)
    assert pytest.approx(2417.3, rel=TENTH_PERCENT) == fixing_groups.prying_tension_n(284.39 + 853.18, 510, 240, 1)
    assert pytest.approx(1208.7, rel=TENTH_PERCENT) == fixing_groups.prying_tension_n(284.39 + 853.18, 510, 240, 2)
    assert pytest.approx(916.67, rel=1e-5) == fixing_groups.prying_tension_n(1.5 * 1000, 220, 180, 2)


@given(FORCE, HEIGHTS)
def test_pulls_balance_the_moment(moment: float, heights: tuple[float, ...]) -> None:
    squares = fixing_groups.sum_of_squares_mm2(heights)
    pulls = [fixing_groups.pulled_share_n(moment, height, squares) for height in heights]

    assert pytest.approx(moment) == math.fsum(pull * height for pull, height in zip(pulls, heights, strict=True))
    assert max(pulls) == pulls[heights.index(max(heights))]


@given(FORCE, HEIGHTS, st.floats(10, 2500))
def test_one_more_fixing_never_pulls_the_others_harder(moment: float, heights: tuple[float, ...], height: float) -> None:
    before, after = fixing_groups.sum_of_squares_mm2(heights), fixing_groups.sum_of_squares_mm2((*heights, height))
    top = max(heights)

    assert fixing_groups.pulled_share_n(moment, top, after) <= fixing_groups.pulled_share_n(moment, top, before)


@given(FORCE, FORCE, LINE, st.floats(-500, 500))
def test_a_line_knows_no_origin_and_no_order(force: float, moment: float, line: tuple[float, ...], shift: float) -> None:
    found = fixing_groups.eccentric_line_n(force, moment, line)

    assert pytest.approx(found, rel=1e-6) == fixing_groups.eccentric_line_n(
        force, moment, tuple(y + shift for y in reversed(line))
    )
    assert found >= force / len(line)
    assert found <= fixing_groups.eccentric_line_n(force * 1.1, moment * 1.1, line)
    assert pytest.approx(fixing_groups.centred_squares_mm2(line), rel=1e-6, abs=1e-3) == math.fsum(y * y for y in line) - sum(
        line
    ) ** 2 / len(line)


@given(FORCE, st.floats(1, 1000), st.floats(50, 1000), st.floats(1.001, 2))
def test_a_longer_lever_never_lowers_the_pull_and_a_taller_plate_never_raises_it(
    force: float, lever: float, arm: float, more: float
) -> None:
    base = fixing_groups.prying_tension_n(force, lever, arm, 2)

    assert base <= fixing_groups.prying_tension_n(force, lever * more, arm, 2)
    assert base >= fixing_groups.prying_tension_n(force, lever, arm * more, 2)
