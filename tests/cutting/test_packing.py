from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from service.cutting import Effort, never
from service.cutting.compositions import make_cut
from service.cutting.cover import Bins, Cover
from service.cutting.meter import Meter
from service.cutting.packing import dive, pack, pack_listed, refused_by_duals, trimmed, worth_using
from service.cutting.sources import Lengths

type Ints = np.ndarray[tuple[int], np.dtype[np.int64]]


def meter() -> Meter:
    return Meter(Effort(), never)


def bins_of(sizes: list[int], demands: list[int], capacities: list[int]) -> Bins:
    return Bins(np.array(sizes), np.array(demands), Lengths(np.array(sizes), np.array(capacities)))


def can_be_cut(pieces: list[int], room: list[int]) -> bool:
    """Try every way: written for the tests alone."""
    if not pieces:
        return True
    return any(
        left >= pieces[0] and can_be_cut(pieces[1:], [*room[:at], left - pieces[0], *room[at + 1 :]])
        for at, left in enumerate(room)
        if left not in room[:at]
    )


@given(
    st.lists(st.integers(3, 20), min_size=1, max_size=4, unique=True),
    st.lists(st.integers(20, 40), min_size=1, max_size=2, unique=True),
    st.data(),
)
@settings(max_examples=80)
def test_a_packing_is_decided_as_trying_all_decides_it(sizes: list[int], capacities: list[int], data: st.DataObject) -> None:
    sizes, capacities = sorted(sizes, reverse=True), sorted(capacities, reverse=True)
    demands = [data.draw(st.integers(1, 3)) for _ in sizes]
    bars = np.array([data.draw(st.integers(0, 3)) for _ in capacities])
    bins = bins_of(sizes, demands, capacities)
    cuts = [make_cut(bins, bins.sizes)]
    packed = pack(bins, bars, cuts, Cover(bins, meter()), meter=meter())
    pieces = [size for size, count in zip(sizes, demands, strict=True) for _ in range(count)]
    room = [capacity for capacity, count in zip(capacities, bars, strict=True) for _ in range(count)]

    assert packed.known
    assert can_be_cut(pieces, room) == (packed.patterns is not None)
    for number, counts in packed.patterns or ():
        assert counts @ bins.sizes <= capacities[number]


def test_too_few_bars_are_refused_by_a_weighting() -> None:
    """By hand: 3 x 6 on two bars of 10: each holds one; worth 1 each, 3 needed, 2 held."""
    bins = bins_of([6], [3], [10])
    cut = refused_by_duals(bins, np.array([2]), Cover(bins, meter()))

    assert cut is not None
    assert 2 * cut.worths[0] < cut.needed
    assert refused_by_duals(bins, np.array([3]), Cover(bins, meter())) is None


def test_rounding_cuts_what_can_be_cut() -> None:
    """By hand: 2 x 6 + 4 x 2 on two bars of 10: 6 + 2 + 2 each."""
    patterns = dive(bins_of([6, 2], [2, 4], [10]), np.array([2]), [], meter())

    assert patterns is not None
    assert [[1, 2], [1, 2]] == [counts.tolist() for _, counts in patterns]
    assert dive(bins_of([6, 2], [3, 4], [10]), np.array([2]), [], meter()) is None


def test_a_packing_that_no_weighting_refuses_is_refused_by_the_list() -> None:
    """By hand: pieces 4, 4, 3, 3, 3, 3 fill two bars of 10 but for nothing (20 of 20): 4 + 3 + 3 twice; 4 + 4 + ... cannot."""
    bins = bins_of([4, 3], [2, 4], [10])
    cuts = [make_cut(bins, bins.sizes)]
    listed = worth_using(bins, np.array([2]), cuts, 100)

    assert listed is not None
    assert [[1, 2]] == listed.counts.tolist()
    assert pack_listed(bins, np.array([2]), listed, meter()).patterns is not None
    odd = bins_of([5, 4, 3], [1, 1, 2], [8, 7])
    none = worth_using(odd, np.array([1, 1]), [make_cut(odd, odd.sizes)], 100)

    assert none is not None
    assert {(1, 0, 1), (0, 1, 1)} == {tuple(row) for row in none.counts.tolist()}


def test_without_work_left_a_master_is_left_open() -> None:
    bins = bins_of([4, 3], [2, 4], [10])
    listed = worth_using(bins, np.array([2]), [make_cut(bins, bins.sizes)], 100)
    spent = Meter(Effort(work_count=0), never)

    assert listed is not None
    assert not pack_listed(bins, np.array([2]), listed, spent).known


def test_what_covers_too_much_is_trimmed() -> None:
    patterns = [(0, np.array([2, 1])), (0, np.array([2, 1])), (1, np.array([1, 0]))]

    assert [[2, 1], [1, 0]] == [counts.tolist() for _, counts in trimmed(patterns, np.array([3, 1]))]
