"""What a cell of the catalogue may hold, by the name of its field: shared by the reading of files and the tables' checks."""

from __future__ import annotations

from typing import Final

CODE_PATTERN: Final = "^[A-Za-z0-9_-]{1,32}$"  # `units.Code`, as PostgreSQL writes it
CURRENCY_PATTERN: Final = "^[A-Z]{3}$"
TEXT_LENGTH_COUNT: Final = 400  # `units.LongText`
GREATEST_NUMBER: Final = 1_000_000_000  # keeps NaN (which sorts above it) and infinity out
GREATEST_MINOR: Final = 1_000_000_000_000
CODES: Final = frozenset({"account", "code", "model"})
AT_LEAST_ONE: Final = frozenset({"crew_count", "from_count", "pack_count"})
MAY_BE_NEGATIVE: Final = frozenset({"hole_centre_offset_mm", "tilt_deg"})
CLOSED_SETS: Final = {
    "open_end": ("left", "right", "either"),
    "packs_charged": ("whole", "pro_rata"),
    "per": ("pack", "metre", "square_metre"),
    "tax_rounding": ("per_line", "per_invoice"),
}
GREATEST_OF: Final = {"open_ends_count": 2}  # narrower than its unit's


def range_of(name: str) -> tuple[int, int]:
    """Least and greatest that a number may be, by its name; NaN and infinity lie in none."""
    greatest = {"ratio": 1, "minor": GREATEST_MINOR}.get(name.rpartition("_")[2], GREATEST_NUMBER)
    least = -greatest if name in MAY_BE_NEGATIVE else int(name in AT_LEAST_ONE)
    return least, GREATEST_OF.get(name, greatest)
