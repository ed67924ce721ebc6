"""Plugs and screws that bridge a lining."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import embedment, host_walls
from tests.engineering.beam_model import beam
from tests.engineering.timber import HUNDREDTH_PERCENT, RULES, TENTH_PERCENT


def test_c1_stand_off() -> None:
    """C1, hand: root 4.3, f_u 600, board 15, gap 25, d 6; the verdict uses the smaller, elastic one."""
    lever = host_walls.stand_off_lever_mm(15, 25, 6)
    plastic = embedment.yield_moment_n_mm(600, 1.1 * 4.3)
    elastic = host_walls.elastic_moment_n_mm(600, 4.3)
    held = RULES.walls.held_ends_ratio

    assert 43.0 == lever
    assert pytest.approx((10_231, 5620.0), rel=TENTH_PERCENT) == (plastic, elastic)
    assert pytest.approx(237.93, rel=TENTH_PERCENT) == host_walls.stand_off_shear_n(plastic, lever, held)
    assert pytest.approx(130.70, rel=TENTH_PERCENT) == host_walls.stand_off_shear_n(elastic, lever, held)
    assert 0.5 < elastic / plastic < 0.6
    assert pytest.approx(2 * 130.70, rel=TENTH_PERCENT) == host_walls.stand_off_shear_n(elastic, lever, 2.0)


def test_c2_sag() -> None:
    """C2: a cantilever of steel under 100 N, against finite elements too."""
    second_moment = host_walls.round_second_moment_mm4(4.3)
    sag = host_walls.stand_off_sag_mm(100, 43, 4.3)

    assert pytest.approx((16.782, 0.75201), rel=TENTH_PERCENT) == (second_moment, sag)
    assert pytest.approx(beam(43, 210_000 * second_moment, points=((100, 43),), cantilever=True).sag_mm, rel=1e-6) == sag


@pytest.mark.parametrize(
    ("declared", "gamma_m", "design", "working"),
    [
        pytest.param(1.1, RULES.partial.plug_masonry_ratio, 0.44, 0.31429, id="brick"),
        pytest.param(0.4, RULES.partial.plug_aerated_ratio, 0.20, 0.14286, id="aerated"),
    ],
)
def test_c3_plug(declared: float, gamma_m: float, design: float, working: float) -> None:
    """C3, hand."""
    found = host_walls.plug_design_kn(declared, gamma_m)

    assert pytest.approx(design, rel=HUNDREDTH_PERCENT) == found
    assert pytest.approx(working, rel=HUNDREDTH_PERCENT) == host_walls.plug_working_kn(found, RULES.partial.plug_working_ratio)
    assert pytest.approx(design, rel=HUNDREDTH_PERCENT) == host_walls.design_from_working_kn(
        working, RULES.partial.plug_working_ratio
    )


@pytest.mark.parametrize(("width", "expected"), [(38, 0.90476), (42, 1.0), (60, 1.0), (33.7, 0.80238), (33.5, 0.0)])
def test_i6_narrow_upright(width: float, expected: float) -> None:
    """I6: b 38 with a screw of 7.0; down to 0.8, below that none."""
    found = host_walls.plug_timber_ratio(width, 7.0, full_diameters_ratio=6, least_ratio=0.8)

    assert pytest.approx(expected, rel=HUNDREDTH_PERCENT) == found


def test_the_least_share_still_counts() -> None:
    assert 0.5 == host_walls.plug_timber_ratio(15, 5, full_diameters_ratio=6, least_ratio=0.5)


@given(st.floats(2, 10), st.floats(0, 40), st.floats(0, 60), st.floats(1.001, 2))
def test_a_wider_gap_or_thinner_screw_never_bears_more(root: float, lining: float, gap: float, more: float) -> None:
    lever, longer = (
        host_walls.stand_off_lever_mm(lining, gap, root * 1.4),
        host_walls.stand_off_lever_mm(lining, gap * more, root * 1.4),
    )
    moment = host_walls.elastic_moment_n_mm(600, root)

    assert host_walls.stand_off_shear_n(moment, longer, 1) <= host_walls.stand_off_shear_n(moment, lever, 1)
    assert host_walls.stand_off_sag_mm(100, longer, root) >= host_walls.stand_off_sag_mm(100, lever, root)
    assert moment <= host_walls.elastic_moment_n_mm(600, root * more)
