"""Rows as files: what is written here is what `row_reading` takes, row for row."""

from __future__ import annotations

import csv
import io
from typing import TYPE_CHECKING, Final

import msgspec

from service.catalogue.cells import FieldForm, fields_of
from service.catalogue.kinds import FORMS, Row, RowKind
from service.catalogue.money_text import money
from service.catalogue.rows import LIST_SEPARATOR
from service.catalogue.text_form import SIGNATURE, DecimalMark, Delimiter

if TYPE_CHECKING:
    from collections.abc import Iterable

_ENCODER: Final = msgspec.json.Encoder()


def write_csv(rows: Iterable[Row], kind: RowKind, decimal_mark: DecimalMark = DecimalMark.POINT) -> bytes:
    """Rows of a kind as UTF-8, sorted by key, one header line, lines ended by CR LF (RFC 4180).

    With decimal commas the cells are parted by semicolons and the file begins with a signature, as spreadsheets that write
    decimal commas expect it.
    """
    comma = decimal_mark is DecimalMark.COMMA
    out = io.StringIO(SIGNATURE if comma else "", newline="")
    out.seek(0, io.SEEK_END)
    writer = csv.writer(out, delimiter=Delimiter.SEMICOLON if comma else Delimiter.COMMA)
    fields = fields_of(FORMS[kind])
    writer.writerow([field.column for field in fields])
    for row in _in_order(rows, kind):
        writer.writerow([_cell(row, field, comma=comma) for field in fields])
    return out.getvalue().encode()


def write_json(rows: Iterable[Row], kind: RowKind) -> bytes:
    """Rows of a kind as a JSON array of objects, one row a line, sorted by key."""
    fields = fields_of(FORMS[kind])
    lines = [_ENCODER.encode({field.column: _json_value(row, field) for field in fields}) for row in _in_order(rows, kind)]
    return b"[\n" + b",\n".join(lines) + b"\n]\n" if lines else b"[]\n"


def _in_order(rows: Iterable[Row], kind: RowKind) -> list[Row]:
    """By key; what a row leaves open comes before what another states."""
    names = FORMS[kind].keys
    return sorted(rows, key=lambda row: [(value is not None, value) for value in (getattr(row, name) for name in names)])


def _json_value(row: Row, field: FieldForm) -> object:
    value = getattr(row, field.name)
    return _amount(row, value) if field.money else value


def _amount(row: Row, amount_minor: int) -> str:
    return money(amount_minor, getattr(row, "currency")).amount  # noqa: B009 - only kinds with money have a currency


def _cell(row: Row, field: FieldForm, *, comma: bool) -> str:
    value = getattr(row, field.name)
    match value:
        case None:
            return ""
        case bool():
            return "true" if value else "false"
        case tuple():
            return LIST_SEPARATOR.join(value)
        case str():
            return value
    text = _amount(row, value) if field.money else repr(value).removesuffix(".0")
    return text.replace(".", ",") if comma else text
