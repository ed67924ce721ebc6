"""Read `*.toml` rule files into a RuleSet; every row must name its source."""

from __future__ import annotations

import datetime
import tomllib
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Final, cast

import msgspec

from service.rules.eurocode import (
    ActionRules,
    DurationFactors,
    MemberRules,
    PartialFactors,
    ScrewRules,
    StrengthClass,
    WallLoad,
    WallRules,
)
from service.rules.limits import AccessRules, HeatRules, LiftZone, PowerRules, ViewingRules
from service.rules.ruleset import DefaultRules, FrameRules, HandlingRules, Rule, RuleSet, Source, TakeOffRules

if TYPE_CHECKING:
    from collections.abc import Iterator

# Files in order: a row of a later file takes the place of the row of that name in an earlier one.
RECOMMENDED: Final = ("trade.toml", "eurocode.toml", "limits.toml")
EDITIONS: Final = {
    "trade-2026.1": RECOMMENDED,
    "recommended-2026.1": RECOMMENDED,
    "gb-2026.1": (*RECOMMENDED, "gb.toml"),
}
NEWEST_EDITION = "trade-2026.1"
TABLES: Final[dict[str, type[msgspec.Struct]]] = {
    "frame": FrameRules,
    "defaults": DefaultRules,
    "handling": HandlingRules,
    "take_off": TakeOffRules,
    "partial": PartialFactors,
    "members": MemberRules,
    "actions": ActionRules,
    "screws": ScrewRules,
    "walls": WallRules,
    "heat": HeatRules,
    "power": PowerRules,
    "viewing": ViewingRules,
    "access": AccessRules,
}
# Tables of tables, one for each thing that has a name: `[timber.C16]`.
NAMED_TABLES: Final[dict[str, type[msgspec.Struct]]] = {
    "timber": StrengthClass,
    "materials": DurationFactors,
    "wall_loads": WallLoad,
    "lifting": LiftZone,
}


class RuleFileError(ValueError):
    """A rule file that cannot be used, with the table and row at fault."""


class _Row(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    value: int | float
    valid_from: datetime.date
    source: Source
    note: str = ""


@cache
def load_rules(edition: str = NEWEST_EDITION) -> RuleSet:
    """The rule set of an edition.

    Raises:
        KeyError: no such edition.
        RuleFileError: a row without a source, an unknown or a missing row.
    """
    texts = (files("service.rules").joinpath(name).read_text("utf-8") for name in EDITIONS[edition])
    return parse_rules(edition, *texts)


def parse_rules(edition: str, *texts: str) -> RuleSet:
    """Decode row by row, so that a fault names its row; a row of a later text takes the place of an earlier one.

    Raises:
        RuleFileError: no TOML, a row without a source, an unknown or a missing row.
    """
    rows = {row.key: row for text in texts for row in _read_rows(text)}
    parts = {table: _read_part(table, rows) for table in TABLES}
    named = {table: _read_named(table, rows) for table in NAMED_TABLES}
    return msgspec.convert({"edition": edition, "rows": tuple(rows.values()), **parts, **named}, RuleSet)


def _read_rows(text: str) -> Iterator[Rule]:
    """Rows of a file in its order."""
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        message = f"not TOML: {error}"
        raise RuleFileError(message) from error
    known = TABLES.keys() | NAMED_TABLES.keys()
    if unknown := sorted(name for name, rows in data.items() if name not in known or not isinstance(rows, dict)):
        message = f"unknown tables {unknown}"
        raise RuleFileError(message)
    for table, rows in data.items():
        yield from _rows_below(table, rows)


def _rows_below(path: str, tree: dict[str, object]) -> Iterator[Rule]:
    for key, below in tree.items():
        where = f"{path}.{key}"
        if _is_table(below):
            yield from _rows_below(where, cast("dict[str, object]", below))
        else:
            yield _read_row(where, below)


def _is_table(tree: object) -> bool:
    """Whether there are rows, or tables of rows, below: a row itself holds more than tables."""
    return isinstance(tree, dict) and "source" not in tree and all(isinstance(below, dict) for below in tree.values())


def _read_row(key: str, row: object) -> Rule:
    try:
        read = msgspec.convert(row, _Row)
    except msgspec.ValidationError as error:
        message = f"[{key}] {error}"
        raise RuleFileError(message) from error
    return Rule(key=key, value=read.value, valid_from=read.valid_from.isoformat(), source=read.source, note=read.note)


def _read_part(table: str, rows: dict[str, Rule]) -> object:
    return _converted(table, _values_of(table, rows), TABLES[table])


def _read_named(table: str, rows: dict[str, Rule]) -> tuple[object, ...]:
    named: dict[str, dict[str, object]] = {}
    for key, value in _values_of(table, rows).items():
        name, _, field = key.rpartition(".")
        named.setdefault(name, {"name": name})[field] = value
    if not named:
        message = f"[{table}] has no rows"
        raise RuleFileError(message)
    return tuple(_converted(f"{table}.{name}", values, NAMED_TABLES[table]) for name, values in named.items())


def _values_of(table: str, rows: dict[str, Rule]) -> dict[str, object]:
    """Values of a table by what follows its name in their keys."""
    return {key.removeprefix(f"{table}."): row.value for key, row in rows.items() if key.startswith(f"{table}.")}


def _converted(where: str, values: dict[str, object], kind: type[msgspec.Struct]) -> object:
    try:
        return msgspec.convert(values, kind)
    except msgspec.ValidationError as error:
        message = f"[{where}] {error}"
        raise RuleFileError(message) from error
