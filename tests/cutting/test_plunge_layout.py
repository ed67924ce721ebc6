from __future__ import annotations

from service.cutting import Direction, FirstCut, MarkLine
from service.cutting.cut_tree import Rect, Saw
from service.cutting.plunge_layout import lie_flat, mark_lines

SAW = Saw(kerf=40, least=(3_000, 1_500), first_cut=FirstCut.ANY, fixed=False)


def line(direction: Direction, at: int, start: int, end: int, *, after: bool = False) -> MarkLine:
    return MarkLine(direction=direction, at_tenth_mm=at, from_tenth_mm=start, to_tenth_mm=end, after_measure=after)


def test_one_piece_in_the_corner_takes_two_lines() -> None:
    lines = mark_lines([Rect(0, 0, 5_000, 3_000, 0)], (10_000, 10_000), 40)

    assert (line(Direction.CROSS, 5_000, 0, 3_000), line(Direction.RIP, 3_000, 0, 5_000)) == lines


def test_a_piece_that_fills_the_sheet_takes_none() -> None:
    assert () == mark_lines([Rect(0, 0, 10_000, 10_000, 0)], (10_000, 10_000), 40)


def test_neighbours_a_kerf_apart_share_a_line_and_a_line_runs_on_past_a_kerf() -> None:
    """Two by two pieces of 4000 with kerf 4 mm on a larger sheet: two lines each way, each through both pieces."""
    pieces = [Rect(x, y, 4_000, 4_000, 0) for x in (0, 4_040) for y in (0, 4_040)]
    lines = mark_lines(pieces, (20_000, 20_000), 40)

    assert {(one.direction, one.at_tenth_mm, one.from_tenth_mm, one.to_tenth_mm) for one in lines} == {
        (way, at, 0, 8_040) for way in Direction for at in (4_000, 8_040)
    }


def test_lines_that_only_wait_for_measuring_come_last() -> None:
    now, late = Rect(0, 0, 4_000, 4_000, 0), Rect(4_040, 0, 3_000, 4_000, 1, after_measure=True)
    lines = mark_lines([late, now], (20_000, 20_000), 40)

    assert [False, False, True, True] == [one.after_measure for one in lines]
    assert line(Direction.CROSS, 4_000, 0, 4_000) in lines  # shared: sawn once, with the piece that is cut now


def test_the_largest_rest_is_kept_first_and_rests_keep_off_pieces_and_defects() -> None:
    """By hand: 10 m x 5 m, a piece 6 m x 2 m in the corner: above it 10 m x 2.996 m, beside it 3.996 m x 2 m."""
    room = (0, 0, 100_000, 50_000)
    tree = lie_flat(room, [Rect(0, 0, 60_000, 20_000, 0)], (), SAW)

    assert [(0, 20_040, 100_000, 29_960), (60_040, 0, 39_960, 20_000)] == [node[:4] for node in tree.strips[1:]]

    marred = lie_flat(room, [Rect(0, 0, 60_000, 20_000, 0)], [(0, 40_000, 100_000, 10_000)], SAW)

    assert all(node.y + node.height <= 40_000 for node in marred.strips)


def test_rests_too_small_to_keep_are_not_named() -> None:
    tree = lie_flat((0, 0, 10_000, 5_000), [Rect(0, 0, 9_000, 4_000, 0)], (), SAW)

    assert 1 == len(tree.strips)
