"""The door for bars: a sound job in, a checked plan out."""

from __future__ import annotations

from importlib.metadata import version
from typing import TYPE_CHECKING, Final

import msgspec

from service.cutting.bar_layout import lay_bars, leftovers_of, stock_of
from service.cutting.bar_packing import packed_bars
from service.cutting.faults import faults_of_bars
from service.cutting.first_fit import bins_of, first_fit
from service.cutting.leftover import Rest, longest_rest
from service.cutting.meter import Meter
from service.cutting.pieces import STANDARD, BarAim, BarJob, Effort, Stop, never
from service.cutting.plan import BarGroup, BarPlan, CuttingError, Method, Proof, SearchNote
from service.cutting.problem import BarProblem, state_bars, without
from service.cutting.search import Search
from service.cutting.verify_bars import mistakes_in_bars
from service.errors import Fault, Reason, RequestFaultsError

if TYPE_CHECKING:
    from service.cutting.sources import Pattern

__all__ = ["cut_bars", "faults_of_bars"]

_MANY_CELLS: Final = 2_000_000  # of a knapsack table: from here on a search may well be cut short
ENGINES: Final = (f"highspy {version('highspy')}", f"packingsolver {version('packingsolver')}")


def cut_bars(job: BarJob, effort: Effort = STANDARD, stop: Stop = never) -> BarPlan:
    """Cut pieces from bars: least cost (or length), then fewest bars bought, then the longest single leftover.

    Args:
        job: pieces, stock and saw.
        effort: how much work may be done; the same job and effort give the same plan.
        stop: the caller's clock, asked now and then; once it says True the best plan so far is given, marked.

    Returns:
        A plan that the independent check has passed.

    Raises:
        RequestFaultsError: with all faults at once: impossible numbers, pieces that fit no stock, too few copies.
        CuttingError: our own mistake: even the greedy plan is wrong.
    """
    faults = faults_of_bars(job)
    if faults:
        raise RequestFaultsError(faults)
    problem, meter = state_bars(job), Meter(effort, stop)
    if not job.pieces:
        return _assemble(job, (), _no_proof(job), _note(Method.NOTHING_TO_CUT, meter, done=True))
    if effort.greedy:
        return _fallback(job, problem, meter, failed=False)
    search = Search(bins_of(problem), problem.classes, first_fit(problem, meter), meter)
    _search(problem, search)
    if search.plan is None:
        raise RequestFaultsError((too_few(sure=search.impossible),))
    rest = longest_rest(problem, search)
    if search.offer(rest.plan):  # an open search: looking for a rest came upon a cheaper plan
        rest = rest._replace(proven=False)
    plan = _planned(job, problem, search, rest)
    return plan if not mistakes_in_bars(job, plan) else _fallback(job, problem, meter)


def _search(problem: BarProblem, search: Search) -> None:
    """Search from below; ask packingsolver where that is too much, or was cut short."""
    if problem.cells > _MANY_CELLS:
        _ask(problem, search)
    if problem.tables_fit:
        search.run(lambda demands, used: first_fit(without(problem, demands, used), search.meter))
    if not search.done:
        search.bound(whole=True)
        if problem.cells <= _MANY_CELLS:
            _ask(problem, search)


def _ask(problem: BarProblem, search: Search) -> None:
    plan = packed_bars(problem, search.meter)
    if plan is not None:
        search.offer(plan, Method.PACKING)


def too_few(*, sure: bool) -> Fault:
    """Say that the copies do not suffice: certainly, or as far as was searched."""
    detail = (
        "the copies on offer cannot give all pieces" if sure else "no way was found to cut all pieces from the copies on offer"
    )
    return Fault(
        pointer="/stock", reason=Reason.UNCUTTABLE_PIECE, detail=detail, remedy="allow more copies, or one size without a limit"
    )


