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
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet


def recess_pieces(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Piece, ...]:
    """Four linings, the two upright ones standing between the others, and the backboard behind them."""
    if at.recess is None:
        return ()
    x = (at.recess_left, at.recess_left + at.recess.framing_width_tenth_mm)
    y = (at.df - at.recess.framing_depth_tenth_mm, at.df)
    return (*_level(at, job, x, y), *_upright(at, job, x, y), *_backboard(at, job, rules, x=x, front=y[0]))


def _level(at: SettingOut, job: Job, x: Range, y: Range) -> list[Piece]:
    thick = job.lining.thickness_tenth_mm
    places = ((PanelRole.LINING_BOTTOM, at.zs), (PanelRole.LINING_TOP, at.zh - thick))
    return [
        Piece(
            role=role, layer=Layer.LINING, board=job.lining, width_tenth_mm=x[1] - x[0], height_tenth_mm=y[1] - y[0],
            cut_width_mm=whole_mm_nearest(x[1] - x[0]), cut_height_mm=whole_mm_down(y[1] - y[0]),
            box=box(x, y, (low, low + thick)),
        )
        for role, low in places
    ]  # fmt: skip


def _upright(at: SettingOut, job: Job, x: Range, y: Range) -> list[Piece]:
    thick = job.lining.thickness_tenth_mm
    z = (at.zs + thick, at.zh - thick)
    places = ((PanelRole.LINING_LEFT, x[0]), (PanelRole.LINING_RIGHT, x[1] - thick))
    return [
        Piece(
            role=role, layer=Layer.LINING, board=job.lining, width_tenth_mm=z[1] - z[0], height_tenth_mm=y[1] - y[0],
            cut_width_mm=whole_mm_down(z[1] - z[0]), cut_height_mm=whole_mm_down(y[1] - y[0]),
            box=box((left, left + thick), y, z),
        )
        for role, left in places
    ]  # fmt: skip


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
