"""Measuring lengths and areas of a frame for everything that is bought by the metre or square metre.

Rules: `knowledge/materials.md`, section 2 and `knowledge/cladding.md`, section 5. Metres and square metres.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from service.bill.bill import Measures
from service.bill.runs import bead_edges, skirting_joints_count, skirting_runs
from service.frame import Layer, PanelRole, Role
from service.survey.wishes import Finish

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame import Frame, Panel
    from service.rules import RuleSet

TENTHS_PER_M = 10_000
TENTHS2_PER_M2 = 100_000_000
WET_FINISHES = frozenset({Finish.SKIMMED, Finish.TAPED})  # joints are taped, corners beaded
LEFT_LININGS = frozenset({PanelRole.LINING_LEFT, PanelRole.LINING_NICHE_LEFT})  # as deep as their opening
CHEEKS = frozenset({PanelRole.FACE_CHEEK_LEFT, PanelRole.FACE_CHEEK_RIGHT})


def measure(frame: Frame, job: Job, rules: RuleSet) -> Measures:
    """Measure one frame."""
    areas = {layer: sum((panel_area_m2(panel) for panel in frame.panels if panel.layer is layer), 0.0) for layer in Layer}
    facing, lid, lining = areas[Layer.FACING], areas[Layer.LID], areas[Layer.LINING]
    wet = job.finish in WET_FINISHES
    visible, cut_edge = _visible_m2(frame, frame.levels.finished_top_tenth_mm, rules), 0.0 if wet else _cut_edge_m(frame)
    lid_visible = 0.0 if frame.full_height else _m2(frame.sizes.finished_width_tenth_mm * frame.sizes.finished_depth_tenth_mm)
    runs = skirting_runs(frame, job, rules)
    return Measures(
        return_edge_m=_return_edge_m(frame),
        ceiling_edge_m=_m(_front(frame)) if frame.full_height else 0.0,
        lid_edge_m=0.0 if frame.full_height else _m(_lid_edge(frame)),
        lining_corner_m=_m(4 * sum(panel.height_tenth_mm for panel in frame.panels if panel.role in LEFT_LININGS)),
        recess_perimeter_m=_recess_perimeter_m(frame),
        ply_m=_m(sum(member.length_tenth_mm for member in frame.members if member.role is Role.TRIMMER_PLY)),
        face_joint_m=_joints_m(frame),
        skirting_m=_m(sum(runs)),
        skirting_runs_mm=tuple(-(-run // 10) for run in runs),
        skirting_joints_count=skirting_joints_count(frame, job, rules),
        bead_edges_mm=bead_edges(frame) if wet else (),
        scrim_m=_scrim_m(frame) if wet else 0.0,
        facing_gross_m2=facing,
        lid_m2=lid,
        lining_m2=lining,
        backboard_m2=areas[Layer.BACKBOARD],
        visible_m2=visible,
        lid_visible_m2=lid_visible,
        cut_edge_m=cut_edge,
        skim_m2=_visible_m2(frame, _board_top(frame), rules) if job.finish is Finish.SKIMMED else 0.0,
        paint_m2=visible + lid_visible + lining + rules.take_off.paint_edge_m2 * cut_edge,
        painted_board_gross_m2=lid + lining + (0.0 if wet else facing),
    )


def panel_area_m2(panel: Panel) -> float:
    """Gross area of a board, cut-outs not taken off."""
    return _m2(panel.width_tenth_mm * panel.height_tenth_mm)


def _m(length: int) -> float:
    return length / TENTHS_PER_M


def _m2(area: int) -> float:
    return area / TENTHS2_PER_M2


def _front(frame: Frame) -> int:
    return frame.sizes.finished_width_tenth_mm + len(frame.returns_open) * frame.sizes.finished_depth_tenth_mm


def _lid_edge(frame: Frame) -> int:
    """Edges of a lid at walls."""
    return frame.sizes.finished_width_tenth_mm + frame.side_walls_count * frame.sizes.finished_depth_tenth_mm


def _board_top(frame: Frame) -> int:
    """Top of faces and returns: the ceiling, or the underside of the lid."""
    return frame.levels.finished_top_tenth_mm if frame.full_height else frame.levels.upper_top_tenth_mm


def _return_edge_m(frame: Frame) -> float:
    """Upright edges at walls, of a return or of the face at a side wall: the boards' top without the glass at an open end."""
    opening = frame.sizes.opening_height_tenth_mm
    ends = (frame.left_open, frame.right_open)
    return _m(sum(_board_top(frame) - (opening if open_end else 0) for open_end in ends))


