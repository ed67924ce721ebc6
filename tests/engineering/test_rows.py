"""Several fasteners together."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering import rows
from tests.engineering.timber import HUNDREDTH_PERCENT, TENTH_PERCENT


@pytest.mark.parametrize(
    ("count", "spacing", "expected", "published"), [(3, 7, 2.1577, 2.16), (4, 10, 3.2490, 3.25), (6, 10, 4.5859, 4.59)]
)
def test_b9_rows(count: int, spacing: float, expected: float, published: float) -> None:
    """B9: published 2.16, 3.25, 4.59 [V]."""
    found = rows.row_count(count, rows.row_exponent_ratio(spacing, predrilled=False))

    assert pytest.approx(expected, rel=HUNDREDTH_PERCENT) == found
    assert published == round(found, 2)


@pytest.mark.parametrize(
    ("spacing", "predrilled", "expected"),
    [
        (4, True, 0.5),
        (5.5, True, 0.6),
        (7, True, 0.7),
        (8.5, False, 0.775),
        (10, False, 0.85),
        (12, False, 0.925),
        (14, True, 1.0),
        (20, False, 1.0),
    ],
)
def test_exponents(spacing: float, *, predrilled: bool, expected: float) -> None:
    """Table 8.1 and straight lines between its rows."""
    assert pytest.approx(expected) == rows.row_exponent_ratio(spacing, predrilled=predrilled)


@pytest.mark.parametrize(("spacing", "predrilled"), [(3.9, True), (6.9, False), (4, False)])
def test_too_near_has_no_exponent(spacing: float, *, predrilled: bool) -> None:
    with pytest.raises(ValueError, match=f"^a spacing of {spacing} diameters is less than Table 8.1 allows"):
        rows.row_exponent_ratio(spacing, predrilled=predrilled)


def test_b3_dowels() -> None:
    """B3: published 2.11 [N1]: three dowels of 12 mm at 60."""
    assert pytest.approx(2.1167, rel=TENTH_PERCENT) == rows.bolt_row_count(3, 60, 12)
    assert 3 == rows.bolt_row_count(3, 1000, 12)


def test_b14_end_grain() -> None:
    """B14, hand: a third of 745.92 N."""
    assert pytest.approx(248.64, rel=TENTH_PERCENT) == rows.end_grain_n(745.92)


def test_b18_pulled_and_sheared() -> None:
    """B18, hand: 400 of 900 axially, 350 of 700 across."""
    assert pytest.approx(0.44753, rel=HUNDREDTH_PERCENT) == rows.pulled_and_sheared_ratio(400 / 900, 350 / 700)


def test_masonry_adds_up() -> None:
    assert pytest.approx(0.75) == rows.linear_interaction_ratio(0.5, 0.25)


@given(st.integers(1, 20), st.floats(7, 20), st.floats(1.001, 2))
def test_wider_spacing_never_hurts(count: int, spacing: float, wider: float) -> None:
    near, far = (rows.row_count(count, rows.row_exponent_ratio(s, predrilled=False)) for s in (spacing, spacing * wider))

    assert near <= far * (1 + 1e-12)
    assert far <= count * (1 + 1e-12)
    assert rows.bolt_row_count(count, spacing * 5, 5) <= rows.bolt_row_count(count, spacing * wider * 5, 5) <= count


@given(st.floats(0, 1.5), st.floats(0, 1.5))
def test_the_plain_sum_is_the_safer_one_while_neither_fails_alone(axial: float, across: float) -> None:
    if max(axial, across) <= 1:
        assert rows.pulled_and_sheared_ratio(axial, across) <= rows.linear_interaction_ratio(axial, across)
