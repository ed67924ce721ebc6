"""Bending and sideways buckling."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import beams, bending
from tests.engineering.timber import C16, C24, MEDIUM, PERMANENT, SHORT, TENTH_PERCENT, bending_design_mpa

if TYPE_CHECKING:
    from service.rules import StrengthClass

SIDE, RATIO = st.floats(20, 300), st.floats(0, 2)


def test_a2_joist() -> None:
    """A2: published u 0.455733 [B], with k_sys 1.1 and medium duration."""
    stress = bending.bending_stress_mpa(beams.uniform_moment_n_mm(1.4625, 4500), 75, 200)
    strength = 1.1 * bending_design_mpa(C24, MEDIUM, 200)

    assert pytest.approx(7.4039, rel=TENTH_PERCENT) == stress
    assert pytest.approx(16.246, rel=TENTH_PERCENT) == strength
    assert pytest.approx(0.455733, rel=1e-5) == stress / strength


@pytest.mark.parametrize(
    ("moment_n_mm", "size_mm", "timber", "k_mod", "expected"),
    [
        pytest.param(77_128, (47, 75), C16, PERMANENT, (1.7504, 8.4827, 0.20635), id="A8"),
        pytest.param(594_630, (47, 75), C16, SHORT, (13.495, 12.724, 1.0606), id="A9 fails"),
        pytest.param(440_426, (47, 75), C16, SHORT, (9.9955, 12.724, 0.78556), id="A13"),
        pytest.param(440_426, (75, 47), C16, SHORT, (15.950, 13.971, 1.1417), id="A14 fails"),
        pytest.param(100_153, (47, 100), C24, PERMANENT, (1.2785, 12.013, 0.10643), id="A15"),
        pytest.param(230_850, (75, 47), C16, SHORT, (8.3603, 13.971, 0.59842), id="A27"),
        pytest.param(28_351, (75, 47), C16, PERMANENT, (1.0267, 9.3140, 0.11023), id="A27 permanent only"),
    ],
)
def test_members(
    moment_n_mm: float, size_mm: tuple[float, float], timber: StrengthClass, k_mod: float, expected: tuple[float, ...]
) -> None:
    """A8, A9, A13, A14, A15, A27: moments by finite elements (test_beams.py)."""
    stress = bending.bending_stress_mpa(moment_n_mm, *size_mm)
    strength = bending_design_mpa(timber, k_mod, size_mm[1])

    assert pytest.approx(expected, rel=TENTH_PERCENT) == (stress, strength, stress / strength)


def test_a16_both_axes() -> None:
    """A16, hand: the bearer of D1 with 683.93 N down and 1453.4 N outward at mid span."""
    strong = bending.bending_stress_mpa(beams.point_moment_n_mm(683.93, 1290, 645), 47, 100)
    weak = bending.bending_stress_mpa(beams.point_moment_n_mm(1453.4, 1290, 645), 100, 47)
    strong_strength, weak_strength = bending_design_mpa(C24, SHORT, 100), bending_design_mpa(C24, SHORT, 47)

    found = (strong, weak, strong_strength, weak_strength)
    ratios = strong / strong_strength, weak / weak_strength

    assert pytest.approx((2.8158, 12.731, 18.019, 20.956), rel=TENTH_PERCENT) == found
    assert pytest.approx(0.58152, rel=TENTH_PERCENT) == bending.biaxial_bending_ratio(*ratios)
    assert pytest.approx(0.71689, rel=TENTH_PERCENT) == bending.biaxial_bending_ratio(ratios[1], ratios[0])
    assert pytest.approx(0.71689, rel=TENTH_PERCENT) == bending.bending_ratio(*ratios)


def test_a6_sideways() -> None:
    """A6: the case of [B] 2.3.2, 50 x 200 C24 over 5 m with its load on top."""
    length = bending.lateral_length_mm(5000, 200, span_ratio=0.9, edge_depth_ratio=2.0)
    critical = bending.critical_bending_stress_mpa(50, 200, length_mm=length, modulus_low_mpa=C24.modulus_low_mpa)
    slenderness = bending.bending_slenderness_ratio(C24.bending_mpa, critical)

    found = (length, critical, slenderness, bending.lateral_buckling_ratio(slenderness))

    assert pytest.approx((4900, 14.724, 1.2767, 0.60248), rel=TENTH_PERCENT) == found


def test_a6_is_the_full_formula_within_its_simplification() -> None:
    """(6.31): pi sqrt(E I_z G_05 I_tor) / (l_ef W_y), I_tor of a rectangle by the elastic series: 13.634, 7 % lower."""
    width, depth = 50.0, 200.0
    torsion = depth * width**3 / 3 * (1 - 0.63 * width / depth + 0.052 * (width / depth) ** 5)
    out_of_plane = 7400 * depth * width**3 / 12 * 7400 / 16 * torsion
    full = math.pi * math.sqrt(out_of_plane) / (4900 * width * depth**2 / 6)
    short = bending.critical_bending_stress_mpa(width, depth, length_mm=4900, modulus_low_mpa=7400)

    assert pytest.approx(13.634, rel=0.02) == full
    assert 0.90 < full / short < 1.0


def test_hung_below_or_loaded_in_the_middle() -> None:
    """Table 6.1: 0.8 L with a load at mid span; half of the depth less where it hangs below."""
    assert pytest.approx(0.8 * 1000 - 50) == bending.lateral_length_mm(1000, 100, span_ratio=0.8, edge_depth_ratio=-0.5)


@pytest.mark.parametrize(
    ("slenderness", "expected"),
    [(0.0, 1.0), (0.75, 1.0), (0.76, 0.99), (1.0, 0.81), (1.4, 0.51), (1.41, 1 / 1.41**2), (2.0, 0.25)],
)
def test_lateral_buckling_bounds(slenderness: float, expected: float) -> None:
    """(6.34) by hand; its pieces meet within 0.003 at 0.75 and 1.4."""
    assert pytest.approx(expected) == bending.lateral_buckling_ratio(slenderness)


@given(st.floats(0, 5), st.floats(0, 5))
def test_more_slender_is_never_stronger(first: float, second: float) -> None:
    less, more = sorted((first, second))

    assert bending.lateral_buckling_ratio(more) <= bending.lateral_buckling_ratio(less) + 0.003
    assert 0 < bending.lateral_buckling_ratio(more) <= 1


@given(RATIO, RATIO)
def test_bending_about_both_axes_is_never_less_than_about_one(strong: float, weak: float) -> None:
    found = bending.bending_ratio(strong, weak)

    assert max(strong, weak) <= found <= strong + weak + 1e-12
    assert found == bending.bending_ratio(weak, strong)


@given(st.floats(1, 1e6), SIDE, SIDE, st.floats(1.001, 2))
def test_a_deeper_member_is_used_less_with_the_size_factor_in_it(
    moment: float, width: float, depth: float, deeper: float
) -> None:
    """H6: the stress falls with h^2, k_h with h^0.2 at most."""
    before = bending.bending_stress_mpa(moment, width, depth) / bending_design_mpa(C16, SHORT, depth)
    after = bending.bending_stress_mpa(moment, width, depth * deeper) / bending_design_mpa(C16, SHORT, depth * deeper)

    assert after <= before * (1 + 1e-12)
    assert before <= bending.bending_stress_mpa(moment, width, depth) / bending_design_mpa(C16, PERMANENT, depth)
    assert before >= bending.bending_stress_mpa(moment, width, depth) / bending_design_mpa(C24, SHORT, depth)


@given(SIDE, SIDE, st.floats(100, 6000), st.floats(1.001, 3))
def test_a_longer_member_buckles_sooner(width: float, depth: float, length: float, longer: float) -> None:
    critical = bending.critical_bending_stress_mpa(width, depth, length_mm=length, modulus_low_mpa=5400)

    assert pytest.approx(critical / longer) == bending.critical_bending_stress_mpa(
        width, depth, length_mm=length * longer, modulus_low_mpa=5400
    )
    assert pytest.approx(
        math.sqrt(longer) * bending.bending_slenderness_ratio(16, critical)
    ) == bending.bending_slenderness_ratio(16, critical / longer)
