from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.bill import Market
from service.bill.lengths import bar_lines, bead_lines, sheet_lines, skirting_lines
from service.catalogue import Catalogue, demo_catalogue
from service.rules import load_rules
from tests.bill.bill_facts import facts_of
from tests.sold_examples import made, sell, sold, strengthened

if TYPE_CHECKING:
    from service.bill.needs import Facts

CATALOGUE = demo_catalogue()


def market(**changes: object) -> Market:
    return Market(catalogue=msgspec.structs.replace(CATALOGUE, **changes), rules=load_rules())


def without_kind(kind: str) -> Market:
    return market(materials={code: row for code, row in CATALOGUE.materials.items() if row.kind != kind})


def with_beads(*edges_mm: int) -> Facts:
    facts = facts_of("B")
    return msgspec.structs.replace(facts, measures=msgspec.structs.replace(facts.measures, bead_edges_mm=edges_mm))


def with_runs(*runs_mm: int) -> Facts:
    facts = facts_of("A")
    measures = msgspec.structs.replace(facts.measures, skirting_runs_mm=runs_mm, skirting_m=sum(runs_mm) / 1000)
    return msgspec.structs.replace(facts, measures=measures)


def test_bars_say_what_they_were_chosen_for() -> None:
    lines = bar_lines(made("A").plan, made("A").job, CATALOGUE)

    assert [("TM-1035A", 5), ("TM-1042H", 3), ("TM-1049R", 4)] == [(line.code, line.packs_count) for line in lines]
    assert {"cutting plan, least price, with 20 mm on what is cut after measuring"} == {line.rule for line in lines}


def test_bars_without_a_price_are_cut_for_least_length() -> None:
    prices = {code: steps for code, steps in CATALOGUE.prices.items() if code != "TM-1056Y"}
    catalogue: Catalogue = msgspec.structs.replace(CATALOGUE, prices=prices)
    bought = sell(sold("A", survey__brief__after_measure_allowance_mm=0), catalogue)

    assert {"cutting plan, least length (no price)"} == {line.rule for line in bar_lines(bought.plan, bought.job, catalogue)}


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("A", {"BD-2015R": 3, "BD-2218L": 1}),
        ("B", {"BD-2125K": 3, "BD-2015R": 1, "BD-2218L": 1}),
        ("C", {"BD-2012M": 1, "BD-2018U": 1}),
    ],
)
def test_sheets_as_worked(name: str, expected: dict[str, int]) -> None:
    """`knowledge/worked-examples.md`, "Panels" and "Sheets" of each example."""
    assert expected == {line.code: line.packs_count for line in sheet_lines(made(name).plan, CATALOGUE)}


@pytest.mark.parametrize(
    ("edges_mm", "expected"),
    [
        ((2620, 1755, 250, 1156, 400), {"PL-5060A": 2, "PL-5063D": 1}),  # bill B
        ((2400, 2400), {"PL-5060A": 2}),
        ((1200, 1800), {"PL-5063D": 1}),  # one of 2.70 instead of two of 2.15
        ((3400,), {"PL-5060A": 1, "PL-5063D": 1}),  # longer than what is sold: a whole length and a rest of 400
        ((), {}),
    ],
)
def test_beads_are_cut_without_joins_at_least_price(edges_mm: tuple[int, ...], expected: dict[str, int]) -> None:
    """`knowledge/materials.md`, section 2: lengths 2400 and 3000, not joined within an edge, kerf 0."""
    assert expected == {line.code: line.packs_count for line in bead_lines(with_beads(*edges_mm))}


def test_beads_that_are_not_sold_are_named() -> None:
    lines = bead_lines(facts_of("B", without_kind("bead")))

    assert [("", "corner bead", 5)] == [(line.code, line.description, line.packs_count) for line in lines]


@pytest.mark.parametrize(
    ("runs_mm", "packs"),
    [
        ((450, 450, 1387), 1),  # bill A: 2287 x 1.1 = 2516 of 3000
        ((450, 450, 1900), 2),  # 2800 x 1.1 = 3080: the waste factor asks for two
        ((1600, 1600), 2),  # 3200: and two pieces of 1600 do not come out of one
        ((2000, 2000, 500), 2),
        ((), 0),
    ],
)
def test_skirting_is_one_piece_a_run(runs_mm: tuple[int, ...], packs: int) -> None:
    assert packs == sum(line.packs_count for line in skirting_lines(with_runs(*runs_mm)))


def test_skirting_that_is_not_sold_is_named() -> None:
    lines = skirting_lines(facts_of("A", without_kind("skirting")))

    assert [("", "skirting", 3)] == [(line.code, line.description, line.packs_count) for line in lines]


def test_bars_of_a_stronger_class_are_bought_beside_the_jobs() -> None:
    """Trimmer and ply of 1255: one bar of each, of the shortest that is sold."""
    lines = bar_lines(strengthened().plan, strengthened().job, CATALOGUE)

    assert [("TM-1207M", 1), ("TM-1235T", 1)] == [(line.code, line.packs_count) for line in lines if line.code >= "TM-12"]
    assert len(lines) > 2
