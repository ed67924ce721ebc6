"""Prices of the stock that a request offers: one currency, whole minor units, none missing where cost is the aim."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.catalogue import to_minor
from service.cutting import MOST_COST_MINOR
from service.errors import Fault, Reason
from service.units import round_half_up

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.cut_plans.requests import CutPlanRequest, Offer
    from service.units import Money

type Offers = tuple[Offer, ...]


def offers_of(request: CutPlanRequest) -> dict[str, Offers]:
    """The stock on offer by its pointer."""
    offers: dict[str, Offers] = {}
    if request.bars:
        offers["/bars/stock"] = request.bars.stock
    if request.sheets:
        offers["/sheets/stock"] = request.sheets.stock
    return offers


def currency_of(request: CutPlanRequest) -> str | None:
    """The currency of the first price; None: nothing has one."""
    prices = (one.price for offers in offers_of(request).values() for one in offers)
    return next((price.currency for price in prices if price), None)


def price_minor(price: Money | None) -> int:
    """A price in minor units; 0 where there is none. Its faults are found by `faults_of_prices`."""
    return 0 if price is None else to_minor(price.amount, price.currency)


def all_priced(offers: Offers) -> bool:
    """Tell whether everything that would have to be bought has a price."""
    return all(one.price is not None or one.offcut for one in offers)


def none_priced(offers: Offers) -> bool:
    """Tell whether nothing has a price."""
    return all(one.price is None for one in offers)


def faults_of_prices(request: CutPlanRequest) -> tuple[Fault, ...]:
    """Everything that is wrong with prices: unreadable, negative, absurd, of another currency."""
    first: tuple[str, str] | None = None
    faults: list[Fault] = []
    for stem, offers in offers_of(request).items():
        for at, one in enumerate(offers):
            if one.price is None:
                continue
            pointer = f"{stem}/{at}/price"
            first = first or (pointer, one.price.currency)
            faults += [*_amount(pointer, one.price), *_currency(pointer, one.price, first)]
    return tuple(faults)


def faults_of_missing(pointer: str, offers: Offers, remedy: str) -> tuple[Fault, ...]:
    """Stock that would have to be bought and has no price."""
    return tuple(
        Fault(
            pointer=f"{pointer}/{at}/price",
            reason=Reason.NO_PRICE,
            detail=f"{one.code!r} has no price, and the aim is least cost",
            remedy=remedy,
        )
        for at, one in enumerate(offers)
        if one.price is None and not one.offcut
    )


def _amount(pointer: str, price: Money) -> Iterator[Fault]:
    try:
        minor = to_minor(price.amount, price.currency)
    except ValueError as error:
        remedy = "Send an amount in whole minor units of a currency that is known here, such as 12.50 GBP."
        yield Fault(pointer=pointer, reason=Reason.IMPOSSIBLE_VALUE, detail=str(error), remedy=remedy)
        return
    if not 0 <= minor <= MOST_COST_MINOR:
        detail = f"a price of {price.amount} {price.currency} is out of range"
        remedy = f"Send 0 to {round_half_up(MOST_COST_MINOR)} minor units."
        yield Fault(pointer=pointer, reason=Reason.IMPOSSIBLE_VALUE, detail=detail, remedy=remedy)


def _currency(pointer: str, price: Money, first: tuple[str, str]) -> Iterator[Fault]:
    if price.currency != first[1]:
        yield Fault(
            pointer=f"{pointer}/currency",
            reason=Reason.CONTRADICTION,
            detail=f"{price.currency} stands beside {first[1]}",
            remedy="Send all prices in one currency.",
            related=(f"{first[0]}/currency",),
        )
