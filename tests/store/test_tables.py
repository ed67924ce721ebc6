from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from sqlalchemy import CheckConstraint, Constraint, Index

from service.catalogue import Account, Appliance, Bracket, FixingLoad, LabourRate, Material, PriceStep, Screen, Trade
from service.store import access_tables, tables

if TYPE_CHECKING:
    import msgspec
    from sqlalchemy import Table


@pytest.mark.parametrize(
    ("table", "kind"),
    [
        (tables.material, Material),
        (tables.appliance, Appliance),
        (tables.screen, Screen),
        (tables.bracket, Bracket),
        (tables.labour_rate, LabourRate),
        (tables.trade, Trade),
        (tables.fixing_load, FixingLoad),
    ],
)
def test_an_item_table_holds_its_struct_and_the_account(table: Table, kind: type[msgspec.Struct]) -> None:
    assert ["account", *kind.__struct_fields__] == list(table.c.keys())


def test_account_and_price_hold_their_structs() -> None:
    assert [*Account.__struct_fields__, "base_account"] == list(tables.account.c.keys())
    assert {*PriceStep.__struct_fields__} - {"valid_from"} | {"revision_id"} == {*tables.price.c.keys()}


def test_all_constraints_and_indexes_have_names() -> None:
    parts = [part for table in tables.METADATA.tables.values() for part in (*table.constraints, *table.indexes)]
    named = [part.name for part in parts if isinstance(part, Constraint | Index)]

    assert len(parts) == len(named)
    assert all(named)
    assert len(named) == len(set(named))


def test_every_number_is_bounded() -> None:
    """A NaN in a snapshot would leave as null; a check keeps it out of every double."""
    doubles = {
        f"{table.name}.{column.name}"
        for table in tables.METADATA.tables.values()
        for column in table.c
        if "DOUBLE" in str(column.type)
    }
    bounded = {
        f"{table.name}.{str(check.sqltext).split()[0]}"
        for table in tables.METADATA.tables.values()
        for check in table.constraints
        if isinstance(check, CheckConstraint) and " between " in str(check.sqltext)
    }

    assert set() == doubles - bounded
    assert 80 < len(doubles)


def test_every_table_but_the_count_and_those_of_keys_and_history_is_watched() -> None:
    others = {access_tables.shop, access_tables.shop_text, access_tables.access_key, access_tables.access_key_use}
    others |= {tables.frozen_part, tables.audit_entry}

    assert {*tables.METADATA.tables.values()} == {*tables.WATCHED, tables.catalogue_version, *others}
