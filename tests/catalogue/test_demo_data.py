"""The demo data that travels with the service, read against the files by other means (the `csv` module, by hand)."""

from __future__ import annotations

import csv
import io
from decimal import Decimal

import msgspec
import pytest

from service.catalogue import DEMO_FILES, Catalogue, demo_catalogue, demo_text


def plain_rows(name: str) -> list[dict[str, str]]:
    """Rows of a demo file as plain text."""
    return list(csv.DictReader(io.StringIO(demo_text(name))))


def counts(catalogue: Catalogue) -> dict[str, int]:
    """How many rows a catalogue holds, by demo file."""
    return {
        "accounts": 1,
        "appliances": len(catalogue.appliances),
        "brackets": len(catalogue.brackets),
        "fixing_loads": len(catalogue.fixing_loads),
        "labour": len(catalogue.labour_rates),
        "materials": len(catalogue.materials),
        "prices": sum(len(steps) for steps in catalogue.prices.values()),
        "screens": len(catalogue.screens),
        "trades": len(catalogue.trades),
    }


def test_no_row_is_lost() -> None:
    lines = {name: sum(1 for line in demo_text(name).splitlines() if line.strip()) - 1 for name in DEMO_FILES}

    assert lines == counts(demo_catalogue())
    assert all(count > 0 for count in lines.values())


def test_prices_are_minor_units() -> None:
    rows = plain_rows("prices")
    steps = [step for group in demo_catalogue().prices.values() for step in group]

    assert {"GBP"} == {row["currency"] for row in rows} == {step.currency for step in steps}
    assert sum(Decimal(row["amount"]) for row in rows) * 100 == sum(step.amount_minor for step in steps)
    assert 302 == demo_catalogue().prices["TM-1007V"][0].amount_minor  # 3.02 in the file


def test_hours_and_account_money_are_minor_units() -> None:
    catalogue = demo_catalogue()

    (account,) = plain_rows("accounts")
    assert Decimal(account["travel_per_day"]) * 100 == catalogue.account.travel_per_day_minor
    assert Decimal(account["delivery_free_from"]) * 100 == catalogue.account.delivery_free_from_minor
    assert {row["trade"]: Decimal(row["charge_per_hour"]) * 100 for row in plain_rows("trades")} == {
        name: trade.charge_per_hour_minor for name, trade in catalogue.trades.items()
    }


def test_lists_are_parted() -> None:
    catalogue = demo_catalogue()

    assert ("supplier_a", "supplier_b", "supplier_c") == catalogue.account.delivery_suppliers
    assert {row["model"]: tuple(row["options"].split(";")) for row in plain_rows("appliances") if row["options"]} == {
        model: appliance.options for model, appliance in catalogue.appliances.items() if appliance.options
    }


def test_steps_of_a_price_rise() -> None:
    for code, steps in demo_catalogue().prices.items():
        assert [step.from_count for step in steps] == sorted({step.from_count for step in steps}), code
        assert 1 == steps[0].from_count, code


def test_what_one_row_names_another_holds() -> None:
    catalogue = demo_catalogue()
    sold = catalogue.materials.keys() | catalogue.appliances.keys() | catalogue.screens.keys() | catalogue.brackets.keys()

    assert set() == {row.code for row in catalogue.fixing_loads} - catalogue.materials.keys()
    assert set() == {row.screw_code for row in catalogue.materials.values() if row.screw_code} - catalogue.materials.keys()
    assert set() == {row.bracket for row in catalogue.screens.values() if row.bracket} - catalogue.brackets.keys()
    assert set() == {row.trade for row in catalogue.labour_rates} - catalogue.trades.keys()
    assert set() == catalogue.prices.keys() - sold
    assert set() == catalogue.materials.keys() - catalogue.prices.keys()


@pytest.mark.parametrize("name", ["materials", "appliances", "screens", "brackets", "fixing_loads", "trades", "accounts"])
def test_every_row_says_that_it_is_invented(name: str) -> None:
    assert {"invented"} == {row["standing"] for row in plain_rows(name)}


def test_a_catalogue_goes_out_and_comes_back() -> None:
    catalogue = demo_catalogue()

    assert catalogue == msgspec.msgpack.decode(msgspec.msgpack.encode(catalogue), type=Catalogue)
    assert catalogue == msgspec.json.decode(msgspec.json.encode(catalogue), type=Catalogue)
