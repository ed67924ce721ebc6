"""Corners, doors, tilting: against published lengths, a minimiser and a rectangle turned through the corner."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize_scalar  # type: ignore[import-untyped]  # the library has no types

from service.engineering import passing
from tests.engineering.timber import HUNDREDTH_PERCENT, RULES, TENTH_PERCENT

WIDTH = st.floats(300, 3000)


def turns(first: float, second: float, width: float, length: float) -> bool:
    """Whether a rectangle gets round: in 20 000 positions its outer corners slide along both outer walls.

    The outer walls are the axes, the inner corner stands at (first, second); it must be beyond the rectangle's inner side.
    """
    for step in range(1, 20_000):
        turn = math.pi / 2 * step / 20_000
        foot, head = (length * math.cos(turn), 0.0), (0.0, length * math.sin(turn))
        along = ((head[0] - foot[0]) / length, (head[1] - foot[1]) / length)
        inward = (along[1], -along[0])
        to_corner = (first - foot[0], second - foot[1])
        if to_corner[0] * inward[0] + to_corner[1] * inward[1] < width:
            return False
    return True


def least_by_search(first: float, second: float, width: float) -> float:
    """Least of the length over the angle, by scipy."""

    def length(turn: float) -> float:
        return (first * math.sin(turn) + second * math.cos(turn) - width) / (math.sin(turn) * math.cos(turn))

    return float(minimize_scalar(length, bounds=(1e-3, math.pi / 2 - 1e-3), method="bounded", options={"xatol": 1e-10}).fun)


@pytest.mark.parametrize(
    ("first", "second", "expected"), [pytest.param(2, 3, 7.0234824, id="G1"), pytest.param(1, 1, 2 * math.sqrt(2), id="G2")]
)
def test_ladder(first: float, second: float, expected: float) -> None:
    """G1: published 7.0234824 (J. Loy's puzzle page); G2: published 2 sqrt(2) (MathWorld, Moving Ladder Problem)."""
    assert pytest.approx(expected, rel=1e-8) == passing.corner_length_mm(first, second)
    assert pytest.approx(expected, rel=1e-8) == passing.corner_board_length_mm(first, second, 0.0)
    assert pytest.approx(expected, rel=1e-5) == least_by_search(first, second, 0.0)


@pytest.mark.parametrize(
    ("first", "second", "width", "expected"),
    [pytest.param(1000, 1000, 200, 2428.4, id="G3"), pytest.param(1050, 860, 110, 2476.1, id="G4")],
)
def test_board(first: float, second: float, width: float, expected: float) -> None:
    """G3, G4: a rectangle turned through the corner passes when a ten-thousandth shorter and jams when that much longer."""
    found = passing.corner_board_length_mm(first, second, width)

    assert pytest.approx(expected, rel=HUNDREDTH_PERCENT) == found
    assert turns(first, second, width, found * (1 - 1e-4))
    assert not turns(first, second, width, found * (1 + 1e-4))
    assert pytest.approx(least_by_search(first, second, width), rel=1e-9) == found


def test_g4_g5_thin_and_tilted() -> None:
    """G4 thin, G5 by hand: sqrt(2696.7^2 + 2300^2)."""
    thin = passing.corner_length_mm(1050, 860)

    assert pytest.approx(2696.7, rel=HUNDREDTH_PERCENT) == thin
    assert pytest.approx(3544.3, rel=HUNDREDTH_PERCENT) == passing.tilted_length_mm(thin, 2300)


def test_g6_tilting_up() -> None:
    """G6: Pythagoras; 15 clear under 2380."""
    assert pytest.approx(2397.6, abs=0.1) == passing.swing_reach_mm(2380, 290)
    assert pytest.approx(2347.2, abs=0.1) == passing.tilting_height_mm(2380 - RULES.access.tilt_clearance_mm, 290)
    assert 0.0 == passing.tilting_height_mm(200, 290)


@pytest.mark.parametrize(
    ("width", "expected"),
    [(999, 1200), (1000, 1200), (1001, 1000), (1200, 1000), (1201, 0)],
)
def test_a_wide_piece_goes_sideways_or_not_at_all(width: float, expected: float) -> None:
    """Corridors of 1000 and 1200: what is no longer than one is wide goes into it sideways, if it fits the other."""
    if width == 999:
        assert passing.corner_board_length_mm(1000, 1200, width) < 1200
    else:
        assert 0.0 == passing.corner_board_length_mm(1000, 1200, width)
    assert expected == passing.passing_length_mm(1000, 1200, width)


def test_a_slim_piece_turns() -> None:
    assert passing.corner_board_length_mm(1000, 1200, 50) == passing.passing_length_mm(1000, 1200, 50)


@pytest.mark.parametrize(
    ("section", "expected"),
    [((730, 1950), True), ((1950, 730), True), ((730.1, 100), True), ((730.1, 731), False), ((100, 1950.1), False)],
)
def test_doors(section: tuple[float, float], *, expected: bool) -> None:
    """Handling.md 3: 30 less than 760 x 1980, either way up."""
    assert expected == passing.passes_door(section, (760, 1980), RULES.access.door_margin_mm)


@given(WIDTH, WIDTH, st.floats(0, 0.95))
def test_the_least_is_found_everywhere(first: float, second: float, part: float) -> None:
    width = part * min(first, second)
    found = passing.corner_board_length_mm(first, second, width)

    assert pytest.approx(least_by_search(first, second, width), rel=1e-6) == found
    assert pytest.approx(found) == passing.corner_board_length_mm(second, first, width)


@given(WIDTH, WIDTH, st.floats(0, 0.9), st.floats(1.001, 1.05))
def test_a_wider_piece_is_shorter_and_a_wider_corridor_longer(first: float, second: float, part: float, more: float) -> None:
    width = part * min(first, second)
    found = passing.passing_length_mm(first, second, width)

    assert (
        passing.corner_board_length_mm(first, second, width * more) <= passing.corner_board_length_mm(first, second, width) + 1e-6
    )
    assert passing.passing_length_mm(first * more, second, width) >= found - 1e-6
    assert found <= passing.tilted_length_mm(found, 2300)
    assert found <= max(passing.corner_length_mm(first, second), first, second) + 1e-6


@given(WIDTH, st.floats(100, 600))
def test_what_tilts_up_just_reaches_the_ceiling(height: float, depth: float) -> None:
    reach = passing.swing_reach_mm(height, depth)

    assert pytest.approx(height) == passing.tilting_height_mm(reach, depth)
    assert reach > height
    assert pytest.approx(math.sqrt(height**2 + depth**2), rel=TENTH_PERCENT) == reach
