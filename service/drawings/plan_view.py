"""Plan just over the platform: what is cut there, the base below, wall, fire, and where the base is held to the wall.

The wall is at the top, the room below: as one stands in the room and looks down. First angle: it belongs under the front
elevation (ISO 5456-2, from memory).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.drawings.canvas import Canvas
from service.drawings.captions import Note, write_caption
from service.drawings.dimensions import Running, Side, Stack
from service.drawings.hidden_lines import Face, find_edges
from service.drawings.marks import Wanted, write_marks
from service.drawings.neighbours import fire_box, fire_words
from service.drawings.primitives import Anchor, Drawing, Fill, Pen
from service.drawings.projection import area_of, draw_edges
from service.frame import Layer, Unit
from service.units import text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.drawings.primitives import AreaMm
    from service.frame import Box, Frame, Member, Panel

_OVER_PLATFORM_TENTH_MM: Final = 500  # of the plane over the base
_LEAST_CROSS_MM: Final = 2.8  # smaller side of a cut timber that gets a cross
_WALL_MM: Final = 8.0  # how far the wall goes past the breast
_HATCH_MM: Final = 2.0
_HATCH_PITCH_MM: Final = 3.0


def draw_plan(frame: Frame, job: Job, scale_ratio: int) -> Drawing:
    """The view."""
    view = _Plan(Canvas(scale_ratio), frame, job)
    view.draw()
    sizes = frame.sizes
    width, depth = text_mm(sizes.finished_width_tenth_mm), text_mm(sizes.finished_depth_tenth_mm)
    return view.canvas.finish(
        "plan",
        "Plan over the platform",
        f"Plan {text_mm(view.plane)} above the floor, looking down: {width} wide x {depth} deep; {len(view.cut)} timbers cut. "
        f"Scale 1:{scale_ratio}, dimensions in mm.",
    )


def seen_from_above(mark: str, box: Box, plane_tenth_mm: int) -> Face | None:
    """A box as seen down from a plane: x to the right, the wall at the top; None above the plane. What is cut is nearest."""
    if box.z0_tenth_mm >= plane_tenth_mm:
        return None
    return Face(
        mark=mark, left_tenth_mm=box.x0_tenth_mm, right_tenth_mm=box.x1_tenth_mm,
        low_tenth_mm=-box.y1_tenth_mm, high_tenth_mm=-max(box.y0_tenth_mm, 0),
        near_tenth_mm=-min(box.z1_tenth_mm, plane_tenth_mm),
    )  # fmt: skip


class _Plan:
    """Draws the parts of the view in their order."""

    def __init__(self, canvas: Canvas, frame: Frame, job: Job) -> None:
        self.canvas, self.frame, self.job = canvas, frame, job
        self.plane = frame.levels.platform_tenth_mm + _OVER_PLATFORM_TENTH_MM
        self.cut = [member for member in frame.members if self._is_cut(member)]
        self.boards = [panel for panel in frame.panels if self._is_cut(panel) and panel.layer is Layer.FACING]
        self.faces = [
            (member, face) for member in frame.members if (face := seen_from_above(member.mark, member.box, self.plane))
        ]  # fmt: skip

    def draw(self) -> None:
        canvas, frame, job = self.canvas, self.frame, self.job
        self._timber()
        canvas.group("room")
        self._wall()
        canvas.group("neighbours")
        fire = area_of(canvas, self._face(fire_box(frame, job)))
        canvas.rectangle(fire, Pen.NEIGHBOUR)
        canvas.group("dimensions")
        self._dimensions()
        canvas.group("marks")
        self._fire_words(fire)
        wanted = [Wanted(mark=member.mark, area_mm=area_of(canvas, face)) for member, face in self._to_mark()]
        left_over = write_marks(canvas, wanted)
        self._caption(left_over)

    def _is_cut(self, part: Member | Panel) -> bool:
        return part.box.z0_tenth_mm < self.plane < part.box.z1_tenth_mm

    def _face(self, box: Box) -> Face:
        return Face(
            mark="", left_tenth_mm=box.x0_tenth_mm, right_tenth_mm=box.x1_tenth_mm,
            low_tenth_mm=-box.y1_tenth_mm, high_tenth_mm=-box.y0_tenth_mm, near_tenth_mm=0,
        )  # fmt: skip

    def _timber(self) -> None:
        canvas = self.canvas
        boards = [face for panel in self.boards if (face := seen_from_above(panel.mark, panel.box, self.plane))]
        canvas.group("timber")
        for member, face in sorted(self.faces, key=lambda pair: (-pair[1].near_tenth_mm, pair[0].mark)):
            canvas.rectangle(area_of(canvas, face), None, _fill(member, cut=member in self.cut))
        canvas.group("edges")
        draw_edges(canvas, find_edges([*(face for _, face in self.faces), *boards]).visible, Pen.VISIBLE)
        canvas.group("cut")
        for member, face in self.faces:
            if member in self.cut:
                self._cut_timber(area_of(canvas, face))
        for face in boards:
            canvas.rectangle(area_of(canvas, face), None, Fill.SOLID)

    def _cut_timber(self, area_mm: AreaMm) -> None:
        canvas = self.canvas
        left, low, right, high = area_mm
        canvas.rectangle(area_mm, Pen.CUT)
        if min(right - left, high - low) >= _LEAST_CROSS_MM:
            canvas.line((left, low), (right, high), Pen.NARROW)
            canvas.line((left, high), (right, low), Pen.NARROW)

    def _wall(self) -> None:
        """The face of the wall, hatched behind."""
        canvas = self.canvas
        left, right = -_WALL_MM, canvas.mm(self.frame.sizes.frame_width_tenth_mm) + _WALL_MM
        canvas.line((left, 0.0), (right, 0.0), Pen.GROUND)
        for step in range(int((right - left - _HATCH_MM) // _HATCH_PITCH_MM) + 1):
            x = left + step * _HATCH_PITCH_MM
            canvas.line((x, 0.0), (x + _HATCH_MM, _HATCH_MM), Pen.NARROW)
        canvas.text((left - 1.0, 0.6), "wall", anchor=Anchor.END)

    def _dimensions(self) -> None:
        canvas, frame = self.canvas, self.frame
        sizes, timber = frame.sizes, self.job.timber.width_tenth_mm
        width, framed, deep = sizes.frame_width_tenth_mm, sizes.frame_depth_tenth_mm, sizes.finished_depth_tenth_mm
        below = Stack(canvas, Side.BELOW, canvas.mm(-deep))
        found = self._front_places()
        if found:
            below.running(found, (0, width))
        below.chain((0, width))
        right = Stack(canvas, Side.RIGHT, canvas.mm(width))
        inner = (-framed + timber, -timber) if framed > 2 * timber else ()
        right.chain((-deep, -framed, *inner, 0))
        right.chain((-deep, 0))

    def _front_places(self) -> list[Running]:
        """Stations of the base, and the ends of the fire's opening."""
        fire = next(opening for opening in self.frame.openings if opening.kind == "fire")
        found = {station.x_tenth_mm: "" for station in self.frame.stations}
        for edge in (fire.x0_tenth_mm, fire.x1_tenth_mm):
            if 0 < edge < self.frame.sizes.frame_width_tenth_mm:
                found[edge] = "opening"
        return [Running(at_tenth_mm=x, words=words) for x, words in found.items()]

    def _to_mark(self) -> list[tuple[Member, Face]]:
        """What is cut, and the rails and cross noggins on top of the base; what lies under these is marked elsewhere."""
        top = self.frame.levels.platform_tenth_mm
        return [
            (member, face)
            for member, face in self.faces
            if member in self.cut or (member.unit is Unit.BASE and member.box.z1_tenth_mm == top)
        ]

    def _fire_words(self, fire_mm: AreaMm) -> None:
        left, low, right, high = fire_mm
        self.canvas.text(((left + right) / 2, (low + high) / 2), fire_words(self.job), backing=Fill.PAPER)

    def _caption(self, left_over: tuple[str, ...]) -> None:
        notes: list[Note] = [
            f"plane {text_mm(self.plane)} above the floor, looking down",
            "running sizes: near faces of the uprights' lines, edges of the opening",
        ]
        if self.frame.stations:
            count = len(self.frame.stations)
            notes.append(f"a bracket to the wall at each of the {count} stations, at the rear top rail")
        if left_over:
            notes.append(("also seen, not marked above:", *left_over))
        write_caption(self.canvas, "Plan over the platform", notes)


def _fill(member: Member, *, cut: bool) -> Fill:
    if cut:
        return Fill.BASE if member.unit is Unit.BASE else Fill.UPPER
    return Fill.BASE if member.unit is Unit.BASE else Fill.PAPER
