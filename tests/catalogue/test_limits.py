from __future__ import annotations

import pytest

from service.catalogue.limits import range_of


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("mass_kg", (0, 1_000_000_000)),
        ("amount_minor", (0, 1_000_000_000_000)),
        ("waste_ratio", (0, 1)),
        ("tilt_deg", (-1_000_000_000, 1_000_000_000)),
        ("from_count", (1, 1_000_000_000)),
        ("open_ends_count", (0, 2)),
    ],
)
def test_range_by_name(name: str, expected: tuple[int, int]) -> None:
    assert expected == range_of(name)
