"""What the catalogue's addresses answer: its own types, with prices as money."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING, Annotated

import msgspec
from msgspec import Meta

from service.catalogue import MINOR_PER_MAJOR, Appliance, Bracket, Material, PriceStep, Screen
from service.units import Currency, Money

if TYPE_CHECKING:
    from service.catalogue import Catalogue

type NextCursor = Annotated[str, Meta(description="`cursor` of the next page; null on the last.")] | None
type Revision = Annotated[str, Meta(description="The catalogue revision that this was read from.")]


class Price(msgspec.Struct, frozen=True, kw_only=True):
    """Price without tax from a number of packs on: of one pack, or of a metre or square metre of what is in it."""

    from_count: int
    price: Money
    per: str
    supplier: str
    lead_days: int
    valid_from: str


class PricedMaterial(Material, frozen=True, kw_only=True):
    """A material with its prices; no prices: it cannot be sold at present."""

    prices: tuple[Price, ...]


class MaterialPage(msgspec.Struct, frozen=True, kw_only=True):
    """Materials by code."""

    items: tuple[PricedMaterial, ...]
    next_cursor: NextCursor
    catalogue_revision: Revision


class AppliancePage(msgspec.Struct, frozen=True, kw_only=True):
    """Fires by model."""

    items: tuple[Appliance, ...]
    next_cursor: NextCursor
    catalogue_revision: Revision


class ScreenPage(msgspec.Struct, frozen=True, kw_only=True):
    """Screens by model."""

    items: tuple[Screen, ...]
    next_cursor: NextCursor
    catalogue_revision: Revision


class BracketPage(msgspec.Struct, frozen=True, kw_only=True):
    """Screen brackets by model."""

    items: tuple[Bracket, ...]
    next_cursor: NextCursor
    catalogue_revision: Revision


def priced(material: Material, catalogue: Catalogue) -> PricedMaterial:
    """A material with its price steps."""
    steps = catalogue.prices.get(material.code, ())
    return PricedMaterial(**msgspec.structs.asdict(material), prices=tuple(map(_price, steps)))


def money(amount_minor: int, currency: Currency) -> Money:
    """Minor units as money on the wire, with as many decimals as the currency has."""
    scale = MINOR_PER_MAJOR[currency]
    amount = (Decimal(amount_minor) / scale).quantize(Decimal(1) / scale)
    return Money(amount=str(amount), currency=currency)


def _price(step: PriceStep) -> Price:
    return Price(
        from_count=step.from_count,
        price=money(step.amount_minor, step.currency),
        per=step.per,
        supplier=step.supplier,
        lead_days=step.lead_days,
        valid_from=step.valid_from,
    )
