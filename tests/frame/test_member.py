"""Boxes of members and how far they share space."""

from __future__ import annotations

import pytest

from service.frame.member import Box, overlap_tenth_mm


def box(x_tenth_mm: tuple[int, int], y_tenth_mm: tuple[int, int], z_tenth_mm: tuple[int, int]) -> Box:
    """A box from its three pairs."""
    (x0, x1), (y0, y1), (z0, z1) = x_tenth_mm, y_tenth_mm, z_tenth_mm
    return Box(x0_tenth_mm=x0, x1_tenth_mm=x1, y0_tenth_mm=y0, y1_tenth_mm=y1, z0_tenth_mm=z0, z1_tenth_mm=z1)


RAIL = box((0, 10_000), (0, 450), (0, 730))


@pytest.mark.parametrize(
    ("other", "shared"),
    [
        (RAIL, (10_000, 450, 730)),
        (box((0, 450), (0, 450), (730, 5_830)), (450, 450, 0)),  # an upright stands on it
        (box((0, 450), (0, 450), (729, 5_829)), (450, 450, 1)),  # a tenth of a millimetre inside it
        (box((10_050, 11_000), (0, 450), (0, 730)), (-50, 450, 730)),  # 5 mm beyond its end
    ],
)
def test_overlap(other: Box, shared: tuple[int, int, int]) -> None:
    assert shared == overlap_tenth_mm(RAIL, other)
    assert shared == overlap_tenth_mm(other, RAIL)


@pytest.mark.parametrize("shift", [(1_000, 0, 0), (0, 1_000, 0), (0, 0, 1_000), (500, 700, 900)])
def test_overlap_does_not_depend_on_where_both_stand(shift: tuple[int, int, int]) -> None:
    dx, dy, dz = shift
    first = box((dx, 100 + dx), (dy, 100 + dy), (dz, 100 + dz))
    second = box((90 + dx, 190 + dx), (80 + dy, 180 + dy), (70 + dz, 170 + dz))

    assert (10, 20, 30) == overlap_tenth_mm(first, second)
