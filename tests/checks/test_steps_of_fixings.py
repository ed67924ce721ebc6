"""Framing.md, 10.2, rows 10 to 14, and 10.3."""

from __future__ import annotations

from service.checks.steps_of_fixings import (
    MOST_MORE_COUNT,
    longer_ceiling_screw,
    more_in_all_rows,
    more_in_top_row,
    rail_between,
    rail_under_cables,
    second_ceiling_screws,
    stronger_wall_fixing,
)
from service.frame import Additions
from tests.checks.grounds import rules_without_ladder
from tests.checks.weak_spots import said, taken, weak
from tests.examples_of import changed, example_a, example_b, example_c
from tests.properties import laws

UNSCANNED = changed(example_a(), {"/survey/services/cable_scan": "not_done"})
JOISTS = {
    "/survey/ceiling/joists": "across_wall", "/survey/ceiling/joist_positions_mm": [1400, 1800, 2200, 2600],
    "/survey/ceiling/joist_thickness_mm": 45,
}  # fmt: skip


def test_a_rail_under_the_strip_of_cables() -> None:
    """`knowledge/worked-examples.md`, B after checks: rear rail at 2425..2470, 17 fixings."""
    found = taken(rail_under_cables, weak(example_b()))

    assert (24_250,) == found.additions.extra_rear_rails_tenth_mm
    assert "a rear rail at 2425" == found.says
    assert 17 == len(weak(example_b(), found.additions).ground.frame.wall_fixings)
    assert [] == said(rail_under_cables, weak(example_a()))  # scanned
    assert [] == said(rail_under_cables, weak(example_c()))  # part height
    assert [] == said(rail_under_cables, weak(example_b(), found.additions))


def test_a_rail_between_keeps_clear_of_everything() -> None:
    found = taken(rail_between, weak(UNSCANNED))
    ground = weak(UNSCANNED, found.additions).ground

    assert {} == laws.broken(ground.job, ground.frame)
    assert 3 >= len(said(rail_between, weak(UNSCANNED)))


def test_more_in_the_top_row() -> None:
    """Uprights first where only they carry the weight (structure.md, 5.13 g)."""
    assert {"one more fixing in each rear upright in the top row"} == set(said(more_in_top_row, weak(example_a())))
    plain = taken(more_in_top_row, weak(example_a(), rules=rules_without_ladder())).additions
    assert (1, 1) == (plain.top_upright_fixings_count, plain.top_rail_fixings_count)
    assert [] == said(more_in_top_row, weak(example_a(), Additions(top_upright_fixings_count=MOST_MORE_COUNT)))
    assert MOST_MORE_COUNT == len(said(more_in_all_rows, weak(example_a())))


def test_stronger_fixings_only_where_they_are_declared() -> None:
    """Of the demo's plugs none bears more in brick than the shortest that is long enough; a longer screw grips more of a stud."""
    assert [] == said(stronger_wall_fixing, weak(example_a()))
    studs = changed(
        example_a(), {"/survey/wall/construction": "timber_stud", "/survey/wall/stud_positions_mm": [1400, 1800, 2200, 2600]}
    )
    assert "wall fixing FX-3180G" == said(stronger_wall_fixing, weak(studs))[-1]  # the longest that is sold


def test_second_and_longer_ceiling_screws() -> None:
    """EN 1995-1-1, Table 8.6: 7 d apart and 4 d from the edges, 90 for 6 mm: on 95 wide timber, not on 89."""
    across = changed(example_b(), JOISTS)
    found = taken(second_ceiling_screws, weak(across))
    plain, more = weak(across).ground.frame.ceiling_screws, weak(across, found.additions).ground.frame.ceiling_screws

    assert 420 == found.additions.ceiling_screws_apart_tenth_mm
    assert 2 * len(plain) == len(more) > 0
    assert [] == said(second_ceiling_screws, weak(example_a()))
    assert [] == said(second_ceiling_screws, weak(example_b()))  # no joists are crossed
    assert [] == said(longer_ceiling_screw, weak(example_a()))  # one flange-head screw is sold
