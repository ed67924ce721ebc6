"""An independent check of a bar plan against its job. It shares no code with the planners and trusts no field."""

from __future__ import annotations

from collections import Counter, defaultdict
from itertools import pairwise
from typing import TYPE_CHECKING

from service.cutting.pieces import BarAim, BarJob

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.cutting.plan import BarCut, BarGroup, BarPlan


def mistakes_in_bars(job: BarJob, plan: BarPlan) -> tuple[str, ...]:
    """Find everything that is wrong with a plan; nothing is found in a right one."""
    return (
        *(text for group in plan.groups for text in _on_bar(job, group)),
        *_pieces(job, plan),
        *_stock(job, plan),
        *_sums(plan),
        *_leftovers(plan),
        *_proof(job, plan),
    )


def _on_bar(job: BarJob, group: BarGroup) -> Iterator[str]:
    """Labels, order, kerfs and rest of one group."""
    where = f"{group.name}:"
    if not group.cuts:
        yield f"{where} a bar without pieces"
        return
    if group.bars_count < 1 or len(group.labels) != group.bars_count or any(len(row) != len(group.cuts) for row in group.labels):
        yield f"{where} labels do not match the bars"
    if any(cut.end_tenth_mm <= cut.start_tenth_mm for cut in group.cuts):
        yield f"{where} a piece without length"
    for before, after in pairwise(group.cuts):
        if after.start_tenth_mm - before.end_tenth_mm < job.kerf_tenth_mm:
            yield f"{where} no room for the saw at {before.end_tenth_mm}"
        if _rank(after) < _rank(before):
            yield f"{where} the order of the cuts is wrong at {after.start_tenth_mm}"
    yield from _lengths(job, group)


def _rank(cut: BarCut) -> tuple[bool, int]:
    """To cut now before after measuring, long before short."""
    return cut.after_measure, cut.start_tenth_mm - cut.end_tenth_mm


def _lengths(job: BarJob, group: BarGroup) -> Iterator[str]:
    """Pieces, kerf, trim and rest are the bar."""
    where = f"{group.name}:"
    start, end = group.cuts[0].start_tenth_mm, group.cuts[-1].end_tenth_mm
    if start < 0 or start + group.length_tenth_mm - end < job.end_trim_tenth_mm:
        yield f"{where} the pieces reach into the trims"
    pieces = sum(cut.end_tenth_mm - cut.start_tenth_mm for cut in group.cuts)
    room = group.length_tenth_mm - job.end_trim_tenth_mm - pieces - (len(group.cuts) - 1) * job.kerf_tenth_mm
    if room < 0:
        yield f"{where} the pieces and kerfs are too long by {-room}"
    if group.trim_tenth_mm != job.end_trim_tenth_mm or group.rest_tenth_mm != max(0, room - job.kerf_tenth_mm):
        yield f"{where} trim or rest is wrong"
    if pieces + group.kerf_tenth_mm + group.trim_tenth_mm + group.rest_tenth_mm != group.length_tenth_mm:
        yield f"{where} pieces, kerf, trim and rest do not add up to the bar"
    if group.keep != (group.rest_tenth_mm > 0 and group.rest_tenth_mm >= job.least_offcut_tenth_mm):
        yield f"{where} the rest is kept or thrown away against the rule"


def _pieces(job: BarJob, plan: BarPlan) -> Iterator[str]:
    """Every piece is there exactly once."""
    wanted: Counter[tuple[str, int, bool]] = Counter()
    for piece in job.pieces:
        wanted[piece.label, piece.length_tenth_mm, piece.after_measure] += piece.pieces_count
    placed = Counter(
        (label, cut.end_tenth_mm - cut.start_tenth_mm, cut.after_measure)
        for group in plan.groups
        for row in group.labels
        for label, cut in zip(row, group.cuts, strict=False)
    )
    for key in wanted - placed:
        yield f"missing: {key}"
    for key in placed - wanted:
        yield f"not asked for: {key}"


