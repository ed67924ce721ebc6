from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from service.bill.finishes import caulk_m, finish_needs
from tests.bill.bill_facts import SKIMMED, TAPED, facts_of, of_request
from tests.examples_of import changed
from tests.sold_examples import sold

if TYPE_CHECKING:
    from service.bill.needs import Facts, Need


def by_wanted(facts: Facts) -> dict[str, Need]:
    found: dict[str, Need] = {}
    for need in finish_needs(facts):
        found[f"{need.wanted}: {need.rule.split(':')[0]}" if need.wanted in found else need.wanted] = need
    return found


@pytest.mark.parametrize(("name", "expected_m"), [("A", 8.564), ("B", 9.585), ("C", 4.924)])
def test_caulk_as_worked(name: str, expected_m: float) -> None:
    """`knowledge/worked-examples.md`, L15 of each example."""
    assert expected_m == pytest.approx(caulk_m(facts_of(name)), abs=0.0005)


@pytest.mark.parametrize(
    ("name", "wanted", "need"),
    [
        ("A", "grab adhesive", 9.305),
        ("B", "grab adhesive", 5.19),  # linings only: plasterboard is not glued
        ("C", "grab adhesive", 5.449),
        ("A", "wood glue", 1.707),
        ("A", "screw filler", 268.7),
        ("B", "screw filler", 29.48),  # heads of the linings only
        ("B", "finish plaster", 4.158),
        ("B", "scrim", 10.102),
        ("A", "board primer", 0.5),
        ("C", "board paint", 0.529),
    ],
)
def test_quantities_as_worked(name: str, wanted: str, need: float) -> None:
    """`knowledge/worked-examples.md`, net need in the bills."""
    assert need == pytest.approx(by_wanted(facts_of(name))[wanted].need, abs=0.05 if need > 100 else 0.0006)


def test_painted_board_is_neither_taped_nor_skimmed() -> None:
    assert not {"scrim", "finish plaster", "joint compound", "skim paint"} & by_wanted(facts_of("A")).keys()


def test_taped_plasterboard_gets_compound_sealer_and_emulsion() -> None:
    """`knowledge/cladding.md`, section 5, system B: tape, compound, sealer, 2 coats; the heads of the lid alone are filled."""
    found = by_wanted(of_request(changed(sold("C"), TAPED)))

    assert {"scrim", "joint compound", "board primer", "skim paint", "screw filler", "fine filler"} <= found.keys()
    assert not {"finish plaster", "board paint"} & found.keys()
    assert 16 * 0.67 == pytest.approx(found["screw filler"].need)
    assert found["scrim"].need + 2 * 1.162 == pytest.approx(found["joint compound"].need)


def test_a_skimmed_breast_with_a_lid_primes_the_lid() -> None:
    facts = of_request(changed(sold("C"), SKIMMED))
    found = by_wanted(facts)

    assert (1.355 * 0.300 + (1.355 + 2 * 0.300) * 0.018) / 10 == pytest.approx(found["board primer"].need)
    assert {"skim paint", "skim paint: 2 coats on 2.713 m2"} <= found.keys()


def test_coats_and_coverage_by_hand() -> None:
    """Example B, `knowledge/cladding.md`, section 5: mist 4.158 / 10 + 2 coats x 4.698 / 12 = 1.199 litres."""
    paint = [need.need for need in finish_needs(facts_of("B")) if need.wanted == "skim paint"]

    assert [0.4158, 2 * 4.698 / 12] == pytest.approx(paint, abs=0.0005)
