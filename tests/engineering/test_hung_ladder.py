"""The hung side ladder: section I of the worked checks, against finite elements where they say more than statics."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import deflection, fixing_groups, hung_ladder, load_paths, strength
from tests.engineering.beam_model import guided_bar_mm
from tests.engineering.timber import C16, CREEP, GAMMA_G, GAMMA_Q, PERMANENT, RULES, SHORT, TENTH_PERCENT, bending_stiffness_n_mm2

WEIGHT, LEVER, DEPTH, CLEAR, REACH = 420.0, 230.0, 70.0, 200.0, 270.0
LEVELS = (900.0, 1350.0, 1800.0, 2230.0)
PERSON, PERSON_FROM_BACK = 1000.0, 355.0
Z = RULES.screws.bracket_lever_ratio * DEPTH


def demand(gamma_g: float, gamma_q: float) -> tuple[float, float, float]:
    """Force, racking moment and couple of a case."""
    weight, person = gamma_g * WEIGHT, gamma_q * PERSON
    return (
        hung_ladder.corner_force_n(weight, LEVER, DEPTH, REACH) + person,
        hung_ladder.racking_moment_n_mm(weight, LEVER, depth_mm=DEPTH, person_n=person, clear_mm=CLEAR),
        hung_ladder.front_couple_n_mm(
            weight, LEVER, depth_mm=DEPTH, person_n=person, person_lever_mm=PERSON_FROM_BACK - DEPTH - CLEAR / 2
        ),
    )


def bracket_ratio(gamma_g: float, gamma_q: float, k_mod: float, gamma_m: float) -> float:
    """Utilisation of a bracket of R_4,5 2000 and R_1 3600."""
    force, racking, couple = demand(gamma_g, gamma_q)
    pull = hung_ladder.bracket_pull_n(hung_ladder.joint_moment_n_mm(racking, 4), Z, hung_ladder.noggin_pull_n(couple, LEVELS))
    resistances = (strength.design_resistance_n(of, k_mod, gamma_m) for of in (2000, 3600))
    return sum(asked / resists for asked, resists in zip((pull, force / 4), resistances, strict=True))


def test_i1_demand() -> None:
    """I1: statics of the cases p and s."""
    assert pytest.approx((409.50, 110_570, 55_282), rel=TENTH_PERCENT) == demand(GAMMA_G, 0)
    assert pytest.approx((1909.5, 410_570, 332_780), rel=TENTH_PERCENT) == demand(GAMMA_G, GAMMA_Q)


def test_i2_brackets() -> None:
    """I2: case s in its parts; u of s, p and l. FE found M_j 1.4 % less and, with axial springs, 1.9 % more."""
    force, racking, couple = demand(GAMMA_G, GAMMA_Q)
    joint = hung_ladder.joint_moment_n_mm(racking, 4)
    pull = hung_ladder.noggin_pull_n(couple, LEVELS)

    assert pytest.approx((51_321, 222.80), rel=TENTH_PERCENT) == (joint, pull)
    assert pytest.approx((1027.8, 477.38), rel=TENTH_PERCENT) == (hung_ladder.bracket_pull_n(joint, Z, pull), force / 4)
    assert pytest.approx(0.93387, rel=TENTH_PERCENT) == bracket_ratio(GAMMA_G, GAMMA_Q, SHORT, 1.3)
    assert pytest.approx(0.34904, rel=TENTH_PERCENT) == bracket_ratio(GAMMA_G, 0, PERMANENT, 1.3)
    assert pytest.approx(0.19888, rel=TENTH_PERCENT) == bracket_ratio(1.0, 0, PERMANENT, 1.0)


def drop_parts() -> tuple[float, float]:
    """Drop of the front by 1 N: as the noggins bend, and as the brackets give."""
    slip = deflection.screw_slip_n_per_mm(C16.density_mean_kg_m3, 5.0)
    turning = hung_ladder.joint_stiffness_n_mm(3, slip, Z)
    bending = hung_ladder.noggin_bending_mm(1.0, CLEAR, bending_stiffness_n_mm2(C16, 45, DEPTH), 4)
    return bending, hung_ladder.bracket_drop_mm(1.0, CLEAR, joint_n_mm=turning, leg_n_per_mm=3 * slip, noggin_count=4)


def test_i3_drop() -> None:
    """I3: instantaneous and final drop of G, and that of Q; FE under 1.35 G + 1.5 Q found 1.4904 mm, 4 % less than this."""
    corner = hung_ladder.corner_force_n(WEIGHT, LEVER, DEPTH, REACH)
    bending, giving = drop_parts()
    final = corner * ((1 + CREEP) * bending + (1 + strength.pair_creep_ratio(CREEP, CREEP)) * giving)

    assert pytest.approx(0.24600, rel=TENTH_PERCENT) == corner * (bending + giving)
    assert pytest.approx(0.53820, rel=TENTH_PERCENT) == final
    assert pytest.approx(0.81090, rel=TENTH_PERCENT) == PERSON * (bending + giving)
    assert pytest.approx(1.4904, rel=0.045) == 1.35 * corner * (bending + giving) + 1.5 * PERSON * (bending + giving)


def test_a_noggin_bends_as_a_bar_held_at_both_ends() -> None:
    """Finite elements: one end built in, the other free to move across only."""
    stiffness = bending_stiffness_n_mm2(C16, 45, DEPTH)

    assert pytest.approx(guided_bar_mm(1000, CLEAR, stiffness), rel=1e-6) == hung_ladder.noggin_bending_mm(
        1000, CLEAR, stiffness, 1
    )
    assert pytest.approx(guided_bar_mm(1000, CLEAR, stiffness) / 4) == hung_ladder.noggin_bending_mm(1000, CLEAR, stiffness, 4)


def test_i4_plywood_return() -> None:
    """I4: u of the cases s, p and l with R_d of a screw; its ways to give, by hand."""
    heights = tuple(35 + 190 * number for number in range(8))

    def used(gamma_g: float, gamma_q: float, resists: float) -> float:
        weight, person = gamma_g * WEIGHT, gamma_q * PERSON
        moment = weight * (LEVER - DEPTH / 2) + person * (PERSON_FROM_BACK - DEPTH / 2)
        return fixing_groups.eccentric_line_n(weight + person, moment, heights) / resists

    assert pytest.approx(0.61719, rel=TENTH_PERCENT) == used(GAMMA_G, GAMMA_Q, 592.77)
    assert pytest.approx(0.21732, rel=TENTH_PERCENT) == used(GAMMA_G, 0, 0.6 / 1.3 * 856.22)
    assert pytest.approx(0.12382, rel=TENTH_PERCENT) == used(1.0, 0, 0.6 * 856.22)


def test_board_drop_by_hand() -> None:
    """100 N over 270 mm, lines of 8 x 1500 N/mm, K sum y^2 = 1500 x 1 516 200: 0.01667 + 0.00321."""
    drop = hung_ladder.board_drop_mm(100, REACH, line_n_per_mm=12_000, turning_n_mm=1500 * 1_516_200)

    assert pytest.approx(100 * (2 / 12_000 + 270**2 / 2.2743e9), rel=TENTH_PERCENT) == drop


def test_racking_by_hand() -> None:
    """(9.21): 592.77 N x 1400 / 190 = 4367.8 N; half of c, half of it."""
    assert pytest.approx(4367.8, rel=TENTH_PERCENT) == hung_ladder.racking_resistance_n(592.77, 1400, 190, 1.0)
    assert pytest.approx(2183.9, rel=TENTH_PERCENT) == hung_ladder.racking_resistance_n(592.77, 1400, 190, 0.5)


def test_i5_tie() -> None:
    """I5: the tie's utilisation in case s."""
    tie = load_paths.ladder_tie_n(demand(GAMMA_G, GAMMA_Q)[0], REACH, 380)

    assert pytest.approx(0.97988, rel=TENTH_PERCENT) == tie / strength.design_resistance_n(2000, SHORT, 1.3)


