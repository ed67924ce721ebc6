"""Linings and backboard of the screen recess.

Sizes: `knowledge/framing.md`, sections 2.1 and 5; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame.frame import Layer, PanelRole
from service.frame.joints import Wanted, divide
from service.frame.panels import Piece, passing
from service.frame.placing import box
from service.units import whole_mm_down, whole_mm_nearest

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.member import Box
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

ROLES = (PanelRole.LINING_BOTTOM, PanelRole.LINING_TOP, PanelRole.LINING_LEFT, PanelRole.LINING_RIGHT)


def recess_pieces(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Piece, ...]:
    """Four linings, the two upright ones standing between the others, and the backboard behind them."""
    if at.recess is None:
        return ()
    x = (at.recess_left, at.recess_left + at.recess.framing_width_tenth_mm)
    y = (at.df - at.recess.framing_depth_tenth_mm, at.df)
    return (*lined(job, (x, y, (at.zs, at.zh)), ROLES), *_backboard(at, job, rules, x=x, front=y[0]))


def lined(job: Job, inside: tuple[Range, Range, Range], roles: tuple[PanelRole, ...]) -> list[Piece]:
    """Linings of an opening, bottom, top, left and right; the two upright ones stand between the others.

    Args:
        job: says the board.
        inside: the opening in the timber along x, y and z, tenths of a millimetre.
        roles: of the four, in that order.
    """
    x, y, z = inside
    thick = job.lining.thickness_tenth_mm
    between = (z[0] + thick, z[1] - thick)
    level = [_level(job, role, box(x, y, (low, low + thick))) for role, low in zip(roles, (z[0], between[1]), strict=False)]
    sides = zip(roles[2:], (x[0], x[1] - thick), strict=True)
    return [*level, *(_upright(job, role, box((left, left + thick), y, between)) for role, left in sides)]


def _level(job: Job, role: PanelRole, place: Box) -> Piece:
    wide, deep = place.x1_tenth_mm - place.x0_tenth_mm, place.y1_tenth_mm - place.y0_tenth_mm
    return Piece(
        role=role, layer=Layer.LINING, board=job.lining, width_tenth_mm=wide, height_tenth_mm=deep,
        cut_width_mm=whole_mm_nearest(wide), cut_height_mm=whole_mm_down(deep), box=place,
    )  # fmt: skip


def _upright(job: Job, role: PanelRole, place: Box) -> Piece:
    high, deep = place.z1_tenth_mm - place.z0_tenth_mm, place.y1_tenth_mm - place.y0_tenth_mm
    return Piece(
        role=role, layer=Layer.LINING, board=job.lining, width_tenth_mm=high, height_tenth_mm=deep,
        cut_width_mm=whole_mm_down(high), cut_height_mm=whole_mm_down(deep), box=place,
    )  # fmt: skip


def _backboard(at: SettingOut, job: Job, rules: RuleSet, *, x: Range, front: int) -> list[Piece]:
    """The board behind the linings; one too high for its sheet is joined on the centre lines of the bearers."""
    rows = at.recess.row_levels_tenth_mm if at.recess else ()
    wanted = Wanted(low_tenth_mm=at.zs, high_tenth_mm=at.zh, left_tenth_mm=x[0], right_tenth_mm=x[1], heights_tenth_mm=rows)
    y = (front - job.backboard.thickness_tenth_mm, front)
    return [
        Piece(
            role=PanelRole.BACKBOARD, layer=Layer.BACKBOARD, board=job.backboard,
            width_tenth_mm=strip.right_tenth_mm - strip.left_tenth_mm, height_tenth_mm=strip.high_tenth_mm - strip.low_tenth_mm,
            cut_width_mm=strip.cut_width_mm, cut_height_mm=strip.cut_height_mm,
            box=box(x, y, (strip.low_tenth_mm, strip.high_tenth_mm)),
            joint_below=strip.joint_below,
        )
        for strip in divide(wanted, passing(job.backboard, job), rules)
    ]  # fmt: skip
