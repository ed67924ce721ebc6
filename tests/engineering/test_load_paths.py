"""Load paths: statics with its balances."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import load_paths
from tests.engineering.timber import GAMMA_G, TENTH_PERCENT

FORCE, LENGTH = st.floats(1, 5000), st.floats(10, 1000)


def test_d3_moment() -> None:
    """D3: 78 kg at 165 mm with 1.35; a person of 1.5 kN at 330 adds 495 Nm."""
    weight = GAMMA_G * 78 * 9.80665

    assert pytest.approx(170_390, rel=TENTH_PERCENT) == load_paths.hung_moment_n_mm(weight, 165, 0, 330)
    assert pytest.approx(170_390 + 495_000, rel=TENTH_PERCENT) == load_paths.hung_moment_n_mm(weight, 165, 1500, 330)


def test_d4_ceiling_alone() -> None:
    """D4: rows at 40 and 260: their sum is 1032.6 N."""
    weight = GAMMA_G * 78 * 9.80665
    front = load_paths.front_row_n(weight, lever_mm=165, rear_mm=40, front_mm=260)

    assert pytest.approx(1032.6, rel=TENTH_PERCENT) == weight
    assert pytest.approx((586.73, 445.91), rel=TENTH_PERCENT) == (front, weight - front)


@pytest.mark.parametrize(("lever", "expected"), [(39.9, True), (40, False), (260, False), (260.1, True)])
def test_h5_a_row_lifts(lever: float, *, expected: bool) -> None:
    """H5: the centre of gravity outside both rows."""
    assert expected == load_paths.row_lifts(lever, 40, 260)
    front = load_paths.front_row_n(1000, lever_mm=lever, rear_mm=40, front_mm=260)
    assert expected == (not 0 <= front <= 1000)


def test_a_push_on_the_face_loads_one_row_and_lightens_the_other() -> None:
    """By hand: 750 N, 1200 under the ceiling, rows 220 apart: 4090.9 N."""
    assert pytest.approx(4090.9, rel=TENTH_PERCENT) == load_paths.row_change_n(
        750, below_ceiling_mm=1200, rear_mm=40, front_mm=260
    )


def test_d5_d6_part_height() -> None:
    """D5, D6: moments about the front toe: 94 kg, 330 deep, centre at 170, 522 N at 1200, fixings at 1180."""
    toppling = load_paths.toppling_n_mm(1.5 * 522, 1200, load_n=0, over_toe_mm=0)
    righting = load_paths.righting_n_mm(0.9 * 94 * 9.80665, 330, 170)
    tension = load_paths.held_back_n(toppling, righting, 1180)

    assert pytest.approx((939_600, 132_740), rel=TENTH_PERCENT) == (toppling, righting)
    assert pytest.approx((683.78, 170.94), rel=TENTH_PERCENT) == (tension, tension / 4)
    assert pytest.approx(199.07, rel=TENTH_PERCENT) == load_paths.held_back_n(toppling, 0, 1180) / 4
    assert pytest.approx(0.14128, rel=TENTH_PERCENT) == load_paths.standing_ratio(toppling, righting)


def test_a_person_beyond_the_toe_topples_too_and_a_heavy_breast_needs_no_hold() -> None:
    """By hand: 1500 N at 100 mm beyond."""
    assert pytest.approx(150_000) == load_paths.toppling_n_mm(0, 1200, load_n=1500, over_toe_mm=100)
    assert 0 == load_paths.held_back_n(100, 200, 1000)


def test_a27_front_feet() -> None:
    """A27: share (290 - 140) / 290."""
    assert pytest.approx(0.51724, rel=TENTH_PERCENT) == load_paths.front_feet_ratio(290, 140)


def test_i5_diagonal() -> None:
    """I5: moments: H h_d = F a."""
    assert pytest.approx(1356.8, rel=TENTH_PERCENT) == load_paths.ladder_tie_n(1909.5, 270, 380)
    assert pytest.approx(2342.4, rel=TENTH_PERCENT) == load_paths.ladder_strut_n(1909.5, 270, 380)


@given(FORCE, LENGTH, LENGTH)
def test_a_diagonal_balances(force: float, reach: float, rise: float) -> None:
    strut, tie = load_paths.ladder_strut_n(force, reach, rise), load_paths.ladder_tie_n(force, reach, rise)

    assert pytest.approx(strut) == math.hypot(force, tie)
    assert strut >= force


@given(FORCE, st.floats(40, 260), st.floats(0, 50))
def test_both_rows_balance_the_moment_and_a_longer_lever_pulls_the_front_more(weight: float, lever: float, longer: float) -> None:
    front = load_paths.front_row_n(weight, lever_mm=lever, rear_mm=40, front_mm=260)

    assert pytest.approx(weight * lever) == front * 260 + (weight - front) * 40
    assert front <= load_paths.front_row_n(weight, lever_mm=lever + longer, rear_mm=40, front_mm=260)


@given(FORCE, LENGTH, FORCE, LENGTH, st.floats(1.001, 2))
def test_more_push_never_lowers_the_pull_and_more_weight_never_raises_it(
    push: float, height: float, weight: float, lever: float, more: float
) -> None:
    def pull(push_n: float, weight_n: float) -> float:
        toppling = load_paths.toppling_n_mm(push_n, height, load_n=0, over_toe_mm=0)
        return load_paths.held_back_n(toppling, load_paths.righting_n_mm(weight_n, 1500, lever), 1000)

    assert pull(push, weight) <= pull(push * more, weight)
    assert pull(push, weight) >= pull(push, weight * more)
    assert load_paths.hung_moment_n_mm(weight, lever, push, height) <= load_paths.hung_moment_n_mm(
        weight, lever * more, push, height
    )