def _stock(job: BarJob, plan: BarPlan) -> Iterator[str]:
    """What is taken is on offer, in so many copies, and is listed."""
    offered: defaultdict[tuple[str, int, int, bool], float] = defaultdict(float)
    for stock in job.stock:
        copies = float("inf") if stock.copies_count is None else stock.copies_count
        offered[stock.code, stock.length_tenth_mm, stock.cost_minor, stock.offcut] += copies
    taken: Counter[tuple[str, int, int, bool]] = Counter()
    listed: Counter[tuple[str, int, bool]] = Counter()
    for group in plan.groups:
        taken[group.code, group.length_tenth_mm, group.cost_each_minor, group.offcut] += group.bars_count
    for (code, _, cost, offcut), count in taken.items():
        listed[code, cost, offcut] += count
    for key, count in taken.items():
        if count > offered.get(key, 0):
            yield f"{count} bars of {key} are more than there are"
    stated: Counter[tuple[str, int, bool]] = Counter()
    for line in plan.stock:
        stated[line.code, line.cost_each_minor, line.offcut] += line.taken_count
    if listed != stated:
        yield "the list of stock to take is wrong"


def _sums(plan: BarPlan) -> Iterator[str]:
    """Totals are the sums of their parts."""
    totals: Counter[str] = Counter()
    for group in plan.groups:
        totals["cost"] += group.bars_count * group.cost_each_minor
        totals["bars"] += group.bars_count
        totals["stock"] += group.bars_count * group.length_tenth_mm
        totals["pieces"] += group.bars_count * sum(cut.end_tenth_mm - cut.start_tenth_mm for cut in group.cuts)
        totals["kerf"] += group.bars_count * group.kerf_tenth_mm
        totals["trim"] += group.bars_count * group.trim_tenth_mm
        totals["kept" if group.keep else "waste"] += group.bars_count * group.rest_tenth_mm
    stated = {
        "cost": plan.cost_minor,
        "bars": plan.bars_count,
        "stock": plan.stock_length_tenth_mm,
        "pieces": plan.pieces_length_tenth_mm,
        "kerf": plan.kerf_length_tenth_mm,
        "trim": plan.trim_length_tenth_mm,
        "kept": plan.kept_length_tenth_mm,
        "waste": plan.waste_length_tenth_mm,
    }
    for name, value in stated.items():
        if totals[name] != value:
            yield f"total of {name}: {value} stated, {totals[name]} counted"


def _leftovers(plan: BarPlan) -> Iterator[str]:
    kept = Counter((group.name, group.bars_count, group.rest_tenth_mm, 0) for group in plan.groups if group.keep)
    stated = Counter((rest.of, rest.leftovers_count, rest.width_tenth_mm, rest.height_tenth_mm) for rest in plan.leftovers)
    if kept != stated:
        yield "the list of leftovers is wrong"


def _proof(job: BarJob, plan: BarPlan) -> Iterator[str]:
    """No bound lies above the plan's value, and proven means that they are equal."""
    proof = plan.proof
    bought = [group for group in plan.groups if not group.offcut]
    count = sum(group.bars_count for group in bought)
    length = sum(group.bars_count * group.length_tenth_mm for group in bought)
    stated = (proof.aim, proof.cost_minor, proof.bought_length_tenth_mm, proof.bought_count)
    if stated != (job.aim, plan.cost_minor, length, count):
        yield "the values that the proof speaks of are not the plan's"
    by_cost = job.aim is BarAim.COST
    value, bound = (plan.cost_minor, proof.cost_bound_minor) if by_cost else (length, proof.length_bound_tenth_mm)
    if bound > value or proof.bought_bound_count > count:
        yield "a bound lies above the value"
    if proof.first_proven != (value == bound) or proof.bought_proven != (
        proof.first_proven and proof.bought_bound_count == count
    ):
        yield "proven does not mean that value and bound are equal"
    if proof.gap_ratio != (0.0 if value == bound else (value - bound) / value):
        yield "the gap is wrong"
    if proof.leftover_tenth_mm != max((group.rest_tenth_mm for group in bought), default=0):
        yield "the longest leftover is wrong"
    if proof.leftover_proven and not proof.bought_proven:
        yield "a later aim is proven before an earlier one"
