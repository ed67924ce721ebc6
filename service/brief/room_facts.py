"""Facts of the room and its floor as the layout needs them, every default noted (`knowledge/survey.md`, sections 3 and 6)."""

from __future__ import annotations

from math import fsum
from typing import TYPE_CHECKING

import msgspec

from service.survey.fields import Answer
from service.survey.floor import Floor, FloorConstruction, LowEnd
from service.survey.room import Room
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.rules import RuleSet
    from service.survey.floor import FloorLevel
    from service.survey.survey import Survey

ROOM, FLOOR = "/survey/room", "/survey/floor"
MANY_POINTS = 5  # left, middle, right at the wall, left and right at the depth: survey.md, section 3


class RoomFacts(msgspec.Struct, frozen=True, kw_only=True):
    """What was measured of room and floor, or taken as if it had been; lengths in tenths of a millimetre where said."""

    clear_height_tenth_mm: int
    wall_centre_tenth_mm: int
    fall_tenth_mm: int
    low_end: LowEnd
    skirting_height_mm: float
    skirting_thickness_mm: float


def take_room(survey: Survey, rules: RuleSet, notes: Notes) -> RoomFacts:
    """Read the room and the floor."""
    room, floor, defaults = survey.room or Room(), survey.floor or Floor(), rules.defaults
    fall_mm, low_end = _fall(floor, rules, notes)
    _floor_state(floor, notes)
    height = notes.take(f"{FLOOR}/skirting_height_mm", floor.skirting_height_mm, defaults.skirting_height_mm, "new skirting")
    thickness = notes.take(
        f"{FLOOR}/skirting_thickness_mm", floor.skirting_thickness_mm, defaults.skirting_thickness_mm, "length of new skirting"
    )
    return RoomFacts(
        clear_height_tenth_mm=_clear_height(room, floor, fall_mm, rules=rules, notes=notes),
        wall_centre_tenth_mm=_centre(room, rules, notes),
        fall_tenth_mm=tenths(fall_mm),
        low_end=low_end,
        skirting_height_mm=height,
        skirting_thickness_mm=thickness,
    )


def low_end_of(levels: tuple[FloorLevel, ...]) -> LowEnd:
    """Where measured levels fall to: the side whose mean lies lowest against the side opposite; unknown where none does."""
    if not levels:
        return LowEnd.UNKNOWN
    across = _slope([(point.x_mm, point.level_mm) for point in levels])
    outwards = _slope([(point.y_mm, point.level_mm) for point in levels])
    if across == outwards == 0:
        return LowEnd.UNKNOWN
    if abs(across) >= abs(outwards):
        return LowEnd.RIGHT if across < 0 else LowEnd.LEFT
    return LowEnd.FRONT if outwards < 0 else LowEnd.BACK


def _slope(places: list[tuple[float, float]]) -> float:
    """Mean level of the far half less mean level of the near half along one axis."""
    middle = (min(at for at, _level in places) + max(at for at, _level in places)) / 2
    near = [level for at, level in places if at < middle]
    far = [level for at, level in places if at > middle]
    return fsum(far) / len(far) - fsum(near) / len(near) if near and far else 0.0


def _fall(floor: Floor, rules: RuleSet, notes: Notes) -> tuple[float, LowEnd]:
    levels = floor.levels or ()
    if levels:
        fall_mm = max(point.level_mm for point in levels) - min(point.level_mm for point in levels)
        return fall_mm, floor.low_end or low_end_of(levels)
    effect = "packers and tapered base boards; the clear height is less by it"
    fall_mm = notes.take(f"{FLOOR}/fall_mm", floor.fall_mm, rules.defaults.floor_fall_mm, effect)
    if floor.low_end is None and fall_mm > 0:
        notes.suppose(f"{FLOOR}/low_end", None, LowEnd.UNKNOWN, "every board that meets the floor is cut longer by the fall")
    return fall_mm, floor.low_end or LowEnd.UNKNOWN


def _floor_state(floor: Floor, notes: Notes) -> None:
    notes.take(f"{FLOOR}/construction", floor.construction, FloorConstruction.BOARDS, "a floating floor is not pinned")
    notes.take(f"{FLOOR}/sound", floor.sound, Answer.YES, "an unsound floor is repaired first")
    notes.take(f"{FLOOR}/underfloor_heating", floor.underfloor_heating, Answer.NO, "nothing is fixed into a heated floor")


def _clear_height(room: Room, floor: Floor, fall_mm: float, *, rules: RuleSet, notes: Notes) -> int:
    """Lowest ceiling less highest floor; where levels and heights were not taken at the same points, the safe side of it."""
    heights, levels = room.heights or (), floor.levels or ()
    if not heights:
        effect = "100 mm more or less changes a board joint and 3 percent of the timber"
        return tenths(notes.take(f"{ROOM}/heights", None, rules.defaults.clear_height_mm, effect) - fall_mm)
    if len(heights) < MANY_POINTS:
        points = f"{len(heights)} of {MANY_POINTS} points"
        notes.take(
            f"{ROOM}/heights", None, points, "a firm quote wants left, middle, right at the wall and left, right at the depth"
        )
    known = {(point.x_mm, point.y_mm): point.level_mm for point in levels}
    if levels and all((point.x_mm, point.y_mm) in known for point in heights):
        return tenths(min(known[point.x_mm, point.y_mm] + point.height_mm for point in heights) - max(known.values()))
    return tenths(min(point.height_mm for point in heights) - fall_mm)


def _centre(room: Room, rules: RuleSet, notes: Notes) -> int:
    length_mm = notes.take(
        f"{ROOM}/wall_length_mm", room.wall_length_mm, rules.defaults.wall_length_mm, "whether the breast fits"
    )
    centre_mm = notes.take(
        f"{ROOM}/breast_centre_from_left_mm", room.breast_centre_from_left_mm, length_mm / 2, "which joists and studs are met"
    )
    return tenths(centre_mm)
