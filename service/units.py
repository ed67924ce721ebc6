"""Units: suffixes that numbers carry, exact conversions, and the bounded number types of the wire.

Inside the core a length is an integer count of tenths of a millimetre (`_tenth_mm`), money an integer count of minor
units (`_minor`). On the wire a length is in millimetres and money is `{"amount": "1234.50", "currency": "GBP"}`.
"""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from functools import lru_cache
from typing import Annotated, Final

import msgspec
from msgspec import Meta

UNIT_SUFFIXES: Final = (
    "_mm", "_mm2", "_mm4", "_m", "_m2", "_m3", "_ml", "_kg", "_kg_m2", "_kg_m3", "_w", "_a", "_n", "_n_mm", "_kn", "_mpa",
    "_k", "_deg", "_deg_c", "_minutes", "_hours", "_days", "_ratio", "_count", "_in", "_minor", "_year",
    "_seconds", "_bytes", "_mib",
    # inside only: formulas and rules
    "_v", "_mm3", "_n_mm2", "_n_per_mm", "_n_per_m", "_kn_m2", "_kn_m3", "_m3_per_s",
    "_w_per_k", "_m2_k_per_w", "_w_per_m_k", "_w_per_m2_k", "_pa",
)  # fmt: skip
STANDARD_GRAVITY_M_S2: Final = 9.80665  # by definition: ISO 80000-3:2019, item 3-11.2
MM_PER_INCH: Final = 25.4  # by definition: international inch
TENTHS_PER_MM: Final = 10

# A pattern of text that a person types: no control characters, so that it can be printed, logged and stored.
# `(?!\n)$` keeps Python's `$` from matching before a last newline; the exporter writes plain `$`.
PRINTABLE_PATTERN: Final = r"^[^\x00-\x1f\x7f]*(?!\n)$"
DAY_PATTERN: Final = r"^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])(?!\n)$"
type ShortText = Annotated[str, Meta(min_length=1, max_length=80, pattern=PRINTABLE_PATTERN)]
type LongText = Annotated[str, Meta(max_length=400, pattern=PRINTABLE_PATTERN)]
type Code = Annotated[
    str, Meta(min_length=1, max_length=32, pattern=r"^[A-Za-z0-9_-]+(?!\n)$", description="Code of a thing in the catalogue.")
]
type IsoDate = Annotated[str, Meta(pattern=DAY_PATTERN, description="A day, RFC 3339 full-date.")]
type Currency = Annotated[str, Meta(pattern=r"^[A-Z]{3}(?!\n)$", description="ISO 4217 code.")]
type Pointer = Annotated[
    str, Meta(max_length=200, pattern=r"^(/[^\x00-\x1f\x7f]*)?(?!\n)$", description="RFC 6901 JSON Pointer into the body.")
]
type Ratio = Annotated[float, Meta(ge=0, le=1, description="A share of one: 0.2 is 20 percent.")]


class Money(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """An amount of money on the wire: a decimal string and its currency, never a float."""

    amount: Annotated[
        str,
        Meta(pattern=r"^-?[0-9]{1,12}(\.[0-9]{1,4})?(?!\n)$", description="Decimal string in major units, such as `1234.50`."),
    ]
    currency: Currency


@lru_cache(maxsize=4_096)
def tenths(length_mm: float) -> int:
    """Millimetres to whole tenths of a millimetre, halves up. The one rounding of a length that comes in."""
    return int((Decimal(repr(float(length_mm))) * TENTHS_PER_MM).to_integral_value(ROUND_HALF_UP))


def millimetres(length_tenth_mm: int) -> float:
    """Tenths of a millimetre to millimetres, as they are written on the wire (an exact decimal of one place)."""
    return length_tenth_mm / TENTHS_PER_MM


def round_half_up(value: Decimal | float, places_count: int = 0) -> Decimal:
    """Round half away from zero to a number of decimal places; floats are taken at their shortest decimal form."""
    exact = value if isinstance(value, Decimal) else Decimal(repr(value))
    return exact.quantize(Decimal(1).scaleb(-places_count), rounding=ROUND_HALF_UP)


def whole_mm_down(length_tenth_mm: int) -> int:
    """Tenths to whole millimetres, rounded down: for a piece fitted between two others."""
    return length_tenth_mm // TENTHS_PER_MM


def whole_mm_nearest(length_tenth_mm: int) -> int:
    """Tenths to the nearest whole millimetre, halves up."""
    return (length_tenth_mm + TENTHS_PER_MM // 2) // TENTHS_PER_MM


def text_mm(length_tenth_mm: int) -> str:
    """A length as a person writes it: `390` or `195.5`."""
    whole, tenth = divmod(abs(length_tenth_mm), TENTHS_PER_MM)
    sign = "-" if length_tenth_mm < 0 else ""
    return f"{sign}{whole}.{tenth}" if tenth else f"{sign}{whole}"
