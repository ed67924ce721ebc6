from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.drawings.painter import Projection, paint_order
from service.drawings.picture import dimetric
from service.drawings.solids import Solid, Stuff, boards, bodies, timbers
from service.frame import Box, overlap_tenth_mm
from tests.drawings.cases import REQUESTS, case

if TYPE_CHECKING:
    from collections.abc import Sequence

VIEW = dimetric(20)
type Point = tuple[float, float]


def box(*edges: int) -> Box:
    names = ("x0", "x1", "y0", "y1", "z0", "z1")
    return Box(**{f"{name}_tenth_mm": edge for name, edge in zip(names, edges, strict=True)})


def solid(mark: str, *edges: int) -> Solid:
    return Solid(mark=mark, stuff=Stuff.UPPER, box=box(*edges))


def sight(view: Projection) -> tuple[float, float, float]:
    """The direction along which every point falls on one point of the paper, towards the eye: cross product of both rows."""
    u = (view.x_mm[0], view.y_mm[0], view.z_mm[0])
    v = (view.x_mm[1], view.y_mm[1], view.z_mm[1])
    d = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])
    sign = 1 if d[2] > 0 else -1
    return (sign * d[0], sign * d[1], sign * d[2])


def entry(at: Box, start: tuple[float, float, float], along: tuple[float, float, float]) -> float | None:
    """How far along a ray a box is left towards the eye; None where the ray misses it or only touches (slab method)."""
    low, high = -1e18, 1e18
    for edges, origin, step in zip(
        ((at.x0_tenth_mm, at.x1_tenth_mm), (at.y0_tenth_mm, at.y1_tenth_mm), (at.z0_tenth_mm, at.z1_tenth_mm)),
        start, along, strict=True,
    ):  # fmt: skip
        near, far = sorted((edge - origin) / step for edge in edges)
        low, high = max(low, near), min(high, far)
    return high if low < high - 1e-9 else None


def wrong_orders(solids: tuple[Solid, ...], seen: Sequence[tuple[float, float, float]]) -> int:
    """Rays through points: how often the box painted last is not the one that the ray meets first from the eye."""
    along = sight(VIEW)
    wrong = 0
    for start in seen:
        met = [(place, far) for place, one in enumerate(solids) if (far := entry(one.box, start, along)) is not None]
        if met:
            last = max(met)
            wrong += last[1] < max(far for _place, far in met) - 1e-6
    return wrong


@pytest.mark.parametrize("name", REQUESTS)
def test_what_is_painted_last_is_nearest(name: str) -> None:
    """By casting rays at the middles and quarters of every box: another way than by parting axes."""
    frame, job = case(name)
    for solids in (timbers(frame), (*boards(frame), *bodies(frame, job))):
        ordered = paint_order(solids, VIEW)
        shares = (0.21, 0.5, 0.83)
        points = [
            (
                at.x0_tenth_mm + a * (at.x1_tenth_mm - at.x0_tenth_mm),
                at.y0_tenth_mm + b * (at.y1_tenth_mm - at.y0_tenth_mm),
                at.z0_tenth_mm + c * (at.z1_tenth_mm - at.z0_tenth_mm),
            )
            for at in (one.box for one in ordered)
            for a, b, c in product(shares, shares, shares)
        ]

        assert 0 == wrong_orders(ordered, points)
        assert len(ordered) == len(solids)


def test_the_order_does_not_depend_on_the_order_given() -> None:
    frame, _job = case("b")
    solids = timbers(frame)

    assert paint_order(solids, VIEW) == paint_order(solids[::-1], VIEW)


def test_a_ring_is_cut() -> None:
    """Three bars, each in front of the next: no order of the whole bars is right."""
    bars = (solid("a", -60, 240, 80, 110, 20, 50), solid("b", 40, 70, -80, 120, 50, 80), solid("c", 10, 40, 0, 30, -60, 140))
    ordered = paint_order(bars, VIEW)
    points = [
        (at.x0_tenth_mm + a, at.y0_tenth_mm + b, at.z0_tenth_mm + c)
        for at in (one.box for one in ordered)
        for a, b, c in product(range(1, 300, 7), range(1, 200, 7), range(1, 200, 7))
        if a < at.x1_tenth_mm - at.x0_tenth_mm and b < at.y1_tenth_mm - at.y0_tenth_mm and c < at.z1_tenth_mm - at.z0_tenth_mm
    ]

    assert 5 == len(ordered)
    assert 0 == wrong_orders(ordered, points)
    assert sum(volume(one.box) for one in bars) == sum(volume(one.box) for one in ordered)


def volume(at: Box) -> int:
    return (at.x1_tenth_mm - at.x0_tenth_mm) * (at.y1_tenth_mm - at.y0_tenth_mm) * (at.z1_tenth_mm - at.z0_tenth_mm)


EDGES = st.tuples(st.integers(0, 12), st.integers(1, 8))


@given(st.lists(st.tuples(EDGES, EDGES, EDGES), min_size=2, max_size=9))
def test_any_boxes_that_do_not_overlap_are_painted_right(drawn: list[tuple[tuple[int, int], ...]]) -> None:
    boxes: list[Box] = []
    for spans in drawn:
        made = box(*(edge * 10 for low, length in spans for edge in (low, low + length)))
        if all(min(overlap_tenth_mm(made, other)) <= 0 for other in boxes):
            boxes.append(made)
    solids = tuple(Solid(mark=str(place), stuff=Stuff.BOARD, box=one) for place, one in enumerate(boxes))
    ordered = paint_order(solids, VIEW)
    points = [
        (
            at.x0_tenth_mm + a * (at.x1_tenth_mm - at.x0_tenth_mm),
            at.y0_tenth_mm + b * (at.y1_tenth_mm - at.y0_tenth_mm),
            at.z0_tenth_mm + c * (at.z1_tenth_mm - at.z0_tenth_mm),
        )
        for at in boxes
        for a, b, c in product((0.07, 0.37, 0.71, 0.93), repeat=3)
    ]

    assert 0 == wrong_orders(ordered, points)
