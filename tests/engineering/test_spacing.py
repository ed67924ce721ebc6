"""Spacings and distances: Tables 8.2, 8.4 and 8.6."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import spacing


def of_table_8_2(diameter_mm: float, angle_deg: float, *, predrilled: bool) -> tuple[float, ...]:
    """a1, a2, a3t, a3c, a4t, a4c."""
    return (
        spacing.along_grain_mm(diameter_mm, angle_deg, predrilled=predrilled),
        spacing.across_grain_mm(diameter_mm, angle_deg, predrilled=predrilled),
        spacing.loaded_end_mm(diameter_mm, angle_deg, predrilled=predrilled),
        spacing.free_end_mm(diameter_mm, predrilled=predrilled),
        spacing.loaded_edge_mm(diameter_mm, angle_deg, predrilled=predrilled),
        spacing.free_edge_mm(diameter_mm, predrilled=predrilled),
    )


@pytest.mark.parametrize(
    ("diameter", "angle", "predrilled", "expected"),
    [
        pytest.param(4.5, 60, False, (33.750, 22.500, 56.250, 45.000, 30.294, 22.500), id="B19"),
        pytest.param(5, 0, True, (25, 15, 60, 35, 15, 15), id="B20 along"),
        pytest.param(5, 90, False, (25, 25, 50, 50, 50, 25), id="B20 across"),
        pytest.param(5, 0, False, (60, 25, 75, 50, 25, 25), id="thick, plain, along"),
        pytest.param(4, 0, False, (40, 20, 60, 40, 20, 20), id="thin, plain, along"),
        pytest.param(4, 90, True, (16, 16, 28, 28, 20, 12), id="thin, drilled, across"),
        pytest.param(5, 90, True, (20, 20, 35, 35, 35, 15), id="thick, drilled, across"),
        pytest.param(5, 180, True, (25, 15, 60, 35, 15, 15), id="the other way round"),
        pytest.param(5, 270, False, (25, 25, 50, 50, 50, 25), id="down as up"),
    ],
)
def test_nails_and_thin_screws(diameter: float, angle: float, *, predrilled: bool, expected: tuple[float, ...]) -> None:
    """B19, B20: Table 8.2, read in a public timber program; the rest by hand from the table."""
    assert pytest.approx(expected, abs=0.01) == of_table_8_2(diameter, angle, predrilled=predrilled)


@pytest.mark.parametrize(
    ("angle", "expected"), [(0, (50, 40, 80, 40, 30, 30)), (90, (40, 40, 80, 70, 40, 30)), (30, (48.660, 40, 80, 40, 30, 30))]
)
def test_bolts_by_hand(angle: float, expected: tuple[float, ...]) -> None:
    """Table 8.4 with 10 mm."""
    found = (
        spacing.bolt_along_grain_mm(10, angle),
        spacing.bolt_across_grain_mm(10),
        spacing.bolt_loaded_end_mm(10),
        spacing.bolt_free_end_mm(10, angle),
        spacing.bolt_loaded_edge_mm(10, angle),
        spacing.bolt_free_edge_mm(10),
    )

    assert pytest.approx(expected, abs=0.001) == found
    assert 84 == spacing.bolt_loaded_end_mm(12)


def test_pulled_screws_by_hand() -> None:
    """Table 8.6 with 5 mm; 8.7.2(2): timber of 12 d."""
    assert (35, 25, 50, 20, 60) == (
        spacing.pulled_along_grain_mm(5),
        spacing.pulled_across_grain_mm(5),
        spacing.pulled_end_mm(5),
        spacing.pulled_edge_mm(5),
        spacing.pulled_thickness_mm(5),
    )


def test_plates_and_panels() -> None:
    """8.3.1.3(1) and 8.3.1.4(1)."""
    assert (0.7, 0.85) == (spacing.STEEL_RATIO, spacing.PANEL_RATIO)


@pytest.mark.parametrize(
    ("diameter", "density", "plain", "splitting"), [(5, 310, 35.0, 70.0), (8, 350, 64.75, 129.5), (5, 500, 43.75, 87.5)]
)
def test_b21_thickness_without_predrilling(diameter: float, density: float, plain: float, splitting: float) -> None:
    """B21: (8.18) read in a public timber program, (8.19) by hand; the last by hand."""
    assert pytest.approx(plain, abs=0.01) == spacing.plain_thickness_mm(diameter, density)
    assert pytest.approx(splitting, abs=0.01) == spacing.easily_split_thickness_mm(diameter, density)


@pytest.mark.parametrize(
    ("diameter", "density", "thickness", "expected"),
    [
        (5, 310, 35, False),
        (5, 310, 34.9, True),
        (5, 500, 60, False),
        (5, 501, 60, True),
        (6, 310, 60, False),
        (6.1, 310, 200, True),
    ],
)
def test_what_must_be_predrilled(diameter: float, density: float, thickness: float, *, expected: bool) -> None:
    """8.3.1.1(2) and (8.18): denser than 500, thicker than 6, or thin timber."""
    assert expected == spacing.must_be_predrilled(diameter, density, thickness)


@given(st.floats(2, 6), st.floats(0, 360))
def test_drilling_never_asks_for_more_room_and_no_angle_for_more_than_the_worst(diameter: float, angle: float) -> None:
    drilled, plain = of_table_8_2(diameter, angle, predrilled=True), of_table_8_2(diameter, angle, predrilled=False)
    along, across = of_table_8_2(diameter, 0, predrilled=False), of_table_8_2(diameter, 90, predrilled=False)

    assert all(less <= more + 1e-9 for less, more in zip(drilled, plain, strict=True))
    assert all(found <= max(ends) + 1e-9 for found, *ends in zip(plain, along, across, strict=True))
    assert pytest.approx(plain) == of_table_8_2(diameter, 180 - angle, predrilled=False)


@given(st.floats(2, 6), st.floats(1.001, 1.4))
def test_a_thicker_screw_asks_for_no_less_room(diameter: float, thicker: float) -> None:
    for angle in (0, 45, 90):
        pairs = zip(
            of_table_8_2(diameter, angle, predrilled=False),
            of_table_8_2(diameter * thicker, angle, predrilled=False),
            strict=True,
        )
        assert all(less <= more for less, more in pairs)
