from __future__ import annotations

import re

import msgspec
import pytest

from service.catalogue import demo_catalogue
from tests.checks.row_cases import A
from tests.labour.worked_hours import TOGETHER
from tests.quote.text_facts import designed, part, read, text_of

OWN = "PRICE (GBP): the shop's own reckoning, not for the customer"
SEEN = "PRICE (GBP): what the customer sees"


@pytest.mark.parametrize("name", ["A", "B", "C"])
def test_the_charges_on_the_page_add_up(name: str) -> None:
    """Lines of the bill but disposal and hire = materials."""
    lines = part(text_of(name), "WHAT TO BUY")
    charges = {line[:8]: round(100 * float(line.split()[-1])) for line in lines if re.match(r"[A-Z]{2}-\d{4}", line)}
    materials = round(100 * float(lines[-1].split()[-1]))

    assert materials == sum(minor for code, minor in charges.items() if code not in {"SD-8050A", "SD-8070X"})
    assert len(designed(name).bill.lines) == len(charges)


def test_what_to_buy_stands_under_who_sells_it() -> None:
    lines = part(text_of("A"), "WHAT TO BUY")
    sellers = [line for line in lines if line.startswith("from ")]

    assert ["from supplier_a, 3 days:", "from supplier_b, 2 days:", "from supplier_d:", "from supplier_e:"] == sellers
    assert lines.index("from supplier_b, 2 days:") < next(
        index for index, line in enumerate(lines) if line.startswith("BD-2015R")
    )


def test_a_line_of_the_bill() -> None:
    lines = part(text_of("A"), "WHAT TO BUY")

    assert "FX-3040E  Wood screw 4.0 x 40 countersunk                               158    1 box           5.10" in lines
    assert "BD-2015R  MDF 15 standard                                                      3 sheet        71.70" in lines


def test_what_has_no_price_stands_apart() -> None:
    catalogue = demo_catalogue()
    prices = {code: steps for code, steps in catalogue.prices.items() if code != "FX-3040E"}
    text = read(A, msgspec.structs.replace(catalogue, prices=prices))

    assert "from nobody on the list:" in part(text, "WHAT TO BUY")
    assert any(line.endswith("no price") for line in part(text, "WHAT TO BUY"))
    assert "provisional sum, still to be priced: 1 x Wood screw 4.0 x 40 countersunk" in part(text, SEEN)


@pytest.mark.parametrize("name", ["A", "B", "C"])
def test_hours_on_the_page(name: str) -> None:
    """`knowledge/worked-examples.md`, hours of each example."""
    hours = part(text_of(name), "HOURS")

    assert any(line.split()[-1] == f"{TOGETHER[name]:.2f}" and "together" in line for line in hours)


def test_tasks_say_what_their_hours_are_for() -> None:
    hours = part(text_of("B"), "HOURS")

    assert "L04   cut timber                        1.70  joiner          piece 54, bar 14" in hours
    assert "L07   raise upper                       4.00  joiner + mate   full height with open end" in hours
    assert "L18   fire in                           2.00  joiner + mate" in hours
    assert "joiner 24.535, mate 6.025, decorator 3.2, plasterer 3.04, electrician 2 visits; 6 visit days" in hours


def test_the_reckoning_of_the_shop() -> None:
    """`knowledge/worked-examples.md`, "Price A"."""
    lines = part(text_of("A"), OWN)

    assert "  labour joiner               865.47  25.455 h x 34.00" in lines
    assert "= direct cost                2083.58  sum" in lines
    assert "  risk                         62.51  3 percent of direct cost: survey measured" in lines


def test_what_the_customer_sees() -> None:
    """`knowledge/worked-examples.md`, "Price B"."""
    lines = part(text_of("B"), SEEN)

    assert [
        "  works                                                3522.09",
        "  supply of fire AF-201                                 913.00",
        "  supply of screen bracket BK-402                        35.20",
        "  provisional sum: new circuit                          500.00",
        "  rounding                                                4.71",
        "= net                                                  4975.00",
        "  tax                                                   995.00  20 percent, rounded per line",
        "= TOTAL                                                5970.00",
        "payments   deposit 1492.50, frame complete 2388.00, hand-over 2089.50",
        "valid      until 2026-12-31",
    ] == lines
