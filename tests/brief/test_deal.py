"""Design.md, section 3 (`terms`) and labour.md, sections 6 to 8: terms with the account's settings filled in."""

from __future__ import annotations

import pytest

from service.brief.deal import is_day
from service.catalogue import demo_catalogue
from service.errors import Reason
from service.survey.terms import PacksCharged, Scope, SuppliedBy, TaxKind, TaxRounding
from tests.examples_of import DAY, Request, changed, example_c, faults_of, job_and_deal_of, job_of

TERMS = "/terms"
ACCOUNT = demo_catalogue().account


def gbp(amount: str) -> dict[str, str]:
    """An amount in pounds."""
    return {"amount": amount, "currency": "GBP"}


def with_terms(**values: object) -> Request:
    """Example C under other terms."""
    return changed(example_c(), {TERMS: values})


def test_the_accounts_settings_fill_what_is_left_out() -> None:
    _job, deal = job_and_deal_of(with_terms())

    assert (DAY, "GBP", Scope.SUPPLY_AND_FIT) == (deal.date, deal.currency, deal.scope)
    assert (SuppliedBy.SHOP, SuppliedBy.CUSTOMER, SuppliedBy.SHOP) == (
        deal.appliance_supplied_by, deal.screen_supplied_by, deal.bracket_supplied_by
    )  # fmt: skip
    assert (ACCOUNT.crew_count, None, ACCOUNT.travel_per_day_minor) == (
        deal.crew_count, deal.visit_days_count, deal.travel_per_day_minor
    )  # fmt: skip
    assert (ACCOUNT.overhead_ratio, True, ACCOUNT.margin_ratio, 0.0) == (
        deal.overhead_ratio, deal.by_margin, deal.profit_ratio, deal.discount_ratio
    )  # fmt: skip
    assert (TaxKind.STANDARD, TaxRounding.PER_INVOICE, 0.2) == (deal.tax_kind, deal.tax_rounding, deal.tax_ratio)
    assert (0, PacksCharged.WHOLE, (), 30, 0.25, 0) == (
        deal.round_up_to_minor, deal.packs_charged, deal.provisional_sums, deal.validity_days, deal.deposit_ratio,
        deal.parking_minor,
    )  # fmt: skip
    assert ("en-GB", "", None, None) == (deal.locale, deal.reference, deal.seller, deal.customer)


def test_terms_taken_are_listed_as_house_choices() -> None:
    notes = [note for note in job_of(with_terms()).assumptions if note.pointer.startswith(TERMS)]

    assert {
        "/terms/date": DAY, "/terms/scope": "supply_and_fit", "/terms/appliance_supplied_by": "shop",
        "/terms/screen_supplied_by": "customer", "/terms/bracket_supplied_by": "shop", "/terms/crew_count": 2,
    } == {note.pointer: note.value for note in notes}  # fmt: skip
    assert all(note.house_choice for note in notes)


def test_terms_that_were_sent() -> None:
    sums = [{"name": "new circuit", "amount": gbp("500.00")}]
    _job, deal = job_and_deal_of(with_terms(
        date="2027-02-28", scope="kit", appliance_supplied_by="customer", screen_supplied_by="shop",
        bracket_supplied_by="customer",
        crew_count=1, visit_days_count=4, travel_per_day=gbp("0"), overhead_ratio=0, margin_ratio=0.25, discount_ratio=0.1,
        tax={"kind": "reduced", "rounding": "per_line", "evidence": "empty for 3 years"}, round_up_to=gbp("5"),
        packs_charged="pro_rata", provisional_sums=sums, validity_days=14, deposit_ratio=0, locale="de-DE", reference="Q-1",
        seller={"name": "S"}, customer={"name": "C"},
    ))  # fmt: skip

    assert ("2027-02-28", Scope.KIT, SuppliedBy.CUSTOMER, SuppliedBy.SHOP, SuppliedBy.CUSTOMER) == (
        deal.date, deal.scope, deal.appliance_supplied_by, deal.screen_supplied_by, deal.bracket_supplied_by
    )  # fmt: skip
    assert (1, 4, 0, 0, 0.25, 0.1) == (
        deal.crew_count, deal.visit_days_count, deal.travel_per_day_minor, deal.overhead_ratio, deal.profit_ratio,
        deal.discount_ratio,
    )  # fmt: skip
    assert (TaxKind.REDUCED, TaxRounding.PER_LINE, 0.05, 500) == (
        deal.tax_kind, deal.tax_rounding, deal.tax_ratio, deal.round_up_to_minor
    )  # fmt: skip
    assert [("new circuit", 50_000)] == [(one.name, one.amount_minor) for one in deal.provisional_sums]
    assert (PacksCharged.PRO_RATA, 14, 0, "de-DE", "Q-1") == (
        deal.packs_charged, deal.validity_days, deal.deposit_ratio, deal.locale, deal.reference
    )  # fmt: skip
    assert deal.seller is not None
    assert deal.customer is not None
    assert ("S", "C") == (deal.seller.name, deal.customer.name)


