"""What is sold by the length and cut without a join: bars, sheets, beads, skirting."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service import hardware
from service.bill.lines import pack_count, plan_line
from service.catalogue import price_step
from service.cutting import BarAim, BarJob, BarPiece, BarStock, cut_bars
from service.units import text_mm

if TYPE_CHECKING:
    from service.bill.bill import BillLine
    from service.bill.needs import Facts
    from service.brief import Job, Timber
    from service.catalogue import Catalogue, Material
    from service.cutting import BarPlan, FramePlan


def bar_lines(plan: FramePlan, job: Job, catalogue: Catalogue) -> list[BillLine]:
    """Bars of the cutting plans that are not on hand, the job's own studding first."""
    plans = ((job.timber, plan.bars), *((one.timber, one.plan) for one in plan.other_bars))
    return [
        plan_line(
            one.code, _bar_name(one.code, timber), one.taken_count, rule=_bar_rule(bars, plan.allowance_mm), catalogue=catalogue
        )
        for timber, bars in plans
        for one in sorted(bars.stock, key=lambda one: one.code)
        if not one.offcut
    ]


def _bar_rule(bars: BarPlan, allowance_mm: int) -> str:
    rule = "cutting plan, least price" if bars.proof.aim is BarAim.COST else "cutting plan, least length (no price)"
    return f"{rule}, with {allowance_mm} mm on what is cut after measuring" if allowance_mm else rule


def sheet_lines(plan: FramePlan, catalogue: Catalogue) -> list[BillLine]:
    """Sheets of every board's layout."""
    return [
        plan_line(board.code, board.description, board.plan.sheets_count, rule="sheet layout", catalogue=catalogue)
        for board in plan.boards
    ]


def bead_lines(facts: Facts) -> list[BillLine]:
    """Corner beads, cut like bars without kerf."""
    edges = facts.measures.bead_edges_mm
    if not edges:
        return []
    rows = [row for row in facts.market.catalogue.materials.values() if "corner_bead" in row.uses]
    rule = f"{len(edges)} edges, {sum(edges) / 1000:.3f} m, none joined"
    if not rows:
        return [plan_line("", "corner bead", len(edges), rule=rule, catalogue=facts.market.catalogue)]
    return _cut_lengths(edges, rows, facts, rule)


def skirting_lines(facts: Facts) -> list[BillLine]:
    """One piece a visible run; never fewer lengths than the waste factor asks."""
    runs, total_m = facts.measures.skirting_runs_mm, facts.measures.skirting_m
    if not runs:
        return []
    row = hardware.by_use("skirting", facts.market.catalogue)
    rule = f"{len(runs)} runs, {total_m:.3f} m, none joined"
    if row is None or not row.length_mm:
        return [plan_line("", "skirting", len(runs), rule=rule, catalogue=facts.market.catalogue)]
    lengths = total_m * (1 + row.waste_ratio) * 1000 / row.length_mm
    cut = sum(line.packs_count for line in _cut_lengths(runs, [row], facts, rule))
    line = plan_line(row.code, row.description, max(cut, pack_count(lengths, 1.0)), rule=rule, catalogue=facts.market.catalogue)
    return [
        msgspec.structs.replace(
            line, need=round(total_m, 3), need_unit="m", waste_ratio=row.waste_ratio, used_packs_ratio=round(lengths, 4)
        )
    ]


def _bar_name(code: str, timber: Timber) -> str:
    section = f"{text_mm(timber.thickness_tenth_mm)} x {text_mm(timber.width_tenth_mm)}"
    return f"timber {timber.strength_class} {section} x {code.rpartition('-')[2]}"


def _cut_lengths(edges_mm: tuple[int, ...], rows: list[Material], facts: Facts, rule: str) -> list[BillLine]:
    """The lengths that give these edges at least cost, or at least length where one has no price."""
    catalogue = facts.market.catalogue
    prices = {row.code: price_step(catalogue, row.code, facts.job.today) for row in rows}
    stock = tuple(
        BarStock(code=row.code, length_tenth_mm=round((row.length_mm or 0) * 10), cost_minor=step.amount_minor if step else 0)
        for row in rows
        for step in (prices[row.code],)
    )
    longest_mm = max(one.length_tenth_mm for one in stock) // 10
    parts = [part for edge in edges_mm for part in _parts(edge, longest_mm)]
    bars = tuple(BarPiece(label=f"E{index}", length_tenth_mm=part * 10) for index, part in enumerate(parts, start=1))
    aim = BarAim.COST if all(prices.values()) else BarAim.LENGTH
    taken = cut_bars(BarJob(pieces=bars, stock=stock, aim=aim), facts.market.effort).stock
    ordered = sorted(taken, key=lambda one: one.code)
    return [plan_line(one.code, one.code, one.taken_count, rule=rule, catalogue=catalogue) for one in ordered]


def _parts(edge_mm: int, longest_mm: int) -> list[int]:
    """An edge longer than what is sold is made of whole lengths and a rest."""
    whole, rest = divmod(edge_mm, longest_mm)
    return [longest_mm] * whole + ([rest] if rest else [])
