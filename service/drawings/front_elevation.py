"""Front elevation of the frame: the timbers seen from the room, their marks, levels and running sizes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.drawings.canvas import Canvas
from service.drawings.captions import Note, write_caption
from service.drawings.dimensions import Running, Side, Stack, inside_level
from service.drawings.hidden_lines import find_edges
from service.drawings.levels import heights_of
from service.drawings.marks import Wanted, write_marks
from service.drawings.neighbours import draw_neighbours_front
from service.drawings.plane import draw_plane_ends, find_plane
from service.drawings.primitives import Drawing, Fill, Pen
from service.drawings.projection import area_of, draw_edges, seen_from_front
from service.drawings.room import draw_ceiling_front, draw_floor_front, draw_side_walls_front, fall_words, highest_ceiling
from service.drawings.sight import seen_in_front
from service.drawings.strengthened import strengthening_notes
from service.frame import Axis, Member, Role, Unit
from service.survey.floor import LowEnd
from service.units import text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame import Frame, Station

_SHORT_UPRIGHTS: Final = {Role.JACK_STUD: "jack", Role.CHEEK_STUD: "cheek", Role.JAMB_PACKER: "packer"}

_PACK_WORDS: Final = {LowEnd.BACK: "behind: pack", LowEnd.UNKNOWN: "pack up to"}


def draw_front_elevation(frame: Frame, job: Job, scale_ratio: int) -> Drawing:
    """The view; marks that find no place are listed under it."""
    view = _FrontElevation(Canvas(scale_ratio), frame, job)
    view.draw()
    sizes, levels = frame.sizes, frame.levels
    width, height = text_mm(sizes.frame_width_tenth_mm), text_mm(levels.upper_top_tenth_mm)
    title = "Front elevation of the frame"
    return view.canvas.finish(
        "front-elevation",
        title,
        f"{title}, {width} wide x {height} high; {len(frame.members)} timbers, {len(view.faces)} of them seen from the front. "
        f"Scale 1:{scale_ratio}, dimensions in mm.",
    )


class _FrontElevation:
    """Draws the parts of the view in their order: areas, lines, then what texts must keep off."""

    def __init__(self, canvas: Canvas, frame: Frame, job: Job) -> None:
        self.canvas, self.frame, self.job = canvas, frame, job
        self.faces = seen_in_front(frame)
        self.top = frame.levels.upper_top_tenth_mm
        self.width = frame.sizes.frame_width_tenth_mm

    def draw(self) -> None:
        canvas, frame, job = self.canvas, self.frame, self.job
        self._timber()
        canvas.group("room")
        ends_mm = (0.0, canvas.mm(self.width))
        draw_floor_front(canvas, frame, job, ends_mm)
        if frame.full_height:
            draw_ceiling_front(canvas, frame, job, ends_mm)
        draw_side_walls_front(canvas, frame, job)
        canvas.group("neighbours")
        draw_neighbours_front(canvas, frame, job)
        self._openings()
        canvas.group("dimensions")
        ends = self._dimensions()
        canvas.group("plane")
        draw_plane_ends(canvas, find_plane(frame), ends)
        canvas.group("marks")
        left_over = write_marks(canvas, [Wanted(mark=mark, area_mm=area_of(canvas, face)) for mark, face in self.faces.items()])
        notes: list[Note] = ["running sizes: near faces from the left end, undersides from the floor's highest point"]
        if job.fall_tenth_mm:
            notes.append(fall_words(job))
        if left_over:
            notes.append(("also seen, not marked above:", *left_over))
        notes += strengthening_notes(frame)
        write_caption(canvas, "Front elevation of the frame", notes)

    def _timber(self) -> None:
        canvas = self.canvas
        front = max(member.box.y1_tenth_mm for member in self.frame.members)
        canvas.group("timber")
        for member in sorted(self.frame.members, key=lambda member: (member.box.y1_tenth_mm, member.mark)):
            canvas.rectangle(area_of(canvas, seen_from_front(member.mark, member.box)), None, _fill(member, front))
        canvas.group("edges")
        faces = [seen_from_front(member.mark, member.box) for member in self.frame.members]
        draw_edges(canvas, find_edges(faces).visible, Pen.VISIBLE)

    def _openings(self) -> None:
        canvas = self.canvas
        for opening in self.frame.openings:
            if opening.x1_tenth_mm - opening.x0_tenth_mm == self.width:
                continue  # the overall width says it
            clear = canvas.mm(opening.z1_tenth_mm - opening.z0_tenth_mm)
            y = canvas.mm(opening.z0_tenth_mm) + (0.2 if opening.kind == "fire" else 0.12) * clear
            inside_level(canvas, (opening.x0_tenth_mm, opening.x1_tenth_mm), y)

    def _dimensions(self) -> tuple[float, float]:
        """Draw all stacks; how far down and up they reach."""
        canvas, frame = self.canvas, self.frame
        floor = min(0.0, canvas.mm(-self.job.fall_tenth_mm))
        below = Stack(canvas, Side.BELOW, floor)
        base = self._base_x()
        if base:
            below.running(base, (0, self.width))
        below.chain((0, self.width))
        above = Stack(canvas, Side.ABOVE, canvas.mm(highest_ceiling(frame, self.job)))
        above.running(self._upper_x(), (0, self.width))
        left = Stack(canvas, Side.LEFT, 0.0)
        left.chain(heights_of(frame))
        left.chain((0, self.top))
        right = Stack(canvas, Side.RIGHT, canvas.mm(self.width))
        right.running(self._running_z(), (0, self.top))
        return below.end_mm, above.end_mm

    def _base_x(self) -> list[Running]:
        """Uprights of the base, with the packer under each; stations without an upright only for their packers."""
        found = {member.box.x0_tenth_mm: "" for member in self._seen(Unit.BASE, Axis.Z)}
        for station in self.frame.stations:
            if station.packer_tenth_mm:
                found[station.x_tenth_mm] = self._packer_words(station)
        return [Running(at_tenth_mm=x, words=words) for x, words in found.items()]

    def _packer_words(self, station: Station) -> str:
        rear, front = station.rear_packer_tenth_mm, station.front_packer_tenth_mm
        if self.job.floor_front and rear != front:
            return f"pack {text_mm(front)}, behind {text_mm(rear)}"
        usual = {} if self.job.floor_front else _PACK_WORDS
        return f"{usual.get(self.job.low_end, 'pack')} {text_mm(station.packer_tenth_mm)}"

    def _upper_x(self) -> list[Running]:
        """Uprights of the upper frame; those that do not reach the top say what they are."""
        found: dict[int, str] = {}
        for member in self._seen(Unit.UPPER, Axis.Z):
            words = _SHORT_UPRIGHTS.get(member.role, "")
            found[member.box.x0_tenth_mm] = words and found.get(member.box.x0_tenth_mm, words)
        return [Running(at_tenth_mm=x, words=words) for x, words in found.items()]

    def _running_z(self) -> list[Running]:
        levels = {member.box.z0_tenth_mm for unit in Unit for member in self._seen(unit, Axis.X)}
        return [Running(at_tenth_mm=level) for level in levels]

    def _seen(self, unit: Unit, along: Axis) -> list[Member]:
        seen = [member for member in self.frame.members if member.mark in self.faces]
        return [member for member in seen if member.unit is unit and member.along is along]


def _fill(member: Member, front_tenth_mm: int) -> Fill:
    if member.box.y1_tenth_mm < front_tenth_mm:
        return Fill.BEHIND
    return Fill.BASE if member.unit is Unit.BASE else Fill.UPPER
