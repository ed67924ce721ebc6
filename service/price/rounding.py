"""The one rounding of money: half up to the minor unit, when a line is formed; and how amounts and shares are written."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal


def to_minor_units(amount: Decimal) -> int:
    """Round an exact amount in minor units half up (away from zero) to a whole one."""
    return int(amount.quantize(Decimal(1), rounding=ROUND_HALF_UP))


def share(amount_minor: int, ratio: float) -> int:
    """A ratio of an amount, rounded once."""
    return to_minor_units(Decimal(amount_minor) * Decimal(repr(ratio)))


def text(amount_minor: int) -> str:
    """Minor units as a plain decimal with two places, for a working."""
    sign = "-" if amount_minor < 0 else ""
    return f"{sign}{abs(amount_minor) // 100}.{abs(amount_minor) % 100:02d}"


def percent(ratio: float) -> str:
    """A ratio as a person writes it: `20 percent`, `1.5 percent`."""
    return f"{(Decimal(repr(ratio)) * 100).normalize():f} percent"
