"""Where patterns come from: bars of some length, or a list of the sets of pieces that fit a sheet.

The cover model and the search above it ask a source four things and know nothing else of lengths or sheets: which patterns are
worth more than a bar costs, how a pattern is filled up, how much a bar can hold by some weighting, and which patterns are worth
listing at all.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple, Protocol

import numpy as np

from service.cutting.patterns import Ints, Keep, Listed, best_pattern, best_values, list_patterns, value_tables

if TYPE_CHECKING:
    from collections.abc import Iterator

type Pattern = tuple[int, Ints]  # class, and how many of each kind

_AT_ONCE: Final = 8  # patterns of one class given at once: fewest milliseconds of 1, 4, 8, 16


class Weighed(NamedTuple):
    """How much a bar of each class holds at most by a weighting; for lengths also by capacity."""

    worths: Ints
    by_capacity: Ints


class Loss(NamedTuple):
    """How much the patterns of a packing may lose by one weighting, and how many bars of each class it has."""

    values: Ints
    floors: Ints  # least value of a pattern, by class; huge where there is no bar
    bars: Ints


class Source(Protocol):
    """Patterns of some classes of bar or sheet."""

    @property
    def classes_count(self) -> int:
        """How many classes there are."""

    @property
    def effort_micros(self) -> float:
        """Work of one question, in thousandths of a unit."""

    def better(self, demands: Ints, values: Ints, least: Ints) -> Iterator[Pattern]:
        """Give patterns within the demand that are worth more than `least` of their class; none only if there is none."""

    def filled(self, pattern: Pattern, demands: Ints) -> Ints:
        """Fill a pattern up within the demand."""

    def weigh(self, demands: Ints, values: Ints) -> Weighed:
        """Weigh the fullest pattern of every class."""

    def list(self, demands: Ints, loss: Loss, limit: int) -> Listed | None:
        """List all maximal patterns within a loss, or None if there are more than `limit`."""


class Lengths(NamedTuple):
    """Patterns of pieces on bars: kinds by falling size, one capacity a class, the first the largest."""

    sizes: Ints
    capacities: Ints

    @property
    def classes_count(self) -> int:
        """How many classes there are."""
        return len(self.capacities)

    @property
    def effort_micros(self) -> float:
        """Work of one table of values, and of reading patterns out of it."""
        kinds = len(self.sizes)
        return kinds * int(self.capacities[0]) / 300 + 100 + 4 * kinds * len(self.capacities)

    def better(self, demands: Ints, values: Ints, least: Ints) -> Iterator[Pattern]:
        """Give the best pattern of every class that is worth more than `least`, and good ones that start with other kinds."""
        table = value_tables(self.sizes, demands, values, int(self.capacities[0]))
        for number, capacity in enumerate(self.capacities.tolist()):
            if table[0, capacity] > least[number]:
                best = best_pattern(table, self.sizes, values, capacity)
                yield number, self.filled((number, best), demands)
                for counts in self._others(table, demands, values, capacity):
                    pattern = self.filled((number, np.minimum(counts, demands)), demands)
                    if pattern @ values > least[number]:
                        yield number, pattern

    def _others(self, table: Ints, demands: Ints, values: Ints, capacity: int) -> Iterator[Ints]:
        """Give good patterns by the kind that they start with; they may exceed the demand of that kind by one."""
        kinds = len(self.sizes)
        room = capacity - self.sizes
        worth = values + table[np.arange(kinds), np.maximum(room, 0)]
        worth[(room < 0) | (demands == 0)] = 0
        for kind in np.argsort(-worth, kind="stable")[:_AT_ONCE].tolist():
            if worth[kind] > 0:
                counts = np.zeros(kinds, dtype=np.int64)
                counts[kind:] = best_pattern(table[kind:], self.sizes[kind:], values[kind:], int(room[kind]))
                counts[kind] += 1
                yield counts

    def filled(self, pattern: Pattern, demands: Ints) -> Ints:
        """Fill up what is left of a bar, longest first."""
        number, counts = pattern
        counts = counts.copy()
        left = int(self.capacities[number] - counts @ self.sizes)
        for kind in np.nonzero(self.sizes <= left)[0].tolist():
            size = int(self.sizes[kind])
            more = min(left // size, int(demands[kind] - counts[kind]))
            counts[kind] += more
            left -= more * size
            if left < self.sizes[-1]:
                break
        return counts

    def weigh(self, demands: Ints, values: Ints) -> Weighed:
        """Weigh the fullest bar of every capacity."""
        row = best_values(self.sizes, demands, values, int(self.capacities[0]))
        return Weighed(row[self.capacities], row)

    def list(self, demands: Ints, loss: Loss, limit: int) -> Listed | None:
        """List all maximal patterns within a loss; together they may leave empty only what the bars have over."""
        table = value_tables(self.sizes, demands, loss.values, int(self.capacities[0]))
        waste = int(loss.bars @ self.capacities) - int(self.sizes @ demands)
        listed = list_patterns(
            self.sizes, demands, self.capacities, limit=limit, keep=Keep(table, loss.values, loss.floors, waste)
        )
        if listed is None:
            return None
        good = self.capacities[listed.classes] - listed.counts @ self.sizes <= waste
        return Listed(listed.counts[good], listed.classes[good])


class Sets(NamedTuple):
    """A complete list of the maximal sets of pieces that fit a sheet of each class, sorted by class."""

    counts: Ints  # one set a row
    classes: Ints
    classes_count: int

    @property
    def effort_micros(self) -> float:
        """Work of weighing the whole list."""
        return self.counts.size / 200

    def better(self, demands: Ints, values: Ints, least: Ints) -> Iterator[Pattern]:
        """Give the best sets of every class within the demand."""
        within = np.minimum(self.counts, demands)
        worth = within @ values
        for number in range(self.classes_count):
            rows = np.nonzero((self.classes == number) & (worth > least[number]))[0]
            for row in rows[np.argsort(-worth[rows], kind="stable")][:_AT_ONCE].tolist():
                yield number, within[row]

    def filled(self, pattern: Pattern, demands: Ints) -> Ints:
        """Leave a set as it is: what else would fit is another set of the list."""
        return np.minimum(pattern[1], demands)

    def weigh(self, demands: Ints, values: Ints) -> Weighed:
        """Weigh the best set of every class."""
        worth = np.minimum(self.counts, demands) @ values
        worths = np.array([worth[self.classes == number].max(initial=0) for number in range(self.classes_count)], dtype=np.int64)
        return Weighed(worths, np.zeros(0, dtype=np.int64))

    def list(self, demands: Ints, loss: Loss, limit: int) -> Listed | None:
        """List the sets within a loss by value; rectangles waste area anyway."""
        good = (self.counts <= demands).all(axis=1) & (self.counts @ loss.values >= loss.floors[self.classes])
        if int(good.sum()) > limit:
            return None
        return Listed(self.counts[good].astype(np.int16), self.classes[good].astype(np.int32))
