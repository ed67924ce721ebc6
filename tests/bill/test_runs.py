from __future__ import annotations

from typing import Any

import pytest

from service.bill.runs import bead_edges, skirting_joints_count, skirting_runs
from service.rules import load_rules
from tests.bill.bill_facts import SKIMMED
from tests.examples_of import changed, frame_of, job_of
from tests.sold_examples import made, sold
from tests.variant_requests import in_a_corner

RULES = load_rules()


def runs(request: dict[str, Any]) -> tuple[int, ...]:
    return skirting_runs(frame_of(request), job_of(request), RULES)


def joints(request: dict[str, Any]) -> int:
    return skirting_joints_count(frame_of(request), job_of(request), RULES)


def test_over_a_high_platform_the_front_is_one_piece() -> None:
    """Example A, `knowledge/materials.md`, section 2: 2 x (D + 15) + W + 30 = 2287."""
    assert (4500, 4500, 13_870) == runs(sold("A"))
    assert 4 == joints(sold("A"))


def test_a_low_opening_splits_the_front() -> None:
    """Example C: platform 134 < 120 + 20; beside the opening 232.5 and 352.5 of board, and the 15 of the corner."""
    assert (3150, 3150, 2475, 3675) == runs(sold("C"))
    assert 12_450 == sum(runs(sold("C")))
    assert 4 == joints(sold("C"))


def test_skirting_in_a_corner() -> None:
    """One return; the front begins at the side wall: 1355 + 15, or 10 + 221.5 and 341.5 + 12 + 15 beside the opening."""
    assert (3150, 2315, 3685) == runs(in_a_corner())
    assert (3150, 13_700) == runs(in_a_corner(survey__brief__platform_height_mm=140))
    assert 3 == joints(in_a_corner())


def test_beads_in_a_corner() -> None:
    """Only the free corner is an external angle."""
    assert 1 == len(bead_edges(frame_of(changed(in_a_corner(), SKIMMED))))


@pytest.mark.parametrize(("platform_mm", "pieces"), [(139.9, 4), (140, 3)])
def test_the_front_is_whole_from_twenty_above_the_skirting(platform_mm: float, pieces: int) -> None:
    assert pieces == len(runs(changed(sold("C"), {"/survey/brief/platform_height_mm": platform_mm})))


def test_a_low_three_sided_fire_leaves_no_place_for_skirting() -> None:
    low = changed(sold("A"), {"/survey/brief/platform_height_mm": 106})

    assert () == runs(low)
    assert 0 == joints(low)


def test_a_low_two_sided_fire_keeps_the_skirting_of_its_closed_end() -> None:
    """Example B at 125: the closed return, and the front up to the opening: 1650 - 1155.5 + 15."""
    low = changed(sold("B"), {"/survey/brief/platform_height_mm": 125})

    assert (4150, 5095) == runs(low)
    assert 2 == joints(low)


def test_no_skirting_no_runs() -> None:
    bare = changed(sold("A"), {"/survey/floor/skirting_height_mm": 0})

    assert () == runs(bare)
    assert 0 == joints(bare)


def test_beads_of_the_worked_example() -> None:
    """Bill B: left 2620; right 1755 + 250; lower edges 1155.5 + 400, whole mm upwards."""
    assert (2620, 1755, 250, 1156, 400) == bead_edges(made("B").frame)


def test_beads_of_closed_ends_run_from_floor_to_lid() -> None:
    assert (1162, 1162) == bead_edges(made("C").frame)


def test_both_open_ends_hang_their_lower_edges() -> None:
    """Example A skimmed would have: 1595 and 430 at each end, 1357 under the face, 435 under each return."""
    assert (1595, 430, 1595, 430, 1357, 435, 435) == bead_edges(made("A").frame)