def _planned(job: BarJob, problem: BarProblem, search: Search, rest: Rest) -> BarPlan:
    """Make the plan with its proof."""
    groups = lay_bars(job, problem, rest.plan)
    bought = [group for group in groups if not group.offcut]
    cost, count = search.value
    bound, count_bound = min(search.low[0], cost), min(search.fewest, count)
    proven = bound == cost
    longest = max((group.rest_tenth_mm for group in bought), default=0)
    by_cost = job.aim is BarAim.COST
    proof = Proof(
        aim=job.aim,
        cost_minor=_cost(groups),
        cost_bound_minor=bound if by_cost else 0,
        bought_length_tenth_mm=sum(group.bars_count * group.length_tenth_mm for group in bought),
        length_bound_tenth_mm=0 if by_cost else bound,
        gap_ratio=0.0 if proven else (cost - bound) / cost,
        first_proven=proven,
        bought_count=count,
        bought_bound_count=count_bound,
        bought_proven=proven and count_bound == count,
        leftover_tenth_mm=longest,
        leftover_proven=rest.proven and proven and count_bound == count and longest >= _longest_possible(job, problem, rest),
    )
    return _assemble(job, groups, proof, _note(search.method, search.meter, done=search.done))


def _longest_possible(job: BarJob, problem: BarProblem, rest: Rest) -> int:
    """The longest rest in tenths that the proven longest rest in units allows: what the unit rounded off is added."""
    unit = problem.unit_tenth_mm
    if rest.rest == 0:
        return 0
    spare = max((s.length_tenth_mm - job.end_trim_tenth_mm + job.kerf_tenth_mm) % unit for s in job.stock if not s.offcut)
    return (rest.rest + problem.kerf) * unit + spare - job.kerf_tenth_mm


def _fallback(job: BarJob, problem: BarProblem, meter: Meter, *, failed: bool = True) -> BarPlan:
    """The greedy plan, with no proof at all: stands in for one that failed the check, or is all that was asked for."""
    greedy: tuple[Pattern, ...] = first_fit(problem, meter) or ()
    groups = lay_bars(job, problem, greedy)
    note = SearchNote(
        method=Method.FIRST_FIT, stopped=meter.stopped(done=False), fallback=failed, work_count=meter.work_count, engines=ENGINES
    )
    plan = _assemble(job, groups, _unproven(job, groups), note)
    mistakes = mistakes_in_bars(job, plan)
    if mistakes:
        raise CuttingError("; ".join(mistakes))
    return plan


def _unproven(job: BarJob, groups: tuple[BarGroup, ...]) -> Proof:
    bought = [group for group in groups if not group.offcut]
    length = sum(group.bars_count * group.length_tenth_mm for group in bought)
    value = _cost(groups) if job.aim is BarAim.COST else length
    return Proof(
        aim=job.aim,
        cost_minor=_cost(groups),
        cost_bound_minor=0,
        bought_length_tenth_mm=length,
        length_bound_tenth_mm=0,
        gap_ratio=1.0 if value else 0.0,
        first_proven=not value,
        bought_count=sum(group.bars_count for group in bought),
        bought_bound_count=0,
        bought_proven=not value and not bought,
        leftover_tenth_mm=max((group.rest_tenth_mm for group in bought), default=0),
        leftover_proven=False,
    )


def _no_proof(job: BarJob) -> Proof:
    """Nothing to cut costs nothing: proven."""
    return msgspec.structs.replace(_unproven(job, ()), leftover_proven=True)


def _note(method: Method, meter: Meter, *, done: bool) -> SearchNote:
    return SearchNote(
        method=method, stopped=meter.stopped(done=done), fallback=False, work_count=meter.work_count, engines=ENGINES
    )


def _cost(groups: tuple[BarGroup, ...]) -> int:
    return sum(group.bars_count * group.cost_each_minor for group in groups)


def _assemble(job: BarJob, groups: tuple[BarGroup, ...], proof: Proof, note: SearchNote) -> BarPlan:
    """Add up the groups."""
    rests = [(group.keep, group.bars_count * group.rest_tenth_mm) for group in groups]
    return BarPlan(
        groups=groups,
        stock=stock_of(groups),
        leftovers=leftovers_of(groups),
        cost_minor=_cost(groups),
        bars_count=sum(group.bars_count for group in groups),
        stock_length_tenth_mm=sum(group.bars_count * group.length_tenth_mm for group in groups),
        pieces_length_tenth_mm=sum(piece.pieces_count * piece.length_tenth_mm for piece in job.pieces),
        kerf_length_tenth_mm=sum(group.bars_count * group.kerf_tenth_mm for group in groups),
        trim_length_tenth_mm=sum(group.bars_count * group.trim_tenth_mm for group in groups),
        kept_length_tenth_mm=sum(rest for keep, rest in rests if keep),
        waste_length_tenth_mm=sum(rest for keep, rest in rests if not keep),
        proof=proof,
        search=note,
    )
