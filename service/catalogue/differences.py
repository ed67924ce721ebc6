"""What changes from one catalogue to another: row by row, field by field, and by how much prices move."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING, Final

import msgspec

from service.catalogue.cells import column_of
from service.catalogue.kinds import FORMS, Row, RowKind, key_of
from service.catalogue.money_text import money

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from service.catalogue.rates import Account
    from service.catalogue.snapshot import Catalogue

MOST_CHANGES_COUNT: Final = 1_000
SETTINGS: Final = "settings"


class Change(StrEnum):
    """What happens to a row."""

    ADDED = "added"
    REMOVED = "removed"
    CHANGED = "changed"


class FieldChange(msgspec.Struct, frozen=True, kw_only=True):
    """One field of a row that changes, as text."""

    column: str
    before: str
    after: str


class RowChange(msgspec.Struct, frozen=True, kw_only=True):
    """One row that comes, goes or changes."""

    kind: str  # a kind of rows, or `settings`
    key: tuple[str, ...]
    change: Change
    fields: tuple[FieldChange, ...] = ()
    amount_ratio: float | None = None  # by how much of itself a price moves: 0.05 is 5 percent dearer


class KindCount(msgspec.Struct, frozen=True, kw_only=True):
    """How many rows of a kind come, go and change."""

    kind: str
    added_count: int
    removed_count: int
    changed_count: int


class Difference(msgspec.Struct, frozen=True, kw_only=True):
    """What changes; the first thousand changes in full, all of them counted."""

    counts: tuple[KindCount, ...]
    changes: tuple[RowChange, ...]
    changes_count: int


def rows_of(catalogue: Catalogue | None, kind: RowKind) -> tuple[Row, ...]:
    """The rows of one kind, in their order."""
    if catalogue is None:
        return ()
    if kind is RowKind.PRICES:
        return tuple(step for steps in catalogue.prices.values() for step in steps)
    found: dict[str, Row] | tuple[Row, ...] = getattr(catalogue, kind)
    return tuple(found.values()) if isinstance(found, dict) else found


def difference(before: Catalogue | None, after: Catalogue) -> Difference:
    """What changes from one catalogue to the next; None: there was none."""
    found = [_settings(None if before is None else before.account, after.account)]
    found += [list(_changes(kind, rows_of(before, kind), rows_of(after, kind))) for kind in RowKind]
    changes = [change for group in found for change in group]
    return Difference(
        counts=tuple(_count(name, group) for name, group in zip((SETTINGS, *RowKind), found, strict=True)),
        changes=tuple(changes[:MOST_CHANGES_COUNT]),
        changes_count=len(changes),
    )


def _settings(before: Account | None, after: Account) -> list[RowChange]:
    if before is None:
        return []
    fields = tuple(_fields(before, after, after.__struct_fields__))
    return [RowChange(kind=SETTINGS, key=(), change=Change.CHANGED, fields=fields)] if fields else []


def _changes(kind: RowKind, before: Iterable[Row], after: Iterable[Row]) -> Iterator[RowChange]:
    old, new = ({key_of(kind, row): row for row in rows} for rows in (before, after))
    names = tuple(name for name in FORMS[kind].struct.__struct_fields__ if name not in FORMS[kind].left_out)
    for key in sorted(old.keys() | new.keys()):
        if key not in new:
            yield RowChange(kind=kind, key=key, change=Change.REMOVED)
        elif key not in old:
            yield RowChange(kind=kind, key=key, change=Change.ADDED)
        elif old[key] != new[key] and (fields := tuple(_fields(old[key], new[key], names))):
            ratio = _ratio(old[key], new[key])
            yield RowChange(kind=kind, key=key, change=Change.CHANGED, fields=fields, amount_ratio=ratio)


def _fields(before: msgspec.Struct, after: msgspec.Struct, names: Iterable[str]) -> Iterator[FieldChange]:
    for name in names:
        if getattr(before, name) != getattr(after, name):
            yield FieldChange(column=column_of(name), before=_text(before, name), after=_text(after, name))


def _text(row: msgspec.Struct, name: str) -> str:
    value = getattr(row, name)
    match value:
        case None:
            return ""
        case bool():
            return "true" if value else "false"
        case int() if name.endswith("_minor"):
            return money(value, getattr(row, "currency")).amount  # noqa: B009 - only structs with money have a currency
        case float():
            return f"{value:g}"
        case tuple():
            return "; ".join(value)
    return str(value)


def _ratio(before: Row, after: Row) -> float | None:
    old, new = getattr(before, "amount_minor", None), getattr(after, "amount_minor", None)
    return None if not old or new is None or old == new else round(new / old - 1, 4)


def _count(kind: str, changes: list[RowChange]) -> KindCount:
    counts = {change: sum(one.change is change for one in changes) for change in Change}
    return KindCount(
        kind=kind,
        added_count=counts[Change.ADDED],
        removed_count=counts[Change.REMOVED],
        changed_count=counts[Change.CHANGED],
    )