def test_a_mark_up_is_no_margin() -> None:
    _job, deal = job_and_deal_of(with_terms(mark_up_ratio=0.25))

    assert (False, 0.25) == (deal.by_margin, deal.profit_ratio)


@pytest.mark.parametrize(("kind", "ratio"), [("zero", 0), ("reverse_charge", 0), ("not_registered", 0), ("standard", 0.2)])
def test_tax_rates(kind: str, ratio: float) -> None:
    assert ratio == job_and_deal_of(with_terms(tax={"kind": kind, "evidence": "letter"}))[1].tax_ratio


def test_parking_at_the_site() -> None:
    """Survey.md, section 9: parking_cost is a sundry line."""
    request = changed(with_terms(), {"/survey/site/parking_cost": gbp("12.50")})

    assert 1250 == job_and_deal_of(request)[1].parking_minor


FIRING = {
    "margin and mark-up": ({"margin_ratio": 0.2, "mark_up_ratio": 0.25}, "/terms/margin_ratio", Reason.CONTRADICTION),
    "no such day": ({"date": "2026-02-29"}, "/terms/date", Reason.IMPOSSIBLE_VALUE),
    "price book": ({"price_book": "other"}, "/terms/price_book", Reason.UNKNOWN_MODEL),
    "revision": ({"catalogue_revision": "old"}, "/terms/catalogue_revision", Reason.UNKNOWN_MODEL),
    "reduced tax": ({"tax": {"kind": "reduced"}}, "/terms/tax/kind", Reason.CONTRADICTION),
    "zero tax": ({"tax": {"kind": "zero", "evidence": ""}}, "/terms/tax/kind", Reason.CONTRADICTION),
    "reverse charge": ({"tax": {"kind": "reverse_charge"}}, "/terms/tax/kind", Reason.CONTRADICTION),
    "currency": ({"travel_per_day": {"amount": "1", "currency": "EUR"}}, "/terms/travel_per_day/currency", Reason.CONTRADICTION),
    "parts of a penny": ({"round_up_to": gbp("0.005")}, "/terms/round_up_to/amount", Reason.IMPOSSIBLE_VALUE),
    "negative": (
        {"provisional_sums": [{"name": "a", "amount": gbp("1")}, {"name": "b", "amount": gbp("-0.01")}]},
        "/terms/provisional_sums/1/amount/amount",
        Reason.IMPOSSIBLE_VALUE,
    ),
}
SILENT = {
    "margin": {"margin_ratio": 0.2},
    "mark-up": {"mark_up_ratio": 0.25},
    "leap day": {"date": "2028-02-29"},
    "price book": {"price_book": demo_catalogue().price_book},
    "revision": {"catalogue_revision": demo_catalogue().revision},
    "reduced tax": {"tax": {"kind": "reduced", "evidence": "empty for 3 years"}},
    "not registered": {"tax": {"kind": "not_registered"}},
    "amounts": {"travel_per_day": gbp("0"), "round_up_to": gbp("0.01"), "provisional_sums": [{"name": "a", "amount": gbp("0")}]},
}


@pytest.mark.parametrize(("values", "pointer", "reason"), FIRING.values(), ids=FIRING)
def test_fires(values: Request, pointer: str, reason: Reason) -> None:
    (fault,) = faults_of(with_terms(**values))

    assert (pointer, reason) == (fault.pointer, fault.reason)
    assert fault.remedy


@pytest.mark.parametrize("values", SILENT.values(), ids=SILENT)
def test_does_not_fire(values: Request) -> None:
    assert () == faults_of(with_terms(**values))


def test_parking_in_another_currency() -> None:
    request = changed(with_terms(), {"/survey/site/parking_cost": {"amount": "3", "currency": "EUR"}})

    assert ["/survey/site/parking_cost/currency"] == [fault.pointer for fault in faults_of(request)]


@pytest.mark.parametrize(
    ("text", "day"), [("2026-12-01", True), ("2024-02-29", True), ("2026-02-29", False), ("2026-13-01", False)]
)
def test_days_of_the_calendar(text: str, *, day: bool) -> None:
    assert day is is_day(text)


@pytest.mark.parametrize(
    ("terms", "pointers"),
    [
        ({"first_day": "2026-02-30"}, ["/terms/first_day"]),
        ({"days_off": ["2026-12-24", "2026-11-31"]}, ["/terms/days_off/1"]),
        ({"date": "2026-12-01", "first_day": "2026-11-30"}, ["/terms/first_day"]),
        ({"date": "2026-12-01", "first_day": "2026-12-01"}, []),
    ],
)
def test_days_on_site_exist_and_come_after_the_quote(terms: dict[str, object], pointers: list[str]) -> None:
    """A day that no calendar has would stop the programme; nobody begins before the quote."""
    assert pointers == [fault.pointer for fault in faults_of(with_terms(**terms))]
