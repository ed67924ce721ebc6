"""Section A-A: what the plane cuts, the frame beyond it as one looks to the right, wall, floor, ceiling, fire and screen.

Cut timbers with a cross where there is room for one, cut boards solid (`drawings.md`, section 3; own choice).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.drawings.canvas import Canvas
from service.drawings.captions import Note, write_caption
from service.drawings.columns import Callout, write_column
from service.drawings.dimensions import Side, Stack
from service.drawings.hidden_lines import Face, find_edges, subtract
from service.drawings.levels import heights_of
from service.drawings.marks import Wanted, write_marks
from service.drawings.neighbours import fire_box, screen_box
from service.drawings.plane import find_plane
from service.drawings.primitives import Drawing, Fill, Pen
from service.drawings.projection import area_of, draw_edges, seen_from_left
from service.drawings.room import draw_room_section
from service.drawings.sight import out_of_sight, seen_beyond
from service.frame import Layer, Member, PanelRole, Role, Unit
from service.units import text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.drawings.primitives import AreaMm, PointMm
    from service.frame import Box, Frame, Panel

_COLUMN_MM: Final = 11.0  # outline to the words beside it
_LEFT_COLUMN_MM: Final = 17.0  # the wall and its word stand between
_LEAST_CROSS_MM: Final = 2.8  # smaller side of a cut timber that gets a cross
_LEFT_BOARDS: Final = frozenset({PanelRole.BACKBOARD, PanelRole.BACKBOARD_NICHE, PanelRole.PAD})
_REMOVABLE: Final = frozenset({PanelRole.RETURN_ACCESS_LEFT, PanelRole.RETURN_ACCESS_RIGHT})
_LEFT_ROLES: Final = frozenset({Role.SCREEN_BEARER})


def draw_section(frame: Frame, job: Job, scale_ratio: int) -> Drawing:
    """The view; members that neither it nor the front elevation shows are listed under it."""
    view = _Section(Canvas(scale_ratio), frame, job)
    view.draw()
    depth, height = text_mm(frame.sizes.finished_depth_tenth_mm), text_mm(frame.levels.finished_top_tenth_mm)
    title = "Section A-A"
    return view.canvas.finish(
        "section",
        title,
        f"Section A-A through the breast {text_mm(view.plane)} from its left end, looking right: {depth} deep x {height} high; "
        f"{len(view.cut)} timbers cut. Scale 1:{scale_ratio}, dimensions in mm.",
    )


class _Section:
    """Draws the parts of the view in their order."""

    def __init__(self, canvas: Canvas, frame: Frame, job: Job) -> None:
        self.canvas, self.frame, self.job = canvas, frame, job
        self.plane = find_plane(frame)
        self.cut = [member for member in frame.members if self._is_cut(member)]
        self.boards = [panel for panel in frame.panels if self._is_cut(panel)]
        self.beyond = seen_beyond(frame, self.plane)

    def draw(self) -> None:
        canvas, frame, job = self.canvas, self.frame, self.job
        self._frame()
        canvas.group("room")
        draw_room_section(canvas, frame, job, self.plane)
        canvas.group("neighbours")
        for box in (fire_box(frame, job), screen_box(frame, job), *(ledge.box for ledge in frame.ledges)):
            if box is not None and (face := seen_from_left("", box, self.plane)):
                canvas.rectangle(area_of(canvas, face), Pen.NEIGHBOUR)
        for panel in self._removable():
            canvas.rectangle(self._area_on_return(panel), Pen.HIDDEN)
        canvas.group("marks")
        depth = canvas.mm(frame.sizes.finished_depth_tenth_mm)
        left, right = self._callouts()
        levels = [canvas.mm(level) for level in (*heights_of(frame), frame.levels.finished_top_tenth_mm)]
        write_column(canvas, left, -_LEFT_COLUMN_MM, to_right=False)
        out = max((canvas.mm(ledge.box.y1_tenth_mm) - depth for ledge in frame.ledges), default=0.0)  # in front
        taken = write_column(canvas, right, depth + out + _COLUMN_MM, levels, to_right=True)
        canvas.group("dimensions")
        self._dimensions(depth, out + _COLUMN_MM + taken + 4.0)
        canvas.group("marks")
        left_over = write_marks(canvas, [Wanted(mark=mark, area_mm=area_of(canvas, face)) for mark, face in self.beyond.items()])
        self._caption(left_over)

    def _is_cut(self, part: Member | Panel) -> bool:
        return part.box.x0_tenth_mm < self.plane < part.box.x1_tenth_mm

    def _removable(self) -> list[Panel]:
        """Removable panels in a return, which is itself left out."""
        return [panel for panel in self.frame.panels if panel.role in _REMOVABLE]

    def _area_on_return(self, panel: Panel) -> AreaMm:
        mm, box = self.canvas.mm, panel.box
        return (0.0, mm(box.z0_tenth_mm), mm(box.y1_tenth_mm), mm(box.z1_tenth_mm))

    def _frame(self) -> None:
        canvas, frame = self.canvas, self.frame
        faces = [(member, face) for member in frame.members if (face := seen_from_left(member.mark, member.box, self.plane))]
        boards = [piece for panel in self.boards for piece in self._pieces(panel)]
        canvas.group("timber")
        for member, face in sorted(faces, key=lambda pair: (-pair[1].near_tenth_mm, pair[0].mark)):
            canvas.rectangle(area_of(canvas, face), None, _fill(member, cut=face.near_tenth_mm == self.plane))
        canvas.group("edges")
        edges = find_edges([*(face for _, face in faces), *(piece for piece, _ in boards)])
        draw_edges(canvas, edges.visible, Pen.VISIBLE)
        canvas.group("cut")
        for member, face in faces:
            if member in self.cut:
                self._cut_timber(area_of(canvas, face))
        for piece, fill in boards:
            canvas.rectangle(area_of(canvas, piece), Pen.CUT if fill is Fill.BOARD else None, fill)

    def _cut_timber(self, area_mm: AreaMm) -> None:
        canvas = self.canvas
        left, low, right, high = area_mm
        canvas.rectangle(area_mm, Pen.CUT)
        if min(right - left, high - low) >= _LEAST_CROSS_MM:
            canvas.line((left, low), (right, high), Pen.NARROW)
            canvas.line((left, high), (right, low), Pen.NARROW)

    def _pieces(self, panel: Panel) -> list[tuple[Face, Fill]]:
        """What the plane cuts of a board: its cut-outs are left out, and what is scribed off at the wall."""
        fill = Fill.BOARD if panel.layer is Layer.PAD else Fill.SOLID
        box = panel.box
        whole = Face(
            mark=panel.mark, left_tenth_mm=max(box.y0_tenth_mm, 0), right_tenth_mm=box.y1_tenth_mm,
            low_tenth_mm=box.z0_tenth_mm, high_tenth_mm=box.z1_tenth_mm, near_tenth_mm=self.plane,
        )  # fmt: skip
        from_left = self.plane - box.x0_tenth_mm
        holes = [
            (box.z0_tenth_mm + hole.y_tenth_mm, box.z0_tenth_mm + hole.y_tenth_mm + hole.height_tenth_mm)
            for hole in panel.cut_outs
            if hole.x_tenth_mm < from_left < hole.x_tenth_mm + hole.width_tenth_mm
        ]
        return [
            (msgspec.structs.replace(whole, low_tenth_mm=low, high_tenth_mm=high), fill)
            for low, high in subtract((box.z0_tenth_mm, box.z1_tenth_mm), holes)[0]
        ]

    def _callouts(self) -> tuple[list[Callout], list[Callout]]:
        """Words of the left and of the right column."""
        left: list[Callout] = []
        right: list[Callout] = []
        middle = self.frame.sizes.frame_depth_tenth_mm // 2
        for member in self.cut:
            box = member.box
            callout = Callout(words=member.mark, at_mm=self._middle(box))
            behind = member.role in _LEFT_ROLES or box.y0_tenth_mm + box.y1_tenth_mm < 2 * middle
            (left if behind else right).append(callout)
        for panel in self.boards:
            (left if panel.role in _LEFT_BOARDS else right).append(self._board_callout(panel))
        right += [
            Callout(words=f"{one.kind} {_depth_of(one.box)} deep", at_mm=self._middle(one.box)) for one in self.frame.ledges
        ]
        for panel in self._removable():
            area = self._area_on_return(panel)
            right.append(Callout(words=f"{panel.mark} removable", at_mm=(area[2], (area[1] + area[3]) / 2), dotted=False))
        return left, [*right, *self._neighbour_callouts()]

    def _board_callout(self, panel: Panel) -> Callout:
        pieces = [piece for piece, _ in self._pieces(panel)]
        face = max(pieces, key=lambda piece: (piece.high_tenth_mm - piece.low_tenth_mm, -piece.low_tenth_mm))
        left, low, right, high = area_of(self.canvas, face)
        if panel.role is PanelRole.PAD:
            return Callout(words=panel.mark, at_mm=(left + 0.1 * (right - left), (low + high) / 2))
        x = left if panel.role in _LEFT_BOARDS else right
        return Callout(words=panel.mark, at_mm=(x, (low + high) / 2), dotted=False)

    def _neighbour_callouts(self) -> list[Callout]:
        frame, job = self.frame, self.job
        fire = fire_box(frame, job)
        found = [Callout(words=f"fire {_depth_of(fire)} deep", at_mm=self._middle(fire))]
        screen, recess = screen_box(frame, job), frame.sizes.recess
        if screen is None or recess is None:
            return found
        low, front = screen.z0_tenth_mm - job.gaps.bottom_tenth_mm, job.depth_tenth_mm
        gap = msgspec.structs.replace(
            screen, z0_tenth_mm=low, z1_tenth_mm=screen.z0_tenth_mm, y0_tenth_mm=front - recess.depth_tenth_mm, y1_tenth_mm=front
        )
        found.append(Callout(words=f"screen {_depth_of(screen)} deep", at_mm=self._middle(screen)))
        found.append(Callout(words=f"recess {_depth_of(gap)} deep", at_mm=self._middle(gap)))
        return found

    def _middle(self, box: Box) -> PointMm:
        return (self.canvas.mm(box.y0_tenth_mm + box.y1_tenth_mm) / 2, self.canvas.mm(box.z0_tenth_mm + box.z1_tenth_mm) / 2)

    def _dimensions(self, depth_mm: float, first_mm: float) -> None:
        canvas, frame = self.canvas, self.frame
        sizes, timber = frame.sizes, self.job.timber.width_tenth_mm
        deep, framed = sizes.finished_depth_tenth_mm, sizes.frame_depth_tenth_mm
        below = Stack(canvas, Side.BELOW, min(0.0, canvas.mm(-self.job.fall_tenth_mm)))
        below.chain((0, timber, framed - timber, framed, deep))
        below.chain((0, deep))
        right = Stack(canvas, Side.RIGHT, depth_mm, first_mm)
        right.chain((*heights_of(frame), frame.levels.finished_top_tenth_mm))
        right.chain((0, frame.levels.finished_top_tenth_mm))

    def _caption(self, left_over: tuple[str, ...]) -> None:
        frame = self.frame
        notes: list[Note] = [f"plane {text_mm(self.plane)} from the left end of the frame, looking right; returns left out"]
        if not frame.full_height:
            notes.append(f"ceiling {text_mm(self.job.clear_height_tenth_mm)} above the floor")
        if left_over:
            notes.append(("also seen, not marked above:", *left_over))
        if hidden := out_of_sight(frame, self.plane):
            notes.append(("out of sight here and in the front elevation:", *hidden))
        write_caption(self.canvas, "Section A-A", notes)


def _depth_of(box: Box) -> str:
    return text_mm(box.y1_tenth_mm - box.y0_tenth_mm)


def _fill(member: Member, *, cut: bool) -> Fill:
    if not cut:
        return Fill.PAPER
    return Fill.BASE if member.unit is Unit.BASE else Fill.UPPER
