"""Which price of the book holds: for a code, on a day, for a number of packs, in the currency of the account."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

import msgspec

from service.units import round_half_up

if TYPE_CHECKING:
    from service.catalogue.materials import Material
    from service.catalogue.rates import PriceStep
    from service.catalogue.snapshot import Catalogue

MM_PER_M = 1000


def price_step(catalogue: Catalogue, code: str, day: str, packs_count: int = 1) -> PriceStep | None:
    """The price step that holds for a number of packs on a day, as the price of one pack; None where the book has none.

    Args:
        catalogue: whose book is read.
        code: of a material or model.
        day: RFC 3339 full-date.
        packs_count: how many are bought together; less than one reads the price of one.
    """
    currency = catalogue.account.currency
    steps = [
        step
        for step in catalogue.prices.get(code, ())
        if step.valid_from <= day and step.from_count <= max(packs_count, 1) and step.currency == currency
    ]
    found = max(steps, key=lambda step: (step.from_count, step.valid_from), default=None)
    return None if found is None else _of_a_pack(found, catalogue.materials.get(code))


def _of_a_pack(step: PriceStep, material: Material | None) -> PriceStep | None:
    """A price by measure becomes that of a pack, rounded half up once; None where the measure is not known."""
    if step.per == "pack":
        return step
    measure = None if material is None else pack_measure(material, step.per)
    if measure is None:
        return None
    return msgspec.structs.replace(step, amount_minor=int(round_half_up(measure * step.amount_minor)), per="pack")


def pack_measure(material: Material, per: str) -> Decimal | None:
    """How many metres or square metres one pack holds; None where its size is not declared."""
    sides = (material.length_mm,) if per == "metre" else (material.length_mm, material.width_mm)
    measure = Decimal(material.pack_count)
    for side_mm in sides:
        if not side_mm:
            return None
        measure *= Decimal(repr(side_mm)) / MM_PER_M
    return measure
