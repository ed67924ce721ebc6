"""Screws pulled: thread, head, shank, group."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import strength, withdrawal
from tests.engineering.timber import C16, C24, HUNDREDTH_PERCENT, PERMANENT, RULES, SHORT, TENTH_PERCENT

FALLBACK = RULES.screws
C16_OVER_DECLARED = C16.density_kg_m3 / 350
DIAMETER, LENGTH, POSITIVE = st.floats(3, 12), st.floats(10, 120), st.floats(1, 50)


@pytest.mark.parametrize(("density", "expected"), [(C16.density_kg_m3, 6.4387), (C24.density_kg_m3, 8.2075)])
def test_b8_smooth_nail(density: float, expected: float) -> None:
    """B8: published 6.44 and 8.21 N/mm [V], nail of 3.35 mm."""
    assert pytest.approx(expected, rel=HUNDREDTH_PERCENT) == withdrawal.smooth_nail_withdrawal_n_per_mm(density, 3.35)
    assert round(expected, 2) == round(withdrawal.smooth_nail_withdrawal_n_per_mm(density, 3.35), 2)


def test_b15_thread_and_head() -> None:
    """B15, hand: declared 11.0 and 10.2 at 350 kg/m3 in C16, d 4.5, head 8.7, thread 43."""
    assert pytest.approx(1931.6, rel=TENTH_PERCENT) == withdrawal.withdrawal_n(11.0, 4.5, 43, C16_OVER_DECLARED)
    assert pytest.approx(700.61, rel=TENTH_PERCENT) == withdrawal.head_pull_n(10.2, 8.7, C16_OVER_DECLARED)


def test_b16_formula() -> None:
    """B16, hand, and its twin in a public timber program: d 7, l_ef 55, C24; two screws under medium load."""
    strength_mpa = withdrawal.formula_withdrawal_mpa(7, 4.6, length_mm=55, density_kg_m3=350)
    square, skew = (withdrawal.formula_withdrawal_n(strength_mpa, 7, 55, angle) for angle in (90, 60))
    two = withdrawal.acting_count(2) * square

    assert pytest.approx((14.278, 4810.0, 4580.9, 8975.7), rel=TENTH_PERCENT) == (strength_mpa, square, skew, two)
    assert pytest.approx(5523.5, rel=TENTH_PERCENT) == strength.design_resistance_n(two, 0.8, 1.3)


def test_formula_has_its_range() -> None:
    """8.7.2(4): 6 to 12 mm, root 0.6 to 0.75 of it; H3: a screw of 5 mm takes the fall-back, the formula would double it."""
    for diameter, root in ((5.9, 4), (12.1, 8), (8, 4.7), (8, 6.1)):
        with pytest.raises(ValueError, match=rf"^\(8.39\) does not hold for a screw of {diameter} mm with a root of {root} mm"):
            withdrawal.formula_withdrawal_mpa(diameter, root, length_mm=50, density_kg_m3=350)
    for diameter, root in ((6, 3.6), (6, 4.5), (12, 7.2), (12, 9.0)):
        assert withdrawal.formula_withdrawal_mpa(diameter, root, length_mm=50, density_kg_m3=350) > 8
    would_be = 0.52 * 5**-0.5 * 40**-0.1 * 350**0.8
    assert 1.8 < would_be / FALLBACK.withdrawal_mpa < 2.2


@pytest.mark.parametrize(("diameter", "thin"), [(6, 0.75), (8, 1.0), (10, 1.0)])
def test_thin_screws_of_the_formula_bear_less(diameter: float, thin: float) -> None:
    """(8.40): k_d = d/8 up to 1."""
    assert pytest.approx(thin * 10 * diameter * 50) == withdrawal.formula_withdrawal_n(10, diameter, 50, 90)


def test_b23_ceiling_row() -> None:
    """B23, hand: three screws d 5.5, thread 48, C16, permanent, demand of D4; the head governs."""
    thread = withdrawal.withdrawal_n(11.0, 5.5, 48, C16_OVER_DECLARED)
    head = withdrawal.head_pull_n(10.2, 10.6, C16_OVER_DECLARED)
    acting = withdrawal.acting_count(3)
    resistance = strength.design_resistance_n(withdrawal.axial_resistance_n(thread, head, 1e9, acting), PERMANENT, 1.3)

    assert pytest.approx((2635.3, 1040.0, 2.6879, 1290.2), rel=TENTH_PERCENT) == (thread, head, acting, resistance)
    assert pytest.approx(0.45475, rel=TENTH_PERCENT) == 586.73 / resistance


def test_the_weakest_of_three_governs() -> None:
    assert 2 == withdrawal.axial_resistance_n(2, 3, 4, 1.0)
    assert 2 == withdrawal.axial_resistance_n(3, 2, 4, 1.0)
    assert 6 == withdrawal.axial_resistance_n(4, 3, 2, 3.0)


def test_shank() -> None:
    """By hand: 0.9 x 500 x pi x 3^2 / 4 = 3180.9 N."""
    assert pytest.approx(3180.9, rel=TENTH_PERCENT) == withdrawal.shank_tension_n(FALLBACK.tension_steel_mpa, 3.0)


@pytest.mark.parametrize(
    ("length", "before", "thread", "tip", "expected"),
    [(100, 65, 60, 5, 30), (100, 20, 60, 5, 55), (60, 65, 40, 5, 0), (70, 66, 40, 5, 0), (100, 65, 60, 0, 35)],
)
def test_thread_in_the_joist(length: float, before: float, thread: float, tip: float, expected: float) -> None:
    """Fixings.md 3: length less rail, packing, board, skim and tip, at most the thread less its tip."""
    assert expected == withdrawal.thread_in_point_mm(length, before, thread, tip)


@given(POSITIVE, DIAMETER, LENGTH, st.floats(0.7, 1.4))
def test_ways_back(parameter: float, diameter: float, length: float, density: float) -> None:
    """H6 and fixings.md 5: thread, head and number that would pass."""
    thread, head = (
        withdrawal.withdrawal_n(parameter, diameter, length, density),
        withdrawal.head_pull_n(parameter, diameter, density),
    )

    assert pytest.approx(length) == withdrawal.thread_for_force_mm(thread, parameter, diameter, density)
    assert pytest.approx(diameter) == withdrawal.head_for_force_mm(head, parameter, density)
    assert pytest.approx(4.0) == withdrawal.count_for_force_count(withdrawal.acting_count(4.0) * thread, thread)


@given(POSITIVE, DIAMETER, LENGTH, st.floats(0.7, 1.4), st.floats(1.001, 1.5))
def test_denser_longer_thicker_holds_more(parameter: float, diameter: float, length: float, density: float, more: float) -> None:
    base = withdrawal.withdrawal_n(parameter, diameter, length, density)

    assert base <= withdrawal.withdrawal_n(parameter, diameter * more, length, density)
    assert base <= withdrawal.withdrawal_n(parameter, diameter, length * more, density)
    assert base <= withdrawal.withdrawal_n(parameter, diameter, length, density * more)
    assert withdrawal.head_pull_n(parameter, diameter, density) <= withdrawal.head_pull_n(parameter, diameter, density * more)


@given(st.integers(2, 40))
def test_h6_more_screws_hold_more_but_less_than_in_proportion(count: int) -> None:
    """H6."""
    assert count - 1 < withdrawal.acting_count(count) * (count - 1) / withdrawal.acting_count(count - 1) < count
    assert withdrawal.acting_count(count - 1) < withdrawal.acting_count(count) < count
    assert 1 == withdrawal.acting_count(1)


@given(st.floats(30, 90))
def test_a_skew_screw_holds_no_more(angle: float) -> None:
    assert 1 / 1.15 - 1e-9 <= withdrawal.grain_angle_ratio(angle) <= 1 + 1e-12
    assert pytest.approx(withdrawal.grain_angle_ratio(angle)) == withdrawal.grain_angle_ratio(180 - angle)


def test_permanent_pull_has_less_resistance() -> None:
    assert strength.design_resistance_n(1000, PERMANENT, 1.3) < strength.design_resistance_n(1000, SHORT, 1.3)
