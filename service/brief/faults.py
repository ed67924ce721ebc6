"""Contradictions between fields of a survey, all of them at once (`knowledge/survey.md`, sections 3 to 15)."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from service.brief.deal import is_day
from service.errors import Reason
from service.survey.room import ObstacleKind
from service.survey.wishes import OpenEnds

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.catalogue import Appliance
    from service.survey.survey import Survey

ROOM, WALL, CEILING, FLOOR = "/survey/room", "/survey/wall", "/survey/ceiling", "/survey/floor"
BRIEF, SERVICES, SITE = "/survey/brief", "/survey/services", "/survey/site"
SAME_PLACE_MM = 10.0
FALL_AGREES_MM = 3.0
CAUTION_LETTERS = "HESBVWM"
CLEAR_BESIDE_MM = 50.0


def check_open_ends(wanted: OpenEnds | None, appliance: Appliance, notes: Notes) -> OpenEnds:
    """The open ends of the breast; a wish that the fire cannot follow is a contradiction."""
    count = appliance.open_ends_count
    if count == 0:
        allowed: tuple[OpenEnds, ...] = (OpenEnds.NONE,)
    elif count == 1:
        allowed = {"left": (OpenEnds.LEFT,), "right": (OpenEnds.RIGHT,)}.get(appliance.open_end or "either", (OpenEnds.RIGHT, OpenEnds.LEFT))
    else:
        allowed = (OpenEnds.BOTH,)
    if wanted is None:
        return allowed[0] if len(allowed) == 1 else notes.choose(f"{BRIEF}/open_ends", None, allowed[0], "which end shows glass")
    if wanted not in allowed:
        notes.contradict(
            (f"{BRIEF}/open_ends", f"{BRIEF}/appliance"),
            f"open_ends {wanted.value}, but this fire shows glass at {count} ends",
            f"send {' or '.join(end.value for end in allowed)}, or another fire",
        )
        return allowed[0]
    return wanted


def check_survey(survey: Survey, today: str, notes: Notes) -> None:
    """Contradictions and impossible values that need no design."""
    _check_positions(survey, notes)
    _check_levels(survey, notes)
    _check_slope(survey, notes)
    _check_obstacles(survey, notes)
    _check_dates(survey, today, notes)
    _check_provenance(survey, notes)


def check_place(width_mm: float, depth_mm: float, survey: Survey, notes: Notes) -> None:
    """The breast against the wall's ends, door swings and radiators, once its width is known."""
    room = survey.room
    length_mm = room.wall_length_mm if room else None
    centre_mm = room.breast_centre_from_left_mm if room else None
    if length_mm is not None:
        middle_mm = length_mm / 2 if centre_mm is None else centre_mm
        left_mm, right_mm = middle_mm - width_mm / 2, length_mm - middle_mm - width_mm / 2
        if min(left_mm, right_mm) < 0:
            notes.contradict(
                (f"{ROOM}/breast_centre_from_left_mm", f"{ROOM}/wall_length_mm", f"{BRIEF}/breast_width_mm"),
                f"a breast {width_mm:g} wide about {middle_mm:g} ends beyond a wall {length_mm:g} long",
                "move the centre, or make the breast narrower",
            )
        elif min(left_mm, right_mm) == 0:
            notes.by_hand.append("a breast against a side wall is not laid out yet: quote this by hand")
        elif width_mm + 2 * CLEAR_BESIDE_MM > length_mm:
            notes.contradict(
                (f"{ROOM}/wall_length_mm", f"{BRIEF}/breast_width_mm"),
                f"a breast {width_mm:g} wide leaves less than {CLEAR_BESIDE_MM:g} beside it on a wall {length_mm:g} long",
                "make the breast narrower",
            )
        else:
            _doubt_corners(left_mm, right_mm, notes)
    if centre_mm is not None:
        _check_hits(centre_mm - width_mm / 2, centre_mm + width_mm / 2, depth_mm, survey, notes)


def _doubt_corners(left_mm: float, right_mm: float, notes: Notes) -> None:
    for side, gap_mm in (("left", left_mm), ("right", right_mm)):
        if 0 < gap_mm < 300:
            notes.doubt(f"{ROOM}/breast_centre_from_left_mm", round(gap_mm, 1), f"{gap_mm:g} beside the breast at the {side} is hard to paint and clean")


def _check_hits(x0_mm: float, x1_mm: float, depth_mm: float, survey: Survey, notes: Notes) -> None:
    for index, obstacle in enumerate((survey.room.obstacles if survey.room else None) or ()):
        if obstacle.kind is ObstacleKind.DOOR_SWING and obstacle.x0_mm < x1_mm and obstacle.x1_mm > x0_mm and obstacle.reach_mm > 0:
            notes.contradict(
                (f"{ROOM}/obstacles/{index}", f"{BRIEF}/breast_depth_mm"),
                f"the breast, {depth_mm:g} deep, stands in the swing of a door",
                "move the breast, or hang the door the other way",
            )
        elif obstacle.kind is ObstacleKind.DOOR and obstacle.x0_mm < x1_mm and obstacle.x1_mm > x0_mm:
            notes.contradict((f"{ROOM}/obstacles/{index}", f"{BRIEF}/breast_width_mm"), "the breast covers a door", "move the breast")
    for index, radiator in enumerate((survey.services.radiators if survey.services else None) or ()):
        if radiator.x0_mm < x1_mm and radiator.x1_mm > x0_mm:
            notes.contradict(
                (f"{SERVICES}/radiators/{index}", f"{BRIEF}/breast_width_mm"), "a radiator would stand behind the breast", "move the radiator first, or the breast"
            )


