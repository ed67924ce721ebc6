"""Which price of the book holds: for a code, on a day, for a number of packs."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from service.catalogue.rates import PriceStep
    from service.catalogue.snapshot import Catalogue


def price_step(catalogue: Catalogue, code: str, day: str, packs_count: int = 1) -> PriceStep | None:
    """The price step that holds for a number of packs on a day, or None where the book has none.

    Args:
        catalogue: whose book is read.
        code: of a material or model.
        day: RFC 3339 full-date.
        packs_count: how many are bought together; less than one reads the price of one.
    """
    steps = [step for step in catalogue.prices.get(code, ()) if step.valid_from <= day and step.from_count <= max(packs_count, 1)]
    return max(steps, key=lambda step: (step.from_count, step.valid_from), default=None)
