"""Sizes, sums, members, boards and fixings of a frame as text."""

from __future__ import annotations

from collections import Counter
from itertools import groupby
from typing import TYPE_CHECKING

from service.frame import Axis, CutWhen, EndJoint, Unit
from service.quote.text_layout import number, row, runs_of, title, words, wrapped

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from service.quote.wire import FrameBody, MemberAnswer, PanelAnswer, Place

UNIT_NAMES = {Unit.BASE: "base frame", Unit.UPPER: "upper frame"}
STAR = "*"  # cut after measuring
BRACKETS = {
    EndJoint.BRACKET: "an angle bracket",
    EndJoint.BRACKET_PAIR: "two angle brackets, over and under,",
    EndJoint.HEAVY_BRACKET: "a heavy angle bracket",
}
ENDS = {Axis.X: ("left", "right"), Axis.Y: ("rear", "front"), Axis.Z: ("lower", "upper")}


def frame_text(frame: FrameBody, boards: dict[str, str]) -> Iterator[str]:
    """The whole frame; `boards` names the boards by code."""
    yield from _sizes(frame)
    yield from title("SUMS THAT MUST CLOSE (mm)")
    for closure in frame.closure:
        yield f"{words(closure.name):18}{closure.text}"
    yield from _members(frame)
    yield from _boards(frame, boards)
    yield from _fixings(frame)
    for note in frame.notes:
        yield from wrapped(f"note: {note}")


def _sizes(frame: FrameBody) -> Iterator[str]:
    at, levels = frame.sizes, frame.levels
    finished = (
        f"{number(at.finished_width_mm)} wide x {number(at.finished_depth_mm)} deep x {number(levels.finished_top_mm)} high"
    )
    timber = f"{number(frame.timber.thickness_mm)} x {number(frame.timber.width_mm)} {frame.timber.strength_class}"
    opening = f"{number(at.opening_width_mm)} wide x {number(at.opening_height_mm)} high"
    yield from title("SIZES (mm)")
    yield from row("finished", finished)
    yield from row("frame", f"{number(at.frame_width_mm)} x {number(at.frame_depth_mm)} of {timber}")
    yield from row(
        "levels",
        f"platform {number(levels.platform_mm)}; underside of the upper frame {number(levels.appliance_top_mm)}; "
        f"top of the frame {number(levels.upper_top_mm)}",
    )
    yield from row("fire", f"opening {opening}, from {number(levels.platform_mm)}")
    if at.recess_clear and at.recess_framing:
        clear, framing = at.recess_clear, at.recess_framing
        yield from row(
            "recess",
            f"clear {number(clear.width_mm)} x {number(clear.height_mm)} x {number(clear.depth_mm)} deep, framed "
            f"{number(framing.width_mm)} x {number(framing.height_mm)}; sill {number(levels.recess_sill_mm)}, "
            f"head {number(levels.recess_head_mm)}, screen centre {number(levels.screen_centre_mm)}",
        )
    yield from row("timber", f"base frame {number(frame.base_mass_kg)} kg, upper frame {number(frame.upper_mass_kg)} kg")


def _members(frame: FrameBody) -> Iterator[str]:
    yield from title("MEMBERS (mm; * cut after measuring)")
    pieces = [member for member in frame.members if member.from_bar]
    yield f"{'marks':18}{'what':20}{'pcs':>4}{'length':>9}{'cut':>7}   where"
    for unit, members in groupby(pieces, key=lambda member: member.unit):
        yield f"{UNIT_NAMES[unit]}:"
        yield from _member_rows(members)
    length_mm, cut_mm = sum(member.length_mm for member in pieces), sum(member.cut_length_mm for member in pieces)
    yield f"{'':38}{len(pieces):4}{number(length_mm):>9}{cut_mm:7}"
    packs = [member for member in frame.members if not member.from_bar]
    if packs:
        yield "packs and ripped pieces, made on site:"
        yield from _member_rows(packs)


def _member_rows(members: Iterable[MemberAnswer]) -> Iterator[str]:
    def key(member: MemberAnswer) -> tuple[str, float, int, str]:
        return member.role.value, member.length_mm, member.cut_length_mm, member.cut_when.value

    for (role, length, cut, when), group in groupby(members, key=key):
        same = list(group)
        late = STAR if when == CutWhen.AFTER_MEASURE else " "
        lead = f"{runs_of(member.mark for member in same):18}{words(role):20}{len(same):4}{number(length):>9}{cut:7}{late}  "
        yield from row(lead, _where(same), len(lead))


