"""All sets of pieces that fit one sheet, cut edge to edge any number of times: exact, for small jobs.

A set fits if it can be parted in two that fit beside or above each other. Sets grow piece by piece (every part of a fitting set
fits), and of each the smallest boxes that hold it are kept (no box both as wide and as high as another).

Source: guillotine cutting as a sum of two parts, Gilmore and Gomory 1965; sets by level with the smallest boxes: our own.
"""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING, Final, NamedTuple

import numpy as np

from service.cutting.pieces import FirstCut
from service.cutting.sheet_greedy import Layout, Placed
from service.cutting.sources import Sets

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.cutting.meter import Meter
    from service.cutting.sheet_problem import SheetClass, SheetProblem

_SETS_LIMIT: Final = 20_000  # sets in all
_MICROS_PER_JOIN: Final = 1.5  # work of putting two boxes together in both ways, measured roughly
_MICROS_PER_SET: Final = 20


class _Boxed(NamedTuple):
    """A box that holds a set: its size, and how it is made of two sets' boxes (or of a piece)."""

    width: int
    height: int
    one: tuple[int, int]  # code of a set and place of its box; (-1, kind) for a single piece
    other: tuple[int, int]
    beside: bool = False


class SetList:
    """The fitting sets of a problem. `complete` tells whether the list was finished within its limits."""

    def __init__(self, problem: SheetProblem, first_cut: FirstCut, *, meter: Meter, most_micros: int) -> None:
        """List the sets, unless that takes more work than `most_micros`.

        Args:
            problem: the bare problem.
            first_cut: which way the first cut of every sheet must run; if it matters, boxes of either way are kept.
            meter: counts the work.
            most_micros: most work to spend, in thousandths of a unit.
        """
        self._first_cut = first_cut
        self._problem, self._meter = problem, meter
        self._bases = np.cumprod([1, *(kind.demand + 1 for kind in problem.kinds)]).tolist()
        self._boxes: dict[int, list[_Boxed]] = {}
        self._counts: dict[int, tuple[int, ...]] = {}
        self._left_micros = float(most_micros)
        self.complete = self._grow()

    def _grow(self) -> bool:
        """Grow sets by one piece a level, until none fits or a limit is met."""
        level = self._singles()
        while level:
            following: dict[int, tuple[int, ...]] = {}
            for code, counts in level.items():
                for kind, of in enumerate(self._problem.kinds):
                    larger = code + self._bases[kind]
                    if counts[kind] < of.demand and larger not in following:
                        grown = (*counts[:kind], counts[kind] + 1, *counts[kind + 1 :])
                        if self._parts_fit(larger, grown) and self._join_all(larger, grown):
                            following[larger] = grown
                        if self._left_micros < 0:
                            return False
                if len(self._boxes) > _SETS_LIMIT or self._meter.rang():
                    return False
            level = following
        return True

    def _singles(self) -> dict[int, tuple[int, ...]]:
        """Sets of one piece: its ways to lie that fit some sheet."""
        level: dict[int, tuple[int, ...]] = {}
        for kind, of in enumerate(self._problem.kinds):
            boxes = [_Boxed(w, h, one=(-1, kind), other=(-1, kind)) for w, h in of.ways() if self._fits_any(w, h)]
            if boxes:
                code = self._bases[kind]
                level[code] = tuple(int(at == kind) for at in range(len(self._problem.kinds)))
                self._boxes[code], self._counts[code] = _smallest(boxes), level[code]
        return level

    def _fits_any(self, width: int, height: int) -> bool:
        return any(of.holds(width, height) for of in self._problem.classes)

    def _parts_fit(self, code: int, counts: tuple[int, ...]) -> bool:
        """Tell whether the set can fit at all: by area, and with any one piece taken out."""
        kinds = self._problem.kinds
        area = sum(count * of.width * of.height for count, of in zip(counts, kinds, strict=True))
        if area > max(of.width * of.height for of in self._problem.classes):
            return False
        return all(not count or code - self._bases[kind] in self._boxes for kind, count in enumerate(counts))

    def _join_all(self, code: int, counts: tuple[int, ...]) -> bool:
        """Find the smallest boxes of a set from all its partings; tell whether there is one that fits."""
        best: dict[tuple[bool, int], _Boxed] = {}
        both_ways = self._first_cut is not FirstCut.ANY
        joins = 0
        for part in product(*(range(count + 1) for count in counts)):
            one = sum(count * base for count, base in zip(part, self._bases, strict=False))
            if 0 < one <= code - one:
                joins += len(self._boxes[one]) * len(self._boxes[code - one])
                for joined in self._join(one, code - one):
                    key = (joined.beside and both_ways, joined.width)
                    if key not in best or joined.height < best[key].height:
                        best[key] = joined
        micros = _MICROS_PER_SET + joins * _MICROS_PER_JOIN
        self._left_micros -= micros
        self._meter.spend(micros)
        if best:
            fronts = [_smallest([box for (way, _), box in best.items() if way is beside]) for beside in (False, True)]
            self._boxes[code], self._counts[code] = [*fronts[0], *fronts[1]], counts
        return bool(best)

    def _join(self, one: int, other: int) -> Iterator[_Boxed]:
        """Put the boxes of two sets beside and above each other, where that fits."""
        for at, a in enumerate(self._boxes[one]):
            for to, b in enumerate(self._boxes[other]):
                width, height = a.width + b.width, max(a.height, b.height)
                if self._fits_any(width, height):
                    yield _Boxed(width, height, (one, at), (other, to), beside=True)
                width, height = max(a.width, b.width), a.height + b.height
                if self._fits_any(width, height):
                    yield _Boxed(width, height, (one, at), (other, to))

    def sets(self) -> Sets:
        """Give the maximal sets of every class, by class."""
        rows, numbers = [], []
        for number, of in enumerate(self._problem.classes):
            fitting = {code for code, boxes in self._boxes.items() if any(self._usable(box, of) for box in boxes)}
            for code in sorted(fitting):
                if not any(larger in fitting for larger in self._larger(code)):
                    rows.append(self._counts[code])
                    numbers.append(number)
        shape = (len(rows), len(self._problem.kinds))
        return Sets(np.array(rows, dtype=np.int64).reshape(shape), np.array(numbers, dtype=np.int64), len(self._problem.classes))

    def _larger(self, code: int) -> Iterator[int]:
        """Codes of the sets with one piece more, as far as the demand goes."""
        for kind, of in enumerate(self._problem.kinds):
            if self._counts[code][kind] < of.demand:
                yield code + self._bases[kind]

    def layout(self, number: int, counts: tuple[int, ...]) -> Layout:
        """Lay out a fitting set on a sheet of a class, in the box that leaves the largest rest along one side."""
        code = sum(count * base for count, base in zip(counts, self._bases, strict=False))
        of = self._problem.classes[number]
        usable = [at for at, box in enumerate(self._boxes[code]) if self._usable(box, of)]
        at = max(usable, key=lambda at: (_rest(self._boxes[code][at], of), -at))
        return Layout(number, tuple(sorted(self._place(code, at, 0, 0))))

    def _usable(self, box: _Boxed, of: SheetClass) -> bool:
        """Tell whether a box fits a sheet and its first cut can run as asked: trimming a rest off is a first cut, too."""
        if not of.holds(box.width, box.height):
            return False
        if self._first_cut is FirstCut.ANY:
            return True
        rip = self._first_cut is FirstCut.RIP
        spare = of.height - box.height if rip else of.width - box.width
        return spare > 0 or (box.one[0] >= 0 and box.beside is not rip) or self._needs_no(box, of, rip=rip)

    def _needs_no(self, box: _Boxed, of: SheetClass, *, rip: bool) -> bool:
        """Tell whether every piece of a box runs through the whole sheet, so that no rip (or no cross-cut) is needed at all."""
        if box.one[0] < 0:
            return box.height == of.height if rip else box.width == of.width
        parts = (self._boxes[code][at] for code, at in (box.one, box.other))
        return box.beside is rip and all(self._needs_no(part, of, rip=rip) for part in parts)

    def _place(self, code: int, at: int, x: int, y: int) -> Iterator[Placed]:
        box = self._boxes[code][at]
        if box.one[0] < 0:
            yield Placed(box.one[1], x, y, box.width, box.height)
            return
        first = self._boxes[box.one[0]][box.one[1]]
        yield from self._place(*box.one, x, y)
        yield from self._place(*box.other, x + first.width if box.beside else x, y if box.beside else y + first.height)


def _smallest(boxes: list[_Boxed]) -> list[_Boxed]:
    """Drop every box that is at least as wide and as high as another."""
    kept: list[_Boxed] = []
    for box in sorted(boxes, key=lambda box: (box.width, box.height)):
        if not kept or box.height < kept[-1].height:
            kept.append(box)
    return kept


def _rest(box: _Boxed, of: SheetClass) -> int:
    return max((of.width - box.width) * of.height, (of.height - box.height) * of.width)
