from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.price import SaleKind, SaleLine
from service.price.tax import tax_note, tax_of, taxed_lines
from service.survey.terms import TaxKind, TaxRounding
from tests.examples_of import changed, faults_of
from tests.price.purse_facts import CATALOGUE
from tests.sold_examples import made, sell, sold

if TYPE_CHECKING:
    from service.brief import Deal


def lines(*amounts: int) -> tuple[SaleLine, ...]:
    plain = SaleLine(kind=SaleKind.WORKS, code="", name="works", working="", net_minor=0, tax_ratio=0.0, tax_minor=0)
    return tuple(msgspec.structs.replace(plain, net_minor=amount) for amount in amounts)


def deal(rounding: TaxRounding, ratio: float = 0.2) -> Deal:
    return msgspec.structs.replace(made("A").deal, tax_rounding=rounding, tax_ratio=ratio)


@pytest.mark.parametrize(
    ("amounts", "per_line", "per_invoice"),
    [
        ((1_234, 1_234, 1_234), 741, 740),  # three lines of 12.34: 7.41 against 7.40
        ((13, 13, 13), 9, 8),  # three lines of 0.13: 0.09 against 0.08
        ((352_209, 91_300, 3_520, 50_000, 471), 99_500, 99_500),  # example B: equal by chance
        ((300_453, 114_400, 2_035), 83_378, 83_378),  # example A
        ((), 0, 0),
        ((1_234, -1_234), 0, 0),
    ],
)
def test_where_tax_is_rounded_matters(amounts: tuple[int, ...], per_line: int, per_invoice: int) -> None:
    """`knowledge/labour.md`, section 7."""
    by_line, by_invoice = deal(TaxRounding.PER_LINE), deal(TaxRounding.PER_INVOICE)

    assert per_line == tax_of(taxed_lines(lines(*amounts), by_line), by_line)
    assert per_invoice == tax_of(taxed_lines(lines(*amounts), by_invoice), by_invoice)


def taxed(kind: str, **more: str) -> dict[str, object]:
    return {"/terms/tax": {"kind": kind, **more}}


def test_a_seller_that_is_not_registered_shows_no_tax() -> None:
    """`knowledge/labour.md`, section 7: no VAT line; what it buys costs x 1.20."""
    plain, unregistered = sell(sold("A")), sell(changed(sold("A"), taxed("not_registered")))
    each = {line.code: line.each_minor for line in unregistered.price.bill_lines}

    assert 0 == unregistered.price.tax_minor
    assert unregistered.price.net_minor == unregistered.price.total_minor
    assert (496, 662, 773) == (each["TM-1035A"], each["TM-1042H"], each["TM-1049R"])
    assert round(104_000 * 1.2 * 1.1) == next(line.net_minor for line in unregistered.price.sale if line.code == "AF-302")
    assert plain.price.materials_minor < unregistered.price.materials_minor


def test_reverse_charge_shows_no_tax_to_pay_but_says_what_the_customer_owes() -> None:
    """`knowledge/labour.md`, section 7: wording, rate and amount."""
    total = sell(changed(sold("A"), taxed("reverse_charge", evidence="both registered, paid within the scheme"))).price

    assert (0, 416_888) == (total.tax_minor, total.total_minor)
    assert "reverse charge: customer to pay the VAT to HMRC, 20 percent of 4168.88 = 833.78" == total.tax_note


@pytest.mark.parametrize(("kind", "tax"), [("reduced", 20_844), ("zero", 0)])
def test_a_lower_rate_is_taken_with_its_evidence(kind: str, tax: int) -> None:
    """5 percent of 4168.88 = 208.444."""
    total = sell(changed(sold("A"), taxed(kind, evidence="empty for two years, council letter of 2026-05-04"))).price

    assert tax == total.tax_minor
    assert "evidence" in total.tax_note


@pytest.mark.parametrize("kind", ["reduced", "zero", "reverse_charge"])
def test_no_lower_rate_without_evidence(kind: str) -> None:
    faults = faults_of(changed(sold("A"), taxed(kind)))

    assert ["/terms/tax/kind"] == [fault.pointer for fault in faults]


@pytest.mark.parametrize(
    ("kind", "says"),
    [
        (TaxKind.STANDARD, "20 percent, rounded per invoice"),
        (TaxKind.NOT_REGISTERED, "no tax: the seller is not registered, and the tax on what is bought is part of the cost"),
    ],
)
def test_notes_say_how_tax_was_reckoned(kind: TaxKind, says: str) -> None:
    at = msgspec.structs.replace(made("A").deal, tax_kind=kind)

    assert says == tax_note(10_000, at, CATALOGUE.account)
