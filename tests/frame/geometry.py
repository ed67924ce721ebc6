"""An independent reading of a laid-out frame: boxes as plain ranges, contact, cover. Shares no code with the layout.

Everything is in whole tenths of a millimetre. A rectangle is (low u, high u, low v, high v).
"""

from __future__ import annotations

from itertools import combinations, pairwise
from typing import TYPE_CHECKING

from service.frame import Axis, EndJoint, PanelRole, Role

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from service.brief import Job
    from service.frame import Box, Frame, Member, Panel

type Range = tuple[int, int]
type Rect = tuple[int, int, int, int]

SUPPORT = 190  # 19 mm of timber at each side of a joint: framing.md, section 7
LEAST_CONTACT_RATIO = 0.25  # of the section at a butting end: framing.md, section 9
PACKED = 400  # gaps under 40 mm are packed, not framed: framing.md, sections 5 and 6
TIMBER_PANELS = (PanelRole.PAD,)


def ranges(box: Box) -> tuple[Range, Range, Range]:
    """The box by axis."""
    return (
        (box.x0_tenth_mm, box.x1_tenth_mm),
        (box.y0_tenth_mm, box.y1_tenth_mm),
        (box.z0_tenth_mm, box.z1_tenth_mm),
    )


def shared(first: Range, second: Range) -> int:
    """Length that two ranges share; negative: the gap between them."""
    return min(first[1], second[1]) - max(first[0], second[0])


def overlaps(frame: Frame) -> list[tuple[str, str]]:
    """Pairs of members and panels that share volume."""
    things = [(member.mark, ranges(member.box)) for member in frame.members]
    things += [(panel.mark, ranges(panel.box)) for panel in frame.panels]
    return [
        (name, other)
        for (name, one), (other, two) in combinations(things, 2)
        if all(shared(mine, theirs) > 0 for mine, theirs in zip(one, two, strict=True))
    ]


def end_contact_ratio(member: Member, frame: Frame, *, high: bool) -> float:
    """Share of a member's end section that touches other timber, pad sheets or the floor."""
    axis = list(Axis).index(member.along)
    box = ranges(member.box)
    plane = box[axis][1 if high else 0]
    if axis == 2 and not high and plane == 0:
        return 1.0
    across = [box[other] for other in range(3) if other != axis]
    touching = 0
    for other in timber_boxes(frame):
        if other == box or other[axis][0 if high else 1] != plane:
            continue
        sides = [shared(mine, other[index]) for mine, index in zip(across, (i for i in range(3) if i != axis), strict=True)]
        touching += max(sides[0], 0) * max(sides[1], 0)
    return touching / ((across[0][1] - across[0][0]) * (across[1][1] - across[1][0]))


def timber_boxes(frame: Frame) -> list[tuple[Range, Range, Range]]:
    """Boxes of the members and of the sheets of a pad."""
    pads = [ranges(panel.box) for panel in frame.panels if panel.role in TIMBER_PANELS]
    return [*(ranges(member.box) for member in frame.members), *pads]


def loose_ends(frame: Frame) -> list[tuple[str, str, float]]:
    """Butting ends that touch less timber than they must."""
    return [
        (member.mark, "high" if high else "low", ratio)
        for member in frame.members
        for high, joint in ((False, member.start_joint), (True, member.end_joint))
        if joint is not EndJoint.NONE and (ratio := end_contact_ratio(member, frame, high=high)) < LEAST_CONTACT_RATIO
    ]


def uncovered(rect: Rect, by: Iterable[Rect]) -> Iterator[Rect]:
    """The parts of a rectangle that none of the others covers."""
    left = [rect]
    for u0, u1, v0, v1 in by:
        rest: list[Rect] = []
        for a0, a1, c0, c1 in left:
            if min(a1, u1) <= max(a0, u0) or min(c1, v1) <= max(c0, v0):
                rest.append((a0, a1, c0, c1))
                continue
            rest += [(a0, u0, c0, c1)] if a0 < u0 else []
            rest += [(u1, a1, c0, c1)] if u1 < a1 else []
            low, high = max(a0, u0), min(a1, u1)
            rest += [(low, high, c0, v0)] if c0 < v0 else []
            rest += [(low, high, v1, c1)] if v1 < c1 else []
        left = rest
    yield from left


