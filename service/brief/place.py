"""The breast against the ends of its wall, doors and radiators (`knowledge/survey.md`, sections 3, 7 and 15)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.survey.room import ObstacleKind

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.survey.survey import Survey

ROOM, BRIEF, SERVICES = "/survey/room", "/survey/brief", "/survey/services"
# Limits: survey.md, section 3; common practice, no source.
CLEAR_BESIDE_MM = 50.0
CLEANABLE_MM = 300.0
MEETS_MM = 0.06  # an end nearer than this to a side wall stands against it


class _Ends(msgspec.Struct, frozen=True, kw_only=True):
    """Where the breast begins and ends on the wall, from the wall's left end."""

    left_mm: float
    right_mm: float

    def meets(self, x0_mm: float, x1_mm: float) -> bool:
        """Whether a stretch of the wall lies at least partly behind the breast."""
        return x0_mm < self.right_mm and x1_mm > self.left_mm


class Walls(msgspec.Struct, frozen=True, kw_only=True):
    """The side walls that the breast stands against, by the names that a job gives them."""

    left_wall: bool = False
    right_wall: bool = False


def check_place(width_mm: float, depth_mm: float, survey: Survey, notes: Notes) -> Walls:
    """Contradictions between the breast and what is in its way; only with values that were sent."""
    length_mm = survey.room.wall_length_mm if survey.room else None
    centre_mm = survey.room.breast_centre_from_left_mm if survey.room else None
    if length_mm is None and centre_mm is None:
        return Walls()
    middle_mm = (length_mm or 0.0) / 2 if centre_mm is None else centre_mm
    ends = _Ends(left_mm=middle_mm - width_mm / 2, right_mm=middle_mm + width_mm / 2)
    walls = Walls(
        left_wall=abs(ends.left_mm) < MEETS_MM, right_wall=length_mm is not None and abs(length_mm - ends.right_mm) < MEETS_MM
    )
    _check_ends(ends, length_mm, walls, notes)
    if centre_mm is not None:
        _check_obstacles(ends, depth_mm, survey, notes)
        _check_radiators(ends, survey, notes)
    return walls


def _check_ends(ends: _Ends, length_mm: float | None, walls: Walls, notes: Notes) -> None:
    width_mm = ends.right_mm - ends.left_mm
    free_mm = (ends.left_mm, *(() if length_mm is None else (length_mm - ends.right_mm,)))
    if min(free_mm) <= -MEETS_MM:
        wall = "its wall" if length_mm is None else f"a wall {length_mm:g} long"
        notes.contradict(
            (f"{ROOM}/breast_centre_from_left_mm", f"{ROOM}/wall_length_mm", f"{BRIEF}/breast_width_mm"),
            detail=f"a breast {width_mm:g} wide about {(ends.left_mm + ends.right_mm) / 2:g} ends beyond {wall}",
            remedy="move the centre, or make the breast narrower",
        )
    elif not (walls.left_wall or walls.right_wall) and length_mm is not None and width_mm + 2 * CLEAR_BESIDE_MM > length_mm:
        notes.contradict(
            (f"{ROOM}/wall_length_mm", f"{BRIEF}/breast_width_mm"),
            detail=f"a breast {width_mm:g} wide leaves less than {CLEAR_BESIDE_MM:g} beside it on a wall {length_mm:g} long",
            remedy="make the breast narrower",
        )
    else:
        for side, gap_mm in zip(("left", "right"), free_mm, strict=False):
            if MEETS_MM <= gap_mm < CLEANABLE_MM:
                says = f"{gap_mm:g} beside the breast at the {side} is hard to paint and clean"
                notes.doubt(f"{ROOM}/breast_centre_from_left_mm", round(gap_mm, 1), says)


def _check_obstacles(ends: _Ends, depth_mm: float, survey: Survey, notes: Notes) -> None:
    for index, obstacle in enumerate((survey.room.obstacles if survey.room else None) or ()):
        if not ends.meets(obstacle.x0_mm, obstacle.x1_mm):
            continue
        pointer = f"{ROOM}/obstacles/{index}"
        if obstacle.kind is ObstacleKind.DOOR_SWING and obstacle.reach_mm > 0:
            notes.contradict(
                (pointer, f"{BRIEF}/breast_depth_mm"),
                detail=f"the breast, {depth_mm:g} deep, stands in the swing of a door",
                remedy="move the breast, or hang the door the other way",
            )
        elif obstacle.kind is ObstacleKind.DOOR:
            pointers = (pointer, f"{BRIEF}/breast_width_mm")
            notes.contradict(pointers, detail="the breast covers a door", remedy="move the breast")


def _check_radiators(ends: _Ends, survey: Survey, notes: Notes) -> None:
    for index, radiator in enumerate((survey.services.radiators if survey.services else None) or ()):
        if ends.meets(radiator.x0_mm, radiator.x1_mm):
            notes.contradict(
                (f"{SERVICES}/radiators/{index}", f"{BRIEF}/breast_width_mm"),
                detail="a radiator would stand behind the breast",
                remedy="move the radiator first, or the breast",
            )
