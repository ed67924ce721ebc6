from __future__ import annotations

import pytest

from service.price import SaleKind
from service.price.sale import sale_lines
from service.survey.terms import SuppliedBy
from tests.examples_of import changed
from tests.price.purse_facts import CATALOGUE, purse_of, without_price
from tests.sold_examples import sell, sold


@pytest.mark.parametrize(
    ("mark_up", "margin"),
    [(0.20, 1 / 6), (0.25, 0.20), (1 / 3, 0.25), (0.50, 1 / 3)],
)
def test_mark_up_is_on_cost_and_margin_on_price(mark_up: float, margin: float) -> None:
    """`knowledge/labour.md`, section 6: 20 mark-up = 16.67 margin, 25 = 20.00, 33.33 = 25.00, 50 = 33.33."""
    by_mark_up, _none = sale_lines(100_000, purse_of("A", by_margin=False, profit_ratio=mark_up))
    by_margin, _none = sale_lines(100_000, purse_of("A", by_margin=True, profit_ratio=margin))

    assert by_mark_up[0].net_minor == by_margin[0].net_minor
    assert round(100_000 * (1 + mark_up)) == by_mark_up[0].net_minor


def test_workings_say_which_of_the_two_it_is() -> None:
    margin, _none = sale_lines(100_000, purse_of("A"))
    mark_up, _none = sale_lines(100_000, purse_of("B"))

    assert "margin 20 percent: cost / 0.8" == margin[0].working
    assert "mark-up 25 percent: cost x 1.25" == mark_up[0].working


@pytest.mark.parametrize(
    ("who", "codes"),
    [
        ({}, ["AF-302", "BK-301"]),
        ({"screen_supplied_by": SuppliedBy.SHOP}, ["AF-302", "SC-043", "BK-301"]),
        ({"appliance_supplied_by": SuppliedBy.CUSTOMER, "bracket_supplied_by": SuppliedBy.CUSTOMER}, []),
    ],
)
def test_who_supplies_what(who: dict[str, SuppliedBy], codes: list[str]) -> None:
    lines, missing = sale_lines(1_000, purse_of("A", CATALOGUE, **who))

    assert codes == [line.code for line in lines if line.kind is SaleKind.SUPPLY]
    assert () == missing


def test_a_supply_is_the_purchase_and_its_handling() -> None:
    """Price A: 1040.00 + 10 percent = 1144.00."""
    fire = sale_lines(1_000, purse_of("A"))[0][1]

    assert (114_400, "1040.00 + handling 10 percent; no risk, overhead or profit") == (fire.net_minor, fire.working)


def test_a_supply_without_a_price_is_named() -> None:
    lines, missing = sale_lines(1_000, purse_of("A", without_price("AF-302")))

    assert ("1 x fire AF-302",) == missing
    assert ["BK-301"] == [line.code for line in lines if line.kind is SaleKind.SUPPLY]


def test_a_fire_that_only_bears_a_listed_name_has_no_price() -> None:
    """A custom fire called AF-302 is not the catalogue's, whatever it is called; nor is one of a size class."""
    custom = {
        "kind": "custom", "name": "AF-302", "open_ends_count": 2, "body_width_mm": 1335, "body_height_mm": 480,
        "body_depth_mm": 330, "mass_kg": 41, "heat_output_w": 2000, "connection": "hard_wired", "outlet_position": "front_bottom",
    }  # fmt: skip
    of_class = {"kind": "size_class", "open_ends_count": 2, "length_mm": 1335}

    for fire, name in ((custom, "AF-302"), (of_class, "like AF-302")):
        assert (f"1 x fire {name}",) == sell(changed(sold("A"), {"/survey/brief/appliance": fire})).price.unpriced


def test_a_discount_comes_off_the_price_before_tax() -> None:
    """`knowledge/labour.md`, section 6: after discount d the margin is 1 - (1 - g) / (1 - d)."""
    lines, _none = sale_lines(80_000, purse_of("A", discount_ratio=0.1, appliance_supplied_by=SuppliedBy.CUSTOMER,
                                               bracket_supplied_by=SuppliedBy.CUSTOMER))  # fmt: skip
    net = sum(line.net_minor for line in lines)

    assert [100_000, -10_000] == [line.net_minor for line in lines]
    assert 1 - (1 - 0.2) / (1 - 0.1) == pytest.approx(1 - 80_000 / net)


@pytest.mark.parametrize(("multiple", "line"), [(500, 471), (100, 71), (0, None), (1, None)])
def test_rounding_is_a_line_of_its_own(multiple: int, line: int | None) -> None:
    """Price B: 4970.29 up to 4975.00 ex VAT."""
    lines, _none = sale_lines(281_767, purse_of("B", round_up_to_minor=multiple))
    rounding = [one.net_minor for one in lines if one.kind is SaleKind.ROUNDING]

    assert ([] if line is None else [line]) == rounding


def test_provisional_sums_stand_as_stated() -> None:
    lines, _none = sale_lines(281_767, purse_of("B"))
    sums = [(line.name, line.net_minor) for line in lines if line.kind is SaleKind.PROVISIONAL_SUM]

    assert [("provisional sum: new circuit", 50_000)] == sums
