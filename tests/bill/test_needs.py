from __future__ import annotations

import msgspec
import pytest

from service.bill import LineGroup, Market
from service.bill.needs import litres, packs, pieces, spread
from service.catalogue import demo_catalogue
from service.rules import load_rules
from tests.bill.bill_facts import facts_of

CATALOGUE = demo_catalogue()


def test_pieces_come_in_boxes() -> None:
    need = pieces(CATALOGUE.materials["FX-3040E"], "screw", 158, "by hand")

    assert (158.0, "pieces", 200.0, LineGroup.MATERIAL, 1.0) == (
        need.need, need.need_unit, need.per_pack, need.group, need.charged_ratio,
    )  # fmt: skip


def test_what_is_counted_in_packs_is_one_to_a_pack() -> None:
    assert 1.0 == packs(CATALOGUE.materials["SD-8060L"], "masks", 2, "by hand").per_pack


@pytest.mark.parametrize(("use", "per_pack"), [("grab_adhesive", 7.0), ("fine_filler", 15.0), ("caulk", 12.0)])
def test_what_is_spread_goes_as_far_as_the_catalogue_says(use: str, per_pack: float) -> None:
    """`knowledge/materials.md`, section 2, "unit bought"."""
    assert per_pack == spread(facts_of("A"), use, 3.0, unit="m", rule="by hand").per_pack


def test_paint_is_sold_by_the_tin() -> None:
    assert 2.5 == litres(facts_of("A"), "board_paint", 0.8, "2 coats").per_pack


def test_what_the_catalogue_lacks_is_named() -> None:
    bare = Market(catalogue=msgspec.structs.replace(CATALOGUE, materials={}), rules=load_rules())
    facts = facts_of("A", bare)
    needs = (
        pieces(None, "joint screw through 38", 4, "by hand"),
        spread(facts, "grab_adhesive", 3.0, unit="m", rule="by hand"),
        litres(facts, "board_paint", 1.0, "2 coats"),
    )

    assert ["joint screw through 38", "grab adhesive", "board paint"] == [need.wanted for need in needs]
    assert [1.0, 1.0, 1.0] == [need.per_pack for need in needs]
    assert all(need.material is None for need in needs)
