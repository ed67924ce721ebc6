"""Minor units as Money on the wire."""

from __future__ import annotations

from service.catalogue.rows import MINOR_PER_MAJOR
from service.units import Money


def money(amount_minor: int, currency: str) -> Money:
    """An amount in minor units as a decimal string of its currency."""
    scale = MINOR_PER_MAJOR[currency]
    places = len(str(scale)) - 1
    sign = "-" if amount_minor < 0 else ""
    major, minor = divmod(abs(amount_minor), scale)
    return Money(amount=f"{sign}{major}.{minor:0{places}d}" if places else f"{sign}{major}", currency=currency)
