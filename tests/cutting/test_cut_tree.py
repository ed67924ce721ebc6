from __future__ import annotations

import pytest

from service.cutting import Direction, FirstCut
from service.cutting.cut_tree import Node, NotGuillotineError, Rect, Saw, grow_tree, keeps, lateness

SAW = Saw(kerf=4, least=(300, 100), first_cut=FirstCut.ANY, fixed=False)


def leaves(node: Node) -> list[Node]:
    return [node] if not node.strips else [leaf for strip in node.strips for leaf in leaves(strip)]


def places(node: Node) -> dict[int, tuple[int, int]]:
    return {leaf.tag: (leaf.x, leaf.y) for leaf in leaves(node) if leaf.tag >= 0}


def test_pieces_are_pushed_together_and_the_large_rest_is_cut_off_first() -> None:
    """By hand: two of 400 x 200 in 1000 x 1000 with gaps: 0 and 404; first the rest of 1000 x 796 above."""
    tree = grow_tree((0, 0, 1000, 1000), [Rect(0, 0, 400, 200, 0), Rect(500, 0, 400, 200, 1)], SAW)

    assert Direction.RIP == tree.direction
    assert {0: (0, 0), 1: (404, 0)} == places(tree)
    assert (0, 204, 1000, 796) == tree.strips[-1][:4]


def test_large_strips_come_before_small_and_now_before_after_measuring() -> None:
    pieces = [Rect(0, 0, 1000, 100, 0, after_measure=True), Rect(0, 104, 1000, 200, 1), Rect(0, 308, 1000, 300, 2)]
    tree = grow_tree((0, 0, 1000, 1000), pieces, SAW)

    assert [2, 1, 0] == [strip.tag for strip in tree.strips[:3]]


def test_places_stay_where_there_are_defects() -> None:
    pieces = [Rect(100, 0, 400, 1000, 0), Rect(600, 0, 400, 1000, 1)]
    tree = grow_tree((0, 0, 1000, 1000), pieces, SAW._replace(fixed=True))

    assert {0: (100, 0), 1: (600, 0)} == places(tree)


def test_the_first_cut_runs_as_asked() -> None:
    pieces = [Rect(0, 0, 500, 400, 0)]
    rip = grow_tree((0, 0, 1000, 1000), pieces, SAW._replace(first_cut=FirstCut.RIP))
    cross = grow_tree((0, 0, 1000, 1000), pieces, SAW._replace(first_cut=FirstCut.CROSS))

    assert (Direction.RIP, Direction.CROSS) == (rip.direction, cross.direction)


def test_a_first_cut_that_is_not_possible_is_refused() -> None:
    """By hand: 498 beside 498 fills the sheet; the right one is parted again along x, which would have to come first."""
    pieces = [Rect(0, 0, 498, 1000, 0), Rect(502, 0, 498, 498, 1), Rect(502, 502, 498, 498, 2)]

    with pytest.raises(NotGuillotineError):
        grow_tree((0, 0, 1000, 1000), pieces, SAW._replace(first_cut=FirstCut.RIP))


def test_where_no_rip_is_needed_at_all_none_must_come_first() -> None:
    tree = grow_tree((0, 0, 1000, 1000), [Rect(0, 0, 498, 1000, 0)], SAW._replace(first_cut=FirstCut.RIP))

    assert Direction.CROSS == tree.direction


def test_the_pinwheel_is_refused() -> None:
    pinwheel = [
        Rect(0, 0, 200, 100, 0), Rect(200, 0, 100, 200, 1), Rect(100, 200, 200, 100, 2),
        Rect(0, 100, 100, 200, 3), Rect(100, 100, 100, 100, 4),
    ]  # fmt: skip

    with pytest.raises(NotGuillotineError):
        grow_tree((0, 0, 300, 300), pinwheel, SAW._replace(kerf=0))


def test_a_rest_is_kept_either_way_round() -> None:
    assert [True, True, False, False] == [keeps(*size, SAW) for size in ((300, 100), (100, 300), (299, 299), (1000, 99))]
    assert not keeps(0, 500, SAW._replace(least=(0, 0)))


def test_strips_are_late_if_all_in_them_is() -> None:
    assert [0, 1, 2] == [lateness(after) for after in ([False, False], [False, True], [True])]
