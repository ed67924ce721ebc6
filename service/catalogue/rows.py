"""CSV rows of catalogue data to typed values, every bad cell named with its line, column and remedy."""

from __future__ import annotations

import csv
import io
from decimal import Decimal, InvalidOperation
from typing import TYPE_CHECKING, Any, get_args, get_type_hints

import msgspec

if TYPE_CHECKING:
    from collections.abc import Iterable

LIST_SEPARATOR = ";"
MINOR_PER_MAJOR = {"GBP": 100, "EUR": 100, "USD": 100, "JPY": 1}  # ISO 4217, exponent of the minor unit


class RowFault(msgspec.Struct, frozen=True, kw_only=True):
    """One cell that cannot be read."""

    line: int  # 1 is the header
    column: str
    detail: str
    remedy: str


class RowFaultsError(ValueError):
    """A file with unreadable cells; nothing of it is used."""

    def __init__(self, faults: tuple[RowFault, ...]) -> None:
        """Keep all faults."""
        super().__init__("; ".join(f"line {f.line}, {f.column}: {f.detail}" for f in faults))
        self.faults = faults


def to_minor(amount: str, currency: str) -> int:
    """A decimal amount in major units as integer minor units; refuses fractions of a minor unit."""
    scale = MINOR_PER_MAJOR.get(currency, 100)
    try:
        minor = Decimal(amount) * scale
    except InvalidOperation as error:
        message = f"{amount!r} is not an amount"
        raise ValueError(message) from error
    if not minor.is_finite() or minor != minor.to_integral_value():
        message = f"{amount!r} is finer than a minor unit of {currency}"
        raise ValueError(message)
    return int(minor)


def read_rows[T: msgspec.Struct](text: str, kind: type[T]) -> tuple[T, ...]:
    """Read a CSV with a header line into structs of one kind.

    A column `x` also fills a field `x_minor` (money, in the row's `currency`) and `x_hours`.

    Raises:
        RowFaultsError: with every unreadable cell.
    """
    reader = csv.DictReader(io.StringIO(text.removeprefix("\ufeff")))
    hints = get_type_hints(kind)
    faults: list[RowFault] = []
    rows = [_read_row(row, line, kind, hints, faults) for line, row in enumerate(reader, start=2)]
    if faults:
        raise RowFaultsError(tuple(faults))
    return tuple(row for row in rows if row is not None)


def _read_row[T: msgspec.Struct](
    row: dict[str, str], line: int, kind: type[T], hints: dict[str, Any], faults: list[RowFault]
) -> T | None:
    before = len(faults)
    values: dict[str, Any] = {}
    for column, cell in row.items():
        field = _field_of(column, hints)
        if field is None:
            faults.append(RowFault(line=line, column=str(column), detail="no such column", remedy="remove it or correct its name"))
        elif cell is not None and cell != "":
            try:
                values[field] = _value(cell, field, hints[field], row)
            except ValueError as error:
                faults.append(RowFault(line=line, column=column, detail=str(error), remedy="see the column's description"))
    if len(faults) > before:
        return None
    try:
        return msgspec.convert(values, kind, strict=False)
    except msgspec.ValidationError as error:
        faults.append(RowFault(line=line, column="", detail=str(error), remedy="fill the cell with a value of the right kind"))
        return None


def _field_of(column: str, hints: dict[str, Any]) -> str | None:
    return next((name for name in (column, f"{column}_minor", f"{column}_hours") if name in hints), None)


def _value(cell: str, field: str, hint: Any, row: dict[str, str]) -> Any:  # noqa: ANN401 - a cell may be anything
    if field.endswith("_minor"):
        return to_minor(cell, row.get("currency", "GBP"))
    if getattr(hint, "__origin__", None) is tuple:
        return [part.strip() for part in cell.split(LIST_SEPARATOR) if part.strip()]
    if bool in _plain(hint):
        if cell not in {"true", "false"}:
            message = f"{cell!r} is neither true nor false"
            raise ValueError(message)
        return cell == "true"
    return cell


def _plain(hint: Any) -> Iterable[Any]:  # noqa: ANN401 - a type hint
    return get_args(hint) or (hint,)
