from __future__ import annotations

import pytest

from service.catalogue import FORMS, RowKind
from service.catalogue.cells import CellError, column_of, fields_of, read_amount, reader_of


@pytest.mark.parametrize(
    ("name", "column"),
    [("amount_minor", "amount"), ("rate_hours", "rate_hours"), ("least_hours_per_visit_hours", "least_hours_per_visit")],
)
def test_headers(name: str, column: str) -> None:
    assert column == column_of(name)


def test_fields_of_a_file_of_prices() -> None:
    fields = fields_of(FORMS[RowKind.PRICES])

    assert ["code", "amount", "currency", "from_count", "supplier", "lead_days", "per"] == [field.column for field in fields]
    assert ["per"] == [field.name for field in fields if not field.required]
    assert ["amount_minor"] == [field.name for field in fields if field.money]


@pytest.mark.parametrize(("cell", "value"), [("TRUE", True), ("false", False)])
def test_truth_as_spreadsheets_write_it(cell: str, value: bool) -> None:
    form = FORMS[RowKind.APPLIANCES]
    (field,) = (field for field in fields_of(form) if field.name == "may_be_boarded_over")

    assert value is reader_of(form, field)(cell)


def test_lists_have_a_bound() -> None:
    form = FORMS[RowKind.MATERIALS]
    (field,) = (field for field in fields_of(form) if field.name == "uses")

    assert ("a", "b") == reader_of(form, field)("a; b;")
    with pytest.raises(CellError, match="101 parts are too many"):
        reader_of(form, field)(";".join("a" * 101))


@pytest.mark.parametrize(("cell", "currency", "minor"), [("3.02", "GBP", 302), ("3", "JPY", 3), ("0", "EUR", 0)])
def test_amounts(cell: str, currency: str, minor: int) -> None:
    assert minor == read_amount(cell, currency)


def test_closed_sets_name_their_words() -> None:
    form = FORMS[RowKind.PRICES]
    (field,) = (field for field in fields_of(form) if field.name == "per")

    with pytest.raises(CellError) as caught:
        reader_of(form, field)("foot")
    assert ("'foot' is not known", "write one of pack, metre, square_metre") == (caught.value.detail, caught.value.remedy)
