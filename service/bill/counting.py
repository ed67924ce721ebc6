"""Counting what a frame asks for: joints, screws, brackets, holes. Rules: `knowledge/materials.md`, section 1."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from service import hardware
from service.bill.bill import Counts
from service.brief import supply_of
from service.frame import Axis, EndJoint, Layer, PanelRole, Role
from service.survey.services import SupplyWanted
from service.units import tenths, text_mm

if TYPE_CHECKING:
    from service.bill.market import Market
    from service.brief import Job
    from service.frame import Frame, Ledge, Member, Panel
    from service.rules import RuleSet

THROUGH_ROLES = frozenset({Role.RAIL, Role.LADDER_UPRIGHT})
AIR_FROM_VOID = frozenset({"rear", "side"})
DECLARED_NO_AREA_RATIO = 0.5  # free share of a grille whose maker declares none: project choice (knowledge/heat.md, section 4)
TENTHS_PER_M = 10_000
PACKER_TENTH_MM = 50  # thick, as two fill the usual gap of 10 under a ceiling: house choice
REMOVABLE = frozenset({PanelRole.RETURN_ACCESS_LEFT, PanelRole.RETURN_ACCESS_RIGHT})
LID_BOARD = "mdf"  # lids are of MDF


def count_things(frame: Frame, job: Job, market: Market) -> Counts:
    """Count joints, screws, brackets and openings of a frame."""
    rules = market.rules
    cut = [member for member in frame.members if member.from_bar]
    plies = [member for member in cut if member.role is Role.TRIMMER_PLY]
    butting = [member for member in cut if member.role not in THROUGH_ROLES and member.role is not Role.TRIMMER_PLY]
    screws = {layer: sum(panel_screws(panel, job, rules) for panel in frame.panels if panel.layer is layer) for layer in Layer}
    grilles = grilles_count(job, market)
    ends = [joint for member in cut for joint in (member.start_joint, member.end_joint)]
    heavy = sum(joint is EndJoint.HEAVY_BRACKET for joint in ends)
    return Counts(
        bar_pieces_count=len(cut),
        butting_count=len(butting),
        joints_count=2 * len(butting) + 2 * len(plies),
        wide_joints_count=2 * sum(1 for member in butting if member.along is Axis.Y),
        laminating_screws_count=sum(_laminating(ply, frame, rules) for ply in plies),
        ply_end_screws_count=len(plies) * _ply_end_screws(frame, rules),
        rail_brackets_count=sum(joint.bracket_count for joint in ends) - heavy,
        heavy_brackets_count=heavy,
        base_brackets_count=len(frame.stations),
        wall_fixings_count=len(frame.wall_fixings),
        ceiling_screws_count=len(frame.ceiling_screws),
        joist_noggins_count=frame.joist_noggin_count,
        face_screws_count=screws[Layer.FACING],
        lid_screws_count=screws[Layer.LID],
        lining_screws_count=screws[Layer.LINING],
        backboard_screws_count=screws[Layer.BACKBOARD],
        openings_count=len(frame.openings),
        grilles_count=grilles,
        small_openings_count=_electrical_openings(frame, job) + grilles,
        side_fixings_count=len(frame.side_fixings),
        more_packers_count=_more_packers(frame),
        ledges=tuple(_ledge_words(one) for one in frame.ledges),
        ledge_fixings_count=sum(one.fixings_count for one in frame.ledges),
        access_panels_count=sum(1 for panel in frame.panels if panel.role in REMOVABLE),
        firrings_count=len(frame.firrings_tenth_mm),
        firrings_m=sum(frame.firrings_tenth_mm) / TENTHS_PER_M,
    )


def _ledge_words(ledge: Ledge) -> str:
    at = ledge.box
    sides = (at.x1_tenth_mm - at.x0_tenth_mm, at.z1_tenth_mm - at.z0_tenth_mm, at.y1_tenth_mm - at.y0_tenth_mm)
    return f"{ledge.kind} {' x '.join(text_mm(side) for side in sides)}"


def _more_packers(frame: Frame) -> int:
    """Packers over the usual two at a ceiling screw and one at a wall fixing: one for every 5 mm."""
    ceiling = sum(max(_spaces(one.packing_tenth_mm, PACKER_TENTH_MM) - 2, 0) for one in frame.ceiling_screws)
    return ceiling + sum(max(_spaces(one.packing_tenth_mm, PACKER_TENTH_MM) - 1, 0) for one in frame.wall_fixings)


def grilles_count(job: Job, market: Market) -> int:
    """Air grilles of a fire that draws its air from the void behind the boards."""
    fire = job.appliance
    if fire.air_inlet_position not in AIR_FROM_VOID or not fire.air_inlet_area_mm2:
        return 0
    free_mm2 = free_area_mm2(market)
    return math.ceil(fire.air_inlet_area_mm2 / free_mm2) if free_mm2 else 1


def free_area_mm2(market: Market) -> float:
    """Free area of the shop's grille; 0 where it sells none, and one of unknown size is asked for."""
    grille = hardware.by_use("grille", market.catalogue)
    if grille is None:
        return 0.0
    return grille.free_area_mm2 or DECLARED_NO_AREA_RATIO * (grille.length_mm or 0) * (grille.width_mm or 0)


