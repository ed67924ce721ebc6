"""Setting out: every size and level of a breast from its job, in tenths of a millimetre, or what keeps it from being built.

Symbols and formulas: `knowledge/framing.md`, sections 1, 2, 5, 6 and 13; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.errors import UnbuildableError
from service.frame.frame import Recess
from service.frame.refusals import Refusals
from service.survey.wishes import OpenEnds
from service.units import tenths

if TYPE_CHECKING:
    from service.brief import Job
    from service.rules import RuleSet


class SettingOut(msgspec.Struct, frozen=True, kw_only=True):
    """Sizes and positions that the units are laid out from; tenths of a millimetre, frame axes."""

    b: int  # narrow side of the timber
    d: int  # wide side
    t: int  # facing board
    tf: int  # board and skim
    w: int  # finished width W
    wf: int  # frame width
    dd: int  # finished depth D
    df: int  # frame depth
    lr: int  # rail length
    n: int  # cross noggin length
    m: int  # greatest centre spacing of studs
    z0: int  # platform
    az: int  # opening height
    z1: int  # top of the opening
    z2: int  # top of the frame
    zf: int  # top of the boards
    top: int  # H or P
    hu: int  # height of the upper frame
    u: int  # upstand
    left_open: bool
    right_open: bool
    full_height: bool
    opening_left: int  # x of the fire opening's edges
    opening_right: int
    recess: Recess | None
    recess_left: int  # x of the recess framing's left edge
    zs: int  # recess sill, or the rail at the upstand
    zh: int  # recess head; z2 without a screen
    zc: int  # centre of the screen body
    ply_count: int
    span: int  # of the trimmer

    def foot(self, left: bool) -> int:  # noqa: FBT001 - which end
        """Where the ladder of an end starts: above the fire at an open end, on the base at a closed one."""
        return self.z1 if (self.left_open if left else self.right_open) else self.z0

    def jack_at(self, left: bool) -> bool:  # noqa: FBT001
        """Whether a jack stud stands beside the opening at that side."""
        return not (self.left_open if left else self.right_open) and self.cheek_gap(left) >= 0

    def cheek_gap(self, left: bool) -> int:  # noqa: FBT001
        """Clear gap between the jack and the ladder; negative: no room for a jack."""
        return (self.opening_left if left else self.wf - self.opening_right) - 2 * self.b


def set_out(job: Job, rules: RuleSet, ply_count: int | None = None) -> SettingOut:
    """All sizes of the breast.

    Raises:
        UnbuildableError: with every inequality that is not met, and its offer.
    """
    b, d = job.timber.thickness_tenth_mm, job.timber.width_tenth_mm
    t = job.board.thickness_tenth_mm
    tf = t + job.skim_tenth_mm
    left_open, right_open = job.open_ends in {OpenEnds.LEFT, OpenEnds.BOTH}, job.open_ends in {OpenEnds.RIGHT, OpenEnds.BOTH}
    body = tenths(job.appliance.body_width_mm)
    wf = body - 2 * job.inset_tenth_mm if left_open and right_open else (job.width_tenth_mm or 0) - 2 * tf
    df = job.depth_tenth_mm - tf
    az = tenths(job.appliance.body_height_mm) + job.gap_over_tenth_mm
    z1 = job.platform_tenth_mm + az
    zf = job.finished_top_tenth_mm - (0 if job.full_height else job.lid.thickness_tenth_mm)
    z2 = zf - (tenths(rules.frame.ceiling_packing_mm) if job.full_height else 0)
    opening = _opening(job, wf, body, left_open=left_open, right_open=right_open)
    recess, zs, zh, zc, recess_left = _recess(job, rules, wf, (df, z1, z2, tf))
    plain = SettingOut(
        b=b, d=d, t=t, tf=tf, w=wf + 2 * tf, wf=wf, dd=job.depth_tenth_mm, df=df, lr=wf - 2 * b, n=df - 2 * d,
        m=job.board.stud_pitch_tenth_mm, z0=job.platform_tenth_mm, az=az, z1=z1, z2=z2, zf=zf, top=job.finished_top_tenth_mm,
        hu=z2 - z1, u=job.upstand_tenth_mm, left_open=left_open, right_open=right_open, full_height=job.full_height,
        opening_left=opening[0], opening_right=opening[1], recess=recess, recess_left=recess_left, zs=zs, zh=zh, zc=zc,
        ply_count=0, span=wf - 2 * b,
    )  # fmt: skip
    span = _span(plain)
    guessed = _guess_plies(span, rules) if ply_count is None else ply_count
    made = msgspec.structs.replace(plain, span=span, ply_count=guessed)
    if unmet := Refusals(job, rules, made).all():
        raise UnbuildableError(unmet)
    return made


def _opening(job: Job, wf: int, body: int, *, left_open: bool, right_open: bool) -> tuple[int, int]:
    """x of the edges of the fire opening (framing.md, section 6)."""
    if left_open and right_open:
        return 0, wf
    if left_open or right_open:
        width = body - job.inset_tenth_mm + job.gap_beside_tenth_mm
        return (0, width) if left_open else (wf - width, wf)
    width = body + 2 * job.gap_beside_tenth_mm
    left = (wf - width) // 2 + job.shift_tenth_mm
    return left, left + width


def _span(at: SettingOut) -> int:
    """Span of the trimmer (framing.md, section 8); for two-sided fires on the safe side."""
    if at.left_open or at.right_open:
        return at.lr
    left = at.opening_left if at.jack_at(left=True) else at.b
    right = at.opening_right if at.jack_at(left=False) else at.wf - at.b
    return right - left


def _guess_plies(span: int, rules: RuleSet) -> int:
    """Starting guess of plies behind the trimmer; it proves nothing, the checks decide (framing.md, section 8)."""
    if span <= tenths(rules.frame.ply_none_up_to_mm):
        return 0
    return 1 if span <= tenths(rules.frame.ply_one_up_to_mm) else 2


def _recess(job: Job, rules: RuleSet, wf: int, levels: tuple[int, int, int, int]) -> tuple[Recess | None, int, int, int, int]:
    """The screen recess (framing.md, section 5) with its sill, head and screen centre, and its left edge."""
    df, z1, z2, tf = levels
    zs = z1 + job.upstand_tenth_mm
    if job.screen is None or job.bracket is None:
        return None, zs, z2, zs, 0
    b, d, lr = job.timber.thickness_tenth_mm, job.timber.width_tenth_mm, wf - 2 * job.timber.thickness_tenth_mm
    tl, tb = job.lining.thickness_tenth_mm, job.backboard.thickness_tenth_mm
    body_w, body_h = tenths(job.screen.body_width_mm), tenths(job.screen.body_height_mm)
    fw = body_w + 2 * job.gaps.side_tenth_mm + 2 * tl
    fh = body_h + job.gaps.top_tenth_mm + job.gaps.bottom_tenth_mm + 2 * tl
    full_width = fw <= lr < fw + 2 * b
    fw = lr if full_width else fw
    behind = job.set_back_tenth_mm + tenths(job.screen.body_depth_mm)
    dr = behind + max(tenths(job.bracket.depth_mm), job.cable_room_tenth_mm)
    dr = max(dr, tf + d - tb)  # the bearers pass behind the front posts
    zc = zs + tl + job.gaps.bottom_tenth_mm + body_h // 2
    centre = zc + tenths(job.screen.hole_centre_offset_mm or 0.0)
    rows = _rows(tenths(job.bracket.plate_hole_height_mm), centre, d)
    yb = df - (dr - tf) - tb
    return (
        Recess(
            clear_width_tenth_mm=fw - 2 * tl,
            clear_height_tenth_mm=fh - 2 * tl,
            depth_tenth_mm=dr,
            framing_width_tenth_mm=fw,
            framing_height_tenth_mm=fh,
            framing_depth_tenth_mm=dr - tf,
            full_width=full_width,
            jamb_gap_tenth_mm=0 if full_width else (wf - fw) // 2 - 2 * b,
            rest_behind_bearers_tenth_mm=yb - b,
            row_levels_tenth_mm=rows,
            bearer_back_tenth_mm=yb,
        ),
        zs,
        zs + fh,
        zc,
        (wf - fw) // 2,
    )


def _rows(v: int, centre: int, d: int) -> tuple[int, ...]:
    """Heights of the bracket's hole rows; rows too close for two bearers share one (framing.md, section 5)."""
    if v < d + 50:
        return (centre,)
    low = centre - v // 2
    return (low, low + v)
