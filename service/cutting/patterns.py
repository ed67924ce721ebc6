"""Patterns: what one bar can hold. Knapsack tables for all capacities at once, and lists of all patterns worth using.

A pattern is a row of counts, one per kind. It is *maximal* if no further piece of the demand fits; a cover of the demand needs
maximal patterns only, as a superset of a pattern does at least what the pattern does.

Source: bounded knapsack by dynamic programming, Bellman 1957; listing by level: our own.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

type Ints = NDArray[np.int64]


def value_tables(sizes: Ints, demands: Ints, values: Ints, capacity: int) -> Ints:
    """Best value of the kinds from i on for every capacity 0..capacity: row i of the table; the last row is all zero."""
    kinds = len(sizes)
    table = np.zeros((kinds + 1, capacity + 1), dtype=np.int64)
    for kind in range(kinds - 1, -1, -1):
        table[kind] = _with_kind(table[kind + 1], int(sizes[kind]), int(demands[kind]), int(values[kind]))
    return table


def best_values(sizes: Ints, demands: Ints, values: Ints, capacity: int) -> Ints:
    """Best value of a bar for every capacity 0..capacity, bounded by the demand."""
    row = np.zeros(capacity + 1, dtype=np.int64)
    for kind in range(len(sizes) - 1, -1, -1):
        row = _with_kind(row, int(sizes[kind]), int(demands[kind]), int(values[kind]))
    return row


def _with_kind(row: Ints, size: int, copies: int, value: int) -> Ints:
    """Add one kind to a table row; copies in lots of 1, 2, 4, ... so that any number up to `copies` can be made."""
    if value <= 0:
        return row
    lot, left = 1, min(copies, (len(row) - 1) // size)
    row = row.copy()
    while left > 0:
        lot = min(lot, left)
        shift = lot * size
        if shift >= len(row):
            break
        row[shift:] = np.maximum(row[shift:], row[:-shift] + lot * value)
        left -= lot
        lot *= 2
    return row


def best_pattern(table: Ints, sizes: Ints, values: Ints, capacity: int) -> Ints:
    """Read a best pattern for one capacity out of `value_tables`."""
    counts = np.zeros(len(sizes), dtype=np.int64)
    left = capacity
    for kind in range(len(sizes)):
        size, value, count = int(sizes[kind]), int(values[kind]), 0
        if value > 0:
            while table[kind + 1, left - count * size] + count * value != table[kind, left]:
                count += 1
        counts[kind] = count
        left -= count * size
    return counts


class Keep(NamedTuple):
    """Which patterns are worth listing: value at least `floors` (one per class), and at most `waste` left empty."""

    table: Ints  # `value_tables` of `values`
    values: Ints
    floors: Ints
    waste: int


class Listed(NamedTuple):
    """Patterns, one a row, by class."""

    counts: NDArray[np.int16]
    classes: NDArray[np.int32]


def list_patterns(sizes: Ints, demands: Ints, capacities: Ints, *, limit: int, keep: Keep | None = None) -> Listed | None:
    """List every maximal pattern of every class, or only those worth keeping; None if there are more than `limit` on the way.

    Works kind by kind on all partial patterns at once. A partial pattern is dropped as soon as a larger kind could still go in
    after all that is left to come, or its best completion is worth too little.
    """
    kinds = len(sizes)
    room = capacities.copy()
    classes = np.arange(len(capacities), dtype=np.int32)
    counts = np.zeros((len(capacities), 0), dtype=np.int16)
    least_missing = np.full(len(capacities), np.iinfo(np.int64).max)
    value = np.zeros(len(capacities), dtype=np.int64)
    to_come = np.append(np.cumsum((sizes * demands)[::-1])[::-1], 0)
    for kind in range(kinds):
        size, demand = int(sizes[kind]), int(demands[kind])
        most = np.minimum(room // size, demand)
        if kind == kinds - 1:
            copies, index = most, np.arange(len(room))
        else:
            index = np.repeat(np.arange(len(room)), most + 1)
            if len(index) > 4 * limit:
                return None
            copies = np.arange(len(index)) - np.repeat(np.cumsum(most + 1) - most - 1, most + 1)
        room = room[index] - copies * size
        least_missing = np.where(copies < demand, size, least_missing[index])
        good = room - to_come[kind + 1] < least_missing
        if keep is not None:
            value = value[index] + copies * int(keep.values[kind])
            good &= value + keep.table[kind + 1, room] >= keep.floors[classes[index]]
            good &= room - to_come[kind + 1] <= keep.waste
            value = value[good]
        index, copies = index[good], copies[good]
        if len(index) > limit:
            return None
        room, least_missing, classes = room[good], least_missing[good], classes[index]
        counts = np.concatenate((counts[index], copies[:, None].astype(np.int16)), axis=1)
    order = np.argsort(classes, kind="stable")
    return Listed(counts[order], classes[order])
