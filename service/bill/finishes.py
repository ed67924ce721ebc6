"""Adhesives, fillers, skim or tape, and paint (`knowledge/materials.md`, section 2; `knowledge/cladding.md`, sections 4, 5)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service import hardware
from service.bill.measuring import WET_FINISHES
from service.bill.needs import litres, spread
from service.survey.wishes import Finish

if TYPE_CHECKING:
    from service.bill.needs import Facts, Need

MIST_M2_PER_LITRE = 10.0  # first thinned coat on new skim: from memory (knowledge/cladding.md, section 5)
PRIMER_M2_PER_LITRE = 10.0  # where the catalogue states no coverage: from memory (knowledge/cladding.md, section 5)


def finish_needs(facts: Facts) -> tuple[Need, ...]:
    """Everything spread on boards and their joints."""
    needs = (*_adhesives(facts), *_fillers(facts), *_plaster(facts), *_paint(facts))
    return tuple(need for need in needs if need.need > 0)


def caulk_m(facts: Facts) -> float:
    """Edges that are caulked: returns to wall, ceiling or lid, skirting."""
    at = facts.measures
    return at.return_edge_m + (at.ceiling_edge_m or at.lid_edge_m) + at.skirting_m


def _adhesives(facts: Facts) -> list[Need]:
    at, job = facts.measures, facts.job
    glued_face = job.board.board_kind in hardware.WOOD_BASED and not _is_wet(facts)
    face_m = at.return_edge_m + at.face_joint_m if glued_face else 0.0
    lid_m = at.lid_edge_m + 2 * job.depth_tenth_mm / 10_000 if at.lid_edge_m else 0.0  # over the front and both sides
    grab_m = face_m + at.lining_corner_m + at.recess_perimeter_m + lid_m
    return [
        spread(facts, "grab_adhesive", grab_m, unit="m", rule="face to returns and board joints, recess linings, lid supports"),
        spread(facts, "wood_glue", at.ply_m + at.lining_corner_m, unit="m", rule="plies and lining joints"),
    ]


def _fillers(facts: Facts) -> list[Need]:
    """Screw heads and joints of what is painted as board, then its whole area."""
    at, counts, take = facts.measures, facts.counts, facts.market.rules.take_off
    wet = _is_wet(facts)
    heads = counts.lining_screws_count + counts.lid_screws_count + (0 if wet else counts.face_screws_count)
    joint_m = 0.0 if wet else at.face_joint_m
    filler_ml = heads * take.filler_ml_per_screw_ml + joint_m * take.filler_ml_per_m_joint_ml
    of_heads, of_joints = f"{take.filler_ml_per_screw_ml:g} ml", f"{take.filler_ml_per_m_joint_ml:g} ml"
    rule = f"{heads} screw heads x {of_heads} + {joint_m:.3f} m of joint x {of_joints}"
    return [
        spread(facts, "screw_filler", filler_ml, unit="ml", rule=rule),
        spread(facts, "fine_filler", at.painted_board_gross_m2, unit="m2", rule="area of painted board, cut-outs not taken off"),
        spread(facts, "caulk", caulk_m(facts), unit="m", rule="returns to wall, ceiling or lid, top of the skirting"),
    ]


def _plaster(facts: Facts) -> list[Need]:
    at = facts.measures
    if not _is_wet(facts):
        return []
    tape = spread(facts, "scrim", at.scrim_m, unit="m", rule="board joints, angles to wall and ceiling")
    if facts.job.finish is Finish.SKIMMED:
        return [tape, spread(facts, "finish_plaster", at.skim_m2, unit="m2", rule="faces and returns less openings over 0.5 m2")]
    bead_m = sum(at.bead_edges_mm) / 1000
    return [tape, spread(facts, "joint_compound", at.scrim_m + bead_m, unit="m", rule="taped joints and angles, beads")]


def _paint(facts: Facts) -> list[Need]:
    at, finish = facts.measures, facts.job.finish
    if finish is Finish.PAINTED:
        return [_primer(facts, at.paint_m2, "all boards"), _coats(facts, "board_paint", at.paint_m2)]
    if finish is Finish.TAPED:
        return [_primer(facts, at.paint_m2, "all boards, as sealer on plasterboard"), _coats(facts, "skim_paint", at.paint_m2)]
    board_m2 = at.paint_m2 - at.skim_m2
    mist = litres(facts, "skim_paint", at.skim_m2 / MIST_M2_PER_LITRE, f"mist coat on {at.skim_m2:.3f} m2")
    return [_primer(facts, board_m2, "linings and lid"), mist, _coats(facts, "skim_paint", at.paint_m2)]


def _primer(facts: Facts, area_m2: float, what: str) -> Need:
    return litres(facts, "board_primer", area_m2 / _coverage(facts, "board_primer"), f"1 coat on {area_m2:.3f} m2: {what}")


def _coats(facts: Facts, use: str, area_m2: float) -> Need:
    return litres(facts, use, 2 * area_m2 / _coverage(facts, use), f"2 coats on {area_m2:.3f} m2")


def _coverage(facts: Facts, use: str) -> float:
    row = hardware.by_use(use, facts.market.catalogue)
    return (row.coverage if row else None) or PRIMER_M2_PER_LITRE


def _is_wet(facts: Facts) -> bool:
    return facts.job.finish in WET_FINISHES
