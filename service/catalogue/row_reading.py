"""Files of rows, read piece by piece: CSV or JSON to typed rows, every bad cell with its line, column and remedy.

A reader keeps the keys of the rows it has seen, so that one row cannot hide another in the same file.
"""

from __future__ import annotations

import csv
import io
from itertools import islice
from typing import TYPE_CHECKING, Any, Final

import msgspec

from service.catalogue.cells import CellError, FieldForm, fields_of, read_amount, reader_of
from service.catalogue.kinds import FORMS, Row, RowKind, key_of
from service.catalogue.rows import HEADER_LINE, RowFault, RowFaultsError
from service.catalogue.text_form import TextForm, decode_text, form_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from service.catalogue.cells import Reader

MOST_ROWS_COUNT: Final = 100_000
MOST_SHOWN_COUNT: Final = 1_000
NO_DAY: Final = "0001-01-01"  # stands in a price row until its book says from when it holds
_LIST_OF_ROWS: Final = msgspec.json.Decoder(list[dict[str, Any]])


class Faults:
    """What is wrong with a file: the first thousand in full, and how many there are."""

    def __init__(self) -> None:
        """Nothing yet."""
        self.shown: list[RowFault] = []
        self.faults_count = 0

    def add(self, line: int, column: str, detail: str, remedy: str) -> None:
        """One more."""
        self.faults_count += 1
        if len(self.shown) < MOST_SHOWN_COUNT:
            self.shown.append(RowFault(line=line, column=column, detail=detail, remedy=remedy))


class RowReader:
    """Makes rows of one kind out of records; `faults` grows meanwhile."""

    def __init__(self, kind: RowKind, *, decimal_comma: bool = False) -> None:
        """Read rows of this kind."""
        self.kind = kind
        self.faults = Faults()
        self.rows_count = 0
        self._form = FORMS[kind]
        self._comma = decimal_comma
        self._fields = fields_of(self._form)
        self._readers: dict[str, Reader] = {field.name: reader_of(self._form, field) for field in self._fields}
        self._constant = dict.fromkeys(self._form.left_out, NO_DAY)
        self._seen: dict[tuple[str, ...], int] = {}

    def columns(self, names: Iterable[str]) -> list[FieldForm | None]:
        """The field of each column; columns that are unknown, twice there or missing are faults of the header."""
        known = {field.column: field for field in self._fields}
        found: list[FieldForm | None] = []
        for name in names:
            field = known.get(name.strip())
            if field is None:
                self.faults.add(HEADER_LINE, name[:80], "no such column", f"remove it, or write one of: {', '.join(known)}")
            elif field in found:
                self.faults.add(HEADER_LINE, name[:80], "the column comes twice", "keep one of the two")
            found.append(field)
        for field in self._fields:
            if field.required and field not in found:
                self.faults.add(HEADER_LINE, field.column, "the column is missing", "add it")
        return found

    def row(self, line: int, cells: Iterable[tuple[FieldForm, str]]) -> Row | None:
        """One row, or None where it has a fault."""
        self.rows_count += 1
        pairs = [(field, cell.strip()) for field, cell in cells]
        texts = {field.name: cell for field, cell in pairs}
        values: dict[str, Any] = dict(self._constant)
        before = self.faults.faults_count
        for field, cell in pairs:
            try:
                if cell:
                    values[field.name] = self._value(field, cell, texts.get("currency", ""))
                elif field.required:
                    self.faults.add(line, field.column, "the cell is empty", "fill it")
            except CellError as error:
                self.faults.add(line, field.column, error.detail, error.remedy)
        if self.faults.faults_count > before:
            return None
        return self._new(line, self._form.struct(**values))

    def _value(self, field: FieldForm, cell: str, currency: str) -> object:
        if self._comma and (field.numeric or field.money):
            if "." in cell:
                raise CellError(
                    detail=f"{cell!r} has a point in a file of decimal commas", remedy="write 1234,5; or state decimal=point"
                )
            cell = cell.replace(",", ".")
        return read_amount(cell, currency) if field.money else self._readers[field.name](cell)

    def _new(self, line: int, row: Row) -> Row | None:
        key = key_of(self.kind, row)
        first = self._seen.setdefault(key, line)
        if first == line:
            return row
        named = ", ".join(f"{name} {part}" for name, part in zip(self._form.keys, key, strict=True) if part)
        self.faults.add(line, self._form.keys[0], f"{named} stands in line {first} already", "keep one of the two")
        return None


