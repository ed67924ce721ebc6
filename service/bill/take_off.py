"""take_off: frame and cutting plan become a bill; every line rounded to packs once, at the end, over the whole job."""

from __future__ import annotations

import math
import msgspec

from service.bill import choosing
from service.bill.bill import Bill, BillLine, LineGroup
from service.bill.counting import count_things
from service.bill.measuring import measure
from service.bill.needs import Facts, Need, electrical_needs, finish_needs, fixing_needs, site_needs
from service.brief import Job
from service.catalogue import Catalogue, Material
from service.cutting import QUICK, BarAim, BarJob, BarPiece, BarStock, cut_bars
from service.cutting.of_frame import FramePlan, first_price
from service.frame import Frame
from service.rules import RuleSet

EXACT = 1e-9  # of a pack: float noise of a sum of lengths, far below any real remainder
MM3_PER_M3 = 1_000_000_000.0


class Market(msgspec.Struct, frozen=True, kw_only=True):
    """What the bill reads of shop and trade."""

    catalogue: Catalogue
    rules: RuleSet


def take_off(frame: Frame, plan: FramePlan, job: Job, market: Market) -> Bill:
    """Everything to buy for one breast."""
    rules = market.rules
    facts = Facts(job=job, catalogue=market.catalogue, rules=rules, counts=count_things(frame, job, rules), measures=measure(frame, job, rules))
    bought_kg = _bars_kg(plan, job, rules) + sum(_boards_kg(plan, market.catalogue, job).values())
    waste_kg = rules.take_off.waste_of_bought_ratio * bought_kg + rules.take_off.packaging_kg + _strip_out_kg(facts)
    needs = (*fixing_needs(facts), *finish_needs(facts), *electrical_needs(facts), *site_needs(facts, waste_kg))
    lines = (
        *_bar_lines(plan, market.catalogue),
        *_board_lines(plan, market.catalogue),
        *(_line(need) for need in merge_needs(needs)),
        *_bead_lines(facts),
        *_skirting_lines(facts),
        *_disposal_lines(facts, plan, waste_kg),
    )
    return Bill(
        lines=lines, counts=facts.counts, measures=facts.measures, mass_bought_kg=round(bought_kg, 1), waste_kg=round(waste_kg, 1)
    )


def merge_needs(needs: tuple[Need, ...]) -> tuple[Need, ...]:
    """One need a code: packs are rounded once, over the whole job."""
    merged: dict[str, Need] = {}
    for need in needs:
        key = need.material.code if need.material else f"? {need.wanted}"
        known = merged.get(key)
        merged[key] = need if known is None else msgspec.structs.replace(known, need=known.need + need.need, rule=f"{known.rule}; {need.rule}")
    return tuple(merged.values())


def pack_count(need: float, per_pack: float) -> int:
    """Whole packs that hold a need; noise of a float sum opens no further pack."""
    return max(math.ceil(need / per_pack - EXACT), 0)


def _line(need: Need) -> BillLine:
    row = need.material
    waste = row.waste_ratio if row else 0.0
    used = need.need * (1 + waste) / need.per_pack
    return BillLine(
        code=row.code if row else "",
        description=row.description if row else need.wanted,
        group=need.group,
        unit=row.unit if row else "",
        need=round(need.need, 3),
        need_unit=need.need_unit,
        waste_ratio=waste,
        packs_count=pack_count(need.need * (1 + waste), need.per_pack),
        used_packs_ratio=round(used, 4),
        charged_ratio=need.charged_ratio,
        rule=need.rule,
    )


def _plan_line(code: str, packs: int, rule: str, catalogue: Catalogue) -> BillLine:
    row = catalogue.materials.get(code)
    return BillLine(
        code=code if row else "",
        description=row.description if row else code,
        group=LineGroup.MATERIAL,
        unit=row.unit if row else "",
        need=None,
        need_unit="",
        waste_ratio=0.0,
        packs_count=packs,
        used_packs_ratio=float(packs),
        charged_ratio=1.0,
        rule=rule,
    )


def _bar_lines(plan: FramePlan, catalogue: Catalogue) -> list[BillLine]:
    rule = "cutting plan, least price" if plan.bars.proof.aim is BarAim.COST else "cutting plan, least length (no price)"
    if plan.allowance_mm:
        rule += f", with {plan.allowance_mm} mm on what is cut after measuring"
    return [_plan_line(taken.code, taken.taken_count, rule, catalogue) for taken in sorted(plan.bars.stock, key=lambda one: one.code)]


def _board_lines(plan: FramePlan, catalogue: Catalogue) -> list[BillLine]:
    return [
        _plan_line(taken.code if board.code else board.description, taken.taken_count, "sheet layout", catalogue)
        for board in plan.boards
        for taken in board.plan.stock
    ]


def _bead_lines(facts: Facts) -> list[BillLine]:
    """Beads without a join within an edge, cut like bars without kerf."""
    rows = [row for row in facts.catalogue.materials.values() if "corner_bead" in row.uses]
    edges = facts.measures.bead_edges_mm
    return _cut_lengths(edges, rows, facts, f"{len(edges)} edges, {sum(edges) / 1000:.3f} m, none joined")


