"""Read `*.toml` rule files into a RuleSet; every row must name its source."""

from __future__ import annotations

import datetime
import tomllib
from functools import cache
from importlib.resources import files
from typing import Final

import msgspec

from service.rules.ruleset import DefaultRules, FrameRules, HandlingRules, Rule, RuleSet, Source, TakeOffRules

EDITIONS = {"trade-2026.1": ("trade.toml",)}
NEWEST_EDITION = "trade-2026.1"
TABLES: Final[dict[str, type[msgspec.Struct]]] = {
    "frame": FrameRules,
    "defaults": DefaultRules,
    "handling": HandlingRules,
    "take_off": TakeOffRules,
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
    text = "\n".join(files("service.rules").joinpath(name).read_text("utf-8") for name in EDITIONS[edition])
    return parse_rules(text, edition)


def parse_rules(text: str, edition: str) -> RuleSet:
    """Decode row by row, so that a fault names its row.

    Raises:
        RuleFileError: no TOML, a row without a source, an unknown or a missing row.
    """
    data = _read_tables(text)
    rows = tuple(_read_row(table, key, row) for table, keys in data.items() for key, row in keys.items())
    parts = {table: _read_part(table, rows) for table in TABLES}
    return msgspec.convert({"edition": edition, "rows": rows, **parts}, RuleSet)


def _read_tables(text: str) -> dict[str, dict[str, object]]:
    """Tables of a file, each with its rows."""
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        message = f"not TOML: {error}"
        raise RuleFileError(message) from error
    if unknown := sorted(name for name, rows in data.items() if name not in TABLES or not isinstance(rows, dict)):
        message = f"unknown tables {unknown}"
        raise RuleFileError(message)
    return data


def _read_part(table: str, rows: tuple[Rule, ...]) -> object:
    values = {row.key.partition(".")[2]: row.value for row in rows if row.key.startswith(f"{table}.")}
    try:
        return msgspec.convert(values, TABLES[table])
    except msgspec.ValidationError as error:
        message = f"[{table}] {error}"
        raise RuleFileError(message) from error


def _read_row(table: str, key: str, row: object) -> Rule:
    try:
        read = msgspec.convert(row, _Row)
    except msgspec.ValidationError as error:
        message = f"[{table}.{key}] {error}"
        raise RuleFileError(message) from error
    return Rule(
        key=f"{table}.{key}", value=read.value, valid_from=read.valid_from.isoformat(), source=read.source, note=read.note
    )
