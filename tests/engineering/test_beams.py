"""Moments and shears of single spans, against finite elements."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import beams, section
from tests.engineering.beam_model import beam
from tests.engineering.timber import C16, GAMMA_G, GAMMA_Q, PERMANENT, TENTH_PERCENT, bending_design_mpa

STIFFNESS = 8000 * 47 * 75**3 / 12
SPAN, LOAD = st.floats(100, 5000), st.floats(1, 5000)


def test_a2_moment() -> None:
    """A2: published case [B] 2.3.1, joist of 4.5 m at 500 mm; 1.35 x 0.5 + 1.5 x 1.5 kN/m2."""
    load = (1.35 * 0.5e-3 + 1.5 * 1.5e-3) * 500

    assert pytest.approx(1.4625, rel=TENTH_PERCENT) == load
    assert pytest.approx(3.7020e6, rel=TENTH_PERCENT) == beams.uniform_moment_n_mm(load, 4500)


def test_a8_a9_a10_trimmer() -> None:
    """A8, A9, A10: finite elements give 57.132 Nm for G and 345.00 Nm for Q."""
    own, person = beam(1380, STIFFNESS, uniform_n_per_mm=0.24), beam(1380, STIFFNESS, points=((1000, 690),))
    moment_g, moment_q = beams.uniform_moment_n_mm(0.24, 1380), beams.point_moment_n_mm(1000, 1380, 690)

    assert pytest.approx(own.moment_n_mm, rel=TENTH_PERCENT) == moment_g
    assert pytest.approx(person.moment_n_mm, rel=TENTH_PERCENT) == moment_q
    assert pytest.approx(77_128, rel=TENTH_PERCENT) == GAMMA_G * moment_g
    assert pytest.approx(594_630, rel=TENTH_PERCENT) == GAMMA_G * moment_g + GAMMA_Q * moment_q
    shear = GAMMA_G * beams.uniform_shear_n(0.24, 1380) + GAMMA_Q * beams.point_shear_n(1000, 1380, 0)
    assert pytest.approx(1723.6, rel=TENTH_PERCENT) == shear


def test_a13_upright() -> None:
    """A13: finite elements give 293.617 Nm."""
    moment = beams.point_moment_n_mm(500, 2350, 1200)

    assert pytest.approx(beam(2350, STIFFNESS, points=((500, 1200),)).moment_n_mm, rel=TENTH_PERCENT) == moment
    assert pytest.approx(440_430, rel=TENTH_PERCENT) == 1.5 * moment


def test_a15_bearer() -> None:
    """A15: finite elements give 74.1873 Nm; 34 kg on two arms, 445 from the ends."""
    moment = beams.two_point_moment_n_mm(34 * 9.80665 / 2, 445)
    model = beam(1290, STIFFNESS, points=((166.71305, 445), (166.71305, 845)))

    assert pytest.approx(166.71, rel=TENTH_PERCENT) == 34 * 9.80665 / 2
    assert pytest.approx(model.moment_n_mm, rel=TENTH_PERCENT) == moment
    assert pytest.approx(100_150, rel=TENTH_PERCENT) == GAMMA_G * moment


def test_a27_platform_rail() -> None:
    """A27: finite elements give M_d 230.850 Nm with feet at thirds and a person at the middle."""
    foot = 46 * 9.80665 * 0.51724 / 2
    model = beam(540, STIFFNESS, points=((1.35 * foot, 180), (1500, 270), (1.35 * foot, 360)))
    moment = GAMMA_G * beams.two_point_moment_n_mm(foot, 180) + GAMMA_Q * beams.point_moment_n_mm(1000, 540, 270)

    assert pytest.approx(116.67, rel=TENTH_PERCENT) == foot
    assert pytest.approx(model.moment_n_mm, rel=TENTH_PERCENT) == moment
    assert pytest.approx(230_850, rel=TENTH_PERCENT) == moment


def test_cantilever() -> None:
    """Finite elements: 900 N at 220 mm."""
    model = beam(220, STIFFNESS, points=((900, 220),), cantilever=True)

    assert pytest.approx(model.moment_n_mm, rel=TENTH_PERCENT) == beams.cantilever_moment_n_mm(900, 220)


def test_shears_by_finite_elements() -> None:
    uniform, point = beam(1380, STIFFNESS, uniform_n_per_mm=0.24), beam(1380, STIFFNESS, points=((1000, 400),))

    assert pytest.approx(uniform.shear_n, rel=TENTH_PERCENT) == beams.uniform_shear_n(0.24, 1380)
    assert pytest.approx(point.shear_n, rel=TENTH_PERCENT) == beams.point_shear_n(1000, 1380, 400)
    assert pytest.approx(point.shear_n, rel=TENTH_PERCENT) == beams.point_shear_n(1000, 1380, 980)


def test_a28_greatest_span_for_bending() -> None:
    """A28: put back, u = 1.0000."""
    resists = section.section_modulus_mm3(47, 75) * bending_design_mpa(C16, PERMANENT, 75)
    span = beams.span_for_moment_mm(GAMMA_G * 0.24, resists)

    assert pytest.approx(3037.9, rel=TENTH_PERCENT) == span
    assert pytest.approx(1.0) == beams.uniform_moment_n_mm(GAMMA_G * 0.24, span) / resists


@given(LOAD, SPAN)
def test_span_for_moment_is_the_way_back(load: float, span: float) -> None:
    assert pytest.approx(span) == beams.span_for_moment_mm(load, beams.uniform_moment_n_mm(load, span))


@given(LOAD, SPAN, st.floats(0, 1))
def test_a_point_load_is_worst_at_mid_span_and_the_same_from_both_ends(load: float, span: float, part: float) -> None:
    moment = beams.point_moment_n_mm(load, span, part * span)

    assert -1e-6 <= moment <= beams.point_moment_n_mm(load, span, span / 2) * (1 + 1e-9)
    assert pytest.approx(moment, abs=1e-3) == beams.point_moment_n_mm(load, span, span - part * span)
    assert load / 2 <= beams.point_shear_n(load, span, part * span) * (1 + 1e-12) <= load * (1 + 1e-11)


@given(LOAD, SPAN, st.floats(1.001, 2), st.floats(1.001, 2))
def test_heavier_or_longer_never_asks_less(load: float, span: float, heavier: float, longer: float) -> None:
    for ask in (beams.uniform_moment_n_mm, beams.uniform_shear_n, beams.two_point_moment_n_mm, beams.cantilever_moment_n_mm):
        assert ask(load * heavier, span) >= ask(load, span)
        assert ask(load, span * longer) >= ask(load, span)
