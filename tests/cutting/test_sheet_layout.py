from __future__ import annotations

import msgspec
import pytest

from service.cutting import FirstCut, PartKind
from service.cutting.cut_tree import NotGuillotineError
from service.cutting.sheet_greedy import Layout, Placed
from service.cutting.sheet_layout import lay_sheets, leftovers_of, saw_of
from service.cutting.sheet_problem import state_sheets
from tests.cutting.jobs import sheets

# Kerf 4: 496 x 296 padded is 500 x 300, unit 100 mm.
JOB = sheets([(496, 296, 3)])
PROBLEM = state_sheets(JOB)
FLAT, UPRIGHT = Placed(0, 0, 0, 5, 3), Placed(0, 5, 0, 3, 5)


def test_sizes_and_places_are_true_again() -> None:
    (group,) = lay_sheets(JOB, PROBLEM, (Layout(0, (FLAT, UPRIGHT, Placed(0, 8, 0, 5, 3))),))
    sizes = [(p.x_tenth_mm, p.y_tenth_mm, p.width_tenth_mm, p.height_tenth_mm, p.rotated) for p in group.pieces]

    assert 1_000 == PROBLEM.unit_tenth_mm
    assert {(4_960, 2_960, False), (2_960, 4_960, True)} == {size[2:] for size in sizes}
    assert [("P0", "P0", "P0")] == list(group.labels)
    assert {p.part for p in group.pieces} == {part.name for part in group.parts if part.kind is PartKind.PIECE}


def test_equal_sheets_are_one_group() -> None:
    groups = lay_sheets(JOB, PROBLEM, tuple(Layout(0, (FLAT,)) for _ in range(3)))

    assert [3] == [group.sheets_count for group in groups]


def test_rests_worth_keeping_are_named() -> None:
    """By hand: 2440 x 1220 less one of 496 x 296: 2440 x 920 above, 1940 x 296 beside."""
    rests = leftovers_of(lay_sheets(sheets([(496, 296, 1)]), PROBLEM, (Layout(0, (FLAT,)),)))
    sizes = {tuple(sorted((rest.width_tenth_mm, rest.height_tenth_mm))) for rest in rests}

    assert sizes in ({(9_200, 24_400), (2_960, 19_400)}, {(12_200, 19_400), (4_960, 9_200)})
    assert ["S1-R1", "S1-R2"] == [rest.label for rest in rests]


def test_the_saw_knows_what_is_worth_keeping() -> None:
    saw = saw_of(JOB, JOB.stock[0])

    assert (40, (3_000, 1_500), FirstCut.ANY, False) == saw


def test_a_layout_that_cannot_be_sawn_as_asked_is_refused() -> None:
    job = sheets([(1220, 1220, 1), (1220, 610, 2)], kerf=0, rotatable=False, first_cut=FirstCut.RIP)
    side_by_side = (Layout(0, (Placed(0, 0, 0, 2, 2), Placed(1, 2, 0, 2, 1), Placed(1, 2, 1, 2, 1))),)

    with pytest.raises(NotGuillotineError):
        lay_sheets(job, state_sheets(job), side_by_side)
    assert 1 == len(lay_sheets(msgspec.structs.replace(job, first_cut=FirstCut.CROSS), state_sheets(job), side_by_side))
