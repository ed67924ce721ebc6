"""One reader for each field of a row: text or a JSON value to the field's value, or a fault with its remedy."""

from __future__ import annotations

import re
from functools import cache
from typing import TYPE_CHECKING, Any, Final

import msgspec
from msgspec import inspect

from service.catalogue.limits import CLOSED_SETS, CODE_PATTERN, CODES, CURRENCY_PATTERN, TEXT_LENGTH_COUNT, range_of
from service.catalogue.rows import LIST_SEPARATOR, MINOR_PER_MAJOR, to_minor

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.catalogue.kinds import KindForm

type Reader = Callable[[str], object]  # raises CellError
GREATEST_LIST_COUNT: Final = 100
_CODE: Final = re.compile(CODE_PATTERN.replace("$", r"\Z"))
_CURRENCY: Final = re.compile(CURRENCY_PATTERN.replace("$", r"\Z"))
_CONTROL: Final = re.compile(r"[\x00-\x1f\x7f]")
_NUMBER: Final = re.compile(r"-?[0-9]{1,15}(\.[0-9]{1,20})?(e[-+]?[0-9]{1,2})?")
_FORMULA: Final = ("=", "@")  # a spreadsheet would run such a cell when the rows are exported again


class CellError(ValueError):
    """A cell that cannot be used."""

    def __init__(self, *, detail: str, remedy: str) -> None:
        """Keep both."""
        super().__init__(detail)
        self.detail = detail
        self.remedy = remedy


class FieldForm(msgspec.Struct, frozen=True, kw_only=True):
    """One field of a kind of row, as a file has it."""

    name: str
    column: str  # its header
    required: bool
    many: bool  # a list
    numeric: bool  # a JSON number is taken
    money: bool
    truth: bool


def column_of(name: str) -> str:
    """Header of a field: money without `_minor`, as a file has major units; a unit is not said twice."""
    return "least_hours_per_visit" if name == "least_hours_per_visit_hours" else name.removesuffix("_minor")


def fields_of(form: KindForm) -> tuple[FieldForm, ...]:
    """The fields that a file of a kind has, in the order of their columns."""
    return tuple(_field_form(field) for field in _told(form.struct) if field.name not in form.left_out)


def reader_of(form: KindForm, field: FieldForm) -> Reader:
    """Reads the cells of one field; amounts are read apart, as they need the row's currency."""
    (type_,) = (one.type for one in _told(form.struct) if one.name == field.name)
    match _plain(type_):
        case inspect.BoolType():
            return _truth
        case inspect.IntType():
            return _number_reader(field.name, whole=True)
        case inspect.FloatType():
            return _number_reader(field.name, whole=False)
        case inspect.VarTupleType():
            return _list
    return _text_reader(field.name)


def read_amount(cell: str, currency: str) -> int:
    """An amount in major units as minor units of the row's currency.

    Raises:
        CellError: it is none, is negative, or its currency is not known.
    """
    if currency not in MINOR_PER_MAJOR:
        raise CellError(
            detail=f"{cell!r} is an amount of an unknown currency", remedy=f"one of {', '.join(sorted(MINOR_PER_MAJOR))}"
        )
    try:
        minor = to_minor(cell, currency)
    except ValueError as error:
        raise CellError(
            detail=str(error), remedy="write it as 12.50, without a sign of the currency and without thousands marks"
        ) from error
    if minor < 0:
        raise CellError(detail=f"{cell!r} is negative", remedy="write nought or more")
    return minor


@cache
def _told(struct: type[msgspec.Struct]) -> tuple[inspect.Field, ...]:
    info = inspect.type_info(struct)
    assert isinstance(info, inspect.StructType)  # noqa: S101 - a kind is a struct
    return info.fields


def _field_form(field: inspect.Field) -> FieldForm:
    plain = _plain(field.type)
    money = field.name.endswith("_minor")
    return FieldForm(
        name=field.name,
        column=column_of(field.name),
        required=field.required,
        many=isinstance(plain, inspect.VarTupleType),
        numeric=isinstance(plain, inspect.IntType | inspect.FloatType) and not money,
        money=money,
        truth=isinstance(plain, inspect.BoolType),
    )


def _plain(type_: inspect.Type) -> inspect.Type:
    if isinstance(type_, inspect.UnionType):
        return next(part for part in type_.types if not isinstance(part, inspect.NoneType))
    return type_


def _number_reader(name: str, *, whole: bool) -> Reader:
    least, greatest = range_of(name)

    def read(cell: str) -> object:
        if _NUMBER.fullmatch(cell) is None:
            raise CellError(
                detail=f"{cell!r} is not a number", remedy="write it as 1234.5, without a unit and without thousands marks"
            )
        value = float(cell)
        if not least <= value <= greatest:
            raise CellError(detail=f"{cell} is out of range", remedy=f"write a number from {least} to {greatest}")
        if whole and value != int(value):
            raise CellError(detail=f"{cell} is not a whole number", remedy="write a whole number")
        return int(value) if whole else value

    return read


def _text_reader(name: str) -> Reader:
    if name == "currency":
        return _matching(_CURRENCY, "a currency", f"one of {', '.join(sorted(MINOR_PER_MAJOR))}")
    if name in CODES:
        return _matching(_CODE, "a code", "1 to 32 letters, digits, hyphens or underscores")
    if name in CLOSED_SETS:
        words = CLOSED_SETS[name]
        return _one_of(frozenset(words), f"write one of {', '.join(words)}")
    return _text


def _matching(pattern: re.Pattern[str], what: str, remedy: str) -> Reader:
    def read(cell: str) -> object:
        if pattern.match(cell) is None:
            raise CellError(detail=f"{_shown(cell)} is not {what}", remedy=remedy)
        return cell

    return read


def _one_of(words: frozenset[str], remedy: str) -> Reader:
    def read(cell: str) -> object:
        if cell not in words:
            raise CellError(detail=f"{_shown(cell)} is not known", remedy=remedy)
        return cell

    return read


def _text(cell: str) -> object:
    if len(cell) > TEXT_LENGTH_COUNT:
        raise CellError(detail=f"{len(cell)} characters are too many", remedy=f"write at most {TEXT_LENGTH_COUNT}")
    if _CONTROL.search(cell):
        raise CellError(detail=f"{_shown(cell)} has a line break or another control character", remedy="write it in one line")
    if cell.startswith(_FORMULA):
        raise CellError(detail=f"{_shown(cell)} would be run as a formula by a spreadsheet", remedy=f"begin it without {cell[0]}")
    return cell


def _list(cell: str) -> object:
    parts = tuple(part.strip() for part in cell.split(LIST_SEPARATOR) if part.strip())
    if len(parts) > GREATEST_LIST_COUNT:
        raise CellError(detail=f"{len(parts)} parts are too many", remedy=f"write at most {GREATEST_LIST_COUNT}")
    return tuple(_text(part) for part in parts)


def _truth(cell: str) -> object:
    word = cell.lower()  # spreadsheets write TRUE
    if word not in {"true", "false"}:
        raise CellError(detail=f"{_shown(cell)} is neither true nor false", remedy="write true or false")
    return word == "true"


def _shown(cell: Any) -> str:  # noqa: ANN401 - whatever a cell holds
    text = repr(cell)
    return text if len(text) <= 60 else f"{text[:57]}..."  # noqa: PLR2004 - long enough to find it by
