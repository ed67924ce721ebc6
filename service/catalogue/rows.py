"""CSV rows of catalogue data to typed values, every bad cell named with its line, column and remedy."""

from __future__ import annotations

import csv
import io
import math
import re
from decimal import Decimal
from typing import TYPE_CHECKING, Any, Final, get_args, get_origin, get_type_hints

import msgspec

if TYPE_CHECKING:
    from collections.abc import Iterator

LIST_SEPARATOR: Final = ";"
MINOR_PER_MAJOR: Final = {"GBP": 100, "EUR": 100, "USD": 100, "JPY": 1}  # ISO 4217, exponent of the minor unit
HEADER_LINE: Final = 1
_AMOUNT: Final = re.compile(r"-?[0-9]{1,12}(\.[0-9]{1,4})?")


class RowFault(msgspec.Struct, frozen=True, kw_only=True):
    """One cell that cannot be read."""

    line: int  # 1 is the header; of a row with line breaks in a cell, its last line
    column: str  # "" is the whole row
    detail: str
    remedy: str


class RowFaultsError(ValueError):
    """A file with unreadable cells; nothing of it is used."""

    def __init__(self, faults: tuple[RowFault, ...]) -> None:
        """Keep all faults."""
        super().__init__("; ".join(f"line {f.line}, {f.column}: {f.detail}" for f in faults))
        self.faults = faults


def to_minor(amount: str, currency: str) -> int:
    """A decimal amount in major units as integer minor units.

    Raises:
        ValueError: not an amount, finer than a minor unit, or a currency whose minor unit is not known.
    """
    if _AMOUNT.fullmatch(amount) is None:
        message = f"{amount!r} is not an amount"
        raise ValueError(message)
    if currency not in MINOR_PER_MAJOR:
        message = f"{currency!r} is not a currency known here"
        raise ValueError(message)
    minor = Decimal(amount) * MINOR_PER_MAJOR[currency]
    if minor != minor.to_integral_value():
        message = f"{amount!r} is finer than a minor unit of {currency}"
        raise ValueError(message)
    return int(minor)


def read_rows[T: msgspec.Struct](text: str, kind: type[T]) -> tuple[T, ...]:
    """Read a CSV with a header line into structs of one kind.

    A column `x` also fills a field `x_minor` (money, in the row's `currency`) and `x_hours`. An empty cell takes the
    field's default; the parts of a list are parted by `;`.

    Raises:
        RowFaultsError: with every unreadable cell, or with what is wrong with the header.
    """
    reader = csv.DictReader(io.StringIO(text.removeprefix("\ufeff"), newline=""), restkey="", restval="", strict=True)
    rows: list[T] = []
    faults: list[RowFault] = []
    try:
        fields = _fields(list(reader.fieldnames or ()), kind)
        for record in reader:
            values, bad = _read_record(record, fields, reader.line_num)
            faults.extend(bad)
            if not bad:
                rows.append(msgspec.convert(values, kind))
    except csv.Error as error:
        # The reader counts a row once it is read: the bad one begins on the next line.
        faults.append(_fault(reader.line_num + 1, "", str(error), "quote cells as RFC 4180 says"))
    if faults:
        raise RowFaultsError(tuple(faults))
    return tuple(rows)


class _Field(msgspec.Struct, frozen=True, kw_only=True):
    """Where the cells of one column go."""

    name: str
    hint: Any
    required: bool


def _fault(line: int, column: str, detail: str, remedy: str) -> RowFault:
    return RowFault(line=line, column=column, detail=detail, remedy=remedy)


def _fields(columns: list[str], kind: type[msgspec.Struct]) -> dict[str, _Field]:
    """Field of each column; raises when a column is not known, comes twice, or is missing."""
    hints = get_type_hints(kind)
    known = {
        info.name: _Field(name=info.name, hint=hints[info.name], required=info.required) for info in msgspec.structs.fields(kind)
    }
    fields: dict[str, _Field] = {}
    faults: list[RowFault] = []
    for column in columns:
        field = next((known[name] for name in (column, f"{column}_minor", f"{column}_hours") if name in known), None)
        if field is None:
            faults.append(_fault(HEADER_LINE, column, "no such column", "remove it or correct its name"))
        elif field in fields.values():
            faults.append(_fault(HEADER_LINE, column, "the column comes twice", "keep one of the two"))
        else:
            fields[column] = field
    absent = [field.name for field in known.values() if field.required and field not in fields.values()]
    faults.extend(_fault(HEADER_LINE, name, "the column is missing", "add it") for name in absent)
    if faults:
        raise RowFaultsError(tuple(faults))
    return fields


def _read_record(record: dict[str, Any], fields: dict[str, _Field], line: int) -> tuple[dict[str, object], list[RowFault]]:
    """Values by field name, and what could not be read; cells beyond the header come under the key ""."""
    faults = [_fault(line, "", "more cells than columns", "quote a cell that holds a comma")] if "" in record else []
    values: dict[str, object] = {}
    for column, field in fields.items():
        cell: str = record[column]
        try:
            values.update(_read_cell(cell, field, record.get("currency", "")))
        except ValueError as error:
            faults.append(_fault(line, column, str(error), "fill the cell with a value of the right kind"))
    return values, faults


def _read_cell(cell: str, field: _Field, currency: str) -> Iterator[tuple[str, object]]:
    """Yield the field's name and value, or nothing where the default holds."""
    if cell:
        value = _value(cell, field, currency)
        if isinstance(value, float) and not math.isfinite(value):
            message = f"{cell!r} is not a number"
            raise ValueError(message)
        yield field.name, value
    elif field.required:
        message = "the cell is empty"
        raise ValueError(message)


def _value(cell: str, field: _Field, currency: str) -> object:
    if field.name.endswith("_minor"):
        return to_minor(cell, currency)
    if get_origin(field.hint) is tuple:
        return tuple(part.strip() for part in cell.split(LIST_SEPARATOR) if part.strip())
    if bool in (field.hint, *get_args(field.hint)):
        if cell not in {"true", "false"}:
            message = f"{cell!r} is neither true nor false"
            raise ValueError(message)
        return cell == "true"
    try:
        return msgspec.convert(cell, field.hint, strict=False)
    except msgspec.ValidationError as error:
        message = f"{cell!r}: {error}"
        raise ValueError(message) from error