def _where(members: list[MemberAnswer]) -> str:
    """Where members stand: levels of what lies, distances from the left end of what stands."""
    first = members[0]
    if first.along is Axis.Z or (first.along is Axis.Y and first.unit is Unit.BASE):
        return f"x {_distinct(member.box.x0_mm for member in members)}"
    return f"z {_distinct(member.box.z0_mm for member in members)}"


def _distinct(values: Iterable[float]) -> str:
    return " ".join(number(value) for value in sorted(set(values)))


def _boards(frame: FrameBody, boards: dict[str, str]) -> Iterator[str]:
    yield from title("BOARDS (mm, width x height; * cut after measuring)")
    by_board: dict[str, list[PanelAnswer]] = {}
    for panel in frame.panels:
        by_board.setdefault(panel.board_code, []).append(panel)
    for code, panels in by_board.items():
        yield f"{boards.get(code, 'board')}{f' ({code})' if code else ''}:"
        for panel in panels:
            yield from _panel(panel)


def _panel(panel: PanelAnswer) -> Iterator[str]:
    late = STAR if panel.cut_when is CutWhen.AFTER_MEASURE else " "
    size = f"{panel.cut_width_mm} x {panel.cut_height_mm}{late}"
    lead = f"{panel.mark:9}{words(panel.role.value):22}{size:15}"
    extra = [
        f"cut-out {number(hole.width_mm)} x {number(hole.height_mm)} from {number(hole.x_mm)}, {number(hole.y_mm)}"
        for hole in panel.cut_outs
    ]
    extra += [f"lower edge tapered by {number(panel.taper_mm)}"] if panel.taper_mm else []
    extra += [f"upper edge tapered by {number(panel.rise_mm)}"] if panel.rise_mm else []
    extra += ["joint at its lower edge"] if panel.joint_below else []
    extra += ["joint at its left edge"] if panel.joint_left else []
    yield from row(lead, "; ".join([_levels(panel.box), *extra]), len(lead))


def _levels(box: Place) -> str:
    return f"z {number(box.z0_mm)} to {number(box.z1_mm)}"


def _is_level_packed(frame: FrameBody) -> bool:
    """Whether every station may want the whole fall: the floor falls to front or back, or its low end is not known."""
    packers = {station.packer_mm for station in frame.stations}
    return len(packers) == 1 and packers != {0.0}


def _stations(frame: FrameBody) -> list[str]:
    level = _is_level_packed(frame)
    return [
        f"{number(one.x_mm)}{f' on {number(one.packer_mm)} of packing' if one.packer_mm and not level else ''}"
        for one in frame.stations
    ]


def _brackets(frame: FrameBody) -> Iterator[str]:
    """Which ends of which members are held by brackets; all other ends bear, or are screwed."""
    label = "brackets"
    for joint, what in BRACKETS.items():
        both = [one.mark for one in frame.members if one.start_joint is joint is one.end_joint]
        single = [one for one in frame.members if (one.start_joint is joint) is not (one.end_joint is joint)]
        ends = [f"{one.mark} ({ENDS[one.along][one.end_joint is joint]} end)" for one in single]
        if both or ends:
            named = (f"both ends of {runs_of(both)}" if both else "", ", ".join(ends))
            yield from row(label, f"{what} at {'; '.join(filter(None, named))}")
            label = ""


def _fixings(frame: FrameBody) -> Iterator[str]:
    yield from title("FIXINGS (mm)")
    if frame.stations:
        yield from row("base", f"one bracket to the wall at each station: x {', '.join(_stations(frame))}")
        if _is_level_packed(frame):
            yield from row(
                "", f"each packed as its floor asks, up to {number(frame.stations[0].packer_mm)}, from the floor's highest point"
            )
    yield from _brackets(frame)
    rows = Counter(one.z_mm for one in frame.wall_fixings)
    heights = ", ".join(f"{number(z)} ({count})" for z, count in sorted(rows.items()))
    yield from row("wall", f"{len(frame.wall_fixings)} through the upper frame, at z {heights}")
    open_count = sum(not one.counted for one in frame.wall_fixings)
    if open_count:
        yield from row("", f"{open_count} of them do not count until the wall is scanned and its studs are found")
    if frame.ceiling_screws:
        where = _distinct(one.x_mm for one in frame.ceiling_screws)
        yield from row("ceiling", f"{len(frame.ceiling_screws)} screws through the top rails, at x {where}")
    else:
        yield from row("ceiling", "no screws")
