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
    from service.survey import SurveyRequest
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
    visit_days_count: int | None  # None: taken from the programme
    first_day: str | None  # of the work on site
    days_off: tuple[str, ...]
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


def resolve_deal(request: SurveyRequest, catalogue: Catalogue, today: str, notes: Notes) -> Deal:
    """Fill the terms from the account; contradictions go into the notes.

    Args:
        request: terms as sent, and what parking costs at the site.
        catalogue: whose account settings fill what is left out.
        today: RFC 3339 full-date taken when `terms.date` is absent.
        notes: takes assumptions and faults.
    """
    terms, account = request.terms or Terms(), catalogue.account
    parking = request.survey.site.parking_cost if request.survey.site else None
    tax = terms.tax or Tax(rounding=TaxRounding(account.tax_rounding))
    _check(terms, tax, catalogue, notes)
    _check_amounts(terms, parking, account, notes)
    supplied = _supplied(terms, notes)
    return Deal(
        date=notes.choose(f"{TERMS}/date", terms.date, today, "prices, tax and validity are those of this day"),
        currency=account.currency,
        scope=notes.choose(f"{TERMS}/scope", terms.scope, Scope.SUPPLY_AND_FIT, "a kit or supply only costs less: no labour"),
        appliance_supplied_by=supplied[0],
        screen_supplied_by=supplied[1],
        bracket_supplied_by=supplied[2],
        crew_count=notes.choose(f"{TERMS}/crew_count", terms.crew_count, account.crew_count, "people on site"),
        visit_days_count=terms.visit_days_count,
        first_day=terms.first_day,
        days_off=tuple(sorted(terms.days_off or ())),
        travel_per_day_minor=_minor(terms.travel_per_day, account, account.travel_per_day_minor),
        overhead_ratio=_or_house(terms.overhead_ratio, account.overhead_ratio),
        by_margin=terms.mark_up_ratio is None,
        profit_ratio=_or_house(terms.margin_ratio, account.margin_ratio) if terms.mark_up_ratio is None else terms.mark_up_ratio,
        discount_ratio=terms.discount_ratio or 0.0,
        tax_kind=tax.kind,
        tax_rounding=tax.rounding,
        tax_ratio={TaxKind.STANDARD: account.tax_standard_ratio, TaxKind.REDUCED: account.tax_reduced_ratio}.get(tax.kind, 0.0),
        round_up_to_minor=_minor(terms.round_up_to, account, 0),
        packs_charged=terms.packs_charged or PacksCharged(account.packs_charged),
        provisional_sums=_sums(terms, account),
        validity_days=terms.validity_days or account.validity_days,
        deposit_ratio=_or_house(terms.deposit_ratio, account.deposit_ratio),
        parking_minor=_minor(parking, account, 0),
        locale=terms.locale or "en-GB",
        reference=terms.reference or "",
        seller=terms.seller,
        customer=terms.customer,
    )


def _supplied(terms: Terms, notes: Notes) -> tuple[SuppliedBy, SuppliedBy, SuppliedBy]:
    """Who brings the fire, the screen and its bracket."""
    shop, customer = SuppliedBy.SHOP, SuppliedBy.CUSTOMER
    return (
        notes.choose(f"{TERMS}/appliance_supplied_by", terms.appliance_supplied_by, shop, "the fire is part of the price"),
        notes.choose(f"{TERMS}/screen_supplied_by", terms.screen_supplied_by, customer, "the screen is not part of the price"),
        notes.choose(f"{TERMS}/bracket_supplied_by", terms.bracket_supplied_by, shop, "the screen bracket is part of the price"),
    )


def _or_house(given_ratio: float | None, house_ratio: float) -> float:
    return house_ratio if given_ratio is None else given_ratio


def _sums(terms: Terms, account: Account) -> tuple[Sum, ...]:
    return tuple(Sum(name=one.name, amount_minor=_minor(one.amount, account, 0)) for one in terms.provisional_sums or ())


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
            detail="both a margin on price and a mark-up on cost are given",
            remedy="send one of them: 25 percent mark-up is 20 percent margin",
        )
    _check_days(terms, notes)
    named = (
        ("price_book", terms.price_book, catalogue.price_book, "there is no price book"),
        ("catalogue_revision", terms.catalogue_revision, catalogue.revision, "there is held no revision"),
    )
    for field, sent, held, lacks in named:
        if sent is not None and sent != held:
            remedy = f"leave it out or send {held!r}"
            notes.refuse(Reason.UNKNOWN_MODEL, f"{TERMS}/{field}", detail=f"{lacks} {sent!r}", remedy=remedy)
    if tax.kind in {TaxKind.REDUCED, TaxKind.ZERO, TaxKind.REVERSE_CHARGE} and not tax.evidence:
        notes.contradict(
            (f"{TERMS}/tax/kind", f"{TERMS}/tax/evidence"),
            detail=f"tax {tax.kind.value} needs its evidence",
            remedy="name the evidence, or send kind standard",
        )


def _check_days(terms: Terms, notes: Notes) -> None:
    """Days that no calendar has, and a first day on site before the day of the quote."""
    off = [(f"{TERMS}/days_off/{index}", day) for index, day in enumerate(terms.days_off or ())]
    for pointer, day in ((f"{TERMS}/date", terms.date), (f"{TERMS}/first_day", terms.first_day), *off):
        if day is not None and not is_day(day):
            detail = f"{day} is no day of the calendar"
            notes.refuse(Reason.IMPOSSIBLE_VALUE, pointer, detail=detail, remedy="send a day that exists")
    if terms.date is not None and terms.first_day is not None and terms.first_day < terms.date:
        notes.contradict(
            (f"{TERMS}/first_day", f"{TERMS}/date"),
            detail=f"work would begin on {terms.first_day}, before the quote of {terms.date}",
            remedy="send a first day on or after the date, or leave it out",
        )


def _check_amounts(terms: Terms, parking: Money | None, account: Account, notes: Notes) -> None:
    named = [
        (f"{TERMS}/travel_per_day", terms.travel_per_day),
        (f"{TERMS}/round_up_to", terms.round_up_to),
        ("/survey/site/parking_cost", parking),
    ]
    sums = enumerate(terms.provisional_sums or ())
    named += [(f"{TERMS}/provisional_sums/{index}/amount", item.amount) for index, item in sums]
    for pointer, money in named:
        if money is not None:
            _check_money(pointer, money, account.currency, notes)


def _check_money(pointer: str, money: Money, currency: str, notes: Notes) -> None:
    if money.currency != currency:
        detail = f"{money.currency} where the price book is in {currency}"
        notes.contradict((f"{pointer}/currency",), detail=detail, remedy=f"send an amount in {currency}")
        return
    try:
        minor = to_minor(money.amount, money.currency)
    except ValueError as error:
        remedy = "send at most the decimals of the currency"
        notes.refuse(Reason.IMPOSSIBLE_VALUE, f"{pointer}/amount", detail=str(error), remedy=remedy)
        return
    if minor < 0:
        remedy = "send 0 or more; a discount has its own field"
        notes.refuse(Reason.IMPOSSIBLE_VALUE, f"{pointer}/amount", detail=f"{money.amount} is negative", remedy=remedy)
