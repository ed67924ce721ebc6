"""What is needed, thing by thing, with the rule that each number comes from (`knowledge/materials.md`, section 2)."""

from __future__ import annotations

import msgspec

from service.bill import choosing
from service.bill.bill import Counts, LineGroup, Measures
from service.bill.counting import grilles_count
from service.brief import Job
from service.catalogue import Catalogue, Material
from service.rules import RuleSet
from service.survey.wishes import Finish

MIST_M2_PER_LITRE = 10.0  # first thinned coat on new skim: from memory (knowledge/cladding.md, section 5)
HALF = 0.5  # of a grille's gross area, where the maker declares no free area: project choice, heat.md 4


class Need(msgspec.Struct, frozen=True, kw_only=True):
    """One thing needed. `per_pack` is how much of `need` one pack gives."""

    material: Material | None
    wanted: str  # what it is for, where nothing in the catalogue does it
    need: float
    need_unit: str
    per_pack: float
    rule: str
    group: LineGroup = LineGroup.MATERIAL
    charged_ratio: float = 1.0


class Facts(msgspec.Struct, frozen=True, kw_only=True):
    """What the needs are read from."""

    job: Job
    catalogue: Catalogue
    rules: RuleSet
    counts: Counts
    measures: Measures


def fixing_needs(facts: Facts) -> tuple[Need, ...]:
    """Screws, plugs, brackets and packers."""
    job, counts, catalogue, rules = facts.job, facts.counts, facts.catalogue, facts.rules
    b, d = job.timber.thickness_tenth_mm / 10, job.timber.width_tenth_mm / 10
    narrow = rules.take_off.joint_screw_count * (counts.joints_count - counts.wide_joints_count)
    wide = rules.take_off.joint_screw_count * counts.wide_joints_count
    light = choosing.light_bracket(catalogue)
    leg = (light.leg_screw_count or 2) if light else 2
    bracket_screws = counts.rail_brackets_count * 2 * leg + counts.base_brackets_count * leg
    needs = [
        _pieces(choosing.joint_screw(b, catalogue, rules), f"joint screw through {b:g}", narrow, f"{counts.joints_count - counts.wide_joints_count} joints x 2, through {b:g}"),
        _pieces(choosing.laminating_screw(b, catalogue), "laminating screw", counts.laminating_screws_count, "one every 300 mm of ply and one; 3 more at each jack of a one-sided fire"),
        _pieces(choosing.joint_screw(d, catalogue, rules), f"joint screw through {d:g}", wide, f"{counts.wide_joints_count} joints x 2, through {d:g}"),
        *_board_screw_needs(facts),
        _pieces(choosing.fire_screw(catalogue), "screw for the fire's brackets", rules.take_off.fire_screw_count, "4 for the fire, where its maker states none"),
        _pieces(choosing.ceiling_screw(job, catalogue, rules), "ceiling screw", counts.ceiling_screws_count, "joists really crossed x 2 rows"),
        _pieces(choosing.wall_fixing(job, d, catalogue, rules), f"wall fixing through {d:g}", counts.wall_fixings_count, "rows through the rear rails and uprights"),
        _pieces(choosing.wall_fixing(job, 2.0, catalogue, rules), "wall fixing for brackets of the base", counts.base_brackets_count, "one per station of the base"),
        _pieces(light, "angle bracket", counts.rail_brackets_count + counts.base_brackets_count, f"rail ends {counts.rail_brackets_count} + base {counts.base_brackets_count}"),
        _pieces(catalogue.materials.get((light.screw_code or "") if light else ""), "bracket screw", bracket_screws, f"{counts.rail_brackets_count} x {2 * leg} + {counts.base_brackets_count} x {leg}"),
        _pieces(choosing.by_use("packers", catalogue), "packers", _packers(counts), "2 per base station + 2 per ceiling screw + 1 per wall fixing"),
    ]  # fmt: skip
    return tuple(need for need in needs if need.need > 0)


