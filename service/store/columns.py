"""Columns and their checks from the catalogue's own types, so that a table can hold neither more nor less than its struct.

The migrations spell everything out; a test compares them with what is made here.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec
from msgspec import inspect
from sqlalchemy import ARRAY, BigInteger, Boolean, CheckConstraint, Column, Double, Integer, Text, text

from service.catalogue import CLOSED_SETS, CODE_PATTERN, CODES, CURRENCY_PATTERN, TEXT_LENGTH_COUNT, range_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sqlalchemy.types import TypeEngine

ADDED_LATER = {"order_codes": "'{}'"}  # columns that a version of the service before them writes no value of


def key_text() -> Text:
    """Type of a key: bytewise order, the same on every machine, which cursors rely on."""
    return Text(collation="C")


def columns_of(kind: type[msgspec.Struct], keys: tuple[str, ...]) -> Iterator[Column[Any]]:
    """One column for each field of a struct; the fields named in `keys` sort bytewise."""
    for field in _fields(kind):
        name = field.encode_name
        type_, nullable = _plain(field.type)
        default = text(ADDED_LATER[name]) if name in ADDED_LATER else None
        yield Column(name, key_text() if name in keys else _sql_type(name, type_), nullable=nullable, server_default=default)


def checks_of(kind: type[msgspec.Struct]) -> Iterator[CheckConstraint]:
    """One check, named after its column, for each field that could hold nonsense: long text, a negative number, NaN."""
    for field in _fields(kind):
        condition = _condition(field.encode_name, _plain(field.type)[0])
        if condition:
            yield CheckConstraint(condition, name=field.encode_name)


def _fields(kind: type[msgspec.Struct]) -> tuple[inspect.Field, ...]:
    info = inspect.type_info(kind)
    if not isinstance(info, inspect.StructType):
        message = f"{kind} is not a struct"
        raise TypeError(message)
    return info.fields


def _plain(type_: inspect.Type) -> tuple[inspect.Type, bool]:
    """The type without `None`, and whether there was one."""
    if not isinstance(type_, inspect.UnionType):
        return type_, False
    (plain,) = (part for part in type_.types if not isinstance(part, inspect.NoneType))
    return plain, True


def _sql_type(name: str, type_: inspect.Type) -> TypeEngine[Any]:
    match type_:
        case inspect.StrType():
            return Text()
        case inspect.BoolType():
            return Boolean()
        case inspect.FloatType():
            return Double()
        case inspect.IntType():
            return BigInteger() if name.endswith("_minor") else Integer()
        case inspect.VarTupleType(item_type=inspect.StrType()):
            return ARRAY(Text())
    message = f"no column type for {name}: {type_}"
    raise TypeError(message)


def _condition(name: str, type_: inspect.Type) -> str:
    match type_:
        case inspect.StrType():
            return _text_condition(name)
        case inspect.FloatType() | inspect.IntType():
            return range_condition(name)
    return ""


def _text_condition(name: str) -> str:
    if name == "currency":
        return f"currency ~ '{CURRENCY_PATTERN}'"
    if name in CODES:
        return f"{name} ~ '{CODE_PATTERN}'"
    if name in CLOSED_SETS:
        return f"{name} in ({', '.join(repr(word) for word in CLOSED_SETS[name])})"
    return f"char_length({name}) <= {TEXT_LENGTH_COUNT}"


def range_condition(name: str) -> str:
    """The range that a number may lie in, by its name; NaN and infinity lie in none."""
    least, greatest = range_of(name)
    return f"{name} between {least} and {greatest}"
