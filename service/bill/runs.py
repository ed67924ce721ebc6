"""Lengths that are bought without a join: runs of skirting, edges that get a bead. Tenths of a millimetre.

Rules: `knowledge/materials.md`, section 2 and `knowledge/cladding.md`, sections 4 and 7; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.units import tenths

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame import Frame
    from service.rules import RuleSet


def skirting_runs(frame: Frame, job: Job, rules: RuleSet) -> tuple[int, ...]:
    """The visible runs of new skirting: the two returns, then the front.

    Over a low platform the skirting stops at the opening: the front falls into what is left beside it, and an open end, where
    the opening runs round the corner, gets none.
    """
    if job.skirting_height_mm == 0:
        return ()
    thick = tenths(job.skirting_thickness_mm)
    returns = len(frame.returns_open)
    side, front = frame.sizes.finished_depth_tenth_mm + thick, frame.sizes.finished_width_tenth_mm + returns * thick
    if not _stops_at_opening(frame, job, rules):
        return (*[side] * returns, front)
    pieces = _beside_opening(frame, thick)
    return (*[side] * frame.returns_open.count(False), *pieces)


def skirting_joints_count(frame: Frame, job: Job, rules: RuleSet) -> int:
    """An external mitre and a scribe against the old skirting for every return; a scribe at a side wall."""
    if job.skirting_height_mm == 0:
        return 0
    stops = _stops_at_opening(frame, job, rules)
    returns = frame.returns_open.count(False) if stops else len(frame.returns_open)
    return 2 * returns + frame.side_walls_count


def bead_edges(frame: Frame) -> tuple[int, ...]:
    """External angles that get a bead, whole mm: face to return, and the hung lower edges at open ends; none is joined."""
    sizes, levels = frame.sizes, frame.levels
    top = levels.finished_top_tenth_mm if frame.full_height else levels.upper_top_tenth_mm
    ends = (frame.left_open, frame.right_open)
    edges = []
    for open_end in frame.returns_open:
        edges += [top - levels.appliance_top_tenth_mm, levels.platform_tenth_mm] if open_end else [top]
    if any(ends):
        edges += [sizes.board_opening_width_tenth_mm, *([sizes.finished_depth_tenth_mm] * sum(ends))]
    return tuple(-(-edge // 10) for edge in edges if edge > 0)


def _stops_at_opening(frame: Frame, job: Job, rules: RuleSet) -> bool:
    over = tenths(job.skirting_height_mm + rules.take_off.skirting_over_platform_mm)
    return frame.levels.platform_tenth_mm < over


def _beside_opening(frame: Frame, thick: int) -> tuple[int, ...]:
    """Front pieces beside the opening of a low platform, from the corner of the skirting to the edge of the opening."""
    opening = next(one for one in frame.openings if one.kind == "fire")
    sizes = frame.sizes
    ends = (
        sizes.beside_left_tenth_mm + (0 if frame.left_wall else thick),
        sizes.beside_right_tenth_mm + (0 if frame.right_wall else thick),
    )
    left = () if frame.left_open else (ends[0] + opening.x0_tenth_mm,)
    right = () if frame.right_open else (sizes.frame_width_tenth_mm - opening.x1_tenth_mm + ends[1],)
    return left + right
