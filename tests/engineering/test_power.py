"""Currents."""

from __future__ import annotations

import pytest

from service.engineering import power
from tests.engineering.timber import RULES

SUPPLY = RULES.power.supply_v


@pytest.mark.parametrize(
    ("powers", "expected"), [pytest.param((1750,), 7.6087), pytest.param((1750, 160), 8.3043), pytest.param((3000,), 13.043)]
)
def test_e11_currents(powers: tuple[float, ...], expected: float) -> None:
    """E11, hand: the last is more than a plug carries."""
    current = power.current_a(power.total_w(powers), SUPPLY)

    assert pytest.approx(expected, rel=1e-4) == current
    assert (expected > 13) == (current > RULES.power.plug_a)


def test_e11_plug() -> None:
    """E11, hand: 13 A in W."""
    assert pytest.approx(2990.0, rel=1e-4) == power.plug_power_w(RULES.power.plug_a, SUPPLY)
    assert pytest.approx(RULES.power.plug_a) == power.current_a(2990.0, SUPPLY)


def test_half_of_a_screen() -> None:
    """Heat.md 1."""
    assert 80 == power.shared_w(160, RULES.heat.screen_share_ratio)
    assert 0 == power.total_w(())


@pytest.mark.parametrize(
    ("ambient", "keeps"), [(30, 1.0), (20, 1.0), (35, 0.94), (40, 0.87), (45, 0.79), (50, 0.71), (70, 0.0), (80, 0.0)]
)
def test_warm_cables(ambient: float, keeps: float) -> None:
    """Published: BS 7671 Table 4B1, 70 degC thermoplastic, 30 to 50 degrees: 1.00, 0.94, 0.87, 0.79, 0.71 (from memory)."""
    assert keeps == pytest.approx(power.warm_cable_ratio(ambient, rated_deg_c=30, conductor_deg_c=70), abs=0.005)
