"""Cold faces and dew."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import damp
from tests.engineering.timber import RULES, TENTH_PERCENT

HEAT = RULES.heat
WALL = (
    damp.layer_m2_k_per_w(215, HEAT.brick_w_per_m_k),
    damp.layer_m2_k_per_w(13, HEAT.plaster_w_per_m_k),
    HEAT.outside_film_m2_k_per_w,
)
BARE_BEFORE = HEAT.inside_film_m2_k_per_w
HIDDEN_BEFORE = HEAT.inside_film_m2_k_per_w + damp.layer_m2_k_per_w(18, HEAT.mdf_w_per_m_k) + HEAT.void_m2_k_per_w
TEMPERATURE, HUMIDITY = st.floats(-20, 45), st.floats(0.05, 1.0)


@pytest.mark.parametrize(
    ("before", "expected"),
    [
        pytest.param(BARE_BEFORE, (2.1185, 14.492, 0.72459), id="E7 bare"),
        pytest.param(HIDDEN_BEFORE, (1.2811, 8.7632, 0.43816), id="E8 behind MDF and a void"),
    ],
)
def test_solid_wall(before: float, expected: tuple[float, ...]) -> None:
    """E7, E8: sums of EN ISO 6946 by hand; 215 brick, 13 plaster, 20 and 0 degC."""
    total = before + sum(WALL)
    face = damp.face_deg_c(20, 0, before_m2_k_per_w=before, total_m2_k_per_w=total)

    found = (damp.transmittance_w_per_m2_k(total), face, damp.surface_factor_ratio(before, total))

    assert pytest.approx(expected, rel=TENTH_PERCENT) == found
    assert found[2] < HEAT.mould_ratio


def test_layers_by_hand() -> None:
    """0.215 / 0.77 = 0.2792208; 611.2 Pa at 0 degC is the constant of the Magnus form."""
    assert pytest.approx(0.2792208, rel=1e-6) == damp.layer_m2_k_per_w(215, 0.77)
    assert pytest.approx(611.2, rel=1e-9) == damp.saturation_pa(0)


def test_e9_dew_point() -> None:
    """E9: published about 11.5 for the second, coarse."""
    assert pytest.approx(9.2552, abs=0.05) == damp.dew_point_deg_c(20, 0.5)
    assert pytest.approx(11.095, abs=0.05) == damp.dew_point_deg_c(22, 0.5)
    assert pytest.approx(11.5, abs=0.5) == damp.dew_point_deg_c(22, 0.5)


@pytest.mark.parametrize(("face", "expected"), [(14.492, 0.70819), (8.7632, 1.0337)])
def test_e10_humidity_at_the_face(face: float, expected: float) -> None:
    """E10: ratio of vapour pressures; the second condenses."""
    assert pytest.approx(expected, rel=2e-3) == damp.face_humidity_ratio(20, 0.5, face)


@pytest.mark.parametrize(("temperature", "expected"), [(0, 611.2), (10, 1228), (20, 2339), (30, 4246)])
def test_saturation(temperature: float, expected: float) -> None:
    """Steam tables (ISO 80000 units, from memory): 1228, 2339, 4246 Pa at 10, 20, 30 degC."""
    assert pytest.approx(expected, rel=5e-3) == damp.saturation_pa(temperature)


@given(TEMPERATURE, HUMIDITY)
def test_dew_point_is_where_air_is_saturated(temperature: float, humidity: float) -> None:
    dew = damp.dew_point_deg_c(temperature, humidity)

    assert pytest.approx(1.0) == damp.face_humidity_ratio(temperature, humidity, dew)
    assert dew <= temperature + 1e-9
    assert dew <= damp.dew_point_deg_c(temperature, min(1.0, humidity * 1.1)) + 1e-12


@given(TEMPERATURE, TEMPERATURE, st.floats(0.01, 3), st.floats(0.01, 3))
def test_a_face_lies_between_both_airs(inside: float, outside: float, before: float, behind: float) -> None:
    face = damp.face_deg_c(inside, outside, before_m2_k_per_w=before, total_m2_k_per_w=before + behind)

    assert min(inside, outside) - 1e-9 <= face <= max(inside, outside) + 1e-9
    if abs(inside - outside) > 1:
        assert pytest.approx((face - outside) / (inside - outside)) == damp.surface_factor_ratio(before, before + behind)


@given(st.floats(0.01, 3), st.floats(0.01, 3), st.floats(1.001, 5))
def test_more_in_front_of_a_wall_makes_its_face_colder(before: float, behind: float, more: float) -> None:
    bare, boxed = (
        damp.surface_factor_ratio(before, before + behind),
        damp.surface_factor_ratio(before * more, before * more + behind),
    )

    assert boxed <= bare + 1e-12
    assert damp.face_loss_w_per_k(2, before) >= damp.face_loss_w_per_k(2, before * more)
