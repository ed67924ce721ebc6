"""Compression across the grain."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import bearing, strength
from tests.engineering.timber import C16, GAMMA_M, MEDIUM, TENTH_PERCENT

SIDE = st.floats(20, 200)


def test_a23_upright_on_a_rail() -> None:
    """A23, hand: 2.4 kN on 47 along the rail x 75, the rail lying on the floor, far from its ends."""
    length = bearing.spread_length_mm(47, 300, 300)
    factor = bearing.bearing_factor_ratio(300, 47, continuous=True)
    design = strength.design_strength_mpa(C16.compression_across_mpa, MEDIUM, GAMMA_M)
    stress = bearing.bearing_stress_mpa(2400, 75, length)

    assert (107, 1.25) == (length, factor)
    assert pytest.approx((0.29907, 1.6923), rel=TENTH_PERCENT) == (stress, factor * design)
    assert pytest.approx(0.17672, rel=TENTH_PERCENT) == 2400 / bearing.bearing_resistance_n(design, 75, length, factor)
    assert pytest.approx(0.17672, rel=TENTH_PERCENT) == stress / (factor * design)


@pytest.mark.parametrize(
    ("contact", "before", "after", "expected"),
    [(47, 0, 300, 77), (47, 300, 0, 77), (47, 12, 20, 79), (20, 300, 300, 60), (47, 0, 0, 47)],
)
def test_a23_spread(contact: float, before: float, after: float, expected: float) -> None:
    """A23 at the rail's end: 77; 6.1.5(1) by hand: not more than 30, the contact or the room there is."""
    assert expected == bearing.spread_length_mm(contact, before, after)


@pytest.mark.parametrize(
    ("clear", "continuous", "expected"),
    [(94, True, 1.25), (94, False, 1.5), (93.9, True, 1.0), (93.9, False, 1.0)],
)
def test_bearing_factor(clear: float, *, continuous: bool, expected: float) -> None:
    """6.1.5(3)-(4): twice the depth of 47 between loads at least."""
    assert expected == bearing.bearing_factor_ratio(clear, 47, continuous=continuous)


@given(st.floats(1, 1e5), SIDE, SIDE, st.floats(0, 300), st.floats(0, 300))
def test_more_room_presses_no_harder(force: float, width: float, contact: float, first: float, second: float) -> None:
    less, more = sorted((first, second))
    tight = bearing.spread_length_mm(contact, less, 0)

    assert contact <= tight <= bearing.spread_length_mm(contact, more, 0) <= 2 * contact
    stress = bearing.bearing_stress_mpa(force, width, tight)
    assert pytest.approx(force) == bearing.bearing_resistance_n(stress, width, tight, 1.0)