class Backing:
    """What lies behind the boards of one side of a frame, as rectangles in the plane of the boards."""

    def __init__(self, frame: Frame, panel: Panel) -> None:
        """Find the plane that the panel lies on, and the timber that reaches it."""
        x, y, z = ranges(panel.box)
        width, depth = frame.sizes.frame_width_tenth_mm, frame.sizes.frame_depth_tenth_mm
        top = frame.levels.upper_top_tenth_mm
        self.frame, self.panel = frame, panel
        boxes = timber_boxes(frame)
        linings = [ranges(one.box) for one in frame.panels if one.role.value.startswith("lining")]
        if panel.role is PanelRole.LID:
            self.plane = "lid"
            self.timber = [(*box[0], *box[1]) for box in boxes if box[2][1] == z[0]]
            self.rect: Rect = (max(x[0], 0), min(x[1], width), max(y[0], 0), min(y[1], depth))
        elif panel.role.value.startswith("face"):
            self.plane = "face"
            self.timber = [(*box[0], *box[2]) for box in (*boxes, *linings) if box[1][1] == y[0]]
            self.rect = (max(x[0], 0), min(x[1], width), max(z[0], 0), min(z[1], top))
        else:
            self.plane = "return"
            left = x[1] == 0
            self.timber = [(*box[1], *box[2]) for box in boxes if (box[0][0] == 0 if left else box[0][1] == width)]
            self.rect = (max(y[0], 0), min(y[1], depth), max(z[0], 0), min(z[1], top))

    def edges(self) -> Iterator[tuple[str, Rect]]:
        """A strip of the support's width inside each edge, also round cut-outs."""
        u0, u1, v0, v1 = self.rect
        yield "left", (u0, min(u0 + SUPPORT, u1), v0, v1)
        yield "right", (max(u1 - SUPPORT, u0), u1, v0, v1)
        yield "low", (u0, u1, v0, min(v0 + SUPPORT, v1))
        yield "high", (u0, u1, max(v1 - SUPPORT, v0), v1)
        x0, z0 = self.panel.box.x0_tenth_mm, self.panel.box.z0_tenth_mm
        for hole in self.panel.cut_outs:
            a0, c0 = x0 + hole.x_tenth_mm, z0 + hole.y_tenth_mm
            a1, c1 = a0 + hole.width_tenth_mm, c0 + hole.height_tenth_mm
            low, high = max(c0, self.rect[2]), min(c1, self.rect[3])
            left, right = max(a0, self.rect[0]), min(a1, self.rect[1])
            if left > u0:  # else the hole runs on into the next piece
                yield "cut-out left", (left - SUPPORT, left, low, high)
            if right < u1:
                yield "cut-out right", (right, right + SUPPORT, low, high)
            if low > v0:
                yield "cut-out low", (left, right, low - SUPPORT, low)
            if high < v1:
                yield "cut-out high", (left, right, high, high + SUPPORT)

    def holes(self) -> list[Rect]:
        """Cut-outs as rectangles: nothing is there to be supported."""
        x0, z0 = self.panel.box.x0_tenth_mm, self.panel.box.z0_tenth_mm
        return [
            (
                x0 + one.x_tenth_mm,
                x0 + one.x_tenth_mm + one.width_tenth_mm,
                z0 + one.y_tenth_mm,
                z0 + one.y_tenth_mm + one.height_tenth_mm,
            )
            for one in self.panel.cut_outs
        ]


def hanging_edges(frame: Frame, job: Job) -> list[tuple[str, str, list[Rect]]]:
    """Edges of faces, returns and lid with a stretch that has no timber behind it.

    Let go: a stretch under 40 mm (packed by the fitter), and at the floor what framing.md, section 3, leaves open: the lower
    edge of a return without bottom noggins, of any board under a flat frame, and the packers under a pad.
    """
    found = []
    for panel in frame.panels:
        if panel.role is not PanelRole.LID and not panel.role.value.startswith(("face", "return")):
            continue
        back = Backing(frame, panel)
        for name, strip in back.edges():
            if strip[1] <= strip[0] or strip[3] <= strip[2]:
                continue
            open_parts = [
                part for part in uncovered(strip, (*back.timber, *back.holes())) if not _let_go(part, back, frame, job, name)
            ]
            if open_parts:
                found.append((panel.mark, name, open_parts))
    return found


