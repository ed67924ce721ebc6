"""Boards: faces, returns, lid, recess linings, backboard and the sheets of a very low platform.

Sizes and joints: `knowledge/framing.md`, sections 2.1, 2.2 and 11; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.errors import UnbuildableError, Unmet
from service.frame.base import fall_at, is_normal, stations
from service.frame.frame import CutOut, Layer, Panel, PanelRole
from service.frame.joints import Strip, Wanted, divide
from service.frame.member import CutWhen
from service.frame.placing import box
from service.frame.refusals import pad_heights
from service.frame.upper import noggin_levels, stud_centres
from service.survey.floor import LowEnd
from service.units import tenths, text_mm, whole_mm_down, whole_mm_nearest

if TYPE_CHECKING:
    from service.brief import Board, Job
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

CODES = {
    PanelRole.FACE_BASE: "FB", PanelRole.FACE_CHEEK_LEFT: "FL", PanelRole.FACE_CHEEK_RIGHT: "FR", PanelRole.FACE_UPPER: "FU",
    PanelRole.RETURN_LEFT: "RL", PanelRole.RETURN_RIGHT: "RR", PanelRole.RETURN_BASE_LEFT: "RBL",
    PanelRole.RETURN_BASE_RIGHT: "RBR", PanelRole.RETURN_UPPER_LEFT: "RUL", PanelRole.RETURN_UPPER_RIGHT: "RUR",
    PanelRole.LID: "LD", PanelRole.LINING_BOTTOM: "NB", PanelRole.LINING_TOP: "NT", PanelRole.LINING_LEFT: "NL",
    PanelRole.LINING_RIGHT: "NR", PanelRole.BACKBOARD: "BB", PanelRole.PAD: "PD",
}  # fmt: skip


class Boarding:
    """Lays the boards of one breast and gives them their marks."""

    def __init__(self, at: SettingOut, job: Job, rules: RuleSet) -> None:
        """Start with no board laid."""
        self.at, self.job, self.rules = at, job, rules
        self.panels: list[Panel] = []
        self.unmet: list[Unmet] = []

    def lay(self) -> tuple[Panel, ...]:
        """Every panel.

        Raises:
            UnbuildableError: a board that cannot be divided on timber to fit its sheet.
        """
        self._pad()
        self._faces()
        for left in (True, False):
            self._return(left=left)
        self._lid()
        self._recess()
        if self.unmet:
            raise UnbuildableError(tuple(self.unmet))
        return tuple(self.panels)

    def _faces(self) -> None:
        at = self.at
        left, right = -at.t, at.wf + at.t
        grow = self._face_fall()
        run_columns = tuple((centre, 0, at.z0) for centre in self._base_centres())
        if at.z0 > 0:
            self._face(PanelRole.FACE_BASE, Wanted(low=0, high=at.z0, left=left, right=right, grow_low=grow, columns=run_columns))
        foot_grow = grow if at.z0 == 0 else 0
        if not at.left_open:
            self._face(PanelRole.FACE_CHEEK_LEFT, Wanted(low=at.z0, high=at.z1, left=left, right=at.opening_left, grow_low=foot_grow))
        if not at.right_open:
            self._face(PanelRole.FACE_CHEEK_RIGHT, Wanted(low=at.z0, high=at.z1, left=at.opening_right, right=right, grow_low=foot_grow))
        half = at.b // 2
        rails = (at.zs - at.b + half, at.zh + half) if at.recess else (at.zs - at.b + half,)
        wanted = Wanted(low=at.z1, high=at.zf, left=left, right=right, heights=rails, columns=self._upper_columns(), on_rail=True)
        self._face(PanelRole.FACE_UPPER, wanted)

    def _upper_columns(self) -> tuple[tuple[int, int, int], ...]:
        """Studs that a vertical joint over the fire may stand on, with the strip that each runs through."""
        at = self.at
        half = at.b - at.b // 2
        centres = stud_centres(at)
        if at.recess is None:
            return tuple((centre, at.z1, at.zf) for centre in centres)
        low = [(centre, at.z1, at.zs - half) for centre in centres]
        high = [(centre, at.zh + at.b // 2, at.zf) for centre in centres]
        inside = (at.recess_left, at.recess_left + at.recess.framing_width_tenth_mm)
        whole = [(centre, at.z1, at.zf) for centre in centres if not inside[0] < centre < inside[1]]
        return (*low, *high, *whole)

    def _base_centres(self) -> tuple[int, ...]:
        if not is_normal(self.at, self.rules):
            return ()
        return tuple(station.x_tenth_mm + self.at.b // 2 for station in stations(self.at, self.job)[1:-1])

    def _face_fall(self) -> int:
        return 0 if self.job.low_end is LowEnd.BACK else self.job.fall_tenth_mm

    def _return_fall(self, *, left: bool) -> int:
        if self.job.low_end in {LowEnd.LEFT, LowEnd.RIGHT}:
            return fall_at(0 if left else self.at.wf - self.at.b, self.at.wf - self.at.b, self.job)
        return self.job.fall_tenth_mm

    def _face(self, role: PanelRole, wanted: Wanted) -> None:
        for strip in self._divided(role, wanted):
            self._add_strip(role, strip, wanted, box((strip.left, strip.right), (self.at.df, self.at.df + self.at.t), (strip.low, strip.high)))

    def _divided(self, role: PanelRole, wanted: Wanted) -> tuple[Strip, ...]:
        strips = divide(wanted, self.job.board, self.rules)
        if strips is None:
            self._refuse_sheet(role, wanted)
            return ()
        return strips

    def _refuse_sheet(self, role: PanelRole, wanted: Wanted) -> None:
        width, height, board = wanted.right - wanted.left, wanted.high - wanted.low + wanted.grow_low, self.job.board
        self.unmet.append(
            Unmet(
                code="sheet",
                says=f"the {role.value.replace('_', ' ')} of {text_mm(width)} x {text_mm(height)} cannot be divided on timber to fit a sheet of "
                f"{text_mm(board.sheet_length_tenth_mm)} x {text_mm(board.sheet_width_tenth_mm)}",
                asked_mm=max(width, height) / 10,
                available_mm=board.sheet_length_tenth_mm / 10,
                short_by_mm=max(max(width, height) - board.sheet_length_tenth_mm, 0) / 10,
                offer="a longer sheet, or a narrower breast",
            )
        )

    def _return(self, *, left: bool) -> None:
        at = self.at
        grow = self._return_fall(left=left)
        depth = at.df + tenths(self.rules.frame.scribe_mm)
        open_end = at.left_open if left else at.right_open
        side = "left" if left else "right"
        levels = tuple(level + at.d // 2 for level in noggin_levels(at, self.rules, left=left))
        corners = (at.z0, at.z1, *((at.zs, at.zh) if at.recess else ()))
        wanted = Wanted(low=0, high=at.zf, left=0, right=depth, grow_low=grow, heights=levels, corners=corners)
        if not open_end:
            self._side(PanelRole(f"return_{side}"), wanted, left=left)
            return
        if at.z0 > 0:
            self._side(PanelRole(f"return_base_{side}"), Wanted(low=0, high=at.z0, left=0, right=depth, grow_low=grow), left=left)
        upper = Wanted(low=at.z1, high=at.zf, left=0, right=depth, heights=levels, corners=corners)
        self._side(PanelRole(f"return_upper_{side}"), upper, left=left)

    def _side(self, role: PanelRole, wanted: Wanted, *, left: bool) -> None:
        at = self.at
        scribe = tenths(self.rules.frame.scribe_mm)
        x = (-at.t, 0) if left else (at.wf, at.wf + at.t)
        for strip in self._divided(role, wanted):
            self._add_strip(role, strip, wanted, box(x, (-scribe, at.df), (strip.low, strip.high)))

    def _add_strip(self, role: PanelRole, strip: Strip, wanted: Wanted, place: object) -> None:
        at = self.at
        grow = wanted.grow_low if strip.low == wanted.low else 0
        to_ceiling = at.full_height and strip.high == at.zf
        edges = [whole_mm_nearest(edge) for edge in (strip.left - wanted.left, strip.right - wanted.left)]
        base = wanted.low - wanted.grow_low
        low = strip.low - base if strip.low != wanted.low else 0
        heights = [whole_mm_nearest(edge) for edge in (low, strip.high - base)]
        cut_outs = self._face_cut_outs(role, strip)
        self._add(
            role, Layer.FACING, self.job.board, (strip.right - strip.left, strip.high - strip.low + grow), (edges[1] - edges[0], heights[1] - heights[0]),
            place, cut_when=CutWhen.AFTER_MEASURE if to_ceiling else CutWhen.NOW, cut_outs=cut_outs, taper=grow,
            joints=(strip.joint_below, strip.joint_left),
        )  # fmt: skip

    def _face_cut_outs(self, role: PanelRole, strip: Strip) -> tuple[CutOut, ...]:
        at = self.at
        if role is not PanelRole.FACE_UPPER or at.recess is None:
            return ()
        tl = self.job.lining.thickness_tenth_mm
        x0, z0 = at.recess_left + tl, at.zs + tl
        x1, z1 = x0 + at.recess.clear_width_tenth_mm, z0 + at.recess.clear_height_tenth_mm
        left, right, low, high = max(x0, strip.left), min(x1, strip.right), max(z0, strip.low), min(z1, strip.high)
        if right <= left or high <= low:
            return ()
        return (CutOut(kind="recess", x_tenth_mm=left - strip.left, y_tenth_mm=low - strip.low, width_tenth_mm=right - left, height_tenth_mm=high - low),)

    def _lid(self) -> None:
        at = self.at
        if at.full_height:
            return
        scribe = tenths(self.rules.frame.scribe_mm)
        width, depth = at.wf + 2 * at.t, at.df + at.t + scribe
        place = box((-at.t, at.wf + at.t), (-scribe, at.df + at.t), (at.zf, at.top))
        self._add(PanelRole.LID, Layer.LID, self.job.lid, (width, depth), (whole_mm_nearest(width), whole_mm_nearest(depth)), place)

    def _recess(self) -> None:
        at, job = self.at, self.job
        if at.recess is None:
            return
        recess, tl, tb = at.recess, job.lining.thickness_tenth_mm, job.backboard.thickness_tenth_mm
        x0, x1 = at.recess_left, at.recess_left + recess.framing_width_tenth_mm
        y = (at.df - recess.framing_depth_tenth_mm, at.df)
        deep = recess.framing_depth_tenth_mm
        level = ((PanelRole.LINING_BOTTOM, at.zs), (PanelRole.LINING_TOP, at.zh - tl))
        for role, low in level:
            size = (recess.framing_width_tenth_mm, deep)
            self._add(role, Layer.LINING, job.lining, size, (whole_mm_nearest(size[0]), whole_mm_down(deep)), box((x0, x1), y, (low, low + tl)))
        for role, x in ((PanelRole.LINING_LEFT, (x0, x0 + tl)), (PanelRole.LINING_RIGHT, (x1 - tl, x1))):
            size = (recess.clear_height_tenth_mm, deep)
            self._add(role, Layer.LINING, job.lining, size, (whole_mm_down(size[0]), whole_mm_down(deep)), box(x, y, (at.zs + tl, at.zh - tl)))
        size = (recess.framing_width_tenth_mm, recess.framing_height_tenth_mm)
        place = box((x0, x1), (y[0] - tb, y[0]), (at.zs, at.zh))
        self._add(PanelRole.BACKBOARD, Layer.BACKBOARD, job.backboard, size, (whole_mm_nearest(size[0]), whole_mm_nearest(size[1])), place)

    def _pad(self) -> None:
        at = self.at
        if not 0 < at.z0 < at.b:
            return
        heights = pad_heights(self.job)
        built = max(total for total in heights if total <= at.z0)
        low = at.z0 - built
        for thickness in heights[built]:
            board = next(board for board in self.job.pads if board.thickness_tenth_mm == thickness)
            place = box((0, at.wf), (0, at.df), (low, low + thickness))
            self._add(PanelRole.PAD, Layer.PAD, board, (at.wf, at.df), (whole_mm_nearest(at.wf), whole_mm_nearest(at.df)), place)
            low += thickness

    def _add(  # noqa: PLR0913 - a panel has that many facts
        self,
        role: PanelRole,
        layer: Layer,
        board: Board,
        size: tuple[int, int],
        cut_mm: tuple[int, int],
        place: object,
        *,
        cut_when: CutWhen = CutWhen.NOW,
        cut_outs: tuple[CutOut, ...] = (),
        taper: int = 0,
        joints: tuple[bool, bool] = (False, False),
    ) -> None:
        number = 1 + sum(1 for panel in self.panels if panel.role is role)
        self.panels.append(
            Panel(
                mark=f"P-{CODES[role]}{number}", role=role, layer=layer, board_code=board.code, thickness_tenth_mm=board.thickness_tenth_mm,
                width_tenth_mm=size[0], height_tenth_mm=size[1], cut_width_mm=cut_mm[0], cut_height_mm=cut_mm[1], cut_when=cut_when,
                box=place, cut_outs=cut_outs, taper_tenth_mm=taper, joint_below=joints[0], joint_left=joints[1],
            )
        )  # fmt: skip


def lay_boards(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Panel, ...]:
    """All boards of a breast; raises UnbuildableError as `Boarding.lay`."""
    return Boarding(at, job, rules).lay()