def read_csv(body: bytes, kind: RowKind, form: TextForm | None = None) -> tuple[RowReader, Iterator[Row]]:
    """A CSV file (RFC 4180) as rows, read as they are taken.

    Args:
        body: the whole file; its rows are made one by one.
        kind: what its rows are.
        form: what the caller states about how it is written.

    Returns:
        The reader, whose faults are complete when the rows are used up, and the rows without a fault.

    Raises:
        RowFaultsError: the file is in no encoding that is taken.
    """
    stated = form or TextForm()
    text = decode_text(body, stated.encoding)
    delimiter, decimal_comma = form_of(text, stated)
    reader = RowReader(kind, decimal_comma=decimal_comma)
    return reader, _csv_rows(text, delimiter, reader)


def _csv_rows(text: str, delimiter: str, reader: RowReader) -> Iterator[Row]:
    lines = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    try:
        fields = reader.columns(next(lines, []))
        if reader.faults.faults_count:
            return
        known = [field for field in fields if field is not None]
        for cells in lines:
            if not any(cells):
                continue  # spreadsheets leave empty lines at the end
            if len(cells) > len(known) and any(cells[len(known) :]):
                reader.faults.add(lines.line_num, "", "more cells than columns", f"quote a cell that holds {delimiter!r}")
            elif _is_too_many(reader):
                return
            elif (row := reader.row(lines.line_num, zip(known, cells, strict=False))) is not None:
                yield row
    except csv.Error as error:
        reader.faults.add(lines.line_num + 1, "", str(error), "quote cells as RFC 4180 says")


def read_json(body: bytes, kind: RowKind) -> tuple[RowReader, Iterator[Row]]:
    """A JSON array of objects as rows; `line` of a fault counts the objects from 1. Raises as `read_csv`."""
    try:
        records = _LIST_OF_ROWS.decode(body)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError) as error:
        fault = RowFault(line=1, column="", detail=str(error), remedy="send a JSON array of objects, in UTF-8")
        raise RowFaultsError((fault,)) from error
    reader = RowReader(kind)
    return reader, _json_rows(records, reader)


def _json_rows(records: list[dict[str, Any]], reader: RowReader) -> Iterator[Row]:
    known = {field.column: field for field in fields_of(FORMS[reader.kind])}
    for line, record in enumerate(records, 1):
        if _is_too_many(reader):
            return
        before = reader.faults.faults_count
        for name in record.keys() - known.keys():
            reader.faults.add(line, name[:80], "no such member", f"remove it, or write one of: {', '.join(known)}")
        cells = [(field, _cell(record.get(column), line, field, reader)) for column, field in known.items()]
        if reader.faults.faults_count == before and (row := reader.row(line, cells)) is not None:
            yield row


def _cell(value: Any, line: int, field: FieldForm, reader: RowReader) -> str:  # noqa: ANN401 - any JSON value
    """A JSON value as the text of a cell; a value of another type than the field's is a fault."""
    match value:
        case None:
            return ""
        case bool() if field.truth:
            return "true" if value else "false"
        case int() | float() if field.numeric and not isinstance(value, bool):
            return repr(value)
        case list() if field.many and all(isinstance(part, str) and ";" not in part for part in value):
            return ";".join(value)
        case str() if not (field.numeric or field.truth or field.many):
            return value
    wanted = "a number" if field.numeric else "true or false" if field.truth else "an array of texts" if field.many else "a text"
    reader.faults.add(line, field.column, f"{repr(value)[:60]} is not {wanted}", f"send {wanted}, or null")
    return ""


def _is_too_many(reader: RowReader) -> bool:
    if reader.rows_count < MOST_ROWS_COUNT:
        return False
    reader.faults.add(0, "", f"more than {MOST_ROWS_COUNT} rows", "import them in two files")
    return True


def in_pieces(rows: Iterator[Row], rows_count: int) -> Iterator[list[Row]]:
    """Rows in pieces of a number, so that the reader of a long file can pause between them."""
    while piece := list(islice(rows, rows_count)):
        yield piece