def panel_screws(panel: Panel, job: Job, rules: RuleSet) -> int:
    """Screws of one board (`knowledge/cladding.md`, section 3)."""
    if panel.role in REMOVABLE:
        return 0  # on magnets
    if panel.layer in {Layer.LINING, Layer.BACKBOARD}:
        return 2 * row_count(panel, rules)
    pitch = ring_pitch(panel, job, rules)
    edges = [
        (panel.width_tenth_mm, panel.height_tenth_mm),
        *((one.width_tenth_mm, one.height_tenth_mm) for one in panel.cut_outs),
    ]
    columns, rows = screw_grid(panel, rules)
    return columns * rows + sum(2 * sum(ring_counts(size, pitch)) for size in edges)


def row_count(panel: Panel, rules: RuleSet) -> int:
    """Screws in each of the two rows of a lining or backboard."""
    return _spaces(max(panel.width_tenth_mm, panel.height_tenth_mm), tenths(rules.take_off.board_screw_pitch_mm)) + 1


def ring_pitch(panel: Panel, job: Job, rules: RuleSet) -> int:
    """Greatest spacing round the edge of a board, tenths of a millimetre."""
    return _edge_pitch(job.board.board_kind if panel.layer is Layer.FACING else LID_BOARD, rules)


def ring_counts(size: tuple[int, int], pitch: int) -> tuple[int, int]:
    """Screws along each of the level edges, and along each of the upright ones."""
    return _spaces(size[0], pitch), _spaces(size[1], pitch)


def screw_grid(panel: Panel, rules: RuleSet) -> tuple[int, int]:
    """Columns and rows of screws in the field of a board."""
    take = rules.take_off
    columns = _spaces(panel.width_tenth_mm, tenths(take.field_column_pitch_mm)) - 1
    return max(0, columns), max(0, _spaces(panel.height_tenth_mm, tenths(take.board_screw_pitch_mm)) - 1)


def _edge_pitch(board_kind: str, rules: RuleSet) -> int:
    take = rules.take_off
    pitches_mm = {
        "plasterboard": take.plasterboard_screw_pitch_mm,
        "cement_board": take.cement_screw_pitch_mm,
        "calcium_silicate": take.cement_screw_pitch_mm,
    }
    return tenths(pitches_mm.get(board_kind, take.board_screw_pitch_mm))


def _spaces(length: int, pitch: int) -> int:
    return -(-length // pitch)


def _laminating(ply: Member, frame: Frame, rules: RuleSet) -> int:
    """Screws of one ply; where the trimmer's span ends at a jack, more hand the ply's share of the load to the trimmer."""
    return _spaces(ply.length_tenth_mm, tenths(rules.take_off.laminating_pitch_mm)) + 1 + _ply_end_screws(frame, rules)


def _ply_end_screws(frame: Frame, rules: RuleSet) -> int:
    """Of one ply at the jacks of a one-sided fire."""
    one_sided = not (frame.left_open or frame.right_open)
    jacks = sum(1 for member in frame.members if member.role is Role.JACK_STUD) if one_sided else 0
    return rules.take_off.ply_end_screw_count * jacks


def _electrical_openings(frame: Frame, job: Job) -> int:
    recess = 2 if frame.screen_hung else 0  # a double socket and a brush plate
    recess += 1 if frame.niche else 0  # a cable hole
    fire = 0 if supply_of(job) is SupplyWanted.PLUG_IN_REACH else 1
    return recess + fire
