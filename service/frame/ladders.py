"""The ladders: the side frames of the upper frame, two uprights joined by noggins.

Members and levels: `knowledge/framing.md`, sections 4 and 4.1; common practice, no source.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import msgspec

from service.frame.additions import Added
from service.frame.member import Axis, EndJoint, Fit, Role, Unit
from service.frame.placing import Place, box, ceiling_cut, front, rear
from service.units import tenths

if TYPE_CHECKING:
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet


BRACKETS_CLEAR_TENTH_MM = 600  # between brackets one above the other: project choice (structure.md 5.13 b)


class NogginLevel(msgspec.Struct, frozen=True, kw_only=True):
    """Where one noggin of a ladder lies."""

    low_tenth_mm: int
    high_tenth_mm: int
    flat: bool = False
    added: bool = False  # by the checks


def lay_ladders(at: SettingOut, rules: RuleSet) -> tuple[Place, ...]:
    """Uprights and noggins of both ladders."""
    sides = ((True, (0, at.b)), (False, (at.wf - at.b, at.wf)))
    uprights = [
        Place(
            role=Role.LADDER_UPRIGHT, unit=Unit.UPPER, box=box(x, zone, (at.foot(left=left), at.z2)), along=Axis.Z,
            fit=Fit.THROUGH, cut_when=ceiling_cut(at), start=EndJoint.NONE, end=EndJoint.NONE,
        )
        for left, x in sides
        for zone in (front(at), rear(at))
    ]  # fmt: skip
    noggins = [_noggin(at, level, left=left) for left, _x in sides for level in noggin_levels(at, rules, left=left) if at.n > 0]
    return (*uprights, *noggins)


def noggin_levels(at: SettingOut, rules: RuleSet, *, left: bool) -> tuple[NogginLevel, ...]:
    """Levels of the noggins of one ladder, rising.

    A noggin at the foot or the top that would meet one that carries something is laid flat instead; where even that has no
    room it is left out.
    """
    foot = at.foot(left=left)
    carrying = [_on_edge(at, row - at.d // 2) for row in (at.recess.row_levels_tenth_mm if at.recess else ())]
    if foot < at.z1 and at.ply_count > 0:
        carrying.append(_on_edge(at, at.z1))  # the plies need a seat there
    levels = _with_end(carrying, _on_edge(at, foot), NogginLevel(low_tenth_mm=foot, high_tenth_mm=foot + at.b, flat=True))
    levels = _with_end(levels, _on_edge(at, at.z2 - at.d), NogginLevel(low_tenth_mm=at.z2 - at.b, high_tenth_mm=at.z2, flat=True))
    filled = _filled(at, sorted(levels, key=lambda level: level.low_tenth_mm), tenths(rules.frame.ladder_pitch_mm))
    hung = at.left_open if left else at.right_open
    return halved(filled, at.d) if hung and at.added.ladder_halved else filled


def halved(levels: tuple[NogginLevel, ...], depth: int) -> tuple[NogginLevel, ...]:
    """A noggin on edge half way in each bay where brackets stay clear of each other (`knowledge/structure.md`, 5.13 b)."""
    between = [
        NogginLevel(low_tenth_mm=middle, high_tenth_mm=middle + depth, added=True)
        for lower, upper in pairwise(levels)
        if not (lower.flat or upper.flat) and upper.low_tenth_mm - lower.low_tenth_mm >= 2 * (depth + BRACKETS_CLEAR_TENTH_MM)
        for middle in ((lower.low_tenth_mm + upper.low_tenth_mm + 1) // 2,)
    ]
    return tuple(sorted((*levels, *between), key=lambda level: level.low_tenth_mm))


def _on_edge(at: SettingOut, low: int) -> NogginLevel:
    return NogginLevel(low_tenth_mm=low, high_tenth_mm=low + at.d)


def _with_end(levels: list[NogginLevel], on_edge: NogginLevel, flat: NogginLevel) -> list[NogginLevel]:
    for end in (on_edge, flat):
        if all(end.high_tenth_mm <= level.low_tenth_mm or level.high_tenth_mm <= end.low_tenth_mm for level in levels):
            return [*levels, end]
    return levels


def _filled(at: SettingOut, levels: list[NogginLevel], pitch: int) -> tuple[NogginLevel, ...]:
    """Between neighbours further apart than the pitch, as few as do, equally spaced."""
    filled = levels[:1]
    for lower, upper in pairwise(levels):
        gaps = max(-(-(upper.low_tenth_mm - lower.low_tenth_mm) // pitch), 1)
        rise = upper.low_tenth_mm - lower.low_tenth_mm
        filled += [_on_edge(at, (2 * (lower.low_tenth_mm * gaps + rise * step) + gaps) // (2 * gaps)) for step in range(1, gaps)]
        filled.append(upper)
    return tuple(filled)


def _noggin(at: SettingOut, level: NogginLevel, *, left: bool) -> Place:
    across = at.d if level.flat else at.b
    x = (0, across) if left else (at.wf - across, at.wf)
    place = box(x, (at.d, at.df - at.d), (level.low_tenth_mm, level.high_tenth_mm))
    hung = at.left_open if left else at.right_open
    joint = EndJoint.BRACKET if hung and at.added.ladder_brackets and not level.flat else EndJoint.SCREWED
    reason = at.added.reason(Added.LADDER_NOGGIN) if level.added else ""
    return Place(
        role=Role.LADDER_NOGGIN, unit=Unit.UPPER, box=place, along=Axis.Y, fit=Fit.BETWEEN, start=joint, end=joint, reason=reason
    )
