"""Weights and combinations."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import actions
from tests.engineering.timber import GAMMA_G, GAMMA_Q, RULES, TENTH_PERCENT

FORCE = st.floats(0, 10_000)


def test_d2_accidental_pull() -> None:
    """D2: moments about the lower row; screen of 29 kg, three times its weight or a hanging child."""
    weight = actions.weight_n(29)
    pull = actions.arm_pull_n(weight, pull_ratio=RULES.actions.arm_pull_ratio, least_n=RULES.actions.arm_pull_least_n)

    assert pytest.approx(284.39, rel=TENTH_PERCENT) == weight
    assert pytest.approx(853.18, rel=TENTH_PERCENT) == pull
    assert pytest.approx(1137.57, rel=TENTH_PERCENT) == actions.accidental_n(weight, pull)
    assert 450 == actions.arm_pull_n(actions.weight_n(10), pull_ratio=3, least_n=450)


def test_d1_arm() -> None:
    """D1: vertical 683.93 N of 29 kg and a hand of 200 N."""
    vertical = actions.combined_n(actions.weight_n(29), 200, permanent_ratio=GAMMA_G, variable_ratio=GAMMA_Q)

    assert pytest.approx(683.93, rel=TENTH_PERCENT) == vertical


def test_d5_face_force() -> None:
    """D5: 0.36 kN/m on 1.45 m, at 1.2 m or at the top of a lower breast."""
    assert pytest.approx(522.0) == actions.face_force_n(360, 1450)
    assert 1200 == actions.face_force_height_mm(1200, 1350)
    assert 1000 == actions.face_force_height_mm(1200, 1000)


def test_d8_floor() -> None:
    """D8: 215 kg over 1.45 m count as 0.8 kN/m2; the bounds of EN 1991-1-1, 6.3.1.2(8)."""
    row = RULES.actions
    bounds = (row.light_partition_n_per_m, row.medium_partition_n_per_m, row.heavy_partition_n_per_m)
    floors = (row.light_partition_kn_m2, row.medium_partition_kn_m2, row.heavy_partition_kn_m2)
    line = actions.floor_line_n_per_m(215, 1450)

    assert pytest.approx(1454.1, rel=TENTH_PERCENT) == line
    assert 0.8 == actions.partition_load_kn_m2(line, bounds, floors)
    assert [0.5, 0.5, 0.8, 1.2, 1.2] == [actions.partition_load_kn_m2(n, bounds, floors) for n in (1, 1000, 1000.1, 2000.1, 3000)]
    assert math.inf == actions.partition_load_kn_m2(3000.1, bounds, floors)
    with pytest.raises(ValueError, match="longer"):
        actions.partition_load_kn_m2(3000.1, bounds[:2], floors)


def test_a5_creep_part_of_a_joist() -> None:
    """A5: q = 0.6 (0.57 + 0.3 x 1.5) 0.5 = 0.306 N/mm, [B] example 2.3.1."""
    assert pytest.approx(0.306) == 0.6 * 0.5 * actions.accompanied_n(0.57, 1.5, variable_ratio=1.0, accompanying_ratio=0.3)


def test_one_more_variable_action() -> None:
    """EN 1990 (6.10): 1.35 x 100 + 1.5 x 50 + 1.5 x 0.7 x 20 = 231."""
    leading = actions.combined_n(100, 50, permanent_ratio=1.35, variable_ratio=1.5)

    assert pytest.approx(231.0) == actions.accompanied_n(leading, 20, variable_ratio=1.5, accompanying_ratio=0.7)


def test_weights_by_length() -> None:
    """G9: 47 x 75 x 2350 at 450 kg/m3 is 3.7277 kg; boards by hand: 20 kg/m2 over 500 mm of height is 10 kg/m."""
    assert pytest.approx(actions.weight_n(3.7277) / 2350, rel=TENTH_PERCENT) == actions.timber_weight_n_per_mm(450, 47 * 75)
    assert pytest.approx(10 * 9.80665 / 1000) == actions.board_weight_n_per_mm(20, 500)


@given(FORCE, FORCE, FORCE)
def test_more_load_is_never_less(permanent: float, leading: float, more: float) -> None:
    factors = {"permanent_ratio": GAMMA_G, "variable_ratio": GAMMA_Q}

    assert actions.combined_n(permanent + more, leading, **factors) >= actions.combined_n(permanent, leading, **factors)
    assert actions.combined_n(permanent, leading + more, **factors) >= actions.combined_n(permanent, leading, **factors)
    assert actions.combined_n(permanent, leading, **factors) >= actions.accidental_n(permanent, 0.0)
