from __future__ import annotations

import pytest

from service.bill.masses import bars_kg, boards_kg, gypsum_waste_kg, waste_kg
from service.catalogue import demo_catalogue
from service.rules import load_rules
from tests.examples_of import changed
from tests.sold_examples import made, sell, sold, strengthened

RULES = load_rules()


def test_mass_of_bars_by_hand() -> None:
    """`knowledge/materials.md`, section 2: b x d x L x 450. Bars A: 5 x 2.4 + 3 x 3.0 + 4 x 3.6 = 35.4 m of 38 x 89."""
    assert 35.4 * 0.038 * 0.089 * 450 == pytest.approx(bars_kg(made("A").plan, made("A").job, RULES))


def test_mass_of_every_studding() -> None:
    """One bar of 38 x 63 and one of 38 x 89, 2.4 m each, beside the job's own."""
    at = strengthened()
    own = at.plan.bars.proof.bought_length_tenth_mm / 10_000 * 0.038 * 0.063 * 450

    assert own + 2.4 * 0.038 * (0.063 + 0.089) * 450 == pytest.approx(bars_kg(at.plan, at.job, RULES))


def test_mass_of_boards_by_the_sheet() -> None:
    """Example B: 3 x 24.8 plasterboard, 1 x 33.5 MDF, 1 x 31.6 plywood (demo catalogue)."""
    masses = boards_kg(made("B").plan, made("B").job, demo_catalogue())

    assert {"plasterboard": 74.4, "mdf": 33.5, "plywood": 31.6} == pytest.approx(masses)


def test_a_custom_board_weighs_what_its_density_says() -> None:
    board = {
        "kind": "custom", "board_kind": "mdf", "thickness_mm": 16, "sheet_length_mm": 2800, "sheet_width_mm": 1300,
        "density_kg_m3": 740,
    }  # fmt: skip
    bought = sell(changed(sold("C"), {"/survey/brief/board": board}))
    sheets = next(cuts.plan.sheets_count for cuts in bought.plan.boards if not cuts.code)
    lid_kg = 39.6

    assert sheets * 2.8 * 1.3 * 0.016 * 740 + lid_kg == pytest.approx(boards_kg(bought.plan, bought.job, demo_catalogue())["mdf"])


def test_waste_by_hand() -> None:
    """`knowledge/materials.md`, section 2: 0.12 x mass bought + 8 + strip-out. A: old skirting 1357 x 120 x 15 at 500 kg/m3."""
    waste = waste_kg(100.0, made("A").frame, made("A").job, RULES)

    assert 12 + 8 + 1.357 * 0.120 * 0.015 * 500 == pytest.approx(waste)


def test_gypsum_waste_is_its_share_of_the_sheets() -> None:
    assert 0.12 * 74.4 == pytest.approx(gypsum_waste_kg({"plasterboard": 74.4, "mdf": 33.5}, RULES))
    assert 0.0 == gypsum_waste_kg({"mdf": 33.5}, RULES)
