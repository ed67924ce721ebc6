"""A niche for a soundbar between the fire and the screen recess: own sill rail, jambs, linings and backboard.

Rules: `knowledge/framing.md`, section 14; common practice, no source. Its front is open for sound and remote control.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import msgspec

from service.errors import Unmet
from service.frame.frame import Layer, PanelRole
from service.frame.joints import Wanted, divide
from service.frame.linings import lined
from service.frame.panels import Piece, passing
from service.frame.placing import between, box, spread_half
from service.units import millimetres, tenths, text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

ROLES = (PanelRole.LINING_NICHE_BOTTOM, PanelRole.LINING_NICHE_TOP, PanelRole.LINING_NICHE_LEFT, PanelRole.LINING_NICHE_RIGHT)


class Niche(msgspec.Struct, frozen=True, kw_only=True):
    """Framing sizes of the niche: inside the timber, around its linings."""

    left_tenth_mm: int
    right_tenth_mm: int
    low_tenth_mm: int  # top of its sill rail
    high_tenth_mm: int  # underside of the sill rail of the screen
    framing_depth_tenth_mm: int  # of its linings
    full_width: bool  # without jambs


def lift_of(job: Job) -> int:
    """How much higher the sill of the screen lies for the niche and its rail."""
    if job.niche is None:
        return 0
    return job.niche.clear_height_tenth_mm + 2 * job.lining.thickness_tenth_mm + job.timber.thickness_tenth_mm


def set_niche(job: Job, rules: RuleSet, *, wf: int, low: int) -> Niche | None:
    """The niche over its own sill, in the middle of the frame; the ladders are its jambs where jambs have no room."""
    if job.niche is None:
        return None
    b, lining = job.timber.thickness_tenth_mm, job.lining.thickness_tenth_mm
    lr, wide = wf - 2 * b, job.niche.clear_width_tenth_mm + 2 * lining
    full_width = wide <= lr < wide + 2 * b
    wide = lr if full_width else wide
    depth = job.niche.bar_depth_tenth_mm + tenths(rules.frame.soundbar_room_mm)
    return Niche(
        left_tenth_mm=(wf - wide) // 2,
        right_tenth_mm=(wf - wide) // 2 + wide,
        low_tenth_mm=low,
        high_tenth_mm=low + job.niche.clear_height_tenth_mm + 2 * lining,
        framing_depth_tenth_mm=depth - job.board.thickness_tenth_mm - job.skim_tenth_mm,
        full_width=full_width,
    )


def niche_jambs(at: SettingOut) -> tuple[Range, ...]:
    """Ranges of its two jambs along the wall; none where the ladders are its jambs."""
    if at.niche is None or at.niche.full_width:
        return ()
    left, right = at.niche.left_tenth_mm, at.niche.right_tenth_mm
    return (left - at.b, left), (right, right + at.b)


def among_jambs(places: list[Range], at: SettingOut) -> list[Range]:
    """Studs with those under the jambs of the niche, which keep their place where two would meet.

    Where two that gave way leave more than the board allows between them, one more stands there.
    """
    jambs = niche_jambs(at)
    free = [place for place in places if all(place[1] <= jamb[0] or jamb[1] <= place[0] for jamb in jambs)]
    found = sorted([*free, *jambs])
    wide = [(left, right) for left, right in pairwise(found) if jambs and right[0] - left[1] > at.m]
    filled = [between(centre, at.b) for left, right in wide for centre in spread_half(sum(left), sum(right), at.m)]
    return sorted([*found, *filled])


def beside_niche(places: list[Range], at: SettingOut) -> list[Range]:
    """Of the studs those that stand beside the niche."""
    if at.niche is None:
        return []
    low, high = at.niche.left_tenth_mm - at.b, at.niche.right_tenth_mm + at.b
    return [place for place in places if place[1] <= low or high <= place[0]]


def niche_pieces(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Piece, ...]:
    """Its four linings and its backboard."""
    if at.niche is None:
        return ()
    x, z = (at.niche.left_tenth_mm, at.niche.right_tenth_mm), (at.niche.low_tenth_mm, at.niche.high_tenth_mm)
    y = (at.df - at.niche.framing_depth_tenth_mm, at.df)
    back = (y[0] - job.backboard.thickness_tenth_mm, y[0])
    wanted = Wanted(low_tenth_mm=z[0], high_tenth_mm=z[1], left_tenth_mm=x[0], right_tenth_mm=x[1])
    backs = [
        Piece(
            role=PanelRole.BACKBOARD_NICHE, layer=Layer.BACKBOARD, board=job.backboard, width_tenth_mm=x[1] - x[0],
            height_tenth_mm=z[1] - z[0], cut_width_mm=strip.cut_width_mm, cut_height_mm=strip.cut_height_mm, box=box(x, back, z),
        )
        for strip in divide(wanted, passing(job.backboard, job), rules)
    ]  # fmt: skip
    return (*lined(job, (x, y, z), ROLES), *backs)


def niche_refusals(at: SettingOut, job: Job) -> tuple[Unmet, ...]:
    """A niche wider than the frame, deeper than the breast, or not as deep as its front."""
    if at.niche is None:
        return ()
    wide = at.niche.right_tenth_mm - at.niche.left_tenth_mm
    deep = at.tf + at.niche.framing_depth_tenth_mm + job.backboard.thickness_tenth_mm
    found = []
    if wide > at.lr:
        narrower = at.lr - 2 * job.lining.thickness_tenth_mm
        found.append(_unmet("niche_wide", wide, at.lr, ("between the ladders", f"a niche at most {text_mm(narrower)} wide")))
    if deep > at.dd:
        found.append(_unmet("niche_deep", deep, at.dd, ("of depth", f"a depth of {text_mm(deep)}, or a flatter soundbar")))
    return tuple(found)


def _unmet(code: str, asked: int, available: int, words: tuple[str, str]) -> Unmet:
    return Unmet(
        code=code,
        says=f"the niche with its linings wants {text_mm(asked)} {words[0]} and there are {text_mm(max(available, 0))}",
        asked_mm=millimetres(asked),
        available_mm=millimetres(available),
        short_by_mm=millimetres(asked - available),
        offer=words[1],
    )
