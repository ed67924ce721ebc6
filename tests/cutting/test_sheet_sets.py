from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.cutting import Effort, FirstCut, SheetJob, never
from service.cutting.meter import Meter
from service.cutting.sheet_problem import SheetKind, SheetProblem, state_sheets
from service.cutting.sheet_sets import SetList
from tests.cutting.jobs import sheets
from tests.cutting.test_sheets import sawable

MOST = 5_000_000


def listed(problem: SheetProblem, first_cut: FirstCut = FirstCut.ANY) -> SetList:
    return SetList(problem, first_cut, meter=Meter(Effort(work_count=100_000), never), most_micros=MOST)


def fits(pieces: tuple[tuple[int, int], ...], width: int, height: int) -> bool:
    """Tell whether fixed pieces can be sawn from a sheet, by cutting it at every unit: written for the tests alone."""
    if not pieces:
        return True
    if sum(w * h for w, h in pieces) > width * height:
        return False
    if len(pieces) == 1:
        return pieces[0][0] <= width and pieces[0][1] <= height
    for sides in product((0, 1), repeat=len(pieces) - 1):
        one = (pieces[0], *(p for p, side in zip(pieces[1:], sides, strict=True) if side))
        other = tuple(p for p, side in zip(pieces[1:], sides, strict=True) if not side)
        across = any(fits(one, at, height) and fits(other, width - at, height) for at in range(1, width)) if other else False
        up = any(fits(one, width, at) and fits(other, width, height - at) for at in range(1, height)) if other else False
        if across or up:
            return True
    return False


@given(st.lists(st.tuples(st.integers(1, 6), st.integers(1, 4), st.integers(1, 2)), min_size=1, max_size=3))
@settings(max_examples=25)
def test_exactly_the_sets_that_fit_are_listed(panels: list[tuple[int, int, int]]) -> None:
    """Small whole-number panels on 6 x 4, grain fixed: every choice of pieces, by trying every cut."""
    job = sheets([(100 * w, 100 * h, count) for w, h, count in panels], (600, 400), kerf=0, rotatable=False)
    problem = state_sheets(job)
    sets = listed(problem).sets()
    rows = {tuple(row) for row in sets.counts.tolist()}
    scale = problem.unit_tenth_mm / 1_000
    for choice in product(*(range(kind.demand + 1) for kind in problem.kinds)):
        pieces = tuple(_size(kind, scale) for kind, count in zip(problem.kinds, choice, strict=True) for _ in range(count))
        inside = any(all(c <= r for c, r in zip(choice, row, strict=True)) for row in rows)

        assert fits(pieces, 6, 4) == (inside or not pieces)


def _size(kind: SheetKind, scale: float) -> tuple[int, int]:
    return round(kind.width * scale), round(kind.height * scale)


def test_a_set_is_laid_out_apart_on_the_sheet() -> None:
    problem = state_sheets(sheets([(1300, 400, 2), (700, 500, 3), (500, 300, 2)]))
    found = listed(problem)
    sets = found.sets()
    for number, row in zip(sets.classes.tolist(), sets.counts.tolist(), strict=True):
        layout = found.layout(number, tuple(row))

        assert sum(row) == len(layout.pieces)
        assert sawable([piece[1:] for piece in layout.pieces])
        assert all(problem.classes[number].holds(p.x + p.width, p.y + p.height) for p in layout.pieces)


@pytest.mark.parametrize(
    ("first_cut", "sets"),
    [(FirstCut.ANY, {(1, 2), (0, 4)}), (FirstCut.CROSS, {(1, 2), (0, 4)}), (FirstCut.RIP, {(1, 0), (0, 4)})],
)
def test_what_fills_the_sheet_must_start_with_the_cut_asked_for(first_cut: FirstCut, sets: set[tuple[int, int]]) -> None:
    """By hand, kerf 0, 1000 x 1000: 500 x 1000 beside two of 500 x 500 parts by a cross-cut first, and never by a rip first.

    One of 500 x 1000 alone needs no rip at all; four of 500 x 500 may start either way.
    """
    problem = state_sheets(listed_job())

    assert (1, 2) == (problem.kinds[0].width, problem.kinds[0].height)
    assert sets == {tuple(row) for row in listed(problem, first_cut).sets().counts.tolist()}


def listed_job() -> SheetJob:
    return sheets([(500, 1000, 1), (500, 500, 4)], (1000, 1000), kerf=0, rotatable=False)


def test_a_list_that_takes_too_long_is_given_up() -> None:
    problem = state_sheets(sheets([(100 + 7 * k, 90 + 5 * k, 2) for k in range(12)]))

    assert not SetList(problem, FirstCut.ANY, meter=Meter(Effort(), never), most_micros=5_000).complete
