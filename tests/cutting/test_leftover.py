from __future__ import annotations

from itertools import product

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from service.cutting import BarJob, Effort, cut_bars, never
from service.cutting.first_fit import bins_of, first_fit
from service.cutting.leftover import Rest, longest_rest, rest_of
from service.cutting.meter import Meter
from service.cutting.problem import state_bars, without
from service.cutting.search import Search
from tests.cutting.jobs import bars


def longest(job: BarJob, work: int = 2_000) -> Rest:
    problem = state_bars(job)
    search = Search(
        bins_of(problem), problem.classes, first_fit(problem, Meter(Effort(), never)), Meter(Effort(work_count=work), never)
    )
    search.run(lambda demands, used: first_fit(without(problem, demands, used), search.meter))
    return longest_rest(problem, search)


def by_trying(pieces: list[int], length: int, kerf: int, number: int) -> int:
    """Longest rest of one of so many equal bars, over all ways to share the pieces out: written for the tests alone."""
    best = 0
    for places in product(range(number), repeat=len(pieces)):
        used = [sum(piece + kerf for piece, at in zip(pieces, places, strict=True) if at == bar) for bar in range(number)]
        if all(use <= length + kerf for use in used) and all(used):
            best = max(best, *(length - use for use in used))
    return best


@given(st.lists(st.integers(300, 1800), min_size=1, max_size=6), st.sampled_from((0, 4)))
@settings(max_examples=40)
def test_the_longest_rest_is_that_of_trying_all(pieces: list[int], kerf: int) -> None:
    job = bars([(length, 1, False) for length in pieces], [(2400, 400)], kerf=10 * kerf)
    proof = cut_bars(job).proof

    assert longest(job).proven
    assert proof.leftover_proven
    assert 10 * by_trying(pieces, 2400, kerf, proof.bought_count) == proof.leftover_tenth_mm


def test_the_last_cut_may_run_off_the_end() -> None:
    """By hand: 2398 of 2400 and kerf 4: nothing is left, not minus 2."""
    problem = state_bars(bars([(2398, 1, False)], [(2400, 400)]))

    assert 0 == rest_of(problem, (0, np.array([1])))


def test_without_work_left_nothing_is_claimed() -> None:
    rest = longest(bars([(700, 5, False), (300, 2, False)], [(2400, 400)]), work=0)

    assert not rest.proven