def _check_positions(survey: Survey, notes: Notes) -> None:
    lists = (
        (f"{WALL}/stud_positions_mm", survey.wall.stud_positions_mm if survey.wall else None),
        (f"{CEILING}/joist_positions_mm", survey.ceiling.joist_positions_mm if survey.ceiling else None),
    )
    length_mm = survey.room.wall_length_mm if survey.room else None
    for pointer, positions in lists:
        for first, second in pairwise(sorted(positions or ())):
            if second - first < SAME_PLACE_MM:
                notes.contradict((pointer,), f"{first:g} and {second:g} are the same place", "name each position once")
            elif not 300 <= second - first <= 650:
                notes.doubt(pointer, second - first, f"a pitch of {second - first:g} is outside the usual 300 to 650")
        for position in positions or () if pointer.startswith(WALL) else ():
            if length_mm is not None and position > length_mm:
                notes.contradict((pointer, f"{ROOM}/wall_length_mm"), f"a stud at {position:g} lies beyond a wall {length_mm:g} long", "measure from the left end of the wall")


def _check_levels(survey: Survey, notes: Notes) -> None:
    floor = survey.floor
    if floor is None:
        return
    levels = [point.level_mm for point in floor.levels or ()]
    if levels and floor.fall_mm is not None and abs(max(levels) - min(levels) - floor.fall_mm) > FALL_AGREES_MM:
        notes.contradict(
            (f"{FLOOR}/fall_mm", f"{FLOOR}/levels"),
            f"a fall of {floor.fall_mm:g} where the levels differ by {max(levels) - min(levels):g}",
            "send one of them, or correct it",
        )
    notes.doubt_outside(f"{FLOOR}/fall_mm", floor.fall_mm, 0, 25)


def _check_slope(survey: Survey, notes: Notes) -> None:
    heights = [point.height_mm for point in (survey.room.heights if survey.room else None) or ()]
    slope_deg = (survey.ceiling.slope_deg if survey.ceiling else None) or 0.0
    spread_mm = max(heights) - min(heights) if heights else 0.0
    if slope_deg > 0 and len(heights) > 1 and spread_mm < 15:
        notes.contradict((f"{CEILING}/slope_deg", f"{ROOM}/heights"), f"a slope of {slope_deg:g} degrees, but heights within {spread_mm:g}", "send slope_deg 0, or the heights along the slope")
    if slope_deg > 0 or spread_mm > 150:
        notes.by_hand.append("a sloping ceiling is not laid out yet: quote this part by hand")
    elif spread_mm > 60:
        notes.doubt(f"{ROOM}/heights", spread_mm, f"heights differ by {spread_mm:g}: measure again")


def _check_obstacles(survey: Survey, notes: Notes) -> None:
    for index, obstacle in enumerate((survey.room.obstacles if survey.room else None) or ()):
        if obstacle.x1_mm <= obstacle.x0_mm or obstacle.z1_mm <= obstacle.z0_mm:
            notes.refuse(Reason.IMPOSSIBLE_VALUE, f"{ROOM}/obstacles/{index}", "its right or upper edge does not lie beyond the other", "send x0 < x1 and z0 < z1")


def _check_dates(survey: Survey, today: str, notes: Notes) -> None:
    surveyed_on = survey.site.surveyed_on if survey.site else None
    dates = [(f"{SITE}/surveyed_on", surveyed_on)] if surveyed_on else []
    dates += [(f"/survey/cleared/{index}/on", item.on) for index, item in enumerate(survey.cleared or ())]
    for pointer, day in dates:
        if not is_day(day):
            notes.refuse(Reason.IMPOSSIBLE_VALUE, pointer, f"{day} is no day of the calendar", "send a day that exists")
        elif day > today:
            notes.refuse(Reason.IMPOSSIBLE_VALUE, pointer, f"{day} lies after {today}", "send the day on which it was done")
    for index, item in enumerate(survey.cleared or ()):
        if item.code[0] not in CAUTION_LETTERS:
            notes.refuse(Reason.IMPOSSIBLE_VALUE, f"/survey/cleared/{index}/code", f"there is no caution {item.code}", "send a code of the answer's cautions")


def _check_provenance(survey: Survey, notes: Notes) -> None:
    for pointer in survey.provenance or {}:
        if pointer != "" and pointer.split("/")[1] not in {"survey", "terms", "options"}:
            notes.refuse(
                Reason.IMPOSSIBLE_VALUE, "/survey/provenance", f"{pointer!r} points to nothing in the body", "start pointers with /survey, such as /survey/wall/lining_mm"
            )
