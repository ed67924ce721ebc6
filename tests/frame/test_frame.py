from __future__ import annotations

from tests.examples_of import frame_of
from tests.sold_examples import sold
from tests.variant_requests import in_a_corner, niche


def test_ends_with_a_return() -> None:
    """Example B is open at the right; example C in a corner has its one return at the right."""
    assert (True, True) == frame_of(sold("A")).returns_open
    assert (False, True) == frame_of(sold("B")).returns_open
    assert (False,) == frame_of(in_a_corner()).returns_open


def test_side_walls_are_counted() -> None:
    assert [0, 1] == [frame_of(request).side_walls_count for request in (sold("C"), in_a_corner())]


def test_the_niche_is_an_opening() -> None:
    found = frame_of(niche()).niche

    assert found is not None
    assert (1985, 11_285) == (found.x0_tenth_mm, found.x1_tenth_mm)
    assert frame_of(sold("A")).niche is None
