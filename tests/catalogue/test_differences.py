from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.catalogue import (
    Catalogue,
    Change,
    FieldChange,
    RowChange,
    RowKind,
    demo_catalogue,
    demo_rows,
    difference,
    differences,
    make_catalogue,
    rows_of,
)

if TYPE_CHECKING:
    import pytest

DEMO = demo_catalogue()


def counts(before: Catalogue | None, after: Catalogue) -> dict[str, tuple[int, int, int]]:
    told = {one.kind: (one.added_count, one.removed_count, one.changed_count) for one in difference(before, after).counts}
    return {kind: count for kind, count in told.items() if any(count)}


def test_the_same_is_no_difference() -> None:
    told = difference(DEMO, demo_catalogue())

    assert ((), 0) == (told.changes, told.changes_count)
    assert {} == counts(DEMO, DEMO)


def test_a_later_day_alone_is_no_difference() -> None:
    rows = demo_rows()
    later = tuple(msgspec.structs.replace(step, valid_from="2027-01-01") for step in rows.prices)

    assert {} == counts(DEMO, make_catalogue(msgspec.structs.replace(rows, prices=later)))


def test_prices_that_move_say_by_how_much() -> None:
    """By hand: 3.02 to 3.18 is 0.16 / 3.02 = 0.0530 dearer."""
    (step,) = DEMO.prices["TM-1007V"]
    prices = DEMO.prices | {"TM-1007V": (msgspec.structs.replace(step, amount_minor=318),)}
    told = difference(DEMO, msgspec.structs.replace(DEMO, prices=prices))

    field = FieldChange(column="amount", before="3.02", after="3.18")
    expected = RowChange(
        kind=RowKind.PRICES, key=("TM-1007V", "GBP", "1"), change=Change.CHANGED, fields=(field,), amount_ratio=0.053
    )
    assert (expected,) == told.changes


def test_rows_that_come_and_go() -> None:
    screens = {model: row for model, row in DEMO.screens.items() if model != "SC-043"}
    less = msgspec.structs.replace(DEMO, screens=screens)

    assert {"screens": (0, 1, 0)} == counts(DEMO, less)
    assert {"screens": (1, 0, 0)} == counts(less, DEMO)
    assert (RowChange(kind="screens", key=("SC-043",), change=Change.ADDED),) == difference(less, DEMO).changes


def test_every_kind_of_value_is_told_as_text() -> None:
    fire = DEMO.appliances["AF-302"]
    changed = msgspec.structs.replace(fire, options=("a", "b"), may_be_boarded_over=None, mass_kg=1.5)
    told = difference(DEMO, msgspec.structs.replace(DEMO, appliances=DEMO.appliances | {"AF-302": changed}))

    after = {field.column: field.after for field in told.changes[0].fields}
    assert {"options": "a; b", "may_be_boarded_over": "", "mass_kg": "1.5"} == after


def test_settings_are_told_too() -> None:
    account = msgspec.structs.replace(DEMO.account, margin_ratio=0.25, delivery_minor=3500)
    told = difference(DEMO, msgspec.structs.replace(DEMO, account=account))

    assert [("margin_ratio", "0.2", "0.25"), ("delivery", "30.00", "35.00")] == [
        (field.column, field.before, field.after) for field in told.changes[0].fields
    ]


def test_a_first_revision_adds_everything() -> None:
    expected = {kind: (len(getattr(demo_rows(), kind)), 0, 0) for kind in RowKind}

    assert expected == counts(None, DEMO)


def test_all_changes_are_counted_and_the_first_are_shown(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(differences, "MOST_CHANGES_COUNT", 3)
    told = difference(None, DEMO)

    assert (3, sum(len(rows_of(DEMO, kind)) for kind in RowKind)) == (len(told.changes), told.changes_count)
