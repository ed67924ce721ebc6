"""The ventilated void, against a root finder."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq  # type: ignore[import-untyped]  # the library has no types

from service.engineering import cavity, damp
from tests.engineering.timber import RULES, TENTH_PERCENT

C_D = RULES.heat.discharge_ratio
OPENING = cavity.opening_in_series_m2(0.0120, 0.0090)
FLOW = cavity.flow_per_root_rise_m3_per_s(OPENING, 1.1, discharge_ratio=C_D)
POWER, AREA, STACK, LOSS = st.floats(1, 2000), st.floats(1e-4, 0.1), st.floats(0.3, 2.5), st.floats(1e-3, 50)


def rise_by_root(power_w: float, flow: float, loss: float) -> float:
    """Root of the balance of power, by Brent's method."""
    return float(brentq(lambda rise: 1.204 * 1006 * flow * math.sqrt(rise) * rise + loss * rise - power_w, 0, 1e9, xtol=1e-12))


def test_e2_without_losses() -> None:
    """E2: openings of 120 and 90 cm2, 1.1 m apart, 95 W."""
    rise = cavity.cavity_rise_k(95, FLOW, 0)

    assert pytest.approx(0.0072000, rel=TENTH_PERCENT) == OPENING
    assert pytest.approx(1.4171, rel=TENTH_PERCENT) == 1.204 * 1006 * FLOW
    assert pytest.approx(16.503, rel=TENTH_PERCENT) == rise
    assert pytest.approx(rise_by_root(95, FLOW, 0)) == rise


def test_e3_with_losses() -> None:
    """E3: 1.6 W/K through the faces; the flow in litres."""
    rise = cavity.cavity_rise_k(95, FLOW, 1.6)

    assert pytest.approx(13.829, rel=TENTH_PERCENT) == rise
    assert pytest.approx(4.3507e-3, rel=TENTH_PERCENT) == cavity.cavity_flow_m3_per_s(FLOW, rise)
    assert pytest.approx(rise_by_root(95, FLOW, 1.6), rel=1e-9) == rise


def test_e4_without_openings() -> None:
    """E4: 95 / 1.6."""
    assert pytest.approx(59.375, rel=1e-9) == cavity.cavity_rise_k(95, 0, 1.6)
    assert math.inf == cavity.cavity_rise_k(95, 0, 0)
    assert 0.0 == cavity.cavity_rise_k(0, 0, 0)


def test_a_narrow_slot_and_the_seam_of_the_two_forms() -> None:
    """Roots by scipy: a tenth of the openings; and losses at which cosine and hyperbolic cosine meet."""
    assert pytest.approx(rise_by_root(95, FLOW / 10, 0)) == cavity.cavity_rise_k(95, FLOW / 10, 0)
    meet = 1.204 * 1006 * FLOW
    for bend in (0.99, 1.0, 1.01):
        loss = 3 * 95 * (meet / (2 * 95 * bend)) ** (2 / 3)
        assert pytest.approx(rise_by_root(95, FLOW, loss)) == cavity.cavity_rise_k(95, FLOW, loss)


def test_e5_area_for_a_rise() -> None:
    """E5: 110 W, 12 K, 0.9 m; put back it is 12 K."""
    opening = cavity.opening_for_rise_m2(110, 12, 0.9, discharge_ratio=C_D)
    flow = cavity.flow_per_root_rise_m3_per_s(opening, 0.9, discharge_ratio=C_D)

    assert pytest.approx((0.014864, 0.021021), rel=TENTH_PERCENT) == (opening, cavity.equal_grille_m2(opening))
    assert pytest.approx(12.0) == cavity.cavity_rise_k(110, flow, 0)
    each = cavity.equal_grille_m2(opening)
    assert pytest.approx(opening) == cavity.opening_in_series_m2(each, each)


def test_a_warmer_room_drives_less() -> None:
    """Heat.md 4: the flow goes with 1 / sqrt(T); by hand sqrt(294.15 / 303.15) = 0.98504."""
    warm = cavity.flow_per_root_rise_m3_per_s(OPENING, 1.1, discharge_ratio=C_D, room_k=303.15)

    assert pytest.approx(0.98504, rel=1e-4) == warm / FLOW
    wanted = cavity.opening_for_rise_m2(110, 12, 0.9, discharge_ratio=C_D, room_k=303.15)
    assert pytest.approx(1 / 0.98504, rel=1e-4) == wanted / cavity.opening_for_rise_m2(110, 12, 0.9, discharge_ratio=C_D)


def test_e6_faces() -> None:
    """E6, hand: 2.2 m2 of 18 mm MDF between two films of 0.13."""
    resistance = 0.13 + damp.layer_m2_k_per_w(18, RULES.heat.mdf_w_per_m_k) + 0.13

    assert pytest.approx(5.6618, rel=TENTH_PERCENT) == damp.face_loss_w_per_k(2.2, resistance)


def test_e1_outlet() -> None:
    """E1, hand: 1800 W in 0.045 m3/s."""
    assert pytest.approx(33.024, rel=TENTH_PERCENT) == cavity.outlet_rise_k(1800, 0.045)


def test_power_of_the_void() -> None:
    """Heat.md 1: 5 % of the rating, 40 W at least."""
    rules = RULES.heat
    found = [cavity.cavity_power_w(of, share_ratio=rules.cavity_share_ratio, least_w=rules.cavity_least_w) for of in (1900, 750)]

    assert pytest.approx([95.0, 40.0]) == found


def test_closed_openings() -> None:
    assert [0.0, 0.0, 0.0] == [cavity.opening_in_series_m2(*of) for of in ((0.01, 0.0), (0.0, 0.01), (0.0, 0.0))]


@given(POWER, AREA, STACK, LOSS)
def test_the_closed_form_is_the_root(power: float, area: float, stack: float, loss: float) -> None:
    flow = cavity.flow_per_root_rise_m3_per_s(area, stack, discharge_ratio=C_D)

    assert pytest.approx(rise_by_root(power, flow, loss), rel=1e-6) == cavity.cavity_rise_k(power, flow, loss)


@given(POWER, AREA, STACK, LOSS, st.floats(1.001, 3))
def test_h6_more_air_or_loss_is_cooler_more_power_warmer(
    power: float, area: float, stack: float, loss: float, more: float
) -> None:
    def rise(power_w: float, area_m2: float, stack_m: float, loss_w_per_k: float) -> float:
        return cavity.cavity_rise_k(
            power_w, cavity.flow_per_root_rise_m3_per_s(area_m2, stack_m, discharge_ratio=C_D), loss_w_per_k
        )

    base = rise(power, area, stack, loss) * (1 - 1e-9)
    assert base <= rise(power * more, area, stack, loss)
    assert base * (1 + 1e-8) >= rise(power, area * more, stack, loss)
    assert base * (1 + 1e-8) >= rise(power, area, stack * more, loss)
    assert base * (1 + 1e-8) >= rise(power, area, stack, loss * more)
    assert base <= rise(power, area, stack, 0.0)


@given(AREA, AREA)
def test_openings_in_series_let_through_less_than_the_smaller(inlet: float, outlet: float) -> None:
    assert min(inlet, outlet) / math.sqrt(2) * (1 - 1e-9) <= cavity.opening_in_series_m2(inlet, outlet) < min(inlet, outlet)
