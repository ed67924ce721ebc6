"""From patterns to a plan: which piece lies where on which bar, what is left, what is to be taken from the yard."""

from __future__ import annotations

from collections import Counter, defaultdict
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from service.cutting.labels import natural_key, spread
from service.cutting.pieces import BarJob, BarStock
from service.cutting.plan import BarCut, BarGroup, Leftover, StockTaken

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.cutting.problem import BarProblem
    from service.cutting.sources import Pattern


class _Piece(NamedTuple):
    """A piece on a bar, as it is ordered there."""

    after_measure: bool
    falling: int  # minus its length
    label: str


type _Bar = tuple[BarStock, tuple[_Piece, ...]]


def lay_bars(job: BarJob, problem: BarProblem, plan: tuple[Pattern, ...]) -> tuple[BarGroup, ...]:
    """Place every piece: pieces cut after measuring together on few bars, and last on each; longest first."""
    alike: defaultdict[tuple[object, ...], list[_Bar]] = defaultdict(list)
    for stock, pieces in _label(job, _take_stock(job, problem, plan)):
        cuts = tuple((piece.after_measure, piece.falling) for piece in pieces)
        alike[(-stock.length_tenth_mm, stock.offcut, natural_key(stock.code), stock.cost_minor, cuts)].append((stock, pieces))
    return tuple(_group(job, f"B{place + 1}", bars) for place, (_, bars) in enumerate(sorted(alike.items(), key=_group_key)))


def _group_key(item: tuple[tuple[object, ...], list[_Bar]]) -> tuple[object, ...]:
    return item[0]


def _take_stock(job: BarJob, problem: BarProblem, plan: tuple[Pattern, ...]) -> list[tuple[BarStock, tuple[int, ...]]]:
    """Give each pattern a stock entry of its class: the fullest bars the cheapest ones, so that bought bars keep long rests."""
    sizes = np.array(problem.sizes, dtype=np.int64)
    by_class: defaultdict[int, list[tuple[int, ...]]] = defaultdict(list)
    for number, counts in plan:
        by_class[number].append(tuple(counts.tolist()))
    taken = []
    for number, rows in sorted(by_class.items()):
        ordered = sorted(rows, key=lambda row: (-int(np.array(row) @ sizes), row))
        entries = [job.stock[step.stock_index] for step in problem.classes[number].steps for _ in range(step.copies)]
        taken += list(zip(entries, ordered, strict=False))
    return taken


def _label(job: BarJob, bars: list[tuple[BarStock, tuple[int, ...]]]) -> Iterable[_Bar]:
    """Give the pieces of each kind out to the bars: to cut now from the first bar on, after measuring from the last bar on."""
    lengths = sorted({piece.length_tenth_mm for piece in job.pieces}, reverse=True)
    measured = {piece.length_tenth_mm for piece in job.pieces if piece.after_measure}
    queues = {length: [*_queue(job, length, after=False), *_queue(job, length, after=True)] for length in lengths}

    def waits(bar: tuple[BarStock, tuple[int, ...]]) -> tuple[object, ...]:
        stock, row = bar
        late = sum(count * length for count, length in zip(row, lengths, strict=True) if length in measured)
        return (late, -stock.length_tenth_mm, stock.offcut, natural_key(stock.code), stock.cost_minor, row)

    for stock, row in sorted(bars, key=waits):
        pieces = [queues[length].pop(0) for count, length in zip(row, lengths, strict=True) for _ in range(count)]
        yield stock, tuple(sorted(pieces, key=lambda piece: (piece.after_measure, piece.falling, natural_key(piece.label))))


def _queue(job: BarJob, length: int, *, after: bool) -> list[_Piece]:
    chosen = [(p.label, p.pieces_count) for p in job.pieces if p.length_tenth_mm == length and p.after_measure == after]
    return [_Piece(after, -length, label) for label in spread(chosen)]


def _group(job: BarJob, name: str, bars: list[_Bar]) -> BarGroup:
    """Measure a group of equal bars from the end where sawing starts; half the trim lies there."""
    stock, pieces = bars[0]
    usable_end = stock.length_tenth_mm - (job.end_trim_tenth_mm - job.end_trim_tenth_mm // 2)
    at, cuts = job.end_trim_tenth_mm // 2, []
    for piece in pieces:
        cuts.append(BarCut(start_tenth_mm=at, end_tenth_mm=at - piece.falling, after_measure=piece.after_measure))
        at += job.kerf_tenth_mm - piece.falling
    rest = max(0, usable_end - at)
    used = sum(-piece.falling for piece in pieces)
    return BarGroup(
        name=name,
        code=stock.code,
        length_tenth_mm=stock.length_tenth_mm,
        cost_each_minor=stock.cost_minor,
        offcut=stock.offcut,
        bars_count=len(bars),
        cuts=tuple(cuts),
        labels=tuple(sorted(tuple(piece.label for piece in row) for _, row in bars)),
        trim_tenth_mm=job.end_trim_tenth_mm,
        kerf_tenth_mm=stock.length_tenth_mm - job.end_trim_tenth_mm - used - rest,
        rest_tenth_mm=rest,
        keep=0 < rest >= job.least_offcut_tenth_mm,
    )


def stock_of(groups: Iterable[BarGroup]) -> tuple[StockTaken, ...]:
    """Add up what is to be taken: bought first, longest first."""
    taken: Counter[tuple[bool, int, str, int]] = Counter()
    for group in groups:
        taken[group.offcut, -group.length_tenth_mm, group.code, group.cost_each_minor] += group.bars_count
    return tuple(
        StockTaken(code=code, taken_count=count, cost_each_minor=cost, offcut=offcut)
        for (offcut, _, code, cost), count in sorted(taken.items())
    )


def leftovers_of(groups: Iterable[BarGroup]) -> tuple[Leftover, ...]:
    """Name the rests worth keeping, longest first."""
    kept = sorted((group for group in groups if group.keep), key=lambda group: -group.rest_tenth_mm)
    return tuple(
        Leftover(
            label=f"{group.name}-R",
            of=group.name,
            leftovers_count=group.bars_count,
            width_tenth_mm=group.rest_tenth_mm,
            height_tenth_mm=0,
        )
        for group in kept
    )
