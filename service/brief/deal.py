"""The deal: terms of sale with the account's settings filled in. Money in minor units of the account's currency."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

import msgspec

from service.catalogue import to_minor
from service.errors import Reason
from service.survey.terms import (
    PacksCharged,
    Party,
    Scope,
    SuppliedBy,
    Tax,
    TaxKind,
    TaxRounding,
    Terms,
)

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.catalogue import Account, Catalogue
    from service.units import Money

TERMS = "/terms"


class Sum(msgspec.Struct, frozen=True, kw_only=True):
    """A provisional sum."""

    name: str
    amount_minor: int


class Deal(msgspec.Struct, frozen=True, kw_only=True):
    """Terms of one quote, nothing left open."""

    date: str
    currency: str
    scope: Scope
    appliance_supplied_by: SuppliedBy
    screen_supplied_by: SuppliedBy
    bracket_supplied_by: SuppliedBy
    crew_count: int
    visit_days_count: int | None  # None: taken from the hours
    travel_per_day_minor: int
    overhead_ratio: float
    by_margin: bool  # True: profit_ratio is a margin on price; False: a mark-up on cost
    profit_ratio: float
    discount_ratio: float
    tax_kind: TaxKind
    tax_rounding: TaxRounding
    tax_ratio: float
    round_up_to_minor: int  # 0: no rounding
    packs_charged: PacksCharged
    provisional_sums: tuple[Sum, ...]
    validity_days: int
    deposit_ratio: float
    parking_minor: int
    locale: str
    reference: str
    seller: Party | None
    customer: Party | None


def resolve_deal(terms: Terms, catalogue: Catalogue, today: str, notes: Notes) -> Deal:
    """Fill the terms from the account; contradictions go into the notes.

    Args:
        terms: as sent.
        catalogue: whose account settings fill what is left out.
        today: RFC 3339 full-date taken when `terms.date` is absent.
        notes: takes assumptions and faults.
    """
    account = catalogue.account
    tax = terms.tax or Tax(rounding=TaxRounding(account.tax_rounding))
    _check(terms, tax, catalogue, notes)
    by_margin = terms.mark_up_ratio is None
    house = account.margin_ratio
    return Deal(
        date=notes.choose(f"{TERMS}/date", terms.date, today, "prices, tax and validity are those of this day"),
        currency=account.currency,
        scope=notes.choose(f"{TERMS}/scope", terms.scope, Scope.SUPPLY_AND_FIT, "a kit or supply only costs less: no labour"),
        appliance_supplied_by=notes.choose(
            f"{TERMS}/appliance_supplied_by", terms.appliance_supplied_by, SuppliedBy.SHOP, "the fire is part of the price"
        ),
        screen_supplied_by=notes.choose(
            f"{TERMS}/screen_supplied_by", terms.screen_supplied_by, SuppliedBy.CUSTOMER, "the screen is not part of the price"
        ),
        bracket_supplied_by=notes.choose(
            f"{TERMS}/bracket_supplied_by", terms.bracket_supplied_by, SuppliedBy.SHOP, "the screen bracket is part of the price"
        ),
        crew_count=notes.choose(f"{TERMS}/crew_count", terms.crew_count, account.crew_count, "people on site"),
        visit_days_count=terms.visit_days_count,
        travel_per_day_minor=_minor(terms.travel_per_day, account, account.travel_per_day_minor),
        overhead_ratio=account.overhead_ratio if terms.overhead_ratio is None else terms.overhead_ratio,
        by_margin=by_margin,
        profit_ratio=(house if terms.margin_ratio is None else terms.margin_ratio) if by_margin else (terms.mark_up_ratio or 0.0),
        discount_ratio=terms.discount_ratio or 0.0,
        tax_kind=tax.kind,
        tax_rounding=tax.rounding,
        tax_ratio={TaxKind.STANDARD: account.tax_standard_ratio, TaxKind.REDUCED: account.tax_reduced_ratio}.get(tax.kind, 0.0),
        round_up_to_minor=_minor(terms.round_up_to, account, 0),
        packs_charged=terms.packs_charged or PacksCharged(account.packs_charged),
        provisional_sums=tuple(
            Sum(name=item.name, amount_minor=_minor(item.amount, account, 0)) for item in terms.provisional_sums or ()
        ),
        validity_days=terms.validity_days or account.validity_days,
        deposit_ratio=account.deposit_ratio if terms.deposit_ratio is None else terms.deposit_ratio,
        parking_minor=0,
        locale=terms.locale or "en-GB",
        reference=terms.reference or "",
        seller=terms.seller,
        customer=terms.customer,
    )


def is_day(text: str) -> bool:
    """Whether a full-date names a day that exists."""
    try:
        datetime.date.fromisoformat(text)
    except ValueError:
        return False
    return True


def _minor(money: Money | None, account: Account, otherwise_minor: int) -> int:
    if money is None or money.currency != account.currency:
        return otherwise_minor
    try:
        return to_minor(money.amount, money.currency)
    except ValueError:
        return otherwise_minor


def _check(terms: Terms, tax: Tax, catalogue: Catalogue, notes: Notes) -> None:
    if terms.margin_ratio is not None and terms.mark_up_ratio is not None:
        notes.contradict(
            (f"{TERMS}/margin_ratio", f"{TERMS}/mark_up_ratio"),
            "both a margin on price and a mark-up on cost are given",
            "send one of them: 25 percent mark-up is 20 percent margin",
        )
    if terms.date is not None and not is_day(terms.date):
        notes.refuse(Reason.IMPOSSIBLE_VALUE, f"{TERMS}/date", f"{terms.date} is no day of the calendar", "send a day that exists")
    if terms.price_book is not None and terms.price_book != catalogue.price_book:
        notes.refuse(Reason.UNKNOWN_MODEL, f"{TERMS}/price_book", f"there is no price book {terms.price_book!r}", f"leave it out or send {catalogue.price_book!r}")
    if terms.catalogue_revision is not None and terms.catalogue_revision != catalogue.revision:
        notes.refuse(
            Reason.UNKNOWN_MODEL,
            f"{TERMS}/catalogue_revision",
            f"revision {terms.catalogue_revision!r} is not held",
            f"leave it out or send {catalogue.revision!r}",
        )
    if tax.kind in {TaxKind.REDUCED, TaxKind.ZERO, TaxKind.REVERSE_CHARGE} and not tax.evidence:
        notes.contradict(
            (f"{TERMS}/tax/kind", f"{TERMS}/tax/evidence"), f"tax {tax.kind.value} needs its evidence", "name the evidence, or send kind standard"
        )
    for pointer, money in _amounts(terms):
        _check_money(pointer, money, catalogue.account.currency, notes)


def _amounts(terms: Terms) -> list[tuple[str, Money]]:
    named = [(f"{TERMS}/travel_per_day", terms.travel_per_day), (f"{TERMS}/round_up_to", terms.round_up_to)]
    named += [(f"{TERMS}/provisional_sums/{index}/amount", item.amount) for index, item in enumerate(terms.provisional_sums or ())]
    return [(pointer, money) for pointer, money in named if money is not None]


def _check_money(pointer: str, money: Money, currency: str, notes: Notes) -> None:
    if money.currency != currency:
        notes.contradict((f"{pointer}/currency",), f"{money.currency} where the price book is in {currency}", f"send an amount in {currency}")
        return
    try:
        minor = to_minor(money.amount, money.currency)
    except ValueError as error:
        notes.refuse(Reason.IMPOSSIBLE_VALUE, f"{pointer}/amount", str(error), "send at most the decimals of the currency")
        return
    if minor < 0:
        notes.refuse(Reason.IMPOSSIBLE_VALUE, f"{pointer}/amount", f"{money.amount} is negative", "send 0 or more; a discount has its own field")
