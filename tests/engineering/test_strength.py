"""Design values: EN 1995-1-1, sections 2 and 3."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import strength
from tests.engineering.timber import C24, GAMMA_M, HUNDREDTH_PERCENT, MEDIUM, PERMANENT, SHORT, TENTH_PERCENT


def test_a1_bending_strength() -> None:
    """A1: published 16.88 by [K], which rounds k_h first (0.2 % off)."""
    k_h = strength.size_factor_ratio(140)

    design = strength.design_strength_mpa(k_h * C24.bending_mpa, SHORT, GAMMA_M)

    assert pytest.approx(1.0139, rel=TENTH_PERCENT) == k_h
    assert pytest.approx(16.846, rel=TENTH_PERCENT) == design
    assert pytest.approx(16.88, rel=3e-3) == design


@pytest.mark.parametrize(
    ("depth_mm", "expected"), [(75, 1.1487), (47, 1.2612), (150, 1.0), (200, 1.0), (150 / 1.3**5, 1.3), (20, 1.3)]
)
def test_a7_size_factor(depth_mm: float, expected: float) -> None:
    """A7, hand; and the bounds of (3.1): 1 from 150 mm on, 1.3 at most."""
    assert pytest.approx(expected, rel=HUNDREDTH_PERCENT) == strength.size_factor_ratio(depth_mm)


@pytest.mark.parametrize(("k_mod", "expected"), [(SHORT, 516.41), (PERMANENT, 344.27)])
def test_b14_design_resistance(k_mod: float, expected: float) -> None:
    """B14, hand: R_k of B10, 745.92 N."""
    assert pytest.approx(expected, rel=TENTH_PERCENT) == strength.design_resistance_n(745.92, k_mod, 1.3)


def test_two_materials() -> None:
    """Structure.md 5.13 c: OSB/3 on timber under permanent load 0.49, MDF 0.35; equal ones change nothing, twice for creep."""
    assert pytest.approx(0.49, abs=0.005) == strength.pair_k_mod_ratio(0.40, 0.60)
    assert pytest.approx(0.35, abs=0.005) == strength.pair_k_mod_ratio(0.20, 0.60)
    assert pytest.approx(0.9) == strength.pair_k_mod_ratio(0.9, 0.9)
    assert pytest.approx(1.2) == strength.pair_creep_ratio(0.6, 0.6)
    assert pytest.approx(2 * (0.6 * 0.8) ** 0.5) == strength.pair_creep_ratio(0.8, 0.6)


def test_h1_a_permanent_load_governs_beside_a_tiny_short_one() -> None:
    """H1: G 100 N, Q 10 N: k_mod of permanent load asks for more strength than 1.35 G + 1.5 Q with that of the short one."""
    permanent_only, both = 1.35 * 100 / PERMANENT, (1.35 * 100 + 1.5 * 10) / SHORT

    assert permanent_only > both


@given(st.floats(10, 1000), st.floats(10, 1000))
def test_a_deeper_member_is_no_stronger_by_area(first_mm: float, second_mm: float) -> None:
    less, more = sorted((first_mm, second_mm))

    assert strength.size_factor_ratio(less) >= strength.size_factor_ratio(more) >= 1.0


@given(st.floats(1, 50), st.sampled_from((PERMANENT, MEDIUM, SHORT)), st.floats(1.0, 2.0))
def test_strength_and_resistance_scale_alike(characteristic: float, k_mod: float, gamma_m: float) -> None:
    design = strength.design_strength_mpa(characteristic, k_mod, gamma_m)

    assert design <= characteristic
    assert design == strength.design_resistance_n(characteristic, k_mod, gamma_m)
    assert pytest.approx(2 * design) == strength.design_strength_mpa(2 * characteristic, k_mod, gamma_m)