def _recess_perimeter_m(frame: Frame) -> float:
    """Edges of board round the clear openings of recess and niche."""
    recess, niche = frame.sizes.recess, clear_niche(frame)
    round_recess = 2 * (recess.clear_width_tenth_mm + recess.clear_height_tenth_mm) if recess else 0
    return _m(round_recess + 2 * sum(niche))


def clear_niche(frame: Frame) -> tuple[int, int]:
    """Clear width and height of the niche: what its linings leave; 0 without one."""
    bottom = next((panel for panel in frame.panels if panel.role is PanelRole.LINING_NICHE_BOTTOM), None)
    side = next((panel for panel in frame.panels if panel.role is PanelRole.LINING_NICHE_LEFT), None)
    if bottom is None or side is None:
        return 0, 0
    return bottom.width_tenth_mm - 2 * bottom.thickness_tenth_mm, side.width_tenth_mm


def _joints_m(frame: Frame) -> float:
    """Joints between facing boards in one plane, the cheeks' edges to the boards below and above among them."""
    panels = [panel for panel in frame.panels if panel.layer is Layer.FACING]
    strips = sum(panel.width_tenth_mm for panel in panels if panel.joint_below)
    columns = sum(panel.height_tenth_mm for panel in panels if panel.joint_left)
    cheeks = [panel for panel in panels if panel.role in CHEEKS and not panel.joint_below]
    under = 1 if frame.levels.platform_tenth_mm > 0 else 0
    return _m(strips + columns + sum(panel.width_tenth_mm * (1 + under) for panel in cheeks))


def _scrim_m(frame: Frame) -> float:
    """All board joints, and the internal angles to wall and ceiling."""
    return _joints_m(frame) + _return_edge_m(frame) + (_m(_front(frame)) if frame.full_height else 0.0)


def _visible_m2(frame: Frame, top: int, rules: RuleSet) -> float:
    """Faces and returns up to a height, openings over the limit taken off."""
    sizes = frame.sizes
    face = _m2(sizes.finished_width_tenth_mm * top)
    fire = _m2(sizes.board_opening_width_tenth_mm * sizes.opening_height_tenth_mm)
    recess = _m2(sizes.recess.clear_width_tenth_mm * sizes.recess.clear_height_tenth_mm) if sizes.recess else 0.0
    niche = _m2(math.prod(clear_niche(frame)))
    taken_off = sum(area for area in (fire, recess, niche) if area > rules.take_off.opening_not_painted_m2)
    glass = sizes.opening_height_tenth_mm
    heights = (top - (glass if open_end else 0) for open_end in frame.returns_open)
    return face - taken_off + sum(_m2(sizes.finished_depth_tenth_mm * height) for height in heights)


def _cut_edge_m(frame: Frame) -> float:
    """Cut edges in sight of painted board: round recess and fire opening; at open ends along face and return; a lid's."""
    sizes = frame.sizes
    open_ends = frame.left_open + frame.right_open
    across = sizes.board_opening_width_tenth_mm + open_ends * sizes.finished_depth_tenth_mm
    upright = (2 - open_ends) * sizes.opening_height_tenth_mm
    below = across if frame.levels.platform_tenth_mm > 0 else 0  # a fire on the floor has no board under it
    lid = 0 if frame.full_height else _front(frame)
    return _recess_perimeter_m(frame) + _m(across + below + upright + lid)
