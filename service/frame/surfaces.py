"""Ceiling and floor along the frame: how far off their highest or lowest point they are, and what is packed.

Rules: `knowledge/framing.md`, sections 3, 11 and 14; common practice, no source.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from service.units import tenths, text_mm

if TYPE_CHECKING:
    from service.brief import Job, Spot
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet


def off_at(spots: tuple[Spot, ...], x: int) -> int:
    """How far off a surface is at a place, by straight lines between the points measured, level beyond them; 0 without any."""
    if not spots or x <= spots[0].x_tenth_mm:
        return spots[0].off_tenth_mm if spots else 0
    for low, high in pairwise(spots):
        if x <= high.x_tenth_mm:
            run, rise = high.x_tenth_mm - low.x_tenth_mm, high.off_tenth_mm - low.off_tenth_mm
            return low.off_tenth_mm + (2 * rise * (x - low.x_tenth_mm) + run) // (2 * run)
    return spots[-1].off_tenth_mm


def most_off(spots: tuple[Spot, ...], stretch: Range) -> int:
    """How far off a surface is at most over a stretch."""
    inside = [spot.off_tenth_mm for spot in spots if stretch[0] < spot.x_tenth_mm < stretch[1]]
    return max(off_at(spots, stretch[0]), off_at(spots, stretch[1]), *inside, 0)


def rise_over_face(at: SettingOut, job: Job, stretch: Range) -> int:
    """How much higher than nominal the ceiling is over a stretch of the face: its boards are cut longer by it."""
    return most_off(job.ceiling_front, stretch) if at.full_height else 0


def rise_over_return(at: SettingOut, job: Job, x: int) -> int:
    """The same over a return."""
    return max(off_at(job.ceiling_rear, x), off_at(job.ceiling_front, x)) if at.full_height else 0


def ceiling_packing(at: SettingOut, job: Job, x: int, *, rear: bool) -> int:
    """Between a top rail and the ceiling at a place."""
    return at.top - at.z2 + off_at(job.ceiling_rear if rear else job.ceiling_front, x)


def wall_packing(at: SettingOut, job: Job, level: int) -> int:
    """Behind the frame at a level: a plumb line from the most forward point of a leaning wall."""
    lean = tenths(job.lean_mm)
    share = at.top - level if job.leans_in else level
    return (2 * lean * max(share, 0) + at.top) // (2 * at.top)


def firrings(at: SettingOut, job: Job, rules: RuleSet) -> tuple[int, ...]:
    """Lengths of the strips ripped to the ceiling, one over each top rail that more than packers would have to reach from."""
    packed, most = at.top - at.z2, tenths(rules.frame.greatest_packer_mm)
    return tuple(at.lr for rise in _rises(at, job) if rise and packed + rise > most)


def _rises(at: SettingOut, job: Job) -> tuple[int, int]:
    """Greatest rise of the ceiling over the rear and over the front top rail."""
    if not at.full_height:
        return 0, 0
    return most_off(job.ceiling_rear, (0, at.wf)), most_off(job.ceiling_front, (0, at.wf))


def surface_notes(at: SettingOut, job: Job, rules: RuleSet) -> list[str]:
    """What the fitter must know of an uneven ceiling and of a leaning wall."""
    notes = []
    rise = max(_rises(at, job))
    if rise > tenths(rules.frame.shadow_gap_from_mm):
        notes.append(f"the ceiling rises by {text_mm(rise)} over the breast: a shadow gap hides it better than a scribed edge")
    if count := len(firrings(at, job, rules)):
        notes.append(f"rip {count} firrings to the ceiling for the top rails and fix them to the joists first")
    if tenths(job.lean_mm) > tenths(rules.frame.scribe_mm):
        where = "foot" if job.leans_in else "top"
        packing = text_mm(tenths(job.lean_mm))
        notes.append(f"the wall leans: plumb the frame from its most forward point, pack up to {packing} at the {where}")
    return notes