LINE = st.lists(st.floats(0, 2500), min_size=2, max_size=8, unique_by=lambda z: round(z / 50)).map(tuple)


@given(st.floats(1, 1e6), LINE)
def test_the_top_noggin_is_pulled_and_the_couple_is_balanced(couple: float, levels: tuple[float, ...]) -> None:
    middle = math.fsum(levels) / len(levels)
    pull = hung_ladder.noggin_pull_n(couple, levels)
    share = pull / (max(levels) - middle)

    assert pytest.approx(couple, rel=1e-6) == math.fsum(share * (level - middle) ** 2 for level in levels)
    assert pull <= fixing_groups.turned_share_n(couple, levels) * (1 + 1e-9)


@given(st.floats(10, 2000), st.floats(50, 400), st.integers(1, 10), st.floats(1.001, 2))
def test_more_noggins_help_and_a_longer_lever_never_does(weight: float, lever: float, count: int, more: float) -> None:
    racking = hung_ladder.racking_moment_n_mm(weight, lever, depth_mm=70, person_n=0, clear_mm=200)

    assert racking <= hung_ladder.racking_moment_n_mm(weight, lever * more, depth_mm=70, person_n=0, clear_mm=200)
    assert hung_ladder.corner_force_n(weight, lever, 70, 270) <= hung_ladder.corner_force_n(weight, lever * more, 70, 270)
    if racking > 0:
        assert hung_ladder.joint_moment_n_mm(racking, count + 1) < hung_ladder.joint_moment_n_mm(racking, count)
