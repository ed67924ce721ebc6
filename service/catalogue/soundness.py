"""Whether a catalogue holds together before it is published: what its rows refer to, and whether its prices can be charged."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

import msgspec

from service.catalogue.kinds import RowKind, key_of
from service.catalogue.pricing import pack_measure

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from service.catalogue.kinds import Row
    from service.catalogue.rates import PriceStep
    from service.catalogue.snapshot import Catalogue

MOST_SHOWN_COUNT: Final = 1_000


class Finding(msgspec.Struct, frozen=True, kw_only=True):
    """One thing that a person should see to."""

    kind: str
    key: tuple[str, ...]
    column: str
    detail: str
    remedy: str
    stops: bool  # it may not be published so


class Soundness(msgspec.Struct, frozen=True, kw_only=True):
    """All findings: those that stop a publish first, the first thousand in full."""

    findings: tuple[Finding, ...]
    stops_count: int
    findings_count: int


def soundness_of(catalogue: Catalogue) -> Soundness:
    """Look a whole catalogue through."""
    found = [*_references(catalogue), *_models(catalogue), *_rates(catalogue), *_prices(catalogue), *_unpriced(catalogue)]
    found.sort(key=lambda one: not one.stops)
    stops_count = sum(one.stops for one in found)
    return Soundness(findings=tuple(found[:MOST_SHOWN_COUNT]), stops_count=stops_count, findings_count=len(found))


def _stop(kind: RowKind, row: Row, column: str, detail: str, *, remedy: str) -> Finding:
    return Finding(kind=kind, key=key_of(kind, row), column=column, detail=detail, remedy=remedy, stops=True)


def _note(kind: RowKind, row: Row, column: str, detail: str, *, remedy: str) -> Finding:
    return Finding(kind=kind, key=key_of(kind, row), column=column, detail=detail, remedy=remedy, stops=False)


def _references(catalogue: Catalogue) -> Iterator[Finding]:
    """Codes that name another row must name one that is there."""
    materials = catalogue.materials
    named: list[tuple[RowKind, Row, str, str]] = []
    named += [(RowKind.MATERIALS, one, "screw_code", one.screw_code) for one in materials.values() if one.screw_code]
    named += [(RowKind.FIXING_LOADS, one, "code", one.code) for one in catalogue.fixing_loads]
    named += [(RowKind.APPLIANCES, one, "order_codes", code) for one in catalogue.appliances.values() for code in one.order_codes]
    for kind, row, column, code in named:
        if code not in materials:
            yield _stop(kind, row, column, f"there is no material {code}", remedy="add the material, or correct the code")
    for screen in catalogue.screens.values():
        if screen.bracket and screen.bracket not in catalogue.brackets:
            detail = f"there is no bracket {screen.bracket}"
            yield _stop(RowKind.SCREENS, screen, "bracket", detail, remedy="add the bracket, or leave the cell empty")


def _models(catalogue: Catalogue) -> Iterator[Finding]:
    for fire in catalogue.appliances.values():
        if fire.open_ends_count == 1 and fire.open_end is None:
            detail = "one end is open, and it is not said which"
            yield _stop(RowKind.APPLIANCES, fire, "open_end", detail, remedy="write left, right or either")
    for bracket in catalogue.brackets.values():
        for side in ("width", "height"):
            least = getattr(bracket, f"screen_pattern_least_{side}_mm")
            greatest = getattr(bracket, f"screen_pattern_greatest_{side}_mm")
            if least > greatest:
                column = f"screen_pattern_least_{side}_mm"
                detail = f"{least:g} is more than the greatest, {greatest:g}"
                yield _stop(RowKind.BRACKETS, bracket, column, detail, remedy="change them round")


def _rates(catalogue: Catalogue) -> Iterator[Finding]:
    currency = catalogue.account.currency
    for rate in catalogue.labour_rates:
        if rate.trade not in catalogue.trades:
            detail = f"there is no trade {rate.trade}"
            yield _stop(RowKind.LABOUR_RATES, rate, "trade", detail, remedy="add the trade, or correct its name")
    for trade in catalogue.trades.values():
        if trade.currency != currency:
            detail = f"{trade.currency} where the account reckons in {currency}"
            yield _stop(RowKind.TRADES, trade, "currency", detail, remedy=f"charge the hour in {currency}")


def _prices(catalogue: Catalogue) -> Iterator[Finding]:
    sold = catalogue.materials.keys() | catalogue.appliances.keys() | catalogue.screens.keys() | catalogue.brackets.keys()
    for code, steps in catalogue.prices.items():
        first, *_ = steps
        if code not in sold:
            detail = f"nothing is called {code}"
            yield _note(RowKind.PRICES, first, "code", detail, remedy="add the thing, or take the price out")
        for step in steps:
            yield from _price(step, catalogue)
        for less, more in pairwise(step for step in steps if step.currency == catalogue.account.currency):
            if more.amount_minor > less.amount_minor and more.per == less.per:
                detail = f"dearer from {more.from_count} on than from {less.from_count} on"
                yield _note(RowKind.PRICES, more, "amount", detail, remedy="confirm the price")


def _price(step: PriceStep, catalogue: Catalogue) -> Iterator[Finding]:
    if step.currency != catalogue.account.currency:
        detail = f"{step.currency} is not taken: the account reckons in {catalogue.account.currency}"
        yield _note(RowKind.PRICES, step, "currency", detail, remedy=f"add a price in {catalogue.account.currency}")
    material = catalogue.materials.get(step.code)
    if step.per != "pack" and (material is None or pack_measure(material, step.per) is None):
        detail = f"a price for each {step.per.replace('_', ' ')} of what has no such size"
        yield _stop(RowKind.PRICES, step, "per", detail, remedy="state the sizes of the material, or the price of a pack")


def _unpriced(catalogue: Catalogue) -> Iterator[Finding]:
    """Things that a quote can only name as to be priced."""
    currency = catalogue.account.currency
    priced = {
        code for code, steps in catalogue.prices.items() if any(one.currency == currency and one.from_count == 1 for one in steps)
    }
    things: tuple[tuple[RowKind, Mapping[str, Row]], ...] = (
        (RowKind.MATERIALS, catalogue.materials),
        (RowKind.APPLIANCES, catalogue.appliances),
        (RowKind.SCREENS, catalogue.screens),
        (RowKind.BRACKETS, catalogue.brackets),
    )
    for kind, rows in things:
        for code, row in rows.items():
            if code not in priced:
                detail = f"no price of a single one in {currency}: a quote names it as a sum still to be priced"
                yield _note(kind, row, "", detail, remedy="add a price from 1 on")
