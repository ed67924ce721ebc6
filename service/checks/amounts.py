"""Quantities and clauses as checks write them."""

from __future__ import annotations

from typing import Final

from service.checks.check import Quantity
from service.rules import Source

HOUSE: Final = Source(document="house choice")
PRACTICE: Final = Source(document="common practice, no source")
N_MM_PER_N_M: Final = 1000.0


def eurocode_5(clause: str) -> Source:
    """A clause of EN 1995-1-1 with its amendments."""
    return Source(document="EN 1995-1-1", edition="2004 + A1 + A2", clause=clause)


def house(clause: str) -> Source:
    """A rule of our own, by what it says."""
    return Source(document=HOUSE.document, clause=clause)


def force(symbol: str, value_n: float) -> Quantity:
    """A force."""
    return Quantity(symbol=symbol, value=value_n, unit="n")


def moment(symbol: str, value_n_mm: float) -> Quantity:
    """A moment."""
    return Quantity(symbol=symbol, value=value_n_mm, unit="n_mm")


def length(symbol: str, value_mm: float) -> Quantity:
    """A length, a sag, a distance."""
    return Quantity(symbol=symbol, value=value_mm, unit="mm")


def stress(symbol: str, value_mpa: float) -> Quantity:
    """A stress, a strength, a modulus."""
    return Quantity(symbol=symbol, value=value_mpa, unit="mpa")


def ratio(symbol: str, value_ratio: float) -> Quantity:
    """A share, a factor, a sum of utilisations."""
    return Quantity(symbol=symbol, value=value_ratio, unit="ratio")


def count(symbol: str, value_count: float) -> Quantity:
    """A number of things."""
    return Quantity(symbol=symbol, value=value_count, unit="count")


def mass(symbol: str, value_kg: float) -> Quantity:
    """A mass."""
    return Quantity(symbol=symbol, value=value_kg, unit="kg")


def power(symbol: str, value_w: float) -> Quantity:
    """A power."""
    return Quantity(symbol=symbol, value=value_w, unit="w")


def current(symbol: str, value_a: float) -> Quantity:
    """An electric current."""
    return Quantity(symbol=symbol, value=value_a, unit="a")


def angle(symbol: str, value_deg: float) -> Quantity:
    """An angle."""
    return Quantity(symbol=symbol, value=value_deg, unit="deg")


def newton_metres(value_n_mm: float) -> str:
    """A moment for reading."""
    return f"{value_n_mm / N_MM_PER_N_M:.1f} N m"