def _packers(counts: Counts) -> int:
    return 2 * counts.base_brackets_count + 2 * counts.ceiling_screws_count + counts.wall_fixings_count + counts.base_brackets_count


def _pieces(material: Material | None, wanted: str, count: int, rule: str) -> Need:
    return Need(material=material, wanted=wanted, need=float(count), need_unit="pieces", per_pack=float(material.pack_count if material else 1), rule=rule)


def _board_screw_needs(facts: Facts) -> list[Need]:
    job, counts = facts.job, facts.counts
    parts = (
        (job.board, counts.face_screws_count, "faces and returns"),
        (job.lining, counts.lining_screws_count, "linings"),
        (job.lid, counts.lid_screws_count, "lid"),
        (job.backboard, counts.backboard_screws_count, "backboard"),
    )
    return [
        _pieces(choosing.board_screw(board.board_kind, board.thickness_tenth_mm / 10, facts.catalogue, facts.rules), f"screw for {board.description}", count, name)
        for board, count, name in parts
    ]


def finish_needs(facts: Facts) -> tuple[Need, ...]:
    """Adhesives, fillers, caulk, skim, beads' mates and paint."""
    at, job, counts, take = facts.measures, facts.job, facts.counts, facts.rules.take_off
    mdf_face = job.board.board_kind == "mdf"
    mdf_joint_m = at.face_joint_m if mdf_face else 0.0
    adhesive_m = (at.return_edge_m if mdf_face else 0.0) + at.lining_corner_m + at.recess_perimeter_m + mdf_joint_m + _lid_supports_m(facts)
    mdf_screws = counts.lining_screws_count + counts.lid_screws_count + (counts.face_screws_count if mdf_face else 0)
    filler_ml = mdf_screws * take.filler_ml_per_screw_ml + mdf_joint_m * take.filler_ml_per_m_joint_ml
    caulk_m = at.return_edge_m + (at.ceiling_edge_m or at.lid_edge_m) + at.skirting_m
    needs = [
        _measured(facts, "grab_adhesive", adhesive_m, "m", "face to returns, recess linings, lid supports, board joints"),
        _measured(facts, "wood_glue", at.ply_m + at.lining_corner_m, "m", "plies and lining joints"),
        _measured(facts, "screw_filler", filler_ml, "ml", "0.67 ml a screw head in MDF, 120 ml a metre of MDF joint"),
        _measured(facts, "fine_filler", at.mdf_gross_m2, "m2", "MDF area, gross"),
        _measured(facts, "caulk", caulk_m, "m", "returns to wall, ceiling or lid, skirting"),
        *_skim_needs(facts),
        *_paint_needs(facts),
    ]
    return tuple(need for need in needs if need.need > 0)


def _lid_supports_m(facts: Facts) -> float:
    """A lid is glued over the front and both sides."""
    if facts.measures.lid_edge_m == 0:
        return 0.0
    return facts.measures.lid_edge_m + 2 * facts.job.depth_tenth_mm / 10_000


def _skim_needs(facts: Facts) -> list[Need]:
    at, job = facts.measures, facts.job
    if job.board.board_kind != "plasterboard":
        return []
    needs = [_measured(facts, "scrim", at.scrim_m, "m", "board joints, angles to wall and ceiling")]
    if job.finish is Finish.SKIMMED:
        return [*needs, _measured(facts, "finish_plaster", at.skim_m2, "m2", "faces and returns less openings over 0.5 m2")]
    return [*needs, _measured(facts, "joint_compound", at.face_joint_m, "m", "board joints, taped")]


