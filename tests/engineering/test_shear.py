"""Shear, notches, splitting."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import shear, strength
from tests.engineering.timber import C16, C24, GAMMA_M, HUNDREDTH_PERCENT, RULES, SHORT, TENTH_PERCENT

K_CR = RULES.members.crack_timber_ratio
SIDE = st.floats(20, 300)


def test_a10_trimmer() -> None:
    """A10, hand: person at the support."""
    stress = shear.shear_stress_mpa(1723.6, 47, 75, K_CR)
    design = strength.design_strength_mpa(C16.shear_mpa, SHORT, GAMMA_M)

    assert pytest.approx((1.0947, 2.2154, 0.49412), rel=TENTH_PERCENT) == (stress, design, stress / design)


def test_a26_resistance() -> None:
    """A26: published 37 050 N [N2], two pieces 80 x 180, gamma_M 1.25 of Norway."""
    design = strength.design_strength_mpa(C24.shear_mpa, 0.9, 1.25)
    resistance = 2 * shear.shear_resistance_n(design, 80 * 180, K_CR)

    assert pytest.approx(37_048, rel=TENTH_PERCENT) == resistance
    assert pytest.approx(37_050, rel=TENTH_PERCENT) == resistance


def test_a25_splitting() -> None:
    """A25: published 42 501 N [N2]."""
    assert pytest.approx(42_501, rel=HUNDREDTH_PERCENT) == shear.splitting_resistance_n(160, 180, 120)


def test_notch() -> None:
    """(6.62) by hand: h 200, 150 left, corner at 100: 5 / (14.142 (0.43301 + 0.4 x 0.87798)) = 0.45085."""
    assert pytest.approx(0.45085, rel=TENTH_PERCENT) == shear.notch_ratio(200, 150, 100)
    assert pytest.approx(5 / (math.sqrt(200) * math.sqrt(0.75 * 0.25))) == shear.notch_ratio(200, 150, 0)
    assert 1.0 == shear.notch_ratio(75, 75, 50)
    assert 1.0 == shear.notch_ratio(75, 73, 0)


@given(st.floats(1, 1e5), SIDE, SIDE)
def test_stress_and_resistance_are_the_two_ends_of_one_rule(force: float, width: float, depth: float) -> None:
    stress = shear.shear_stress_mpa(force, width, depth, K_CR)

    assert pytest.approx(force) == shear.shear_resistance_n(stress, width * depth, K_CR)
    assert stress >= shear.shear_stress_mpa(force, width, depth, 1.0)
    assert stress <= shear.shear_stress_mpa(force * 1.1, width, depth, K_CR)


@given(SIDE, st.floats(0.3, 0.99), st.floats(0, 200), st.floats(0, 200))
def test_a_notch_never_helps(depth: float, left: float, first: float, second: float) -> None:
    near, far = sorted((first, second))

    assert 0 < shear.notch_ratio(depth, left * depth, far) <= shear.notch_ratio(depth, left * depth, near) <= 1


@given(SIDE, SIDE, st.floats(0.1, 0.9), st.floats(0.1, 0.9))
def test_a_load_fixed_higher_up_splits_later(width: float, depth: float, first: float, second: float) -> None:
    low, high = sorted((first * depth, second * depth))

    assert shear.splitting_resistance_n(width, depth, low) <= shear.splitting_resistance_n(width, depth, high)
