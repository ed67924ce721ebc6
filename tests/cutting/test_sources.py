from __future__ import annotations

import numpy as np

from service.cutting.sources import Lengths, Loss, Sets


def ints(*values: int) -> np.ndarray[tuple[int], np.dtype[np.int64]]:
    return np.array(values, dtype=np.int64)


# By hand: pieces of 50, 30 and 20; bars of 100 and 60.
BARS = Lengths(ints(50, 30, 20), ints(100, 60))
# The same maximal patterns as sets: 100: 2x50, 50+30+20, 30+20..., 60: 50, 30+20.
SETS = Sets(np.array([[2, 0, 0], [1, 1, 1], [0, 2, 2], [1, 0, 0], [0, 2, 0], [0, 1, 1]]), ints(0, 0, 0, 1, 1, 1), 2)
DEMANDS = ints(2, 2, 2)
VALUES = ints(5, 4, 1)


def test_the_fullest_bar_and_the_best_set_are_weighed() -> None:
    """By hand, values 5, 4, 1: 2 x 50 gives 10, 50+30+20 gives 10, 30+30+20+20 gives 10; in 60: 30+30 gives 8."""
    assert [10, 8] == BARS.weigh(DEMANDS, VALUES).worths.tolist()
    assert [10, 8] == SETS.weigh(DEMANDS, VALUES).worths.tolist()
    assert 8 == BARS.weigh(DEMANDS, VALUES).by_capacity[60]


def test_better_patterns_are_given_as_long_as_there_are_any() -> None:
    for source in (BARS, SETS):
        found = [(number, int(counts @ VALUES)) for number, counts in source.better(DEMANDS, VALUES, ints(9, 8))]

        assert {(0, 10)} == set(found)
        assert [] == list(source.better(DEMANDS, VALUES, ints(10, 8)))


def test_better_patterns_stay_within_the_demand() -> None:
    little = ints(1, 0, 2)

    for source in (BARS, SETS):
        for _, counts in source.better(little, VALUES, ints(0, 0)):
            assert (counts <= little).all()


def test_a_bar_is_filled_up_and_a_set_is_not() -> None:
    assert [1, 1, 1] == BARS.filled((0, ints(1, 0, 0)), ints(1, 2, 2)).tolist()
    assert [1, 0, 0] == SETS.filled((0, ints(2, 0, 0)), ints(1, 2, 2)).tolist()


def test_patterns_within_a_loss_are_listed() -> None:
    """By hand: two bars of 100 for 200 of pieces may leave nothing empty; the three full patterns remain."""
    loss = Loss(ints(5, 3, 2), ints(10, 1 << 62), ints(2, 0))

    for source in (BARS, SETS):
        listed = source.list(DEMANDS, loss, 100)

        assert listed is not None
        assert {(2, 0, 0), (1, 1, 1), (0, 2, 2)} == {tuple(row) for row in listed.counts.tolist()}
        assert source.list(DEMANDS, loss, 1) is None


def test_sources_say_what_a_question_costs() -> None:
    assert BARS.effort_micros > 0
    assert SETS.effort_micros > 0
    assert (2, 2) == (BARS.classes_count, SETS.classes_count)
