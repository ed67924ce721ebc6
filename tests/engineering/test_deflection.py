"""Sag, creep and slip, against finite elements and published joists."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import deflection, section
from tests.engineering.beam_model import beam
from tests.engineering.timber import C16, C24, CREEP, TENTH_PERCENT, bending_stiffness_n_mm2

JOIST = bending_stiffness_n_mm2(C24, 75, 200)
EDGE, FLAT = bending_stiffness_n_mm2(C16, 47, 75), bending_stiffness_n_mm2(C16, 75, 47)
BEARER = bending_stiffness_n_mm2(C24, 47, 100)
SPAN, LOAD = st.floats(100, 5000), st.floats(0.01, 5000)


@pytest.mark.parametrize(
    ("load", "bend_mm", "shear_mm", "published_mm"),
    [
        pytest.param(0.75, 7.2809, 0.22011, 7.50105, id="A3"),
        pytest.param(1.0, 9.7079, 0.29348, 10.0014, id="A4"),
        pytest.param(0.306, 2.9706, 0.089804, 3.06043, id="A5"),
    ],
)
def test_joist(load: float, bend_mm: float, shear_mm: float, published_mm: float) -> None:
    """A3, A4, A5: published sums of [B] 2.3.1, bending by finite elements."""
    bend = deflection.uniform_sag_mm(load, 4500, JOIST)
    shear = deflection.shear_sag_mm(load * 4500**2 / 8, 690, section.area_mm2(75, 200))

    assert pytest.approx(beam(4500, JOIST, uniform_n_per_mm=load).sag_mm, rel=1e-6) == bend
    assert pytest.approx((bend_mm, shear_mm), rel=TENTH_PERCENT) == (bend, shear)
    assert pytest.approx(published_mm, rel=1e-4) == bend + shear


def test_a11_trimmer() -> None:
    """A11: finite elements give 0.857385 and 4.141957 mm; w_fin just within L/250."""
    own, person = deflection.uniform_sag_mm(0.24, 1380, EDGE), deflection.point_sag_mm(1000, 1380, 690, EDGE)
    area = section.area_mm2(47, 75)

    assert pytest.approx(beam(1380, EDGE, uniform_n_per_mm=0.24).sag_mm, rel=1e-6) == own
    assert pytest.approx(beam(1380, EDGE, points=((1000, 690),)).sag_mm, rel=1e-6) == person
    assert pytest.approx((0.85739, 4.1420), rel=TENTH_PERCENT) == (own, person)
    assert pytest.approx(0.038898, rel=TENTH_PERCENT) == deflection.shear_sag_mm(0.24 * 1380**2 / 8, 500, area)
    assert pytest.approx(0.23489, rel=TENTH_PERCENT) == deflection.shear_sag_mm(1000 * 1380 / 4, 500, area)
    final = deflection.final_sag_mm(own, person, creep_ratio=CREEP, quasi_permanent_ratio=0)
    assert pytest.approx(5.5138, rel=TENTH_PERCENT) == final
    assert final <= 1380 / 250


@pytest.mark.parametrize(
    ("stiffness", "greatest_mm"), [pytest.param(EDGE, 10.221, id="A13"), pytest.param(FLAT, 26.026, id="A14")]
)
def test_upright(stiffness: float, greatest_mm: float) -> None:
    """A13, A14: finite elements, the greatest of 400 places and at mid span."""
    sag = deflection.point_sag_mm(500, 2350, 1200, stiffness)
    model = beam(2350, stiffness, points=((500, 1200),))

    assert pytest.approx(greatest_mm, rel=TENTH_PERCENT) == sag
    assert pytest.approx(model.sag_mm, rel=1e-5) == sag
    assert model.middle_sag_mm <= sag <= model.middle_sag_mm * 1.001
    assert pytest.approx(sag) == deflection.point_sag_mm(500, 2350, 1150, stiffness)


@pytest.mark.parametrize("at_mm", [100, 400, 1950])
def test_loads_near_a_support(at_mm: float) -> None:
    """Finite elements: the greatest of 400 places along 2350 mm."""
    assert pytest.approx(beam(2350, EDGE, points=((500, at_mm),)).sag_mm, rel=1e-5) == deflection.point_sag_mm(
        500, 2350, at_mm, EDGE
    )


def test_a15_bearer() -> None:
    """A15: finite elements give 0.301355 mm."""
    sag = deflection.two_point_sag_mm(166.71305, 1290, 445, BEARER)

    assert pytest.approx(beam(1290, BEARER, points=((166.71305, 445), (166.71305, 845))).sag_mm, rel=1e-6) == sag
    assert pytest.approx(0.30136, rel=TENTH_PERCENT) == sag
    final = deflection.final_sag_mm(sag, 0, creep_ratio=CREEP, quasi_permanent_ratio=0)
    assert pytest.approx(0.48217, rel=TENTH_PERCENT) == final


def test_a27_platform_rail() -> None:
    """A27: finite elements give 1.11748 mm under 1.35 and 1.5 times the loads; w_inst 0.75755."""
    feet, person = deflection.two_point_sag_mm(116.67, 540, 180, FLAT), deflection.point_sag_mm(1000, 540, 270, FLAT)
    model = beam(540, FLAT, points=((1.35 * 116.67, 180), (1500, 270), (1.35 * 116.67, 360)))

    assert pytest.approx(0.75755, rel=TENTH_PERCENT) == feet + person
    assert pytest.approx(1.11748, rel=TENTH_PERCENT) == 1.35 * feet + 1.5 * person
    assert pytest.approx(model.sag_mm, rel=TENTH_PERCENT) == 1.35 * feet + 1.5 * person


def test_a28_greatest_span_for_sag() -> None:
    """A28: put back, the sag is L/250."""
    span = deflection.span_for_uniform_sag_mm(0.24, EDGE, growth_ratio=1 + CREEP, span_over_sag_ratio=250)

    assert pytest.approx(2195.0, rel=TENTH_PERCENT) == span
    final = deflection.final_sag_mm(deflection.uniform_sag_mm(0.24, span, EDGE), 0, creep_ratio=CREEP, quasi_permanent_ratio=0)
    assert pytest.approx(span / 250) == final


def test_cantilever() -> None:
    """Finite elements: 900 N at 220 mm."""
    model = beam(220, EDGE, points=((900, 220),), cantilever=True)

    assert pytest.approx(model.sag_mm, rel=1e-6) == deflection.cantilever_sag_mm(900, 220, EDGE)


@pytest.mark.parametrize(("density", "expected"), [(370, 1392.5), (420, 1684.1)])
def test_b22_slip(density: float, expected: float) -> None:
    """B22, hand: screw of 4.5 mm, Table 7.1."""
    assert pytest.approx(expected, rel=TENTH_PERCENT) == deflection.screw_slip_n_per_mm(density, 4.5)


def test_slip_of_joints() -> None:
    """Table 7.1 by hand: nail 3.35 mm in C24, 420^1.5 x 3.35^0.8 / 30 = 754.8; two densities by their geometric mean."""
    assert pytest.approx(754.8, rel=TENTH_PERCENT) == deflection.nail_slip_n_per_mm(420, 3.35)
    assert pytest.approx(394.21, rel=TENTH_PERCENT) == deflection.pair_density_kg_m3(370, 420)
    assert pytest.approx(0.35907, rel=TENTH_PERCENT) == deflection.slip_mm(500, 1392.5)


def test_creep_of_a_load_that_partly_stays() -> None:
    """(2.3) to (2.5) by hand: 2 x 1.6 + 3 x (1 + 0.3 x 0.6) = 6.74."""
    assert pytest.approx(6.74) == deflection.final_sag_mm(2, 3, creep_ratio=0.6, quasi_permanent_ratio=0.3)


@given(LOAD, SPAN, st.floats(1e9, 1e12), st.floats(1.001, 2))
def test_heavier_longer_or_softer_never_sags_less(load: float, span: float, stiffness: float, more: float) -> None:
    for sag in (deflection.uniform_sag_mm, deflection.cantilever_sag_mm):
        assert sag(load * more, span, stiffness) >= sag(load, span, stiffness)
        assert sag(load, span * more, stiffness) >= sag(load, span, stiffness)
        assert sag(load, span, stiffness / more) >= sag(load, span, stiffness)


@given(LOAD, SPAN, st.floats(0.01, 0.5))
def test_point_loads_meet_at_mid_span(load: float, span: float, part: float) -> None:
    """Two loads at the middle are one of twice the size; a load elsewhere sags less than at the middle."""
    middle = deflection.point_sag_mm(2 * load, span, span / 2, 1e10)

    assert pytest.approx(middle) == deflection.two_point_sag_mm(load, span, span / 2, 1e10)
    assert pytest.approx(middle) == 2 * load * span**3 / (48 * 1e10)
    assert deflection.point_sag_mm(2 * load, span, part * span, 1e10) <= middle * (1 + 1e-12)


@given(st.floats(0, 50), st.floats(0, 50), st.floats(0, 3), st.floats(0, 1))
def test_creep_never_lifts(permanent: float, variable: float, creep: float, stays: float) -> None:
    final = deflection.final_sag_mm(permanent, variable, creep_ratio=creep, quasi_permanent_ratio=stays)

    assert permanent + variable <= final * (1 + 1e-12)
    assert final <= (permanent + variable) * (1 + creep) * (1 + 1e-12)
