"""Pictures and angles."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import sightlines
from tests.engineering.timber import HUNDREDTH_PERCENT, RULES, TENTH_PERCENT

WIDE, HIGH = RULES.viewing.aspect_width_ratio, RULES.viewing.aspect_height_ratio
W58, H58 = sightlines.picture_width_mm(58, WIDE, HIGH), sightlines.picture_height_mm(58, WIDE, HIGH)
DIAGONAL, DISTANCE = st.floats(20, 120), st.floats(500, 8000)


@pytest.mark.parametrize(
    ("diagonal", "width", "height"), [pytest.param(58, 1284.0, 722.25, id="F1"), pytest.param(48, 1062.6, 597.73, id="F2")]
)
def test_picture(diagonal: float, width: float, height: float) -> None:
    """F1, F2: W/H = 16/9, W^2 + H^2 = D^2."""
    found = sightlines.picture_width_mm(diagonal, WIDE, HIGH), sightlines.picture_height_mm(diagonal, WIDE, HIGH)

    assert pytest.approx((width, height), abs=0.1) == found
    assert pytest.approx(diagonal * 25.4) == math.hypot(*found)


@pytest.mark.parametrize(("angle", "expected"), [(30, 1.6264), (40, 1.1973)])
def test_f3_distance_by_diagonal(angle: float, expected: float) -> None:
    """F3: published 1.6264 (a public article on viewing distance)."""
    ratio = sightlines.distance_for_angle_mm(W58, angle) / (58 * 25.4)

    assert pytest.approx(expected, rel=HUNDREDTH_PERCENT) == ratio


def test_f4_distances() -> None:
    """F4, hand."""
    assert pytest.approx(2396.0, abs=0.1) == sightlines.distance_for_angle_mm(W58, 30)
    assert pytest.approx(1763.9, abs=0.1) == sightlines.distance_for_angle_mm(W58, 40)


def test_f5_angles() -> None:
    """F5: atan back; 58 in, 2750 away, centre 1480, eyes 1105."""
    found = (
        sightlines.picture_angle_deg(W58, 2750),
        sightlines.rise_deg(1480, 1105, 2750),
        sightlines.rise_deg(1480 + H58 / 2, 1105, 2750),
    )

    assert pytest.approx((26.281, 7.7652, 14.986), abs=0.01) == found
    assert pytest.approx(1841.9, abs=0.1) == sightlines.height_for_rise_mm(1105, 2750, RULES.viewing.comfort_rise_deg)


def test_f6_diagonal() -> None:
    """F6: the inverse of F3."""
    found = sightlines.diagonal_for_angle_in(2750, 30, aspect_width_ratio=WIDE, aspect_height_ratio=HIGH)

    assert pytest.approx(66.570, rel=HUNDREDTH_PERCENT) == found
    assert pytest.approx(2750 / 1.6264 / 25.4, rel=HUNDREDTH_PERCENT) == found


def test_f7_recess() -> None:
    """F7, hand: gaps of 55 round the picture of 58 in; different gaps add up too."""
    assert pytest.approx(1394.0, abs=0.1) == sightlines.recess_clear_mm(W58, 55, 55)
    assert pytest.approx(832.25, abs=0.1) == sightlines.recess_clear_mm(H58, 55, 55)
    assert 1090 == sightlines.recess_clear_mm(1000, 50, 40)


@pytest.mark.parametrize(("lines", "expected"), [(2160, 1149.5), (1080, 2299.0)])
def test_f8_acuity(lines: int, expected: float) -> None:
    """F8: half of the lines, twice the distance."""
    assert pytest.approx(expected, rel=TENTH_PERCENT) == sightlines.acuity_distance_mm(H58, lines)


def test_beside_and_below() -> None:
    """By hand: atan(1) = 45; 40 mm behind the face under 10 degrees hides 7.05 mm, looking down none."""
    assert pytest.approx(45.0) == sightlines.off_axis_deg(-2000, 2000) == sightlines.off_axis_deg(2000, 2000)
    assert pytest.approx(26.565, rel=1e-4) == sightlines.off_axis_deg(1000, 2000)
    assert pytest.approx(7.053, rel=TENTH_PERCENT) == sightlines.hidden_mm(40, 10)
    assert 0.0 == sightlines.hidden_mm(40, -10)


@given(DIAGONAL, DISTANCE, st.floats(1.001, 2))
def test_farther_is_smaller_and_ways_back(diagonal: float, distance: float, more: float) -> None:
    width = sightlines.picture_width_mm(diagonal, WIDE, HIGH)
    angle = sightlines.picture_angle_deg(width, distance)

    assert angle >= sightlines.picture_angle_deg(width, distance * more)
    assert angle <= sightlines.picture_angle_deg(width * more, distance)
    assert pytest.approx(distance) == sightlines.distance_for_angle_mm(width, angle)
    assert pytest.approx(diagonal) == sightlines.diagonal_for_angle_in(
        distance, angle, aspect_width_ratio=WIDE, aspect_height_ratio=HIGH
    )


@given(st.floats(300, 2500), st.floats(800, 1300), DISTANCE)
def test_rise_and_height_are_ways_back(height: float, eye: float, distance: float) -> None:
    assert pytest.approx(height) == sightlines.height_for_rise_mm(eye, distance, sightlines.rise_deg(height, eye, distance))
    assert (height > eye) == (sightlines.rise_deg(height, eye, distance) > 0)