def _paint_needs(facts: Facts) -> list[Need]:
    at, job = facts.measures, facts.job
    if job.finish is Finish.SKIMMED:
        lining = at.lining_m2 + at.lid_visible_m2
        mist = at.skim_m2 / MIST_M2_PER_LITRE
        return [
            _paint(facts, "board_primer", lining / _coverage(facts, "board_primer"), f"1 coat on {lining:.3f} m2 of linings and lid"),
            _paint(facts, "skim_paint", mist + 2 * (at.skim_m2 + lining) / _coverage(facts, "skim_paint"), f"mist coat on {at.skim_m2:.3f} m2, 2 coats on {at.skim_m2 + lining:.3f} m2"),
        ]
    return [
        _paint(facts, "board_primer", at.paint_m2 / _coverage(facts, "board_primer"), f"1 coat on {at.paint_m2:.3f} m2"),
        _paint(facts, "board_paint", 2 * at.paint_m2 / _coverage(facts, "board_paint"), f"2 coats on {at.paint_m2:.3f} m2"),
    ]


def _coverage(facts: Facts, use: str) -> float:
    row = choosing.by_use(use, facts.catalogue)
    return (row.coverage if row else None) or 10.0


def _paint(facts: Facts, use: str, litres: float, rule: str) -> Need:
    row = choosing.by_use(use, facts.catalogue)
    return Need(material=row, wanted=use.replace("_", " "), need=litres, need_unit="litre", per_pack=(row.pack_content if row else None) or 1.0, rule=rule)


def _measured(facts: Facts, use: str, need: float, need_unit: str, rule: str) -> Need:
    row = choosing.by_use(use, facts.catalogue)
    return Need(material=row, wanted=use.replace("_", " "), need=need, need_unit=need_unit, per_pack=(row.coverage if row else None) or 1.0, rule=rule)


def electrical_needs(facts: Facts) -> tuple[Need, ...]:
    """Sockets, boxes and plates; the electrician brings cable."""
    counts, catalogue = facts.counts, facts.catalogue
    recess = facts.measures.recess_perimeter_m > 0
    fire = counts.small_openings_count - (2 if recess else 0)
    wanted = [("double_socket", "recess"), ("double_box", "recess"), ("brush_plate", "recess")] if recess else []
    wanted += [("fused_connection", "fire"), ("single_box", "fire")] if fire else []
    needs = [_pieces(choosing.by_use(use, catalogue), use.replace("_", " "), 1, rule) for use, rule in wanted]
    grille = choosing.by_use("grille", catalogue)
    free_mm2 = (grille.free_area_mm2 or HALF * (grille.length_mm or 0) * (grille.width_mm or 0)) if grille else 1.0
    grilles = grilles_count(facts.job, free_mm2)
    if grilles:
        needs.append(_pieces(grille, "air grille", grilles, f"air inlet {facts.job.appliance.air_inlet_area_mm2:g} mm2 over {free_mm2:g} mm2 of free area each"))
    return tuple(needs)


def site_needs(facts: Facts, waste_kg: float) -> tuple[Need, ...]:
    """Dust sheets, abrasive, masks and sacks; disposal is counted apart."""
    take, job = facts.rules.take_off, facts.job
    sheets = take.dust_sheet_count + int(job.parking_distance_mm / 1000 // take.sheet_route_m)
    packs = 1 if facts.measures.paint_m2 < take.small_job_m2 else 2
    dust = _pieces(choosing.by_use("dust_sheet", facts.catalogue), "dust sheets", sheets, "2, and 1 for every 10 m of route; used again, so charged in part")
    abrasive = choosing.by_use("abrasive", facts.catalogue)
    mask = choosing.by_use("dust_mask", facts.catalogue)
    return (
        msgspec.structs.replace(dust, charged_ratio=facts.catalogue.account.dust_sheet_charge_ratio),
        _packs(abrasive, "abrasive", packs),
        _packs(mask, "dust masks", packs),
        _pieces(choosing.by_use("waste_sack", facts.catalogue), "waste sacks", -(-int(waste_kg * 10) // int(take.waste_sack_kg * 10)), "one for every 20 kg of waste"),
    )


def _packs(material: Material | None, wanted: str, count: int) -> Need:
    return Need(material=material, wanted=wanted, need=float(count), need_unit="packs", per_pack=1.0, rule="1 pack under 6 m2 of paint, 2 above")
