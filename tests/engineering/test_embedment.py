"""Embedment and yield moments, against published examples."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import embedment
from tests.engineering.timber import HUNDREDTH_PERCENT, RULES, TENTH_PERCENT

DIAMETER = st.floats(2, 6)


def test_b1_dowel() -> None:
    """B1: published 25.3 and 115 118 [N1]."""
    assert pytest.approx(25.256, rel=HUNDREDTH_PERCENT) == embedment.drilled_embedment_mpa(350, 12)
    assert pytest.approx(115_118, rel=1e-5) == embedment.yield_moment_n_mm(600, 12)


def test_b4_at_an_angle() -> None:
    """B4: published 1.53 and 17.2 [N2], 70 degrees."""
    along = embedment.drilled_embedment_mpa(350, 12)

    assert pytest.approx(17.204, rel=TENTH_PERCENT) == embedment.angled_embedment_mpa(along, 12, 70)
    assert pytest.approx(1.5300, rel=TENTH_PERCENT) == along / embedment.angled_embedment_mpa(along, 12, 90)
    assert along == embedment.angled_embedment_mpa(along, 12, 0)


def test_b5_yield_moment() -> None:
    """B5: published 69 070 [N2], f_u 360."""
    assert pytest.approx(69_071, rel=TENTH_PERCENT) == embedment.yield_moment_n_mm(360, 12)


def test_b10_screw() -> None:
    """B10: root 2.9, C16, not predrilled; B17: root 3.1, C24."""
    d_ef = embedment.effective_diameter_mm(2.9, 0, 0)

    assert pytest.approx(3.19) == d_ef
    assert pytest.approx(17.949, rel=TENTH_PERCENT) == embedment.plain_embedment_mpa(310, d_ef)
    assert pytest.approx(3673.9, rel=TENTH_PERCENT) == embedment.yield_moment_n_mm(600, d_ef)
    assert pytest.approx(19.863, rel=TENTH_PERCENT) == embedment.plain_embedment_mpa(350, 3.41)
    assert pytest.approx(4369.5, rel=TENTH_PERCENT) == embedment.yield_moment_n_mm(RULES.screws.yield_steel_mpa, 3.41)


def test_i6_plug_screw() -> None:
    """I6, hand: root 5.0, predrilled C16."""
    d_ef = embedment.effective_diameter_mm(5.0, 0, 0)

    assert pytest.approx((5.5, 24.022, 15_143), rel=TENTH_PERCENT) == (
        d_ef,
        embedment.drilled_embedment_mpa(310, d_ef),
        embedment.yield_moment_n_mm(600, d_ef),
    )


@pytest.mark.parametrize(("shank", "inside", "expected"), [(3.5, 14.0, 3.5), (3.5, 13.9, 3.19), (0, 50, 3.19), (3.5, 20, 3.5)])
def test_a_smooth_shank_counts_where_it_reaches_in(shank: float, inside: float, expected: float) -> None:
    """8.7.1(2)-(3): four diameters in the point side, else 1.1 times the root."""
    assert pytest.approx(expected) == embedment.effective_diameter_mm(2.9, shank, inside)
    assert 0.9 == embedment.effective_diameter_mm(0.5, 0.9, 5)


def test_boards_by_hand() -> None:
    """(8.20): 0.11 x 500 x 3.41^-0.3 = 38.067; (8.22): 65 x 3^-0.7 x 18^0.1 = 40.22."""
    assert pytest.approx(38.067, rel=TENTH_PERCENT) == embedment.plywood_embedment_mpa(500, 3.41)
    assert pytest.approx(40.220, rel=TENTH_PERCENT) == embedment.particleboard_embedment_mpa(18, 3.0)


@given(st.floats(250, 500), DIAMETER, st.floats(1.001, 1.5), st.floats(0, 90))
def test_denser_is_stronger_and_thicker_fasteners_press_less(density: float, diameter: float, more: float, angle: float) -> None:
    for strength in (embedment.plain_embedment_mpa, embedment.drilled_embedment_mpa, embedment.plywood_embedment_mpa):
        assert strength(density * more, diameter) >= strength(density, diameter) >= strength(density, diameter * more)
    along = embedment.drilled_embedment_mpa(density, diameter)
    assert along / 1.6 <= embedment.angled_embedment_mpa(along, diameter, angle) <= along * (1 + 1e-12)
    assert embedment.yield_moment_n_mm(600, diameter * more) >= embedment.yield_moment_n_mm(600, diameter)
