"""Fasteners under steel plates, against published tables and a root finder."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq  # type: ignore[import-untyped]  # the library has no types

from service.engineering import embedment, lateral, steel_plates, strength
from tests.engineering.timber import C24, HUNDREDTH_PERCENT, PERMANENT, SHORT, TENTH_PERCENT


@pytest.mark.parametrize(
    ("diameter", "thin_n", "thick_n", "published"),
    [pytest.param(10, 4737.0, 6699.1, (4710, 6670), id="B6"), pytest.param(12, 6503.5, 9197.4, (6470, 9150), id="B7")],
)
def test_thick_timber(diameter: float, thin_n: float, thick_n: float, published: tuple[float, float]) -> None:
    """B6, B7: published 4.71, 6.67, 6.47, 9.15 kN [S], 0.6 % lower."""
    f_h, m_y = embedment.drilled_embedment_mpa(C24.density_kg_m3, diameter), embedment.yield_moment_n_mm(275, diameter)
    thin = steel_plates.thin_plate_modes_n(f_h, 500, diameter_mm=diameter, yield_n_mm=m_y)
    thick = steel_plates.thick_plate_modes_n(f_h, 500, diameter_mm=diameter, yield_n_mm=m_y)

    assert pytest.approx((thin_n, thick_n), rel=HUNDREDTH_PERCENT) == (min(thin), min(thick))
    assert ("b", "e") == (
        lateral.governing_mode(thin, steel_plates.THIN_MODES),
        lateral.governing_mode(thick, steel_plates.THICK_MODES),
    )
    assert pytest.approx(published, rel=7e-3) == (min(thin), min(thick))


def test_b17_screw() -> None:
    """B17, hand: root 3.1 in C24, t 45, not predrilled."""
    f_h, m_y = embedment.plain_embedment_mpa(350, 3.41), embedment.yield_moment_n_mm(600, 3.41)

    thin = steel_plates.thin_plate_modes_n(f_h, 45, diameter_mm=3.41, yield_n_mm=m_y)
    thick = steel_plates.thick_plate_modes_n(f_h, 45, diameter_mm=3.41, yield_n_mm=m_y)

    assert pytest.approx((1219.2, 884.78, 3048.1, 1397.7, 1251.3), rel=TENTH_PERCENT) == (*thin, *thick)


def test_i6_plug_screw_in_an_upright() -> None:
    """I6: 2000.36 N x 1.15, the root of the hinge equation f_h d x^2 / 2 = M_y, then F = f_h d x."""
    f_h, m_y = embedment.drilled_embedment_mpa(310, 5.5), embedment.yield_moment_n_mm(600, 5.5)
    modes = steel_plates.thin_plate_modes_n(f_h, 70, diameter_mm=5.5, yield_n_mm=m_y)
    reach = float(brentq(lambda x: f_h * 5.5 * x**2 / 2 - m_y, 0, 100))

    assert pytest.approx((3699.4, 2300.4), rel=TENTH_PERCENT) == modes
    assert pytest.approx(2000.36, rel=TENTH_PERCENT) == f_h * 5.5 * reach
    assert pytest.approx(1.15 * f_h * 5.5 * reach) == modes[1]
    assert pytest.approx(1061.7, rel=TENTH_PERCENT) == strength.design_resistance_n(min(modes), PERMANENT, 1.3)
    assert pytest.approx(1592.6, rel=TENTH_PERCENT) == strength.design_resistance_n(min(modes), SHORT, 1.3)


@pytest.mark.parametrize(("plate", "expected"), [(1, 100), (2.5, 100), (3.75, 150), (5, 200), (8, 200)])
def test_between_thin_and_thick(plate: float, expected: float) -> None:
    """8.2.3(1): thin up to half of the diameter, thick from a whole one."""
    assert pytest.approx(expected) == steel_plates.plate_resistance_n(100, 200, plate, 5)


@given(st.floats(10, 40), st.floats(10, 100), st.floats(2, 6), st.floats(500, 50_000))
def test_a_plate_that_holds_the_head_is_no_weaker(f_h: float, length: float, diameter: float, m_y: float) -> None:
    thin = min(steel_plates.thin_plate_modes_n(f_h, length, diameter_mm=diameter, yield_n_mm=m_y))
    thick = min(steel_plates.thick_plate_modes_n(f_h, length, diameter_mm=diameter, yield_n_mm=m_y))

    assert thin <= thick
    assert thin <= min(steel_plates.thin_plate_modes_n(f_h, length * 1.2, diameter_mm=diameter, yield_n_mm=m_y))
