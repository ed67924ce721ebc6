"""Measuring lengths and areas of a frame for everything that is bought by the metre or square metre.

Rules: `knowledge/materials.md`, section 2 and `knowledge/cladding.md`, section 5. Metres and square metres.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.bill.bill import Measures
from service.frame import Layer, PanelRole, Role
from service.survey.wishes import Finish
from service.units import whole_mm_nearest

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame import Frame, Panel
    from service.rules import RuleSet

TENTHS_PER_M = 10_000
TENTHS2_PER_M2 = 100_000_000
CHEEKS = frozenset({PanelRole.FACE_CHEEK_LEFT, PanelRole.FACE_CHEEK_RIGHT})


def measure(frame: Frame, job: Job, rules: RuleSet) -> Measures:
    """Measure one frame."""
    areas = {layer: sum(panel_area_m2(panel) for panel in frame.panels if panel.layer is layer) for layer in Layer}
    facing, lid, lining = areas[Layer.FACING], areas[Layer.LID], areas[Layer.LINING]
    painted_board = job.finish is not Finish.SKIMMED and job.board.board_kind == "mdf"
    visible = _visible_m2(frame, rules)
    lid_visible = 0.0 if frame.full_height else _m2(frame.sizes.finished_width_tenth_mm * frame.sizes.finished_depth_tenth_mm)
    cut_edge = _cut_edge_m(frame) if painted_board else 0.0
    skim = visible if job.finish is Finish.SKIMMED else 0.0
    runs = skirting_runs_mm(frame, job, rules)
    return Measures(
        return_edge_m=_return_edge_m(frame),
        ceiling_edge_m=_m(_front(frame)) if frame.full_height else 0.0,
        lid_edge_m=0.0 if frame.full_height else _m(frame.sizes.finished_width_tenth_mm),
        lining_corner_m=_m(4 * frame.sizes.recess.framing_depth_tenth_mm) if frame.sizes.recess else 0.0,
        recess_perimeter_m=_recess_perimeter_m(frame),
        ply_m=_m(sum(member.length_tenth_mm for member in frame.members if member.role is Role.TRIMMER_PLY)),
        face_joint_m=_joints_m(frame, (PanelRole.FACE_UPPER, PanelRole.FACE_BASE, *CHEEKS, *RETURNS)),
        skirting_m=sum(runs) / 1000,
        skirting_runs_mm=runs,
        bead_edges_mm=_bead_edges_mm(frame) if job.finish is Finish.SKIMMED else (),
        scrim_m=_scrim_m(frame) if job.board.board_kind == "plasterboard" else 0.0,
        facing_gross_m2=facing,
        lid_m2=lid,
        lining_m2=lining,
        backboard_m2=areas[Layer.BACKBOARD],
        visible_m2=visible,
        lid_visible_m2=lid_visible,
        cut_edge_m=cut_edge,
        skim_m2=skim,
        paint_m2=visible + lid_visible + lining + rules.take_off.paint_edge_m2 * cut_edge,
        mdf_gross_m2=lid + lining + (facing if job.board.board_kind == "mdf" else 0.0),
    )


RETURNS = (
    PanelRole.RETURN_LEFT, PanelRole.RETURN_RIGHT, PanelRole.RETURN_UPPER_LEFT, PanelRole.RETURN_UPPER_RIGHT,
    PanelRole.RETURN_BASE_LEFT, PanelRole.RETURN_BASE_RIGHT,
)  # fmt: skip


def panel_area_m2(panel: Panel) -> float:
    """Gross area of a board, cut-outs not taken off."""
    return _m2(panel.width_tenth_mm * panel.height_tenth_mm)


def skirting_runs_mm(frame: Frame, job: Job, rules: RuleSet) -> tuple[int, ...]:
    """The visible runs of new skirting, whole mm: two returns, and the front, less the opening over a low platform."""
    sizes, thick = frame.sizes, round(job.skirting_thickness_mm * 10)
    if job.skirting_height_mm == 0:
        return ()
    side = sizes.finished_depth_tenth_mm + thick
    front = sizes.finished_width_tenth_mm + 2 * thick
    if frame.levels.platform_tenth_mm < round((job.skirting_height_mm + rules.take_off.skirting_over_platform_mm) * 10):
        front -= sizes.opening_width_tenth_mm
    return tuple(whole_mm_nearest(run) for run in (side, side, max(front, 0)) if run > 0)


def _m(length: int) -> float:
    return length / TENTHS_PER_M


def _m2(area: int) -> float:
    return area / TENTHS2_PER_M2


def _front(frame: Frame) -> int:
    return frame.sizes.finished_width_tenth_mm + 2 * frame.sizes.finished_depth_tenth_mm


def _return_edge_m(frame: Frame) -> float:
    """Wall edges of both returns: the boards' top without the glass at an open end."""
    top = frame.levels.upper_top_tenth_mm if not frame.full_height else frame.levels.finished_top_tenth_mm
    opening = frame.sizes.opening_height_tenth_mm
    return _m(sum(top - (opening if open_end else 0) for open_end in (frame.left_open, frame.right_open)))


