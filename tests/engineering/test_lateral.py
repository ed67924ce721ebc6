"""Fasteners between timbers, against published examples and a plastic limit analysis."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import embedment, lateral, strength, withdrawal
from tests.engineering.dowel_model import limit_load_n
from tests.engineering.timber import C16, C24, PERMANENT, RULES, SHORT, TENTH_PERCENT

D_EF = 3.19
F_H = embedment.plain_embedment_mpa(C16.density_kg_m3, D_EF)
M_Y = embedment.yield_moment_n_mm(RULES.screws.yield_steel_mpa, D_EF)
LENGTH, STRENGTH = st.floats(8, 100), st.floats(8, 40)


def screw_modes(head: float, point: float, *, yield_n_mm: float = M_Y) -> tuple[float, ...]:
    """Modes a to f of the screw of B10 in C16 on C16."""
    return lateral.single_shear_modes_n(
        head_embedment_mpa=F_H,
        point_embedment_mpa=F_H,
        head_length_mm=head,
        point_length_mm=point,
        diameter_mm=D_EF,
        yield_n_mm=yield_n_mm,
    )


def screw_limit(head: float, point: float, *, yield_n_mm: float = M_Y) -> float:
    """The same screw by limit analysis."""
    return limit_load_n(
        head_embedment_mpa=F_H,
        point_embedment_mpa=F_H,
        head_length_mm=head,
        point_length_mm=point,
        diameter_mm=D_EF,
        yield_n_mm=yield_n_mm,
    )


def test_b10_screw() -> None:
    """B10: f governs; limit analysis without the factor 1.15 gives 648.63."""
    modes = screw_modes(47, 43)

    assert pytest.approx((2691.1, 2462.1, 1069.0, 1022.2, 949.21, 745.92), rel=TENTH_PERCENT) == modes
    assert "f" == lateral.governing_mode(modes, lateral.SINGLE_MODES)
    assert pytest.approx(screw_limit(47, 43), rel=2e-3) == modes[5] / 1.15


def test_b11_thin_head_side() -> None:
    """B11: d governs; limit analysis gives 523.961 without the factor 1.05."""
    modes = screw_modes(18, 43)

    assert pytest.approx((1030.6, 824.97, 550.16), rel=TENTH_PERCENT) == (modes[0], modes[2], modes[3])
    assert "d" == lateral.governing_mode(modes, lateral.SINGLE_MODES)
    assert pytest.approx(523.961, rel=TENTH_PERCENT) == modes[3] / 1.05
    assert pytest.approx(screw_limit(18, 43), rel=2e-3) == modes[3] / 1.05


def test_b12_no_hinge() -> None:
    """B12: a fastener that cannot bend tilts: mode c, limit analysis 1069.04."""
    modes = screw_modes(47, 43, yield_n_mm=1e9)

    assert "c" == lateral.governing_mode(modes, lateral.SINGLE_MODES)
    assert pytest.approx(1069.0, rel=TENTH_PERCENT) == min(modes)
    assert pytest.approx(screw_limit(47, 43, yield_n_mm=1e9), rel=2e-3) == min(modes)


def test_b13_mirror() -> None:
    """B13: 60/20 and 20/60: limit analysis 547.42 both."""
    in_head, in_point = screw_modes(60, 20)[4] / 1.05, screw_modes(20, 60)[3] / 1.05

    assert pytest.approx((547.42, 547.42), rel=TENTH_PERCENT) == (in_head, in_point)
    assert pytest.approx(screw_limit(60, 20), rel=2e-3) == in_head
    assert pytest.approx(screw_limit(20, 60), rel=2e-3) == in_point


def test_b14_design() -> None:
    """B14, hand: R_d short and permanent."""
    least = min(screw_modes(47, 43))

    assert pytest.approx(516.41, rel=TENTH_PERCENT) == strength.design_resistance_n(least, SHORT, 1.3)
    assert pytest.approx(344.27, rel=TENTH_PERCENT) == strength.design_resistance_n(least, PERMANENT, 1.3)


def test_b15_rope() -> None:
    """B15, hand: head pull-through 700.61 N gives a rope of a quarter; R_d short 637.66."""
    axial = withdrawal.head_pull_n(10.2, 8.7, C16.density_kg_m3 / 350)
    roped = lateral.roped_modes_n(screw_modes(47, 43), 2, axial, 1.0)

    assert pytest.approx(921.07, rel=TENTH_PERCENT) == min(roped)
    assert pytest.approx(637.66, rel=TENTH_PERCENT) == strength.design_resistance_n(min(roped), SHORT, 1.3)


def test_the_rope_is_bounded_and_only_where_the_fastener_bends() -> None:
    """8.2.2(2): 15 % of the mode for round nails, none for dowels; modes a and b have none."""
    plain = screw_modes(47, 43)

    assert plain == lateral.roped_modes_n(plain, 2, 0.0, 1.0)
    assert plain == lateral.roped_modes_n(plain, 2, 1e9, 0.0)
    assert (*plain[:2], *(1.15 * mode for mode in plain[2:])) == pytest.approx(lateral.roped_modes_n(plain, 2, 1e9, 0.15))
    assert 110.0 == lateral.roped_n(100.0, 40.0, 1.0)


def dowel_modes(steel_mpa: float, side_mpa: float, middle_mpa: float, lengths_mm: tuple[float, float]) -> tuple[float, ...]:
    """Modes g to k of a dowel of 12 mm."""
    return lateral.double_shear_modes_n(
        side_embedment_mpa=side_mpa,
        middle_embedment_mpa=middle_mpa,
        side_length_mm=lengths_mm[0],
        middle_length_mm=lengths_mm[1],
        diameter_mm=12,
        yield_n_mm=embedment.yield_moment_n_mm(steel_mpa, 12),
    )


def test_b2_double_shear() -> None:
    """B2: published 10 930, 7286, 6657, 9614, 4609 [N1], with f_h rounded up to 25.3."""
    f_h = embedment.drilled_embedment_mpa(C24.density_kg_m3, 12)
    modes = dowel_modes(600, f_h, f_h, (36, 48))

    assert pytest.approx((10_911, 7273.7, 6651.1, 9606.3), rel=TENTH_PERCENT) == modes
    assert "j" == lateral.governing_mode(modes, lateral.DOUBLE_MODES)
    assert pytest.approx(4604.6, rel=TENTH_PERCENT) == strength.design_resistance_n(min(modes), 0.9, 1.3)
    assert pytest.approx((10_930, 7286, 6657, 9614), rel=2.5e-3) == modes


def test_b5_at_an_angle() -> None:
    """B5: published 6699 N [N2], beta 1.468, mode k."""
    along = embedment.drilled_embedment_mpa(C24.density_kg_m3, 12)
    across = embedment.angled_embedment_mpa(along, 12, 70)
    modes = dowel_modes(360, across, along, (80, 80))

    assert pytest.approx(1.4680, rel=TENTH_PERCENT) == along / across
    assert "k" == lateral.governing_mode(modes, lateral.DOUBLE_MODES)
    assert pytest.approx(6698.5, rel=TENTH_PERCENT) == min(modes)
    assert pytest.approx(6699, rel=TENTH_PERCENT) == min(modes)


def test_i4_plywood_return() -> None:
    """I4, hand: ply 18 on timber 32, root 3.1, M_y 5900 declared: c governs, 856.22 N."""
    d_ef = 3.41
    modes = lateral.single_shear_modes_n(
        head_embedment_mpa=embedment.plywood_embedment_mpa(500, d_ef),
        point_embedment_mpa=embedment.plain_embedment_mpa(310, d_ef),
        head_length_mm=18,
        point_length_mm=32,
        diameter_mm=d_ef,
        yield_n_mm=5900,
    )

    assert "c" == lateral.governing_mode(modes, lateral.SINGLE_MODES)
    assert pytest.approx(856.22, rel=TENTH_PERCENT) == min(modes)
    assert pytest.approx(592.77, rel=TENTH_PERCENT) == strength.design_resistance_n(min(modes), SHORT, 1.3)


def modes_of(head_mpa: float, point_mpa: float, head_mm: float, point_mm: float) -> tuple[float, ...]:
    """Modes of a screw of 3.19 mm in any two timbers."""
    return lateral.single_shear_modes_n(
        head_embedment_mpa=head_mpa,
        point_embedment_mpa=point_mpa,
        head_length_mm=head_mm,
        point_length_mm=point_mm,
        diameter_mm=D_EF,
        yield_n_mm=M_Y,
    )


@given(STRENGTH, STRENGTH, LENGTH, LENGTH)
def test_h7_the_two_sides_may_change_places(head_mpa: float, point_mpa: float, head_mm: float, point_mm: float) -> None:
    """H7: a and b swap, d and e swap, c and f and the least stay."""
    here, there = modes_of(head_mpa, point_mpa, head_mm, point_mm), modes_of(point_mpa, head_mpa, point_mm, head_mm)

    assert pytest.approx((here[1], here[0], here[2], here[4], here[3], here[5])) == there
    assert pytest.approx(min(here)) == min(there)


@given(STRENGTH, STRENGTH, LENGTH, LENGTH, st.floats(1.001, 2))
def test_more_wood_or_steel_never_weakens(
    head_mpa: float, point_mpa: float, head_mm: float, point_mm: float, more: float
) -> None:
    base = min(modes_of(head_mpa, point_mpa, head_mm, point_mm)) * (1 - 1e-9)

    assert base <= min(modes_of(head_mpa * more, point_mpa, head_mm, point_mm))
    assert base <= min(modes_of(head_mpa, point_mpa * more, head_mm, point_mm))
    assert base <= min(modes_of(head_mpa, point_mpa, head_mm * more, point_mm))
    assert base <= min(modes_of(head_mpa, point_mpa, head_mm, point_mm * more))


@pytest.mark.parametrize(
    ("head_mpa", "point_mpa", "head_mm", "point_mm"),
    [(18, 18, 10, 60), (18, 30, 10, 40), (30, 12, 40, 12), (25, 14, 18, 18), (38, 17.6, 18, 32), (18, 24, 80, 80)],
)
def test_modes_are_the_limit_loads(head_mpa: float, point_mpa: float, head_mm: float, point_mm: float) -> None:
    """Every mode in turn: the least without its factor is what the limit analysis finds."""
    modes = modes_of(head_mpa, point_mpa, head_mm, point_mm)
    plain = (*modes[:3], modes[3] / 1.05, modes[4] / 1.05, modes[5] / 1.15)
    limit = limit_load_n(
        head_embedment_mpa=head_mpa,
        point_embedment_mpa=point_mpa,
        head_length_mm=head_mm,
        point_length_mm=point_mm,
        diameter_mm=D_EF,
        yield_n_mm=M_Y,
    )

    assert pytest.approx(limit, rel=5e-3) == min(plain)