def _let_go(part: Rect, back: Backing, frame: Frame, job: Job, name: str) -> bool:
    u0, u1, v0, v1 = part
    b, d = job.timber.thickness_tenth_mm, job.timber.width_tenth_mm
    z0 = frame.levels.platform_tenth_mm
    if name in {"low", "high", "cut-out low", "cut-out high"} and u1 - u0 < PACKED:
        return True
    if back.plane == "lid" or v0 >= z0:
        return False
    if z0 < b:
        return v1 <= 60
    if z0 < 2 * b + 300:
        return v1 <= z0 - b  # between the packs of a flat frame
    return back.plane == "return" and z0 < 2 * d + 400 and d <= u0 < u1 <= frame.sizes.frame_depth_tenth_mm - d


def bounds(frame: Frame) -> tuple[Range, Range, Range]:
    """Bounding box of all members."""
    boxes = [ranges(member.box) for member in frame.members]
    sides = [(min(box[axis][0] for box in boxes), max(box[axis][1] for box in boxes)) for axis in range(3)]
    return sides[0], sides[1], sides[2]


def fire_space(frame: Frame, job: Job) -> tuple[Range, Range, Range]:
    """The space of the fire (framing.md, section 9): the opening, from the clearance behind the body to the finished face."""
    fire = next(opening for opening in frame.openings if opening.kind == "fire")
    depth = frame.sizes.finished_depth_tenth_mm
    rear = depth - round(job.appliance.body_depth_mm * 10) - job.rear_clearance_tenth_mm
    return (fire.x0_tenth_mm, fire.x1_tenth_mm), (rear, depth), (fire.z0_tenth_mm, fire.z1_tenth_mm)


def fire_body(frame: Frame, job: Job) -> tuple[Range, Range, Range]:
    """The body of the fire as it stands on the platform."""
    fire = next(opening for opening in frame.openings if opening.kind == "fire")
    width, height = round(job.appliance.body_width_mm * 10), round(job.appliance.body_height_mm * 10)
    depth = frame.sizes.finished_depth_tenth_mm
    if frame.left_open:
        left = -job.inset_tenth_mm
    elif frame.right_open:
        left = frame.sizes.frame_width_tenth_mm + job.inset_tenth_mm - width
    else:
        left = fire.x0_tenth_mm + job.gap_beside_tenth_mm
    z0 = frame.levels.platform_tenth_mm
    return (left, left + width), (depth - round(job.appliance.body_depth_mm * 10), depth), (z0, z0 + height)


def things_inside(space: tuple[Range, Range, Range], boxes: Iterable[tuple[str, Box]]) -> list[str]:
    """Marks of the boxes that share volume with a space."""
    return [mark for mark, box in boxes if all(shared(mine, theirs) > 0 for mine, theirs in zip(space, ranges(box), strict=True))]


def touching(space: tuple[Range, Range, Range], boxes: Iterable[tuple[str, Box]]) -> list[str]:
    """Marks of the boxes that share volume or face with a space."""
    found = []
    for mark, box in boxes:
        sides = [shared(mine, theirs) for mine, theirs in zip(space, ranges(box), strict=True)]
        if min(sides) >= 0 and sum(side == 0 for side in sides) <= 1:
            found.append(mark)
    return found


def widest_gap(frame: Frame, panel: Panel) -> int:
    """Greatest clear distance along x between timber that stands behind a face panel, on any level of it."""
    back = Backing(frame, panel)
    u0, u1, v0, v1 = back.rect
    levels = sorted({v0, v1, *(level for rect in (*back.timber, *back.holes()) for level in rect[2:] if v0 < level < v1)})
    worst = 0
    for low, high in pairwise(levels):
        covered = sorted((rect[0], rect[1]) for rect in (*back.timber, *back.holes()) if rect[2] <= low and rect[3] >= high)
        reach = u0
        for start, end in [*covered, (u1, u1)]:
            worst = max(worst, min(start, u1) - reach)
            reach = max(reach, end)
    return worst


def count_by_role(frame: Frame) -> dict[Role, int]:
    """How many members of each role are cut from bars."""
    counts: dict[Role, int] = {}
    for member in frame.members:
        if member.from_bar:
            counts[member.role] = counts.get(member.role, 0) + 1
    return counts
