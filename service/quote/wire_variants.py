"""Variants of a quote on the wire."""

from __future__ import annotations

from enum import StrEnum

import msgspec

from service.errors import Unmet
from service.units import Money


class VariantOutcome(StrEnum):
    """Whether a variant can be built."""

    DESIGNED = "designed"
    UNBUILDABLE = "unbuildable"


class VariantAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """The quote with something else, run through everything; null and empty where it cannot be built."""

    name: str
    outcome: VariantOutcome
    standing: str
    total: Money | None  # with tax
    difference: Money | None  # less the quote's own total: negative is cheaper
    complete: bool  # false: something of it has no price, so that the difference is not the whole one
    finished_width_mm: float | None
    finished_depth_mm: float | None
    finished_top_mm: float | None
    screen_diagonal_in: float | None
    on_site_days: int | None
    unmet: tuple[Unmet, ...]
