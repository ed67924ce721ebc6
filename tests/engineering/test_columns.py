"""Buckling against a root finder, tension and combinations."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq  # type: ignore[import-untyped]  # the library has no types

from service.engineering import columns, section, strength
from tests.engineering.timber import C16, C24, GAMMA_M, MEDIUM, PERMANENT, SHORT, TENTH_PERCENT

if TYPE_CHECKING:
    from service.rules import StrengthClass

AREA = section.area_mm2(47, 75)
RATIO = st.floats(0, 2)


def slenderness(timber: StrengthClass, length_mm: float, side_mm: float) -> float:
    return columns.column_slenderness_ratio(
        length_mm,
        section.gyration_radius_mm(side_mm),
        compression_mpa=timber.compression_mpa,
        modulus_low_mpa=timber.modulus_low_mpa,
    )


def root(slender: float) -> float:
    """Smaller root of (1 - x)(1 - x l^2) = 0.2 (l - 0.3) x, by Brent's method."""

    def balance(x: float) -> float:
        return (1 - x) * (1 - x * slender**2) - 0.2 * (slender - 0.3) * x

    return float(brentq(balance, 0.0, min(1.0, 1 / slender**2), xtol=1e-15))


@pytest.mark.parametrize(
    ("timber", "length_mm", "side_mm", "expected"),
    [
        pytest.param(C16, 2350, 47, (3.0934, 0.098148, 3619.4), id="A17"),
        pytest.param(C16, 2350, 75, (1.9385, 0.23875, 8804.5), id="A18"),
        pytest.param(C16, 1175, 47, (1.5467, 0.35951, 13_257), id="A19 held at 1175"),
        pytest.param(C16, 580, 47, (0.76348, 0.84547, 31_178), id="A19 held at 580"),
        pytest.param(C24, 2350, 47, (2.9370, 0.10849, 4942.1), id="A20"),
    ],
)
def test_strut(timber: StrengthClass, length_mm: float, side_mm: float, expected: tuple[float, ...]) -> None:
    """A17 to A20: 47 x 75, medium; k_c equal to scipy's root to 1e-9."""
    slender = slenderness(timber, length_mm, side_mm)
    buckling = columns.buckling_ratio(slender)
    design = strength.design_strength_mpa(timber.compression_mpa, MEDIUM, GAMMA_M)

    assert pytest.approx(root(slender), abs=1e-9) == buckling
    assert pytest.approx(expected, rel=TENTH_PERCENT) == (slender, buckling, columns.column_resistance_n(design, AREA, buckling))


@pytest.mark.parametrize(
    ("timber", "expected"),
    [pytest.param(C16, (0.63602, 0.27769, 0.12948), id="C16"), pytest.param(C24, (0.67637, 0.30515, 0.14300), id="C24")],
)
def test_a21_buckling(timber: StrengthClass, expected: tuple[float, ...]) -> None:
    """A21: L/i of 60, 100, 150; scipy's root and the Euler bound k_c < 1 / lambda_rel^2."""
    ratios = [
        columns.column_slenderness_ratio(of, 1.0, compression_mpa=timber.compression_mpa, modulus_low_mpa=timber.modulus_low_mpa)
        for of in (60, 100, 150)
    ]
    found = [columns.buckling_ratio(ratio) for ratio in ratios]

    assert pytest.approx(expected, rel=TENTH_PERCENT) == tuple(found)
    assert pytest.approx([root(ratio) for ratio in ratios], abs=1e-9) == found
    assert all(factor < 1 / ratio**2 for factor, ratio in zip(found, ratios, strict=True))


def test_a22_compression_and_bending() -> None:
    """A22, hand: 2 kN on the upright of A13."""
    stress = columns.axial_stress_mpa(2000, AREA)
    design = strength.design_strength_mpa(C16.compression_mpa, SHORT, GAMMA_M)
    strong, weak = stress / (0.23875 * design), stress / (0.35951 * design)

    assert pytest.approx(0.56738, rel=TENTH_PERCENT) == stress
    assert pytest.approx(0.98748, rel=TENTH_PERCENT) == columns.column_bending_ratio(strong, 0.78556, 0.0)
    assert pytest.approx(0.68399, rel=TENTH_PERCENT) == columns.column_bending_ratio(weak, 0.0, 0.78556)


def test_a24_tension() -> None:
    """A24, hand: 1.2 kN, permanent, k_h from the larger side."""
    stress = columns.axial_stress_mpa(1200, AREA)
    design = strength.design_strength_mpa(strength.size_factor_ratio(75) * C16.tension_mpa, PERMANENT, GAMMA_M)

    assert pytest.approx((0.34043, 4.5064, 0.075542), rel=TENTH_PERCENT) == (stress, design, stress / design)


def test_sums_by_hand() -> None:
    """(6.17) to (6.20): 0.5 + max(0.3 + 0.14, 0.21 + 0.2); 0.5^2 + 0.3 + 0.7 x 0.2."""
    assert pytest.approx(0.94) == columns.tension_bending_ratio(0.5, 0.3, 0.2)
    assert pytest.approx(0.94) == columns.tension_bending_ratio(0.5, 0.2, 0.3)
    assert pytest.approx(0.69) == columns.stocky_bending_ratio(0.5, 0.3, 0.2)
    assert pytest.approx(0.61 + 0.5) == columns.column_bending_ratio(0.5, 0.47, 0.2)


def test_a_stocky_column_does_not_buckle() -> None:
    """6.3.2(2): up to 0.3, and hardly above it."""
    assert 1.0 == columns.buckling_ratio(0.0) == columns.buckling_ratio(0.3)
    assert 0.99 < columns.buckling_ratio(0.31) < 1.0


@given(st.floats(0.31, 6))
def test_buckling_is_the_root_everywhere(slender: float) -> None:
    found = columns.buckling_ratio(slender)

    assert pytest.approx(root(slender), abs=1e-9) == found
    assert found < 1 / slender**2


@given(st.floats(50, 4000), st.floats(50, 4000), st.floats(20, 200))
def test_a_longer_column_bears_no_more_and_a_weaker_class_less(first: float, second: float, side: float) -> None:
    short, long = sorted((first, second))

    assert columns.buckling_ratio(slenderness(C16, long, side)) <= columns.buckling_ratio(slenderness(C16, short, side))
    stronger = columns.buckling_ratio(slenderness(C24, short, side)) * C24.compression_mpa
    assert columns.buckling_ratio(slenderness(C16, short, side)) * C16.compression_mpa <= stronger


def test_euler_far_out() -> None:
    """A very slender column buckles at Euler's load, pi^2 E_0,05 I / L^2."""
    euler = math.pi**2 * C16.modulus_low_mpa * section.second_moment_mm4(75, 47) / 9000**2
    resistance = columns.column_resistance_n(C16.compression_mpa, AREA, columns.buckling_ratio(slenderness(C16, 9000, 47)))

    assert 0.95 * euler < resistance < euler


@given(RATIO, RATIO, RATIO)
def test_nothing_is_relieved_by_a_second_force(axial: float, strong: float, weak: float) -> None:
    assert columns.tension_bending_ratio(axial, strong, weak) >= max(axial, strong, weak)
    assert columns.column_bending_ratio(axial, strong, weak) >= max(axial, strong)
    assert columns.stocky_bending_ratio(axial, strong, weak) >= max(axial**2, strong)
