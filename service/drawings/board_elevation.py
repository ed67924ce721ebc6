"""Board elevation: the boards of the face with sizes, joints and cut-outs, the studs dashed behind them.

The dashes say where to screw (hidden lines on: `drawings.md`, section 3).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.drawings.canvas import Canvas
from service.drawings.captions import Note, write_caption
from service.drawings.dimensions import Running, Side, Stack
from service.drawings.hidden_lines import Face, find_edges, largest_visible
from service.drawings.neighbours import draw_neighbours_front
from service.drawings.panel_words import size_words, write_panel_words
from service.drawings.plane import draw_plane_ends, find_plane
from service.drawings.primitives import Drawing, Fill, Pen
from service.drawings.projection import area_of, draw_edges, seen_from_front
from service.drawings.room import draw_ceiling_front, draw_floor_front, draw_side_walls_front, highest_ceiling
from service.frame import Axis, Box, Panel, PanelRole
from service.units import text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame import Frame

FACE_ROLES: Final = frozenset({PanelRole.FACE_BASE, PanelRole.FACE_CHEEK_LEFT, PanelRole.FACE_CHEEK_RIGHT, PanelRole.FACE_UPPER})


def draw_board_elevation(frame: Frame, job: Job, scale_ratio: int) -> Drawing:
    """The view; boards that do not lie in the face are listed under it with their sizes."""
    view = _BoardElevation(Canvas(scale_ratio), frame, job)
    view.draw()
    width, height = text_mm(view.right - view.left), text_mm(view.top)
    title = "Front elevation of the boards"
    return view.canvas.finish(
        "board-elevation",
        title,
        f"{title}, {width} wide x {height} high; {len(view.faces)} of {len(frame.panels)} boards lie in the face. "
        f"Scale 1:{scale_ratio}, dimensions in mm.",
    )


class _BoardElevation:
    """Draws the parts of the view in their order."""

    def __init__(self, canvas: Canvas, frame: Frame, job: Job) -> None:
        self.canvas, self.frame, self.job = canvas, frame, job
        self.panels = [panel for panel in frame.panels if panel.role in FACE_ROLES]
        self.faces = [seen_from_front(panel.mark, panel.box) for panel in self.panels]
        self.left = min(face.left_tenth_mm for face in self.faces)
        self.right = max(face.right_tenth_mm for face in self.faces)
        self.top = max(face.high_tenth_mm for face in self.faces)
        self.holes = [hole for panel in self.panels for hole in _holes(panel)]

    def draw(self) -> None:
        canvas, frame, job = self.canvas, self.frame, self.job
        self._boards()
        canvas.group("room")
        ends_mm = (canvas.mm(self.left), canvas.mm(self.right))
        draw_floor_front(canvas, frame, job, ends_mm)
        if frame.full_height:
            draw_ceiling_front(canvas, frame, job, ends_mm)
        draw_side_walls_front(canvas, frame, job)
        canvas.group("neighbours")
        draw_neighbours_front(canvas, frame, job)
        canvas.group("dimensions")
        ends = self._dimensions()
        canvas.group("plane")
        draw_plane_ends(canvas, find_plane(frame), ends)
        canvas.group("marks")
        clear = [(panel, largest_visible(face, [face, *self.holes])) for panel, face in zip(self.panels, self.faces, strict=True)]
        left_over = write_panel_words(canvas, [(panel, area_of(canvas, face)) for panel, face in clear if face])
        self._caption(left_over)

    def _boards(self) -> None:
        canvas, frame = self.canvas, self.frame
        canvas.group("boards")
        for face in self.faces:
            canvas.rectangle(area_of(canvas, face), None, Fill.BOARD)
        for hole in self.holes:
            canvas.rectangle(area_of(canvas, hole), None, Fill.PAPER)
        front = frame.sizes.frame_depth_tenth_mm
        studs = [seen_from_front(member.mark, member.box) for member in frame.members if member.box.y1_tenth_mm == front]
        edges = find_edges([*self.faces, *studs])
        canvas.group("behind")
        draw_edges(canvas, edges.hidden, Pen.HIDDEN)
        canvas.group("edges")
        draw_edges(canvas, edges.visible, Pen.VISIBLE)
        draw_edges(canvas, find_edges(self.holes).visible, Pen.VISIBLE)

    def _dimensions(self) -> tuple[float, float]:
        """Draw all stacks; how far down and up they reach."""
        canvas, frame = self.canvas, self.frame
        ends = (self.left, self.right)
        below = Stack(canvas, Side.BELOW, min(0.0, canvas.mm(-self.job.fall_tenth_mm)))
        edges = {edge for face in (*self.faces, *self.holes) for edge in (face.left_tenth_mm, face.right_tenth_mm)} - set(ends)
        if edges:
            below.running([Running(at_tenth_mm=edge) for edge in edges], ends)
        below.chain(ends)
        above = Stack(canvas, Side.ABOVE, canvas.mm(max(highest_ceiling(frame, self.job), self.top)))
        above.running([Running(at_tenth_mm=place) for place in self._stud_lines()], ends)
        left = Stack(canvas, Side.LEFT, canvas.mm(self.left))
        left.chain([0, *(edge for face in self.faces for edge in (face.low_tenth_mm, face.high_tenth_mm))])
        left.chain((0, self.top))
        right = Stack(canvas, Side.RIGHT, canvas.mm(self.right))
        holes = {edge for hole in self.holes for edge in (hole.low_tenth_mm, hole.high_tenth_mm)}
        rails = [Running(at_tenth_mm=line) for line in self._rail_lines()]
        right.running([*rails, *(Running(at_tenth_mm=edge, words="cut-out") for edge in holes)], (0, self.top))
        return below.end_mm, above.end_mm

    def _stud_lines(self) -> set[int]:
        """Centre lines of the studs behind the face over the fire."""
        over = self.frame.levels.appliance_top_tenth_mm
        boxes = [box for box in self._front_boxes(Axis.Z) if box.z1_tenth_mm > over]
        return {(box.x0_tenth_mm + box.x1_tenth_mm) // 2 for box in boxes}

    def _rail_lines(self) -> set[int]:
        """Centre lines of the rails and level noggins behind the face."""
        return {(box.z0_tenth_mm + box.z1_tenth_mm) // 2 for box in self._front_boxes(Axis.X)}

    def _front_boxes(self, along: Axis) -> list[Box]:
        front = self.frame.sizes.frame_depth_tenth_mm
        return [member.box for member in self.frame.members if member.along is along and member.box.y1_tenth_mm == front]

    def _caption(self, left_over: tuple[str, ...]) -> None:
        notes: list[Note] = [
            "sizes on the boards as cut; running sizes from the left edge of the boards and from the floor's highest point",
            "below: edges and cut-outs; above and at the right: centre lines of studs and rails",
            f"finished breast {text_mm(self.frame.sizes.finished_width_tenth_mm)} wide",
        ]
        if self.frame.side_walls_count:
            notes.append("at a side wall the boards are drawn as cut, with what is scribed off")
        if taper := max(panel.taper_tenth_mm for panel in self.panels):
            notes.append(f"boards at the floor are cut up to {text_mm(taper)} higher than drawn, tapered to the floor")
        if rise := max(panel.rise_tenth_mm for panel in self.panels):
            notes.append(f"boards at the ceiling are cut up to {text_mm(rise)} higher than drawn, tapered to the ceiling")
        if left_over:
            notes.append(("also in the face:", *left_over))
        others = [panel for panel in self.frame.panels if panel not in self.panels]
        if others:
            notes.append(("not in the face:", *(f"{panel.mark} {_role_words(panel)} {size_words(panel)}" for panel in others)))
        write_caption(self.canvas, "Front elevation of the boards", notes)


def _role_words(panel: Panel) -> str:
    return panel.role.value.replace("_", " ")


def _holes(panel: Panel) -> list[Face]:
    """Cut-outs of a board as faces nearer than it."""
    box = panel.box
    corners = [(box.x0_tenth_mm + hole.x_tenth_mm, box.z0_tenth_mm + hole.y_tenth_mm, hole) for hole in panel.cut_outs]
    return [
        Face(
            mark=panel.mark, near_tenth_mm=-box.y1_tenth_mm - 1, left_tenth_mm=left, right_tenth_mm=left + hole.width_tenth_mm,
            low_tenth_mm=low, high_tenth_mm=low + hole.height_tenth_mm,
        )
        for left, low, hole in corners
    ]  # fmt: skip
