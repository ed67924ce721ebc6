"""Every row of `service/rules/*.toml` has its value, its first day and its source, and a key that ends in the unit."""

from __future__ import annotations

import datetime
import tomllib
from typing import Any

from service.units import UNIT_SUFFIXES
from tests.guards.tree import ROOT

OURS = "house choice"
MEMORY = "from memory"  # a document that is cited from memory says so in the note
PLAIN_SOURCES = ("common practice, no source", MEMORY, OURS)  # they have no edition or clause


def faults_of(table: dict[str, Any], path: str = "") -> tuple[str, ...]:
    """What is wrong with the rows of a table; a table of tables is no row itself."""
    if table and all(isinstance(value, dict) for value in table.values()) and "source" not in table:
        return tuple(fault for key, below in table.items() for fault in faults_of(below, f"{path}.{key}".lstrip(".")))
    return tuple(f"[{path}] {fault}" for fault in _row_faults(table, path.rpartition(".")[2]))


def _row_faults(row: dict[str, Any], key: str) -> list[str]:
    source = row.get("source")
    faults = [f"lacks {name}" for name in ("value", "valid_from", "source") if name not in row]
    if not isinstance(row.get("valid_from", datetime.date.min), datetime.date):
        faults.append("valid_from is no date")
    if _is_number(row.get("value")) and not key.endswith(UNIT_SUFFIXES):
        faults.append("the key does not end in a unit")
    return [*faults, *(_source_faults(source, row) if source is not None else [])]


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _source_faults(source: Any, row: dict[str, Any]) -> list[str]:  # noqa: ANN401 - TOML holds anything
    document = source.get("document", "") if isinstance(source, dict) else ""
    if not document:
        return ["source names no document"]
    if document == OURS and not row.get("note"):
        return [f"{OURS} without its reason in note"]
    placed = source.get("edition") or source.get("clause") or MEMORY in row.get("note", "")
    if document not in PLAIN_SOURCES and not placed:
        return ["source names neither edition nor clause"]
    return []


def test_every_rule_has_its_source() -> None:
    files = sorted(ROOT.joinpath("service", "rules").glob("*.toml"))

    assert files
    for file in files:
        assert () == faults_of(tomllib.loads(file.read_text("utf-8"))), file.name


def test_planted_rows_are_found() -> None:
    planted = """
[fire.gap_mm]
value = 10
valid_from = 2026-01-01
source = { document = "common practice, no source" }
[fire.side]
value = 10
valid_from = "soon"
source = { document = "EN 9999" }
[fire.top_mm]
valid_from = 2026-01-01
source = { clause = "4.2" }
[fire.lap_mm]
value = 1
valid_from = 2026-01-01
source = { document = "house choice" }
[fire.told_mm]
value = 1
valid_from = 2026-01-01
source = { document = "EN 9999" }
note = "from memory"
[wood.bare_mm]
value = 1
valid_from = 2026-01-01
"""

    found = faults_of(tomllib.loads(planted))

    expected = (
        "[fire.side] valid_from is no date",
        "[fire.side] the key does not end in a unit",
        "[fire.side] source names neither edition nor clause",
        "[fire.top_mm] lacks value",
        "[fire.top_mm] source names no document",
        "[fire.lap_mm] house choice without its reason in note",
        "[wood.bare_mm] lacks source",
    )
    assert expected == found
