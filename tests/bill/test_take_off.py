from __future__ import annotations

import pytest

from service.bill import LineGroup
from service.survey.terms import Scope
from tests.bill.worked_bills import MATERIALS_MINOR, half_a_digit, worked_bill
from tests.sold_examples import made, sell, sold

SACKS = "SD-8020T"


@pytest.mark.parametrize("name", ["A", "B", "C"])
def test_the_whole_bill_is_the_worked_one(name: str) -> None:
    """`knowledge/worked-examples.md`, "Bill A", "Bill B", "Bill C": code, need, packs, price of a pack, charge."""
    prices = {line.code: line for line in made(name).price.bill_lines}
    bill = {line.code: line for line in made(name).bill.lines}
    worked = worked_bill(name)

    assert worked.keys() == bill.keys()
    for code, (need, packs, each, charged) in worked.items():
        line = bill[code]

        assert (code, packs, each, charged) == (code, line.packs_count, prices[code].each_minor, prices[code].charged_minor)
        if need != "-":
            assert float(need) == pytest.approx(line.need, abs=half_a_digit(need)), code
        elif code != SACKS:  # the worked bills count packs of sacks, not sacks
            assert line.need is None, code


@pytest.mark.parametrize("name", ["A", "B", "C"])
def test_materials_are_the_worked_sum(name: str) -> None:
    """`knowledge/worked-examples.md`: M of each bill, without disposal and hire."""
    assert MATERIALS_MINOR[name] == made(name).price.materials_minor


def test_every_line_has_a_code_a_unit_and_a_rule() -> None:
    """`knowledge/labour.md`, section 9: no line without unit, quantity and provenance."""
    for name in ("A", "B", "C", "C0"):
        for line in made(name).bill.lines:
            assert line.code
            assert line.unit
            assert line.rule
            assert line.packs_count >= 1


def test_disposal_and_hire_are_no_materials() -> None:
    """`knowledge/materials.md`, section 3."""
    groups = {line.code: line.group for line in made("A").bill.lines if line.group is not LineGroup.MATERIAL}

    assert {"SD-8050A": LineGroup.DISPOSAL, "SD-8070X": LineGroup.HIRE} == groups


@pytest.mark.parametrize("scope", [Scope.KIT, Scope.SUPPLY_ONLY])
def test_where_nobody_works_on_site_nothing_is_bought_for_the_site(scope: Scope) -> None:
    """A kit and supply only hold what stays in the breast: no sheets, masks, sacks, disposal or hire."""
    fitted = {line.code for line in sell(sold("A")).bill.lines}
    sent = {line.code for line in sell(sold("A", terms__scope=scope)).bill.lines}

    assert {"SD-8010G", "SD-8020T", "SD-8030D", "SD-8050A", "SD-8060L", "SD-8070X"} == fitted - sent
    assert set() == sent - fitted


def test_a_custom_section_and_board_are_named_without_a_code() -> None:
    timber = {"kind": "custom", "thickness_mm": 44, "width_mm": 70, "strength_class": "C24", "lengths_mm": [2400, 4800]}
    board = {
        "kind": "custom", "board_kind": "mdf", "thickness_mm": 16, "sheet_length_mm": 2800, "sheet_width_mm": 1300,
        "density_kg_m3": 740,
    }  # fmt: skip
    bought = sell(sold("A", survey__brief__timber=timber, survey__brief__board=board))
    unlisted = [line for line in bought.bill.lines if not line.code]

    assert {"timber C24 44 x 70 x 2400", "timber C24 44 x 70 x 4800", "custom mdf 16"} >= {line.description for line in unlisted}
    assert all(line.packs_count > 0 for line in unlisted)
    assert {f"{line.packs_count} x {line.description}" for line in unlisted} == set(bought.price.unpriced)
