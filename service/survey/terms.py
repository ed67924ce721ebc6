"""The terms of a sale: what is supplied, who supplies it, how money is reckoned. Field list: `design.md`, section 3."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.fields import Input
from service.survey.survey import Survey
from service.units import Code, IsoDate, LongText, Money, Ratio, ShortText


class Scope(StrEnum):
    """How much of the job is sold."""

    KIT = "kit"  # cut pieces, boards and fixings, nobody on site
    SUPPLY_ONLY = "supply_only"  # uncut materials
    SUPPLY_AND_FIT = "supply_and_fit"


class SuppliedBy(StrEnum):
    """Who brings a thing."""

    SHOP = "shop"
    CUSTOMER = "customer"


class TaxRounding(StrEnum):
    """Where tax is rounded."""

    PER_LINE = "per_line"
    PER_INVOICE = "per_invoice"


class TaxKind(StrEnum):
    """Which tax regime holds."""

    STANDARD = "standard"
    REDUCED = "reduced"
    ZERO = "zero"
    NOT_REGISTERED = "not_registered"
    REVERSE_CHARGE = "reverse_charge"


class Tax(Input, frozen=True, kw_only=True):
    """How tax is reckoned; the rates themselves are the shop's."""

    kind: TaxKind = TaxKind.STANDARD
    rounding: TaxRounding = TaxRounding.PER_INVOICE
    evidence: LongText | None = None  # needed for `reduced`, `zero` and `reverse_charge`


class PacksCharged(StrEnum):
    """Whether an opened pack is charged whole or by what is used of it."""

    WHOLE = "whole"
    PRO_RATA = "pro_rata"


class Party(Input, frozen=True, kw_only=True):
    """Seller or customer, as printed; nothing of it is stored."""

    name: ShortText
    address: LongText | None = None


class ProvisionalSum(Input, frozen=True, kw_only=True):
    """A stated amount for work that cannot be measured yet, settled at cost + 10 percent."""

    name: ShortText
    amount: Money


class Terms(Input, frozen=True, kw_only=True):
    """Terms of a quote; what is left out takes the account's setting and is listed."""

    scope: Scope | None = None
    date: IsoDate | None = None
    price_book: Code | None = None
    catalogue_revision: Annotated[str, Meta(min_length=1, max_length=80, pattern=r"^[A-Za-z0-9._:-]+(?!\n)$")] | None = None
    appliance_supplied_by: SuppliedBy | None = None
    screen_supplied_by: SuppliedBy | None = None
    bracket_supplied_by: SuppliedBy | None = None
    crew_count: Annotated[int, Meta(ge=1, le=4)] | None = None
    visit_days_count: Annotated[int, Meta(ge=1, le=60)] | None = None
    travel_per_day: Money | None = None
    first_day: IsoDate | None = None  # of the work on site; left out: days are counted, not dated
    days_off: Annotated[tuple[IsoDate, ...], Meta(max_length=200)] | None = None
    overhead_ratio: Ratio | None = None
    margin_ratio: Annotated[float, Meta(ge=0, le=0.9)] | None = None
    mark_up_ratio: Annotated[float, Meta(ge=0, le=9)] | None = None
    discount_ratio: Annotated[float, Meta(ge=0, le=0.9)] | None = None
    tax: Tax | None = None
    round_up_to: Money | None = None  # the net is rounded up to a whole multiple of this, before tax
    packs_charged: PacksCharged | None = None
    provisional_sums: Annotated[tuple[ProvisionalSum, ...], Meta(max_length=20)] | None = None
    validity_days: Annotated[int, Meta(ge=1, le=365)] | None = None
    deposit_ratio: Annotated[float, Meta(ge=0, le=0.5)] | None = None
    seller: Party | None = None
    customer: Party | None = None
    reference: ShortText | None = None
    locale: Annotated[str, Meta(pattern=r"^[a-z]{2}(-[A-Z]{2})?(?!\n)$")] | None = None


class OffcutOnHand(Input, frozen=True, kw_only=True):
    """Lengths of the job's studding that are there already, offcuts or whole bars; they cost nothing."""

    length_mm: Annotated[float, Meta(ge=50, le=12_000)]
    offcuts_count: Annotated[int, Meta(ge=1, le=1_000)] = 1


class StockAvailable(Input, frozen=True, kw_only=True):
    """How many of a stud length or board the yard has."""

    code: Code
    available_count: Annotated[int, Meta(ge=0, le=100_000)]


type PatchText = Annotated[str, Meta(max_length=120)]
type PatchWhole = Annotated[int, Meta(ge=-100_000, le=100_000)]
type PatchNumber = Annotated[float, Meta(ge=-100_000, le=100_000)]
type PatchObject = Annotated[dict[PatchText, PatchText | PatchWhole | PatchNumber | bool | None], Meta(max_length=40)]


class PatchOp(StrEnum):
    """The one operation that is used."""

    ADD = "add"


class PatchStep(Input, frozen=True, kw_only=True):
    """One operation of a JSON Patch (RFC 6902) on the survey as sent; parents that are missing are made."""

    path: Annotated[
        str,
        Meta(pattern=r"^/survey(/[a-z0-9_]+){1,4}(?!\n)$", max_length=120, description="RFC 6901 JSON Pointer into the body."),
    ]
    value: PatchText | PatchWhole | PatchNumber | bool | PatchObject | None
    op: PatchOp = PatchOp.ADD


class Variant(Input, frozen=True, kw_only=True):
    """The same breast with something else: another finish, screen or timber, or without the recess."""

    name: ShortText
    patch: Annotated[tuple[PatchStep, ...], Meta(min_length=1, max_length=12)]


class Options(Input, frozen=True, kw_only=True):
    """Options of one call."""

    rule_set: Annotated[str, Meta(min_length=1, max_length=32, pattern=r"^[A-Za-z0-9._-]+(?!\n)$")] | None = None
    kerf_mm: Annotated[float, Meta(ge=0, le=10, description="Width of the saw cut in timber, mm.")] | None = None
    offcuts_on_hand: Annotated[tuple[OffcutOnHand, ...], Meta(max_length=60)] | None = None  # cut first; not billed
    stock_available: Annotated[tuple[StockAvailable, ...], Meta(max_length=60)] | None = None  # others: as many as wanted
    plunge_saw: bool | None = None  # cuts may stop inside a sheet where that costs less or saves one; it is then marked out
    variants: Annotated[tuple[Variant, ...], Meta(max_length=6)] | None = None  # of a quote: each is computed beside it


class SurveyRequest(Input, frozen=True, kw_only=True):
    """The one body of every survey operation."""

    survey: Survey
    terms: Terms | None = None
    options: Options | None = None
