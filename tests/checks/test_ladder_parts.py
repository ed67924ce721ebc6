from __future__ import annotations

import msgspec
import pytest

from service.checks.hung_weight import hung_load
from service.checks.ladder_parts import asked_of, cases_of, half_way_mm, ladder_at, open_ladders
from service.checks.paths import paths_of
from service.checks.situations import person, weight
from tests.checks.hung_grounds import ON, example, held_by_brackets, on_wall, with_wall_load

LADDER = ladder_at(example("A", ladder=True), hung_load(example("A", ladder=True)), left=True)
SCENARIO = msgspec.structs.replace(  # worked-checks.md, I
    LADDER, weight_n=420.0, lever_mm=230.0, person_mm=355.0, thickness_mm=45.0, depth_mm=70.0, clear_mm=200.0,
    levels_mm=(900.0, 1350.0, 1800.0, 2230.0), bracketed_mm=(900.0, 1350.0, 1800.0, 2230.0),
)  # fmt: skip


def test_demand() -> None:
    """worked-checks.md, I1: p 409.50 N, 110.57, 55.282 Nm; s 1909.5 N, 410.57, 332.78 Nm."""
    by_weight, by_person = asked_of(SCENARIO, weight(ON)), asked_of(SCENARIO, person(ON))

    assert pytest.approx([409.50, 110_570, 55_282], rel=1e-3) == list(by_weight)
    assert pytest.approx([1909.5, 410_570, 332_780], rel=1e-3) == list(by_person)


def test_ladders_of_the_worked_examples() -> None:
    """worked-examples.md: A noggins at 920, 1329, 1529, 1972.5, 2416, half of 93.17 kg; B open at the right only."""
    low = [level - 89 / 2 for level in LADDER.levels_mm]
    of_b = open_ladders(example("B", ladder=True), hung_load(example("B")))

    assert pytest.approx([920, 1329, 1529, 1972.5, 2416]) == low
    assert pytest.approx(93.17 / 2 * 9.80665, abs=0.1) == LADDER.weight_n
    assert ((), 331, "left") == (LADDER.bracketed_mm, LADDER.reach_mm, LADDER.side)
    assert ["right"] == [one.side for one in of_b]
    assert 2 == len(open_ladders(example("A"), hung_load(example("A"))))


def test_brackets_are_read_from_the_frame() -> None:
    ground = held_by_brackets("A")

    assert 5 == len(ladder_at(ground, hung_load(ground), left=False).bracketed_mm)


@pytest.mark.parametrize("name", ["A", "B"])
def test_half_way(name: str) -> None:
    """worked-examples.md, section 0: A 8 noggins, B 9: as the layout adds them."""
    ground, halved = example(name, ladder=True), held_by_brackets(name, halved=True)
    load, left = hung_load(ground), name == "A"
    found = half_way_mm(ladder_at(ground, load, left=left), 60)

    assert (8 if name == "A" else 9) == len(found)
    assert pytest.approx(found, abs=0.1) == ladder_at(halved, load, left=left).levels_mm


def test_cases() -> None:
    """structure.md, 5.13: lost, weight, person within 1; without a ceiling weight 0.50; on the ceiling the lost path only."""
    grounds = example("A", ladder=True), example("B", ladder=True), with_wall_load(example("A", ladder=True), 0.15, 0.25)
    found = [[one.limit_ratio for one in cases_of(paths_of(ground), ground)] for ground in grounds]

    assert [[1, 1, 1], [0.5, 1], [1]] == found
    assert 3 == len(cases_of(paths_of(on_wall("unknown", ON)), on_wall("unknown", ON)))
