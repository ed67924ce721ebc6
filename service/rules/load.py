"""Read `*.toml` rule files into a RuleSet; every row must name its source."""

from __future__ import annotations

import datetime
import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

import msgspec

from service.rules.ruleset import DefaultRules, FrameRules, HandlingRules, Rule, RuleSet, Source, TakeOffRules

EDITIONS = {"trade-2026.1": ("trade.toml",)}
NEWEST_EDITION = "trade-2026.1"
TABLES = {"frame": FrameRules, "defaults": DefaultRules, "handling": HandlingRules, "take_off": TakeOffRules}


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
    """Decode row by row, so that a fault names its row."""
    data = tomllib.loads(text)
    rows = tuple(_read_row(table, key, row) for table, keys in data.items() for key, row in keys.items())
    values = {table: {row.key.split(".", 1)[1]: row.value for row in rows if row.key.startswith(table + ".")} for table in TABLES}
    if unknown := sorted(set(data) - set(TABLES)):
        message = f"unknown tables {unknown}"
        raise RuleFileError(message)
    try:
        parts = {table: msgspec.convert(values[table], kind) for table, kind in TABLES.items()}
    except msgspec.ValidationError as error:
        raise RuleFileError(str(error)) from error
    return msgspec.convert({"edition": edition, "rows": rows, **parts}, RuleSet)


def _read_row(table: str, key: str, row: dict[str, Any]) -> Rule:
    try:
        read = msgspec.convert(row, _Row)
    except msgspec.ValidationError as error:
        message = f"[{table}.{key}] {error}"
        raise RuleFileError(message) from error
    return Rule(
        key=f"{table}.{key}", value=read.value, valid_from=read.valid_from.isoformat(), source=read.source, note=read.note
    )
