"""CSV to typed rows: what is read, and how each bad cell is named."""

from __future__ import annotations

import msgspec
import pytest

from service.catalogue import RowFault, RowFaultsError, read_rows, to_minor


class Stick(msgspec.Struct, frozen=True, kw_only=True):
    """A row with every kind of cell that the catalogue has."""

    code: str
    length_mm: float
    pack_count: int = 1
    price_minor: int = 0
    currency: str = "GBP"
    least_hours: float | None = None
    graded: bool | None = None
    suppliers: tuple[str, ...] = ()
    strength_class: str | None = None


def bad(text: str) -> list[tuple[int, str, str]]:
    """Line, column and detail of every fault of a text."""
    with pytest.raises(RowFaultsError) as caught:
        read_rows(text, Stick)
    assert all(fault.remedy for fault in caught.value.faults)
    return [(fault.line, fault.column, fault.detail) for fault in caught.value.faults]


def test_every_kind_of_cell_is_read() -> None:
    text = (
        "code,length_mm,pack_count,price,currency,least,graded,suppliers,strength_class\n"
        "TM-1,2400.5,10,3.02,GBP,1.5,true,supplier_a; supplier_b;,C16\n"
        "TM-2,3000,,,,,,,\n"
    )

    rows = read_rows(text, Stick)

    first = Stick(
        code="TM-1",
        length_mm=2400.5,
        pack_count=10,
        price_minor=302,
        least_hours=1.5,
        graded=True,
        suppliers=("supplier_a", "supplier_b"),
        strength_class="C16",
    )
    assert (first, Stick(code="TM-2", length_mm=3000)) == rows


def test_a_byte_order_mark_and_other_line_ends_are_taken() -> None:
    assert (Stick(code="TM-1", length_mm=2400),) == read_rows("\ufeffcode,length_mm\r\nTM-1,2400\r\n", Stick)


def test_columns_may_stand_in_any_order() -> None:
    assert (Stick(code="TM-1", length_mm=2400),) == read_rows("length_mm,code\n2400,TM-1\n", Stick)


def test_every_bad_cell_is_named_at_once() -> None:
    text = (
        "code,length_mm,pack_count,price,currency,graded\n"
        "TM-1,2400,1,3.02,GBP,true\n"
        "TM-2,long,1.5,3.021,GBP,yes\n"
        ",nan,1,3.02,GBP,false\n"
        "TM-4,2400,1,3.02,XTS,\n"
    )

    assert [
        (3, "length_mm", "'long': Expected `float`, got `str`"),
        (3, "pack_count", "'1.5': Expected `int`, got `str`"),
        (3, "price", "'3.021' is finer than a minor unit of GBP"),
        (3, "graded", "'yes' is neither true nor false"),
        (4, "code", "the cell is empty"),
        (4, "length_mm", "'nan' is not a number"),
        (5, "price", "'XTS' is not a currency known here"),
    ] == bad(text)


def test_lines_are_counted_as_an_editor_counts_them() -> None:
    text = 'code,length_mm\n\n"TM\n-1",2400\nTM-2,bad\n'

    assert [(5, "length_mm", "'bad': Expected `float`, got `str`")] == bad(text)


def test_a_row_of_another_length_is_named() -> None:
    assert [(2, "", "more cells than columns"), (3, "length_mm", "the cell is empty")] == bad(
        "code,length_mm\nTM-1,2400,7\nTM-2\n"
    )


def test_a_wrong_header_is_named_once() -> None:
    assert [
        (1, "lenght_mm", "no such column"),
        (1, "code", "the column comes twice"),
        (1, "length_mm", "the column is missing"),
    ] == bad("code,lenght_mm,code\nTM-1,2400,TM-1\nTM-2,2400,TM-2\n")


@pytest.mark.parametrize("text", ["", "\n", "\ufeff"])
def test_an_empty_file_lacks_its_columns(text: str) -> None:
    assert [(1, "code", "the column is missing"), (1, "length_mm", "the column is missing")] == bad(text)


def test_an_open_quote_is_named() -> None:
    assert [(2, "", "unexpected end of data")] == bad('code,length_mm\n"TM-1,2400\n')


def test_a_fault_reads_as_a_sentence() -> None:
    fault = RowFault(line=3, column="price", detail="'x' is not an amount", remedy="send an amount")

    assert "line 3, price: 'x' is not an amount" == str(RowFaultsError((fault,)))


@pytest.mark.parametrize(
    ("amount", "currency", "minor"),
    [
        ("0", "GBP", 0),
        ("3.02", "GBP", 302),
        ("3.5", "EUR", 350),
        ("-0.05", "USD", -5),
        ("1234.5000", "GBP", 123450),
        ("0.29", "GBP", 29),  # 0.29 * 100 is 28.999999999999996 in binary
        ("1500", "JPY", 1500),
    ],
)
def test_to_minor(amount: str, currency: str, minor: int) -> None:
    """Exponents of the minor units: ISO 4217."""
    assert minor == to_minor(amount, currency)


@pytest.mark.parametrize(
    ("amount", "currency"),
    [
        ("3.021", "GBP"),
        ("1.5", "JPY"),
        ("", "GBP"),
        ("abc", "GBP"),
        ("NaN", "GBP"),
        ("Infinity", "GBP"),
        ("1e3", "GBP"),
        ("1_000", "GBP"),
        ("1,000", "GBP"),
        (" 1", "GBP"),
        ("٣", "GBP"),
        ("£3.02", "GBP"),
        ("3.02", ""),
    ],
)
def test_what_is_no_amount_is_refused(amount: str, currency: str) -> None:
    with pytest.raises(ValueError, match=r"is not an amount|is finer than|not a currency"):
        to_minor(amount, currency)
