from __future__ import annotations

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.bill.lines import line_of, merge_needs, pack_count, plan_line
from service.bill.needs import pieces
from service.catalogue import demo_catalogue

CATALOGUE = demo_catalogue()
SCREW = CATALOGUE.materials["FX-3070M"]  # box of 200, waste 10 percent


@pytest.mark.parametrize(
    ("need", "per_pack", "packs"),
    [(0, 200, 0), (1, 200, 1), (200, 200, 1), (200.1, 200, 2), (0.1 + 0.2, 0.3, 1), (3 * 0.1, 0.1, 3)],
)
def test_packs_are_rounded_up_but_not_for_noise(need: float, per_pack: float, packs: int) -> None:
    """0.1 + 0.2 is a hair more than 0.3 in binary: no further pack."""
    assert packs == pack_count(need, per_pack)


@given(st.integers(0, 10_000), st.integers(1, 500))
def test_packs_hold_the_need_and_one_fewer_would_not(need: int, per_pack: int) -> None:
    packs = pack_count(need, per_pack)

    assert packs * per_pack >= need
    assert (packs - 1) * per_pack < need or need == 0


def test_waste_is_added_once_over_the_whole_job() -> None:
    """`knowledge/materials.md`, section 2: 104 + 6 pieces x 1.1 = 121 of a box of 200, not two rounded boxes."""
    merged = merge_needs((pieces(SCREW, "joints", 104, "joints"), pieces(SCREW, "plies", 6, "plies")))
    line = line_of(merged[0])

    assert 1 == len(merged)
    assert (110, 0.1, 1, 0.605, "joints; plies") == (
        line.need, line.waste_ratio, line.packs_count, line.used_packs_ratio, line.rule,
    )  # fmt: skip


def test_two_things_that_are_not_sold_stay_two() -> None:
    needs = (
        pieces(None, "joint screw through 160", 4, "a"),
        pieces(None, "ceiling screw", 8, "b"),
        pieces(None, "ceiling screw", 1, "c"),
    )
    merged = merge_needs(needs)

    assert [("joint screw through 160", 4), ("ceiling screw", 9)] == [(need.wanted, need.need) for need in merged]
    assert ("", "joint screw through 160", 4) == (
        line_of(merged[0]).code,
        line_of(merged[0]).description,
        line_of(merged[0]).packs_count,
    )


def test_a_plan_line_names_what_the_catalogue_lacks() -> None:
    known = plan_line("TM-1035A", "timber", 5, rule="plan", catalogue=CATALOGUE)
    unknown = plan_line("custom-2400", "timber C24 44 x 70 x 2400", 5, rule="plan", catalogue=CATALOGUE)

    assert ("TM-1035A", "bar", 5.0) == (known.code, known.unit, known.used_packs_ratio)
    assert ("", "timber C24 44 x 70 x 2400") == (unknown.code, unknown.description)
    assert known.need is None
    assert msgspec.structs.replace(known, code="") != unknown
