"""Holes and notches without a check."""

from __future__ import annotations

import pytest

from service.engineering import holes
from tests.engineering.timber import RULES


def test_joists_by_hand() -> None:
    """PD 6693-1 as in structure.md 3.9: 0.125 h and 0.25 h, h not above 250 mm; three diameters apart."""
    assert (25.0, 50.0) == (holes.greatest_joist_notch_mm(200), holes.greatest_joist_hole_mm(200))
    assert (31.25, 62.5) == (holes.greatest_joist_notch_mm(300), holes.greatest_joist_hole_mm(300))
    assert 75 == holes.least_hole_spacing_mm(25)
    assert 200 == holes.NOTCH_TO_HOLE_MM


@pytest.mark.parametrize(
    ("from_support", "notch", "hole"),
    [
        (279, False, False),
        (280, True, False),
        (999, True, False),
        (1000, True, True),
        (1001, False, True),
        (1600, False, True),
        (1601, False, False),
    ],
)
def test_where_a_joist_of_4_m_may_be_cut(from_support: float, *, notch: bool, hole: bool) -> None:
    """0.07 L to 0.25 L for notches, 0.25 L to 0.40 L for holes."""
    assert notch == holes.joist_notch_is_placed(from_support, 4000)
    assert hole == holes.joist_hole_is_placed(from_support, 4000)


def test_members_of_the_frame() -> None:
    """Structure.md 3.9: a quarter of the width; what is left of a section."""
    assert pytest.approx(18.75) == holes.greatest_member_hole_mm(75, RULES.members.hole_over_width_ratio)
    assert pytest.approx(0.75) == holes.left_ratio(75, 18.75)
