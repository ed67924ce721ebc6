"""Packing: can the demand be cut from so many bars of each class? Answered by rounding, or exactly over a list of patterns."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

import highspy
import numpy as np

from service.cutting.compositions import Cut, make_cut
from service.cutting.cover import Bins, Cover, Floats, integer_duals
from service.cutting.patterns import Ints, Listed
from service.cutting.solver import affordable, new_solver, run_integer
from service.cutting.sources import Loss, Pattern

if TYPE_CHECKING:
    from service.cutting.meter import Meter

_EPS: Final = 1e-6
LIST_LIMIT: Final = 60_000  # patterns in one exact search
_SMALL_MASTER: Final = 50_000  # cells of a list that is decided at once, before many dives are tried
_FIRST_DIVES: Final = 1
_MOST_DIVES: Final = 40
_DIVES_SHARE: Final = 0.35  # of the work left


class Packed(NamedTuple):
    """Whether a composition can be cut. `patterns` if it can; `cut` if a weighting refuses it; neither and not `known`: open."""

    patterns: tuple[Pattern, ...] | None
    cut: Cut | None
    known: bool


def dive(bins: Bins, bars: Ints, pool: list[Pattern], meter: Meter, *, rank: int = 0) -> tuple[Pattern, ...] | None:
    """Round the relaxed answer pattern by pattern, solving again for what is left; None if that does not come out.

    Args:
        bins: kinds, demand and capacities.
        bars: how many bars of each class there are.
        pool: patterns to start with.
        meter: counts the work.
        rank: which pattern the first rounding takes: 0 the one nearest to the next whole number, 1 the second, ...
    """
    cover = Cover(bins, meter)
    cover.add_patterns(pool)
    cover.allow(bars)
    chosen: list[Pattern] = []
    while cover.bins.demands.any():
        relaxed = cover.converge(until_covered=True)
        if relaxed.value > _EPS or meter.is_over():
            return None
        picks, rank = _roundings(relaxed.uses, rank)
        demands, bars, taken = _take(picks, cover, bars)
        chosen += taken
        cover.shrink(demands, bars)
        cover.add_patterns(_shrunk(cover, np.nonzero(relaxed.uses > _EPS)[0].tolist()))
    return tuple(chosen)


def _take(picks: list[tuple[int, int]], cover: Cover, bars: Ints) -> tuple[Ints, Ints, list[Pattern]]:
    """Use patterns so many times, as far as the demand goes; give what is left of demand and bars."""
    demands, bars = cover.bins.demands.copy(), bars.copy()
    taken: list[Pattern] = []
    for column, times in picks:
        number = cover.classes[column]
        for _ in range(times):
            counts = np.minimum(cover.counts[column], demands)
            if not counts.any():
                break
            taken.append((number, counts))
            demands -= counts
            bars[number] -= 1
    return demands, bars, taken


def _shrunk(cover: Cover, columns: list[int]) -> list[Pattern]:
    """Cut patterns down to what is left of the demand, and fill them up again."""
    bins = cover.bins
    return [
        (number, bins.source.filled((number, np.minimum(cover.counts[column], bins.demands)), bins.demands))
        for column in columns
        for number in (cover.classes[column],)
    ]


def _roundings(uses: Floats, rank: int) -> tuple[list[tuple[int, int]], int]:
    """Take every whole use; if there is none, once the one that is nearest to the next whole number, or second nearest, ..."""
    whole = np.floor(uses + _EPS).astype(np.int64)
    taken = np.nonzero(whole)[0]
    if len(taken):
        return [(int(column), int(whole[column])) for column in taken], rank
    order = np.argsort(-uses, kind="stable")
    used = max(1, int((uses > _EPS).sum()))
    return [(int(order[min(rank, used - 1)]), 1)], 0


def refused_by_duals(bins: Bins, bars: Ints, cover: Cover) -> Cut | None:
    """Solve the relaxed packing; give the weighting that refuses it, if it falls short."""
    cover.allow(bars)
    relaxed = cover.converge(until_covered=True)
    if relaxed.value <= _EPS:
        return None
    cut = make_cut(bins, integer_duals(relaxed.cover_duals)[0])
    return cut if int(bars @ cut.worths) < cut.needed else None


def worth_using(bins: Bins, bars: Ints, cuts: list[Cut], limit: int) -> Listed | None:
    """List the patterns that a packing of this composition can use: none may lose more than the composition can spare.

    The weightings are the cuts; that by size (the last of the first two) says how much may be left empty in all.
    """
    slacks = [int(bars @ cut.worths) - cut.needed for cut in cuts]
    tightest = min(range(len(cuts)), key=lambda k: slacks[k] / max(1, cuts[k].needed))
    floors = np.where(bars > 0, cuts[tightest].worths - slacks[tightest], np.iinfo(np.int64).max)
    listed = bins.source.list(bins.demands, Loss(cuts[tightest].values, floors, bars), limit)
    if listed is None:
        return None
    good = np.ones(len(listed.classes), dtype=bool)
    for other, slack in zip(cuts, slacks, strict=True):
        good &= listed.counts @ other.values >= other.worths[listed.classes] - slack
    return Listed(listed.counts[good], listed.classes[good])


def pack_listed(bins: Bins, bars: Ints, listed: Listed, meter: Meter) -> Packed:
    """Decide a packing over a complete list of the patterns that it can use, as an integer programme."""
    kinds, columns = len(bins.sizes), len(listed.classes)
    cells = columns * (kinds + len(bars))
    if not columns:
        return Packed(None, None, known=True)
    if not affordable(cells, meter):
        return Packed(None, None, known=False)
    solver = new_solver()
    solver.passModel(_master(bins, bars, listed))
    status = run_integer(solver, cells, meter)
    if status == highspy.HighsModelStatus.kInfeasible:
        return Packed(None, None, known=True)
    if status != highspy.HighsModelStatus.kOptimal:
        return Packed(None, None, known=False)
    uses = np.round(np.asarray(solver.getSolution().col_value)).astype(np.int64)
    patterns: list[Pattern] = []
    for column in np.nonzero(uses)[0].tolist():
        patterns += [(int(listed.classes[column]), listed.counts[column].astype(np.int64))] * int(uses[column])
    return Packed(trimmed(patterns, bins.demands), None, known=True)


def _master(bins: Bins, bars: Ints, listed: Listed) -> highspy.HighsLp:
    """State the integer programme: how often each pattern is used, to cover the demand with the bars there are."""
    kinds, columns = len(bins.sizes), len(listed.classes)
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = columns, kinds + len(bars)
    model.col_cost_ = np.zeros(columns)
    model.col_lower_, model.col_upper_ = np.zeros(columns), bars[listed.classes].astype(float)
    model.row_lower_ = np.concatenate((bins.demands.astype(float), np.full(len(bars), -highspy.kHighsInf)))
    model.row_upper_ = np.concatenate((np.full(kinds, highspy.kHighsInf), bars.astype(float)))
    full = np.concatenate((listed.counts.astype(float), np.eye(len(bars))[listed.classes]), axis=1)
    at = np.nonzero(full)
    model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    model.a_matrix_.start_ = np.concatenate(([0], np.cumsum((full != 0).sum(axis=1)))).astype(np.int32)
    model.a_matrix_.index_, model.a_matrix_.value_ = at[1].astype(np.int32), full[at]
    model.integrality_ = [highspy.HighsVarType.kInteger] * columns
    return model


def trimmed(patterns: list[Pattern], demands: Ints) -> tuple[Pattern, ...]:
    """Take out what a cover gives beyond the demand."""
    left = demands.copy()
    result = []
    for number, counts in patterns:
        used = np.minimum(counts, left)
        left -= used
        if used.any():
            result.append((number, used))
    return tuple(result)


def pack(bins: Bins, bars: Ints, cuts: list[Cut], cover: Cover, *, meter: Meter) -> Packed:
    """Decide whether the demand can be cut from so many bars of each class.

    Args:
        bins: kinds, demand and capacities.
        bars: how many bars of each class there are.
        cuts: weightings known; they narrow the list of patterns.
        cover: asks for the shortfall; its patterns are kept for the next composition.
        meter: counts the work; if it is over, the answer may stay open.
    """
    cut = refused_by_duals(bins, bars, cover)
    if cut is not None:
        return Packed(None, cut, known=True)
    patterns = _dive_often(bins, bars, cover, meter, ranks=range(_FIRST_DIVES))
    if patterns is not None or meter.is_over():
        return Packed(patterns, None, known=patterns is not None)
    listed = worth_using(bins, bars, cuts, LIST_LIMIT)
    if listed is None or listed.counts.size > _SMALL_MASTER:
        patterns = _dive_often(bins, bars, cover, meter, ranks=range(_FIRST_DIVES, _MOST_DIVES))
        if patterns is not None or listed is None:
            return Packed(patterns, None, known=patterns is not None)
    return pack_listed(bins, bars, listed, meter)


def _dive_often(bins: Bins, bars: Ints, cover: Cover, meter: Meter, *, ranks: range) -> tuple[Pattern, ...] | None:
    """Dive with other first roundings, until one comes out or a good part of the work left is spent."""
    pool = list(zip(cover.classes, cover.counts, strict=True))
    enough = int(meter.left_micros() * (1 - _DIVES_SHARE))
    for rank in ranks:
        patterns = dive(bins, bars, pool, meter, rank=rank)
        if patterns is not None or meter.is_over() or meter.left_micros() < enough:
            return patterns
    return None
