"""Geometry of sections."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import section
from tests.engineering.timber import HUNDREDTH_PERCENT

SIDE = st.floats(10, 400)


def test_a7_section() -> None:
    """A7, hand: 47 x 75 on edge and flat."""
    assert pytest.approx(44_063, rel=HUNDREDTH_PERCENT) == section.section_modulus_mm3(47, 75)
    assert pytest.approx(1.6523e6, rel=HUNDREDTH_PERCENT) == section.second_moment_mm4(47, 75)
    assert pytest.approx(27_613, rel=HUNDREDTH_PERCENT) == section.section_modulus_mm3(75, 47)
    assert pytest.approx(6.4889e5, rel=HUNDREDTH_PERCENT) == section.second_moment_mm4(75, 47)


def test_a12_share() -> None:
    """A12, elastic: the share of 47 x 75 on edge beside 75 x 47 flat is 75^2 / (75^2 + 47^2)."""
    edge = section.stiffness_n_mm2(8000, section.second_moment_mm4(47, 75))
    flat = section.stiffness_n_mm2(8000, section.second_moment_mm4(75, 47))

    assert pytest.approx(0.71802, rel=HUNDREDTH_PERCENT) == section.stiffness_share_ratio(edge, edge + flat)
    assert pytest.approx(0.28198, rel=HUNDREDTH_PERCENT) == section.stiffness_share_ratio(flat, edge + flat)
    assert pytest.approx(75**2 / (75**2 + 47**2)) == section.stiffness_share_ratio(edge, edge + flat)


@given(SIDE, SIDE)
def test_sections_hang_together(width_mm: float, depth_mm: float) -> None:
    """I = W h/2 = A i^2, by their definitions."""
    second_moment = section.second_moment_mm4(width_mm, depth_mm)

    assert pytest.approx(section.section_modulus_mm3(width_mm, depth_mm) * depth_mm / 2) == second_moment
    assert pytest.approx(section.area_mm2(width_mm, depth_mm) * section.gyration_radius_mm(depth_mm) ** 2) == second_moment
    assert section.area_mm2(width_mm, depth_mm) == section.area_mm2(depth_mm, width_mm)


@given(SIDE, SIDE)
def test_a_rectangle_is_the_sum_of_its_strips(width_mm: float, depth_mm: float) -> None:
    """Second moment as the sum of thin strips times their distance squared: no formula of ours."""
    strip_mm = depth_mm / 400
    strips = (-depth_mm / 2 + strip_mm * (number + 0.5) for number in range(400))

    assert pytest.approx(math.fsum(width_mm * strip_mm * y**2 for y in strips), rel=1e-4) == section.second_moment_mm4(
        width_mm, depth_mm
    )