def _recess_perimeter_m(frame: Frame) -> float:
    recess = frame.sizes.recess
    return _m(2 * (recess.clear_width_tenth_mm + recess.clear_height_tenth_mm)) if recess else 0.0


def _joints_m(frame: Frame, roles: tuple[PanelRole, ...]) -> float:
    """Joints between facing boards in one plane, the cheeks' edges to the boards below and above among them."""
    panels = [panel for panel in frame.panels if panel.role in roles]
    strips = sum(panel.width_tenth_mm for panel in panels if panel.joint_below) + sum(panel.height_tenth_mm for panel in panels if panel.joint_left)
    cheeks = [panel for panel in panels if panel.role in CHEEKS and not panel.joint_below]
    under = 1 if frame.levels.platform_tenth_mm > 0 else 0
    return _m(strips + sum(panel.width_tenth_mm * (1 + under) for panel in cheeks))


def _scrim_m(frame: Frame) -> float:
    """All board joints, and the internal angles to wall and ceiling."""
    joints = _joints_m(frame, (PanelRole.FACE_UPPER, PanelRole.FACE_BASE, *CHEEKS, *RETURNS))
    return joints + _return_edge_m(frame) + (_m(_front(frame)) if frame.full_height else 0.0)


def _visible_m2(frame: Frame, rules: RuleSet) -> float:
    """Faces and returns, openings over the limit taken off."""
    sizes, levels = frame.sizes, frame.levels
    face = _m2(sizes.finished_width_tenth_mm * levels.finished_top_tenth_mm)
    fire = _m2(sizes.board_opening_width_tenth_mm * sizes.opening_height_tenth_mm)
    recess = _m2(sizes.recess.clear_width_tenth_mm * sizes.recess.clear_height_tenth_mm) if sizes.recess else 0.0
    taken_off = sum(area for area in (fire, recess) if area > rules.take_off.opening_not_painted_m2)
    heights = (levels.finished_top_tenth_mm - (sizes.opening_height_tenth_mm if open_end else 0) for open_end in (frame.left_open, frame.right_open))
    returns = sum(_m2(sizes.finished_depth_tenth_mm * height) for height in heights)
    return face - taken_off + returns


def _cut_edge_m(frame: Frame) -> float:
    """Cut edges in sight of painted board: round recess and fire opening; at open ends along face and return; a lid's."""
    sizes = frame.sizes
    open_ends = frame.left_open + frame.right_open
    across = sizes.board_opening_width_tenth_mm + open_ends * sizes.finished_depth_tenth_mm
    upright = (2 - open_ends) * sizes.opening_height_tenth_mm
    below = across if frame.levels.platform_tenth_mm > 0 or open_ends == 0 else 0
    lid = 0 if frame.full_height else _front(frame)
    return _recess_perimeter_m(frame) + _m(across + below + upright + lid)


def _bead_edges_mm(frame: Frame) -> tuple[int, ...]:
    """External angles that get a bead: face to return, and the hung lower edge at open ends; one entry a length without join."""
    sizes, levels = frame.sizes, frame.levels
    edges = []
    for open_end in (frame.left_open, frame.right_open):
        if open_end:
            edges += [levels.finished_top_tenth_mm - levels.appliance_top_tenth_mm, levels.platform_tenth_mm]
        else:
            edges.append(levels.finished_top_tenth_mm)
    if frame.left_open or frame.right_open:
        ends = frame.left_open + frame.right_open
        edges += [sizes.board_opening_width_tenth_mm, *([sizes.finished_depth_tenth_mm] * ends)]
    return tuple(-(-edge // 10) for edge in edges if edge > 0)
