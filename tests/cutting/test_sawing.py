from __future__ import annotations

from service.cutting import Direction, FirstCut, PartKind
from service.cutting.cut_tree import Rect, Saw, grow_tree
from service.cutting.sawing import list_parts, list_steps, name_parts

SAW = Saw(kerf=4, least=(300, 100), first_cut=FirstCut.ANY, fixed=False)
# Two strips of 200 with two pieces of 400 each, in 1000 x 1000 trimmed by 10 from 1020 x 1020.
PIECES = [
    Rect(10, 10, 400, 200, 0), Rect(414, 10, 400, 200, 1), Rect(10, 214, 400, 200, 2),
    Rect(414, 214, 400, 200, 3),
]  # fmt: skip
NAMED = name_parts(grow_tree((10, 10, 1000, 1000), PIECES, SAW), trimmed=True)


def test_parts_are_named_by_where_they_come_from() -> None:
    parts = list_parts(NAMED, (1020, 1020), SAW)

    assert ["S", "S.0", "S.1"] == [part.name for part in parts[:3]]
    assert ["", "S", "S.0"] == [part.parent for part in parts[:3]]
    assert [PartKind.SHEET, PartKind.PART] == [part.kind for part in parts[:2]]
    assert 4 == sum(part.kind is PartKind.PIECE for part in parts)
    assert "S.3" == next(part.name for part in parts if part.kind is PartKind.LEFTOVER)


def test_equal_stops_of_all_strips_are_one_step() -> None:
    """By hand: two trims each way; two rips at 200; four cross-cuts at 400, all strips with one setting."""
    steps = list_steps(NAMED, [False] * 4, 10, SAW)

    assert [(True, 10, 2), (True, 10, 2), (False, 200, 2), (False, 400, 4)] == [
        (step.trim, step.stop_tenth_mm, step.cuts_count) for step in steps
    ]
    assert (Direction.RIP, Direction.CROSS) == (steps[2].direction, steps[3].direction)
    assert ("S.1", "S.2") == steps[3].parts


def test_what_waits_is_cut_after_what_does_not() -> None:
    pieces = [Rect(0, 0, 1000, 300, 0, after_measure=True), Rect(0, 304, 1000, 200, 1)]
    named = name_parts(grow_tree((0, 0, 1000, 1000), pieces, SAW), trimmed=False)
    steps = list_steps(named, [True, False], 0, SAW)

    assert [200, 300] == [step.stop_tenth_mm for step in steps]
    assert "" == named[0].parent


def test_a_strip_that_ends_with_the_sheet_takes_no_cut() -> None:
    """By hand: 498 + 4 + 498 is 1000: one cut parts the two."""
    pieces = [Rect(0, 0, 498, 1000, 0), Rect(502, 0, 498, 1000, 1)]
    named = name_parts(grow_tree((0, 0, 1000, 1000), pieces, SAW), trimmed=False)

    assert [(498, 1)] == [(step.stop_tenth_mm, step.cuts_count) for step in list_steps(named, [False, False], 0, SAW)]


def test_between_defects_every_stop_is_its_own_step() -> None:
    fixed = SAW._replace(fixed=True)
    pieces = [Rect(0, 0, 400, 1000, 0), Rect(600, 0, 400, 1000, 1)]
    named = name_parts(grow_tree((0, 0, 1000, 1000), pieces, fixed), trimmed=False)
    steps = list_steps(named, [False, False], 0, fixed)

    assert all(1 == step.cuts_count for step in steps)


def test_between_defects_equal_strips_that_lie_together_are_one_step_unless_one_waits() -> None:
    fixed = SAW._replace(fixed=True)
    pieces = [Rect(204 * at, 0, 200, 1000, at) for at in range(3)]
    named = name_parts(grow_tree((0, 0, 1000, 1000), pieces, fixed), trimmed=False)

    assert [3] == [step.cuts_count for step in list_steps(named, [False] * 3, 0, fixed)]
    assert [2, 1] == [step.cuts_count for step in list_steps(named, [False, False, True], 0, fixed)]
