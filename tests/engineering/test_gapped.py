"""A screw over a gap: without a gap the modes of EN 1995-1-1; with one, statics by another way."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.engineering.gapped import gapped_modes_n
from service.engineering.lateral import single_shear_modes_n

# worked-checks.md, B10: root 2.9 (d_ef 3.19), C16 both, t 47/43
FH, D, MY = 17.949, 3.19, 3673.9
FACTORS = (1.0, 1.0, 1.0, 1.05, 1.05, 1.15)


def modes(gap_mm: float, head_mm: float = 47, point_mm: float = 43) -> tuple[float, ...]:
    return gapped_modes_n(
        head_n_per_mm=FH * D,
        point_n_per_mm=FH * D,
        head_length_mm=head_mm,
        point_length_mm=point_mm,
        gap_mm=gap_mm,
        yield_n_mm=MY,
    )


def test_without_a_gap_as_the_standard() -> None:
    """worked-checks.md, B10: (8.6) a to f 2691.1, 2462.1, 1069.0, 1022.2, 949.21, 745.92; limit analysis (LP) 648.63 for f."""
    found = [mode * factor for mode, factor in zip(modes(0), FACTORS, strict=True)]

    assert pytest.approx([2691.1, 2462.1, 1069.0, 1022.2, 949.21, 745.92], rel=1e-3) == found
    assert pytest.approx(648.63, rel=1e-3) == modes(0)[5]


def test_a_long_gap_is_a_bar_held_at_both_ends() -> None:
    """Statics: with a gap much longer than what the timber takes to hold it, V goes to 2 M_y / g."""
    assert pytest.approx(2 * MY / 2000, rel=0.02) == modes(2000)[5]


@given(gap_mm=st.floats(0, 60), more_mm=st.floats(1, 30), head_mm=st.floats(20, 100), point_mm=st.floats(20, 60))
def test_a_wider_gap_never_bears_more(gap_mm: float, more_mm: float, head_mm: float, point_mm: float) -> None:
    near, far = modes(gap_mm, head_mm, point_mm), modes(gap_mm + more_mm, head_mm, point_mm)

    assert all(b <= a for a, b in zip(near, far, strict=True))


@given(head_mm=st.floats(20, 100), point_mm=st.floats(20, 100))
def test_of_unlike_timber_as_the_standard(head_mm: float, point_mm: float) -> None:
    """(8.6) for densities of C16 and C24."""
    plain = single_shear_modes_n(
        head_embedment_mpa=FH, point_embedment_mpa=FH * 350 / 310, head_length_mm=head_mm, point_length_mm=point_mm,
        diameter_mm=D, yield_n_mm=MY,
    )  # fmt: skip
    found = gapped_modes_n(
        head_n_per_mm=FH * D, point_n_per_mm=FH * 350 / 310 * D, head_length_mm=head_mm, point_length_mm=point_mm,
        gap_mm=0, yield_n_mm=MY,
    )  # fmt: skip

    assert pytest.approx(list(plain)) == [mode * factor for mode, factor in zip(found, FACTORS, strict=True)]
