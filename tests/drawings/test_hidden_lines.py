"""Hidden lines, against counting cells: each unit cell shows the nearest face that covers it."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from service.drawings.hidden_lines import Edge, Face, find_edges, largest_visible, merge, overlaps, subtract


def face(mark: str, u: tuple[int, int], v: tuple[int, int], near: int) -> Face:
    return Face(mark=mark, left_tenth_mm=u[0], right_tenth_mm=u[1], low_tenth_mm=v[0], high_tenth_mm=v[1], near_tenth_mm=near)


def level(at: int, low: int, high: int) -> Edge:
    return Edge(upright=False, at_tenth_mm=at, low_tenth_mm=low, high_tenth_mm=high)


def upright(at: int, low: int, high: int) -> Edge:
    return Edge(upright=True, at_tenth_mm=at, low_tenth_mm=low, high_tenth_mm=high)


def test_a_face_alone_is_seen_all_round() -> None:
    edges = find_edges([face("a", (0, 4), (0, 2), 0)])

    assert (level(0, 0, 4), level(2, 0, 4), upright(0, 0, 2), upright(4, 0, 2)) == edges.visible
    assert () == edges.hidden


def test_a_stud_in_front_hides_the_middle_of_a_rail() -> None:
    rail, stud = face("rail", (0, 10), (4, 6), 5), face("stud", (4, 6), (0, 10), 0)
    edges = find_edges([rail, stud])

    assert {level(4, 4, 6), level(6, 4, 6)} == set(edges.hidden)
    assert {level(4, 0, 4), level(4, 6, 10)} <= set(edges.visible)


def test_an_edge_on_the_outline_of_what_is_nearer_is_seen() -> None:
    edges = find_edges([face("near", (0, 10), (0, 4), 0), face("far", (2, 8), (0, 4), 3)])

    assert level(0, 0, 10) in edges.visible
    assert {upright(2, 0, 4), upright(8, 0, 4)} == set(edges.hidden)


def test_flush_neighbours_hide_nothing_and_share_their_joint_once() -> None:
    edges = find_edges([face("a", (0, 4), (0, 4), 0), face("b", (4, 8), (0, 4), 0)])

    assert () == edges.hidden
    assert [upright(4, 0, 4)] == [one for one in edges.visible if one.upright and one.at_tenth_mm == 4]


def test_intervals() -> None:
    assert [(0, 3), (5, 6)] == merge([(5, 6), (0, 2), (2, 3), (1, 2), (4, 4)])
    assert ([(0, 2), (8, 10)], [(2, 8)]) == subtract((0, 10), [(2, 5), (4, 8)])
    assert ([], [(0, 10)]) == subtract((0, 10), [(-5, 20)])
    assert ([(0, 10)], []) == subtract((0, 10), [(10, 12), (-3, 0)])


def test_overlap_needs_area() -> None:
    assert overlaps(face("a", (0, 4), (0, 4), 0), face("b", (3, 8), (3, 8), 1))
    assert not overlaps(face("a", (0, 4), (0, 4), 0), face("b", (4, 8), (0, 4), 1))


SPANS = st.tuples(st.integers(0, 7), st.integers(1, 5)).map(lambda pair: (pair[0], pair[0] + pair[1]))
SCENES = st.lists(st.tuples(SPANS, SPANS), min_size=1, max_size=6).map(
    lambda sizes: [face(str(number), u, v, number) for number, (u, v) in enumerate(sizes)]
)


def _cells(one: Face) -> set[tuple[int, int]]:
    return {(u, v) for u in range(one.left_tenth_mm, one.right_tenth_mm) for v in range(one.low_tenth_mm, one.high_tenth_mm)}


def _steps(edges: tuple[Edge, ...]) -> list[tuple[bool, int, int]]:
    return [(one.upright, one.at_tenth_mm, step) for one in edges for step in range(one.low_tenth_mm, one.high_tenth_mm)]


@given(SCENES)
@settings(max_examples=200)
def test_edges_agree_with_cells(faces: list[Face]) -> None:
    """A unit of an outline is hidden if a nearer face covers the cells at both of its sides."""
    expected: dict[tuple[bool, int, int], bool] = {}
    for number, one in enumerate(faces):
        nearer = [_cells(other) for other in faces[:number]]
        for is_upright, at, low, high in (
            (True, one.left_tenth_mm, one.low_tenth_mm, one.high_tenth_mm),
            (True, one.right_tenth_mm, one.low_tenth_mm, one.high_tenth_mm),
            (False, one.low_tenth_mm, one.left_tenth_mm, one.right_tenth_mm),
            (False, one.high_tenth_mm, one.left_tenth_mm, one.right_tenth_mm),
        ):
            for step in range(low, high):
                sides = {(at - 1, step), (at, step)} if is_upright else {(step, at - 1), (step, at)}
                seen = not any(sides <= cells for cells in nearer)
                expected[is_upright, at, step] = expected.get((is_upright, at, step), False) or seen
    edges = find_edges(faces)

    assert sorted(unit for unit, seen in expected.items() if seen) == sorted(_steps(edges.visible))
    assert sorted(unit for unit, seen in expected.items() if not seen) == sorted(_steps(edges.hidden))


@given(SCENES)
@settings(max_examples=200)
def test_the_largest_clear_rectangle_is_clear_and_none_is_larger(faces: list[Face]) -> None:
    for number, one in enumerate(faces):
        free = _cells(one).difference(*(_cells(other) for other in faces[:number]))
        found = largest_visible(one, faces)
        best = 0
        for left in range(one.left_tenth_mm, one.right_tenth_mm):
            for right in range(left + 1, one.right_tenth_mm + 1):
                run = 0
                for v in range(one.low_tenth_mm, one.high_tenth_mm):
                    run = run + 1 if all((u, v) in free for u in range(left, right)) else 0
                    best = max(best, run * (right - left))

        assert best == (len(_cells(found)) if found else 0)
        assert found is None or _cells(found) <= free
