"""Masses: what is bought, and what of it and of the old skirting is waste (`knowledge/materials.md`, section 2)."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from service.brief import Job
    from service.catalogue import Catalogue
    from service.cutting import FramePlan
    from service.frame import Frame
    from service.rules import RuleSet

MM3_PER_M3 = 1_000_000_000.0
MM2_PER_M2 = 1_000_000.0
OLD_SKIRTING_KG_M3 = 500.0  # softwood, from memory
GYPSUM = "plasterboard"


def bars_kg(plan: FramePlan, job: Job, rules: RuleSet) -> float:
    """Mass of the bars bought, at the density of handling."""
    plans = ((job.timber, plan.bars), *((one.timber, one.plan) for one in plan.other_bars))
    volume_mm3 = sum(
        one.proof.bought_length_tenth_mm * timber.thickness_tenth_mm * timber.width_tenth_mm / 1000 for timber, one in plans
    )
    return volume_mm3 / MM3_PER_M3 * rules.handling.timber_density_kg_m3


def boards_kg(plan: FramePlan, job: Job, catalogue: Catalogue) -> dict[str, float]:
    """Mass of the sheets bought, by kind of board; a board outside the catalogue is the job's own."""
    masses: dict[str, float] = {}
    sheet_m2 = job.board.sheet_length_tenth_mm * job.board.sheet_width_tenth_mm / 100 / MM2_PER_M2
    for board in plan.boards:
        row = catalogue.materials.get(board.code)
        kind = (row.board_kind if row else None) or job.board.board_kind
        each_kg = (row.mass_kg if row else None) or job.board.mass_kg_m2 * sheet_m2
        masses[kind] = masses.get(kind, 0.0) + each_kg * board.plan.sheets_count
    return masses


def waste_kg(bought_kg: float, frame: Frame, job: Job, rules: RuleSet) -> float:
    """A share of what is bought, packaging, and the old skirting behind and beside the breast (common practice, no source)."""
    stripped = frame.sizes.finished_width_tenth_mm + frame.side_walls_count * frame.sizes.finished_depth_tenth_mm
    skirting_mm3 = stripped / 10 * job.skirting_height_mm * job.skirting_thickness_mm
    strip_out_kg = skirting_mm3 / MM3_PER_M3 * OLD_SKIRTING_KG_M3
    return rules.take_off.waste_of_bought_ratio * bought_kg + rules.take_off.packaging_kg + strip_out_kg


def gypsum_waste_kg(boards: dict[str, float], rules: RuleSet) -> float:
    """The part of the waste that is gypsum and goes apart."""
    return rules.take_off.waste_of_bought_ratio * boards.get(GYPSUM, 0.0)
