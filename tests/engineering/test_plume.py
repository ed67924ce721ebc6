"""The plume above an outlet."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import plume
from tests.engineering.timber import TENTH_PERCENT


@pytest.mark.parametrize(("height", "expected"), [(0.35, 39.062), (0.70, 19.531)])
def test_e12_wall_plume(height: float, expected: float) -> None:
    """E12: 1200 W over 0.9 m; half at twice the height."""
    assert pytest.approx(expected, rel=TENTH_PERCENT) == plume.wall_plume_rise_k(1200, 0.9, height)


def test_a_warmer_room() -> None:
    """The rise goes with T^(1/3): 2.6 (2 g P / (w rho c_p T))^(2/3) T / g."""
    warm, cool = plume.wall_plume_rise_k(1200, 0.9, 0.35, 300.0), plume.wall_plume_rise_k(1200, 0.9, 0.35, 280.0)

    assert pytest.approx((300 / 280) ** (1 / 3)) == warm / cool


@given(st.floats(10, 3000), st.floats(0.2, 2), st.floats(0.1, 2), st.floats(1.001, 3))
def test_more_power_is_warmer_and_more_height_or_width_cooler(power: float, width: float, height: float, more: float) -> None:
    base = plume.wall_plume_rise_k(power, width, height)

    assert base <= plume.wall_plume_rise_k(power * more, width, height)
    assert base >= plume.wall_plume_rise_k(power, width * more, height)
    assert pytest.approx(base / more) == plume.wall_plume_rise_k(power, width, height * more)
