"""The door for sheets: a sound job in, a checked plan out."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Final

from service.cutting.bars import ENGINES, too_few
from service.cutting.cut_tree import NotGuillotineError
from service.cutting.faults import faults_of_sheets
from service.cutting.meter import Meter
from service.cutting.pieces import STANDARD, BarAim, Effort, SheetJob, SheetLayout, Stop, never
from service.cutting.plan import CuttingError, Method, PartKind, Proof, SearchNote, SheetGroup, SheetPlan, StockTaken
from service.cutting.sheet_greedy import greedy_plans, sheets_cost
from service.cutting.sheet_layout import lay_sheets, leftovers_of
from service.cutting.sheet_levels import level_plans
from service.cutting.sheet_packing import Way
from service.cutting.sheet_problem import SheetProblem, state_sheets
from service.cutting.sheet_search import PLUNGE, Sheets, SheetSearch, edge_to_edge
from service.cutting.verify_sheets import mistakes_in_sheets
from service.errors import RequestFaultsError

if TYPE_CHECKING:
    from collections.abc import Iterable

__all__ = ["cut_sheets", "faults_of_sheets"]

_FEW_PIECES: Final = 16  # up to which packingsolver is asked for a plan with one large rest; its work grows fast


def cut_sheets(job: SheetJob, effort: Effort = STANDARD, stop: Stop = never) -> SheetPlan:
    """Cut rectangles from sheets: least cost, then fewest sheets bought, then the largest single leftover.

    Cut edge to edge; where the job allows a plunge saw, a plan that needs one is searched for after the best one without, and is
    taken only if it costs less or takes fewer sheets.

    Args:
        job: pieces, stock and saw.
        effort: how much work each search may do; the same job and effort give the same plan.
        stop: the caller's clock, asked now and then; once it says True the best plan so far is given, marked.

    Returns:
        A plan that the independent check has passed.

    Raises:
        RequestFaultsError: with all faults at once: impossible numbers, pieces that fit no stock, too few copies.
        CuttingError: our own mistake: even the greedy plan is wrong.
    """
    faults = faults_of_sheets(job)
    if faults:
        raise RequestFaultsError(faults)
    meter = Meter(effort, stop)
    if not job.pieces:
        return _assemble(job, (), _proof((), (0, 0), 0), _note(Method.NOTHING_TO_CUT, meter, done=True))
    problem = state_sheets(job)
    if effort.greedy:
        return _fallback(job, problem, meter, failed=False)
    laid: dict[Sheets, tuple[SheetGroup, ...]] = {}
    search = _search(job, problem, meter, laid)
    if not search.plans:
        raise RequestFaultsError((too_few(sure=search.impossible),))
    groups = max((laid[plan] for plan in search.plans), key=_saw_friendly)
    plan = _assemble(job, groups, _proof(groups, search.low, search.fewest), _note(search.method, meter, done=search.done))
    return plan if not mistakes_in_sheets(job, plan) else _fallback(job, problem, meter)


def _search(job: SheetJob, problem: SheetProblem, meter: Meter, laid: dict[Sheets, tuple[SheetGroup, ...]]) -> SheetSearch:
    """Search edge to edge, then with a plunge saw where that is allowed and may help; `laid` gets every plan that is good."""

    def can_be_sawn(plan: Sheets) -> bool:
        if plan not in laid and (groups := _lay(job, problem, plan)) is not None:
            laid[plan] = groups
        return plan in laid

    def edge_only(plan: Sheets) -> bool:
        return can_be_sawn(plan) and all(group.layout is SheetLayout.EDGE_TO_EDGE for group in laid[plan])

    edge = SheetSearch(problem, edge_to_edge(job.first_cut), meter, edge_only)
    edge.run((*greedy_plans(problem, meter), *level_plans(problem, meter)))
    if sum(piece.pieces_count for piece in job.pieces) <= _FEW_PIECES and not meter.rang():
        edge.ask(Way.LEFTOVERS, 64)
    if job.layout is SheetLayout.EDGE_TO_EDGE:
        return edge
    meter.renew()
    plunge = SheetSearch(problem, PLUNGE, meter, can_be_sawn)
    plunge.run(edge.plans, edge.method)
    return plunge


def _lay(job: SheetJob, problem: SheetProblem, plan: Sheets) -> tuple[SheetGroup, ...] | None:
    """Lay a plan out; None if it cannot be sawn as the job asks."""
    try:
        return lay_sheets(job, problem, plan)
    except NotGuillotineError:
        return None


def _saw_friendly(groups: tuple[SheetGroup, ...]) -> tuple[int, int, int]:
    """Order equally cheap plans: fewest sheets for the plunge saw, largest rest of a bought sheet, fewest stops at the saw."""
    plunged = sum(group.sheets_count for group in groups if group.layout is SheetLayout.PLUNGE_SAW)
    stops = sum(group.sheets_count * len(group.steps) for group in groups)
    return (-plunged, _largest_rest(groups)[0], -stops)


def _largest_rest(groups: tuple[SheetGroup, ...]) -> tuple[int, int]:
    """Area and longer side of the largest rest worth keeping of a bought sheet."""
    rests = [part for group in groups if not group.offcut for part in group.parts if part.kind is PartKind.LEFTOVER]
    sizes = [(part.width_tenth_mm * part.height_tenth_mm, max(part.width_tenth_mm, part.height_tenth_mm)) for part in rests]
    return max(sizes, default=(0, 0))


def _proof(groups: tuple[SheetGroup, ...], low: tuple[int, int], fewest: int) -> Proof:
    """State value and bound, aim by aim; no proof is tried for the leftover."""
    cost, count = _cost(groups), sum(group.sheets_count for group in groups if not group.offcut)
    bound, count_bound = min(low[0], cost), min(fewest, count)
    proven = bound == cost
    return Proof(
        aim=BarAim.COST,
        cost_minor=cost,
        cost_bound_minor=bound,
        bought_length_tenth_mm=0,
        length_bound_tenth_mm=0,
        gap_ratio=0.0 if proven else (cost - bound) / cost,
        first_proven=proven,
        bought_count=count,
        bought_bound_count=count_bound,
        bought_proven=proven and count_bound == count,
        leftover_tenth_mm=_largest_rest(groups)[1],
        leftover_proven=not groups,
    )


def _fallback(job: SheetJob, problem: SheetProblem, meter: Meter, *, failed: bool = True) -> SheetPlan:
    """A greedy plan, with no proof at all: stands in for one that failed the check, or is all that was asked for."""
    for layouts in sorted(greedy_plans(problem, meter), key=lambda plan: sheets_cost(problem, plan)):
        groups = _lay(job, problem, layouts)
        if groups is not None:
            note = SearchNote(
                method=Method.FIRST_FIT,
                stopped=meter.stopped(done=False),
                fallback=failed,
                work_count=meter.work_count,
                engines=ENGINES,
            )
            plan = _assemble(job, groups, _proof(groups, (0, 0), 0), note)
            if not mistakes_in_sheets(job, plan):
                return plan
    detail = "no plan passes the check"
    raise CuttingError(detail)


def _note(method: Method, meter: Meter, *, done: bool) -> SearchNote:
    return SearchNote(
        method=method, stopped=meter.stopped(done=done), fallback=False, work_count=meter.work_count, engines=ENGINES
    )


def _cost(groups: tuple[SheetGroup, ...]) -> int:
    return sum(group.sheets_count * group.cost_each_minor for group in groups)


def _stock(groups: tuple[SheetGroup, ...]) -> tuple[StockTaken, ...]:
    """Add up what is to be taken: bought first, largest first."""
    taken: Counter[tuple[bool, int, str, int]] = Counter()
    for group in groups:
        taken[group.offcut, -group.width_tenth_mm * group.height_tenth_mm, group.code, group.cost_each_minor] += (
            group.sheets_count
        )
    return tuple(
        StockTaken(code=code, taken_count=count, cost_each_minor=cost, offcut=offcut)
        for (offcut, _, code, cost), count in sorted(taken.items())
    )


def _mm2(items: Iterable[tuple[int, int, int]]) -> int:
    """Sum of count, width and height, in hundredths of a square millimetre."""
    return sum(count * width * height for count, width, height in items)


def _assemble(job: SheetJob, groups: tuple[SheetGroup, ...], proof: Proof, note: SearchNote) -> SheetPlan:
    """Add up the groups."""
    leftovers = leftovers_of(groups)
    stock = _mm2((group.sheets_count, group.width_tenth_mm, group.height_tenth_mm) for group in groups)
    pieces = _mm2((piece.pieces_count, piece.width_tenth_mm, piece.height_tenth_mm) for piece in job.pieces)
    kept = _mm2((rest.leftovers_count, rest.width_tenth_mm, rest.height_tenth_mm) for rest in leftovers)
    return SheetPlan(
        groups=groups,
        stock=_stock(groups),
        leftovers=leftovers,
        cost_minor=_cost(groups),
        sheets_count=sum(group.sheets_count for group in groups),
        stock_area_mm2=stock / 100,
        pieces_area_mm2=pieces / 100,
        kept_area_mm2=kept / 100,
        lost_area_mm2=(stock - pieces - kept) / 100,
        proof=proof,
        search=note,
    )