def _skirting_lines(facts: Facts) -> list[BillLine]:
    """One piece a visible run; never fewer lengths than the waste factor asks."""
    row = choosing.by_use("skirting", facts.catalogue)
    runs = facts.measures.skirting_runs_mm
    if row is None or not runs:
        return []
    lines = _cut_lengths(runs, [row], facts, "")
    total_m = facts.measures.skirting_m * (1 + row.waste_ratio)
    packs = max(sum(line.packs_count for line in lines), pack_count(total_m * 1000, row.length_mm or 1.0))
    line = _plan_line(row.code, packs, f"{len(runs)} runs, {facts.measures.skirting_m:.3f} m", facts.catalogue)
    used = total_m * 1000 / (row.length_mm or 1.0)
    return [
        msgspec.structs.replace(line, need=round(facts.measures.skirting_m, 3), need_unit="m", waste_ratio=row.waste_ratio, used_packs_ratio=round(used, 4))
    ]


def _cut_lengths(edges_mm: tuple[int, ...], rows: list[Material], facts: Facts, rule: str) -> list[BillLine]:
    if not edges_mm or not rows:
        return []
    longest_mm = round(max(row.length_mm or 0 for row in rows))
    pieces = [piece for edge in edges_mm for piece in _joined(edge, longest_mm)]
    stock = tuple(
        BarStock(code=row.code, length_tenth_mm=round((row.length_mm or 0) * 10), cost_minor=first_price(row.code, facts.catalogue) or 0) for row in rows
    )
    bars = tuple(BarPiece(label=f"E{index}", length_tenth_mm=piece * 10) for index, piece in enumerate(pieces, start=1))
    priced = all(first_price(row.code, facts.catalogue) for row in rows)
    plan = cut_bars(BarJob(pieces=bars, stock=stock, aim=BarAim.COST if priced else BarAim.LENGTH), QUICK)
    return [_plan_line(taken.code, taken.taken_count, rule, facts.catalogue) for taken in sorted(plan.stock, key=lambda one: one.code)]


def _joined(edge_mm: int, longest_mm: int) -> list[int]:
    """An edge longer than what is sold is made of whole lengths and a rest."""
    whole, rest = divmod(edge_mm, longest_mm)
    return [longest_mm] * whole + ([rest] if rest else [])


def _bars_kg(plan: FramePlan, job: Job, rules: RuleSet) -> float:
    section_mm2 = job.timber.thickness_tenth_mm * job.timber.width_tenth_mm / 100
    return plan.bars.stock_length_tenth_mm / 10 * section_mm2 / MM3_PER_M3 * rules.handling.timber_density_kg_m3


def _boards_kg(plan: FramePlan, catalogue: Catalogue, job: Job) -> dict[str, float]:
    """Mass of the sheets bought, by kind of board."""
    masses: dict[str, float] = {}
    for board in plan.boards:
        row = catalogue.materials.get(board.code)
        kind = (row.board_kind if row else job.board.board_kind) or "mdf"
        each_kg = (row.mass_kg or 0.0) if row else job.board.mass_kg_m2 * job.board.sheet_length_tenth_mm * job.board.sheet_width_tenth_mm / 1e8
        masses[kind] = masses.get(kind, 0.0) + each_kg * board.plan.sheets_count
    return masses


def _strip_out_kg(facts: Facts) -> float:
    """Old skirting over the width of the breast, reckoned as the new one (common practice, no source)."""
    row = choosing.by_use("skirting", facts.catalogue)
    if row is None or facts.job.skirting_height_mm == 0:
        return 0.0
    volume_mm3 = facts.measures.skirting_runs_mm[-1] * facts.job.skirting_height_mm * facts.job.skirting_thickness_mm
    return volume_mm3 / MM3_PER_M3 * OLD_SKIRTING_KG_M3


OLD_SKIRTING_KG_M3 = 500.0  # softwood, from memory


def _disposal_lines(facts: Facts, plan: FramePlan, waste_kg: float) -> list[BillLine]:
    """Loads of half a cubic metre, at least one; gypsum goes apart (landfill rules for gypsum, from memory)."""
    row = choosing.by_use("disposal_load", facts.catalogue)
    take = facts.rules.take_off
    gypsum_kg = take.waste_of_bought_ratio * _boards_kg(plan, facts.catalogue, facts.job).get("plasterboard", 0.0)
    parts = [("mixed waste", waste_kg - gypsum_kg), ("gypsum, kept apart", gypsum_kg)]
    loads = [(name, max(math.ceil(kg / take.waste_kg_m3 / take.load_m3), 1)) for name, kg in parts if kg > 0]
    line = _plan_line(row.code if row else "disposal", sum(count for _name, count in loads), ", ".join(name for name, _count in loads), facts.catalogue)
    return [msgspec.structs.replace(line, group=LineGroup.DISPOSAL)]
