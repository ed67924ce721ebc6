"""Laws of a laid-out frame as functions: job and frame in, what breaks the law out.

Sources: `knowledge/framing.md`, sections 2, 7, 9 and 11, and `materials.md`, section 1, as each law says. The geometry is
read by `tests/frame/geometry.py`, which shares no code with the layout.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame import PanelRole, Unit
from tests.frame import geometry

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.brief import Board, Job
    from service.frame import Frame, Panel

type Law = Callable[[Job, Frame], list[str]]


def shares_no_space(_job: Job, frame: Frame) -> list[str]:
    """Section 9: no two members or boards share volume."""
    return [f"{one} in {other}" for one, other in geometry.overlaps(frame)]


def ends_bear(_job: Job, frame: Frame) -> list[str]:
    """Section 9: every butting end touches timber over 25 percent of its section, or the floor."""
    return [f"{mark} {end}: {ratio:.2f}" for mark, end, ratio in geometry.loose_ends(frame)]


def fills_its_bounds(job: Job, frame: Frame) -> list[str]:
    """Section 2, identity 7, said exactly: the members fill 0..Wf and 0..Df and reach up to z2.

    They start at the floor with a base frame, at the platform (floor or pad) where an end is closed, else over the fire.
    """
    levels, sizes = frame.levels, frame.sizes
    low = levels.platform_tenth_mm
    if low >= job.timber.thickness_tenth_mm:
        low = 0
    elif frame.left_open and frame.right_open:
        low = levels.appliance_top_tenth_mm
    expected = ((0, sizes.frame_width_tenth_mm), (0, sizes.frame_depth_tenth_mm), (low, levels.upper_top_tenth_mm))
    found = geometry.bounds(frame)
    return [] if expected == found else [f"{found}, not {expected}"]


def leaves_the_fire_free(job: Job, frame: Frame) -> list[str]:
    """Section 9: nothing enters the space of the fire, nothing of the upper frame touches its body."""
    things = [(member.mark, member.box) for member in frame.members] + [(panel.mark, panel.box) for panel in frame.panels]
    upper = [(member.mark, member.box) for member in frame.members if member.unit is Unit.UPPER]
    body = geometry.fire_body(frame, job)
    return [
        *geometry.things_inside(geometry.fire_space(frame, job), things),
        *geometry.things_inside(body, things),
        *geometry.touching(body, upper),
    ]


def closes(_job: Job, frame: Frame) -> list[str]:
    """Section 2: every sum is exact and no part of it is negative."""
    return [
        one.name
        for one in frame.closures
        if one.total_tenth_mm != sum(term.value_tenth_mm for term in one.terms)
        or min(term.value_tenth_mm for term in one.terms) < 0
    ]


def pieces_can_be_cut(_job: Job, frame: Frame) -> list[str]:
    """Sections 2.1 and 9: no piece of a bar below 30; rounded down between others, else to the nearest."""
    found = []
    for member in frame.members:
        slack = member.length_tenth_mm - member.cut_length_mm * 10
        rounded = 0 <= slack <= 9 if member.fit == "between" else -5 <= slack <= 4
        if not rounded or member.length_tenth_mm <= 0 or (member.from_bar and member.length_tenth_mm < 300):
            found.append(member.mark)
    return found


def edges_lie_on_timber(job: Job, frame: Frame) -> list[str]:
    """Sections 7 and 11: 19 mm of timber behind every edge of a board, at both sides of a joint, round every cut-out."""
    return [f"{mark} {edge}: {parts}" for mark, edge, parts in geometry.hanging_edges(frame, job)]


def studs_are_close_enough(job: Job, frame: Frame) -> list[str]:
    """Sections 4.2, 6 and 7: no clear distance behind a face over m; a pad is solid."""
    solid = frame.levels.platform_tenth_mm < job.timber.thickness_tenth_mm
    faces = [
        panel
        for panel in frame.panels
        if panel.role.value.startswith("face") and not (panel.role is PanelRole.FACE_BASE and solid)
    ]
    return [panel.mark for panel in faces if geometry.widest_gap(frame, panel) > job.board.stud_pitch_tenth_mm]


def boards_come_out_of_sheets(job: Job, frame: Frame) -> list[str]:
    """Section 11: as it is cut, either way round, and no larger than what passes the way in; cut within 1 mm of its size."""
    found = []
    for panel in frame.panels:
        sheet = sheet_of(panel, job)
        short, long = sorted((panel.cut_width_mm * 10, panel.cut_height_mm * 10))
        narrow, wide = sorted((job.largest_board_width_tenth_mm, job.largest_board_length_tenth_mm))
        fits = 0 < short <= sheet.sheet_width_tenth_mm and long <= sheet.sheet_length_tenth_mm
        passes = short <= narrow and long <= wide
        off = max(abs(panel.cut_width_mm * 10 - panel.width_tenth_mm), abs(panel.cut_height_mm * 10 - panel.height_tenth_mm))
        if not (fits and passes and off < 20):
            found.append(panel.mark)
    return found


def sheet_of(panel: Panel, job: Job) -> Board:
    """The sheet that a panel is cut from."""
    named = {"facing": job.board, "lid": job.lid, "lining": job.lining, "backboard": job.backboard}
    if panel.layer.value in named:
        return named[panel.layer.value]
    return next(board for board in job.pads if board.code == panel.board_code)


def fixings_go_through_what_they_name(_job: Job, frame: Frame) -> list[str]:
    """Materials.md, section 1: wall fixings in a rear member, ceiling screws in a top rail; a mark names one member."""
    boxes = {member.mark: geometry.ranges(member.box) for member in frame.members}
    found = [] if len(boxes) == len(frame.members) else ["two members of one mark"]
    for one in frame.wall_fixings:
        x, y, z = boxes[one.through]
        if not (y[0] == 0 and x[0] <= one.x_tenth_mm <= x[1] and z[0] <= one.z_tenth_mm <= z[1]):
            found.append(f"wall fixing through {one.through}")
    for screw in frame.ceiling_screws:
        x, y, z = boxes[screw.through]
        on_top = frame.full_height and z[1] == frame.levels.upper_top_tenth_mm
        if not (on_top and x[0] <= screw.x_tenth_mm <= x[1] and y[0] <= screw.y_tenth_mm <= y[1]):
            found.append(f"ceiling screw through {screw.through}")
    return found


LAWS: tuple[Law, ...] = (
    shares_no_space,
    ends_bear,
    fills_its_bounds,
    leaves_the_fire_free,
    closes,
    pieces_can_be_cut,
    edges_lie_on_timber,
    studs_are_close_enough,
    boards_come_out_of_sheets,
    fixings_go_through_what_they_name,
)


def broken(job: Job, frame: Frame) -> dict[str, list[str]]:
    """Every law that a frame breaks, with what breaks it."""
    found = {law.__name__: law(job, frame) for law in LAWS}
    return {name: faults for name, faults in found.items() if faults}
