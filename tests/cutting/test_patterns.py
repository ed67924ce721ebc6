from __future__ import annotations

from itertools import product

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from service.cutting.patterns import Keep, best_pattern, best_values, list_patterns, value_tables

type Kinds = list[tuple[int, int, int]]  # size, demand, value

KINDS = st.lists(st.tuples(st.integers(2, 30), st.integers(1, 3), st.integers(0, 20)), min_size=1, max_size=4)


def ints(values: list[int]) -> np.ndarray[tuple[int], np.dtype[np.int64]]:
    return np.array(values, dtype=np.int64)


def falling(kinds: Kinds) -> Kinds:
    return sorted({kind[0]: kind for kind in kinds}.values(), reverse=True)


def fitting(kinds: Kinds, capacity: int) -> list[tuple[int, ...]]:
    """Every choice of pieces that fits, by trying them all."""
    choices = product(*(range(demand + 1) for _, demand, _ in kinds))
    return [c for c in choices if sum(count * size for count, (size, _, _) in zip(c, kinds, strict=True)) <= capacity]


def worth(counts: tuple[int, ...], kinds: Kinds) -> int:
    return sum(count * value for count, (_, _, value) in zip(counts, kinds, strict=True))


def maximal(kinds: Kinds, capacity: int) -> set[tuple[int, ...]]:
    fits = set(fitting(kinds, capacity))
    grown = {c: [(*c[:at], c[at] + 1, *c[at + 1 :]) for at in range(len(c))] for c in fits}
    return {c for c in fits if not any(larger in fits for larger in grown[c])}


@given(KINDS, st.integers(30, 60))
@settings(max_examples=60)
def test_the_best_value_of_every_capacity_is_that_of_trying_all(drawn: Kinds, top: int) -> None:
    kinds = falling(drawn)
    sizes, demands, values = (ints(list(column)) for column in zip(*kinds, strict=True))
    row = best_values(sizes, demands, values, top)
    table = value_tables(sizes, demands, values, top)

    for capacity in range(top + 1):
        assert max(worth(c, kinds) for c in fitting(kinds, capacity)) == row[capacity] == table[0, capacity]


@given(KINDS, st.integers(30, 60))
@settings(max_examples=60)
def test_the_best_pattern_has_the_best_value_and_fits(drawn: Kinds, top: int) -> None:
    kinds = falling(drawn)
    sizes, demands, values = (ints(list(column)) for column in zip(*kinds, strict=True))
    table = value_tables(sizes, demands, values, top)
    counts = best_pattern(table, sizes, values, top)

    assert table[0, top] == counts @ values
    assert counts @ sizes <= top
    assert (counts <= demands).all()


@given(KINDS, st.lists(st.integers(30, 60), min_size=1, max_size=2, unique=True))
@settings(max_examples=60)
def test_exactly_the_maximal_patterns_are_listed(drawn: Kinds, capacities: list[int]) -> None:
    kinds = falling(drawn)
    sizes, demands, _ = (ints(list(column)) for column in zip(*kinds, strict=True))
    listed = list_patterns(sizes, demands, ints(capacities), limit=100_000)

    assert listed is not None
    for number, capacity in enumerate(capacities):
        rows = [tuple(row) for row in listed.counts[listed.classes == number].tolist()]

        assert len(rows) == len(set(rows))
        assert maximal(kinds, capacity) == set(rows)


@given(KINDS, st.integers(30, 60), st.integers(0, 10), st.integers(0, 10))
@settings(max_examples=60)
def test_only_patterns_worth_keeping_are_listed(drawn: Kinds, capacity: int, loss: int, waste: int) -> None:
    kinds = falling(drawn)
    sizes, demands, values = (ints(list(column)) for column in zip(*kinds, strict=True))
    table = value_tables(sizes, demands, values, capacity)
    floor = int(table[0, capacity]) - loss
    keep = Keep(table, values, ints([floor]), waste)
    listed = list_patterns(sizes, demands, ints([capacity]), limit=100_000, keep=keep)
    wanted = {
        c
        for c in maximal(kinds, capacity)
        if worth(c, kinds) >= floor and capacity - sum(n * k[0] for n, k in zip(c, kinds, strict=True)) <= waste
    }

    assert listed is not None
    assert wanted <= {tuple(row) for row in listed.counts.tolist()} <= maximal(kinds, capacity)


def test_too_long_a_list_is_given_up() -> None:
    sizes, demands = ints(list(range(40, 20, -1))), ints([9] * 20)

    assert list_patterns(sizes, demands, ints([400]), limit=1_000) is None


def test_example_a_has_as_many_patterns_as_were_counted() -> None:
    """`knowledge/worked-examples.md`, section 0: 1838 patterns of A with allowance 20, over four stock lengths, kerf 4."""
    lengths = ((1605, 4), (1327, 4), (1251, 10), (687, 2), (632, 3), (354, 8), (242, 18), (134, 3))
    sizes, demands = ints([length + 4 for length, _ in lengths]), ints([count for _, count in lengths])
    listed = list_patterns(sizes, demands, ints([4804, 3604, 3004, 2404]), limit=100_000)

    assert listed is not None
    assert 1_838 == len(listed.counts)
