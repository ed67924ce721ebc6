"""Setting out: every size and level of a breast from its job, in tenths of a millimetre, or what keeps it from being built.

Symbols and formulas: `knowledge/framing.md`, sections 1, 2, 5, 6 and 13; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.errors import UnbuildableError
from service.frame.additions import NOTHING_ADDED, Additions
from service.frame.frame import Recess
from service.frame.ledge import rail_level
from service.frame.niche import Niche, lift_of, set_niche
from service.frame.refusals import refusals
from service.frame.walls import beside
from service.survey.appliance import OpenEnds
from service.units import tenths

if TYPE_CHECKING:
    from service.brief import Job
    from service.rules import RuleSet

BEARERS_APART_TENTH_MM = 50  # rows closer than d and this share one bearer: framing.md, section 5


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
    added: Additions = NOTHING_ADDED  # what strengthening adds
    span: int  # of the trimmer
    left_wall: bool  # against a side wall: no return there
    right_wall: bool
    niche: Niche | None
    ledge_rail: int | None  # underside of the rail behind a beam
    beside_left: int  # frame to finished end: board and skim, or the packing to a side wall
    beside_right: int

    @property
    def sill_joint(self) -> int:
        """Centre line of the sill rail, or of the rail at the upstand: a board joint may lie on it."""
        return self.zs - self.b + self.b // 2

    @property
    def zn(self) -> int:
        """Top of the lowest rail over the cripples: the sill of the niche, else the sill of the recess."""
        return self.niche.low_tenth_mm if self.niche else self.zs

    @property
    def niche_joint(self) -> int:
        """Centre line of that rail."""
        return self.zn - self.b + self.b // 2

    @property
    def head_joint(self) -> int:
        """Centre line of the head rail."""
        return self.zh + self.b // 2

    def foot(self, *, left: bool) -> int:
        """Where the ladder of an end starts: above the fire at an open end, on the base at a closed one."""
        return self.z1 if (self.left_open if left else self.right_open) else self.z0

    def jack_at(self, *, left: bool) -> bool:
        """Whether a jack stud stands beside the opening at that side."""
        return not (self.left_open if left else self.right_open) and self.cheek_gap(left=left) >= 0

    def cheek_gap(self, *, left: bool) -> int:
        """Clear gap between the jack and the ladder; negative: no room for a jack."""
        return (self.opening_left if left else self.wf - self.opening_right) - 2 * self.b


class _Hung(msgspec.Struct, frozen=True, kw_only=True):
    """The recess and where it stands."""

    recess: Recess | None
    left_tenth_mm: int
    head_tenth_mm: int
    screen_centre_tenth_mm: int


def set_out(job: Job, rules: RuleSet, added: Additions = NOTHING_ADDED) -> SettingOut:
    """All sizes of the breast.

    Raises:
        UnbuildableError: with every inequality that is not met, and its offer.
    """
    plain = _sizes(job, rules)
    span = _span(plain)
    wanted = _guess_plies(span, rules) if added.ply_count is None else added.ply_count
    pitch = min(plain.m, added.stud_pitch_tenth_mm or plain.m)
    room = max(plain.n, 0) // plain.b  # plies fill the noggins' room from the front: framing.md, section 10.2
    made = msgspec.structs.replace(plain, span=span, ply_count=min(wanted, room), m=pitch, added=added)
    if unmet := refusals(made, job, rules):
        raise UnbuildableError(unmet)
    return made


def _sizes(job: Job, rules: RuleSet) -> SettingOut:
    """Sizes and levels by the formulas of framing.md, section 2, also of a breast that cannot be built."""
    b, d = job.timber.thickness_tenth_mm, job.timber.width_tenth_mm
    t, tf = job.board.thickness_tenth_mm, job.board.thickness_tenth_mm + job.skim_tenth_mm
    left_open, right_open = job.open_ends in {OpenEnds.LEFT, OpenEnds.BOTH}, job.open_ends in {OpenEnds.RIGHT, OpenEnds.BOTH}
    body = tenths(job.appliance.body_width_mm)
    sides = beside(job, left=True), beside(job, left=False)
    wf = body - 2 * job.inset_tenth_mm if left_open and right_open else (job.width_tenth_mm or 0) - sum(sides)
    df, az = job.depth_tenth_mm - tf, tenths(job.appliance.body_height_mm) + job.gap_over_tenth_mm
    z1 = job.platform_tenth_mm + az
    zf = job.finished_top_tenth_mm - (0 if job.full_height else job.lid.thickness_tenth_mm)
    z2 = zf - (tenths(rules.frame.ceiling_packing_mm) if job.full_height else 0)
    opening = _opening(job, wf, left_open=left_open, right_open=right_open)
    sill = z1 + job.upstand_tenth_mm
    niche = set_niche(job, rules, wf=wf, low=sill)
    hung = _hang(job, wf, df, sill + lift_of(job))
    return SettingOut(
        b=b, d=d, t=t, tf=tf, w=wf + sum(sides), wf=wf, dd=job.depth_tenth_mm, df=df, lr=wf - 2 * b, n=df - 2 * d,
        m=job.board.stud_pitch_tenth_mm, z0=job.platform_tenth_mm, az=az, z1=z1, z2=z2, zf=zf, top=job.finished_top_tenth_mm,
        hu=z2 - z1, u=job.upstand_tenth_mm, left_open=left_open, right_open=right_open, full_height=job.full_height,
        opening_left=opening[0], opening_right=opening[1], recess=hung.recess, recess_left=hung.left_tenth_mm,
        zs=sill + lift_of(job), zh=hung.head_tenth_mm if hung.recess else z2, zc=hung.screen_centre_tenth_mm,
        ply_count=0, span=wf - 2 * b, left_wall=job.left_wall, right_wall=job.right_wall,
        niche=niche, ledge_rail=rail_level(job, z1), beside_left=sides[0], beside_right=sides[1],
    )  # fmt: skip


def _opening(job: Job, wf: int, *, left_open: bool, right_open: bool) -> tuple[int, int]:
    """Edges of the fire opening along the wall (framing.md, section 6)."""
    body = tenths(job.appliance.body_width_mm)
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


def _hang(job: Job, wf: int, df: int, zs: int) -> _Hung:
    """The screen recess (framing.md, section 5) over its sill."""
    if job.screen is None or job.bracket is None:
        return _Hung(recess=None, left_tenth_mm=0, head_tenth_mm=zs, screen_centre_tenth_mm=zs)
    b, lr = job.timber.thickness_tenth_mm, wf - 2 * job.timber.thickness_tenth_mm
    tl, body_h = job.lining.thickness_tenth_mm, tenths(job.screen.body_height_mm)
    fw = tenths(job.screen.body_width_mm) + 2 * job.gaps.side_tenth_mm + 2 * tl
    fh = body_h + job.gaps.top_tenth_mm + job.gaps.bottom_tenth_mm + 2 * tl
    full_width = fw <= lr < fw + 2 * b
    fw = lr if full_width else fw
    tf, dr = job.board.thickness_tenth_mm + job.skim_tenth_mm, _recess_depth(job)
    yb = df - (dr - tf) - job.backboard.thickness_tenth_mm
    zc = zs + tl + job.gaps.bottom_tenth_mm + body_h // 2
    recess = Recess(
        clear_width_tenth_mm=fw - 2 * tl,
        clear_height_tenth_mm=fh - 2 * tl,
        depth_tenth_mm=dr,
        framing_width_tenth_mm=fw,
        framing_height_tenth_mm=fh,
        framing_depth_tenth_mm=dr - tf,
        full_width=full_width,
        jamb_gap_tenth_mm=0 if full_width else (wf - fw) // 2 - 2 * b,
        rest_behind_bearers_tenth_mm=yb - b,
        row_levels_tenth_mm=_rows(job, zc),
        bearer_back_tenth_mm=yb,
    )
    return _Hung(recess=recess, left_tenth_mm=(wf - fw) // 2, head_tenth_mm=zs + fh, screen_centre_tenth_mm=zc)


def _recess_depth(job: Job) -> int:
    """Dr from the finished face; at least so deep that the bearers pass behind what stands in the front zone."""
    screen_depth = tenths(job.screen.body_depth_mm) if job.screen else 0
    bracket_depth = tenths(job.bracket.depth_mm) if job.bracket else 0
    behind_posts = job.board.thickness_tenth_mm + job.skim_tenth_mm + job.timber.width_tenth_mm - job.backboard.thickness_tenth_mm
    return max(job.set_back_tenth_mm + screen_depth + max(bracket_depth, job.cable_room_tenth_mm), behind_posts)


def _rows(job: Job, screen_centre: int) -> tuple[int, ...]:
    """Heights of the bracket's hole rows; rows too close for two bearers share one (framing.md, section 5)."""
    spacing = tenths(job.bracket.plate_hole_height_mm) if job.bracket else 0
    centre = screen_centre + tenths((job.screen.hole_centre_offset_mm if job.screen else None) or 0.0)
    if spacing < job.timber.width_tenth_mm + BEARERS_APART_TENTH_MM:
        return (centre,)
    low = centre - spacing // 2
    return (low, low + spacing)
