from __future__ import annotations

import msgspec
import pytest

from service.bill import LineGroup
from service.price.purse import bought_minor, price_bill
from service.survey.terms import TaxKind
from tests.price.purse_facts import CATALOGUE, purse_of, without_price
from tests.sold_examples import made, sell, sold


def test_a_thing_without_a_price_is_named_and_never_taken_as_nothing() -> None:
    priced, unpriced = price_bill(purse_of("A", without_price("FX-3040E", "SD-8050A")))

    assert ("1 x Wood screw 4.0 x 40 countersunk", "1 x Waste disposal, per half cubic metre") == unpriced
    assert not {"FX-3040E", "SD-8050A"} & {line.code for line in priced}
    assert all(line.charged_minor > 0 for line in priced)


def test_a_quote_with_an_unpriced_thing_says_that_it_is_not_complete() -> None:
    whole, missing = sell(sold("A")), sell(sold("A"), without_price("FX-3040E", "AF-302"))

    assert ("1 x Wood screw 4.0 x 40 countersunk", "1 x fire AF-302") == missing.price.unpriced
    assert 510 == whole.price.materials_minor - missing.price.materials_minor


def test_a_price_that_is_not_valid_yet_is_no_price() -> None:
    """The demo book holds from 2026-09-01."""
    _priced, unpriced = price_bill(purse_of("A", date="2026-08-31"))

    assert len(made("A").bill.lines) == len(unpriced)


@pytest.mark.parametrize(("packs", "each_minor"), [(9, 2_390), (10, 2_271), (11, 2_271)])
def test_ten_boards_are_cheaper_each(packs: int, each_minor: int) -> None:
    """Demo price book: BD-2015R 23.90, from 10 on 22.71."""
    at = purse_of("A")
    lines = tuple(msgspec.structs.replace(line, packs_count=packs) if line.code == "BD-2015R" else line for line in at.bill.lines)
    bill = msgspec.structs.replace(at.bill, lines=lines)
    priced, _unpriced = price_bill(msgspec.structs.replace(at, bill=bill))
    board = next(line for line in priced if line.code == "BD-2015R")

    assert (each_minor, packs * each_minor) == (board.each_minor, board.charged_minor)


@pytest.mark.parametrize(("amount", "cost"), [(413, 496), (552, 662), (2_390, 2_868), (1, 1), (3, 4)])
def test_a_seller_that_is_not_registered_bears_the_tax_on_what_it_buys(amount: int, cost: int) -> None:
    """`knowledge/labour.md`, section 7: catalogue price x 1.20, half up. 4.13 -> 4.956 -> 4.96."""
    assert cost == bought_minor(amount, purse_of("A", tax_kind=TaxKind.NOT_REGISTERED))
    assert amount == bought_minor(amount, purse_of("A"))


def test_dust_sheets_are_charged_in_part() -> None:
    """`knowledge/materials.md`, section 2: reusable, 25 percent. 4 x 9.40 x 0.25 = 9.40."""
    sheets = next(line for line in made("A").price.bill_lines if line.code == "SD-8010G")

    assert (940, 940) == (sheets.each_minor, sheets.charged_minor)


def test_groups_follow_the_bill() -> None:
    purse = purse_of("A")
    groups = {line.code: purse.group_of(line) for line in made("A").price.bill_lines}

    assert LineGroup.HIRE is groups["SD-8070X"]
    assert LineGroup.MATERIAL is groups["BD-2015R"]


def test_suppliers_and_lead_times_come_from_the_book() -> None:
    step = CATALOGUE.prices["TM-1049R"][0]
    line = next(one for one in made("A").price.bill_lines if one.code == "TM-1049R")

    assert (step.supplier, step.lead_days) == (line.supplier, line.lead_days)
