"""Contradictions and impossible values of a survey, all of them at once (`knowledge/survey.md`, sections 3 to 15)."""

from __future__ import annotations

import datetime
from itertools import pairwise
from typing import TYPE_CHECKING

from service.brief.deal import is_day
from service.brief.provenance import check_provenance
from service.errors import Reason
from service.survey.appliance import OpenEnds
from service.survey.services import SupplyWanted

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.catalogue import Appliance
    from service.survey.survey import Survey

ROOM, WALL, CEILING, FLOOR = "/survey/room", "/survey/wall", "/survey/ceiling", "/survey/floor"
BRIEF, SERVICES, SITE = "/survey/brief", "/survey/services", "/survey/site"
CAUTION_LETTERS = "HESBVWM"  # sections of cautions.md
# Limits: survey.md, sections 3 to 6, 9 and 15; common practice, no source.
SAME_PLACE_MM = 10.0
USUAL_PITCH_MM = (300.0, 650.0)
FALL_AGREES_MM = 3.0
GREATEST_FALL_MM = 60.0
DOUBTFUL_FALL_MM = 25.0
FLAT_SPREAD_MM = 15.0
DOUBTFUL_SPREAD_MM = 60.0
SLOPING_SPREAD_MM = 150.0
SURVEY_HOLDS_DAYS = 90


def check_open_ends(wanted: OpenEnds | None, appliance: Appliance, notes: Notes) -> OpenEnds:
    """The open ends of the breast; a wish that the fire cannot follow is a contradiction."""
    allowed = _allowed_ends(appliance)
    if wanted is None and len(allowed) > 1:
        return notes.choose(f"{BRIEF}/open_ends", None, allowed[0], "which end shows glass")
    if wanted is not None and wanted not in allowed:
        notes.contradict(
            (f"{BRIEF}/open_ends", f"{BRIEF}/appliance"),
            detail=f"open_ends {wanted.value}, but this fire shows glass at {appliance.open_ends_count} ends",
            remedy=f"send {' or '.join(end.value for end in allowed)}, or another fire",
        )
    return wanted if wanted in allowed else allowed[0]


def _allowed_ends(appliance: Appliance) -> tuple[OpenEnds, ...]:
    if appliance.open_ends_count == 1:
        one = {"left": (OpenEnds.LEFT,), "right": (OpenEnds.RIGHT,)}
        return one.get(appliance.open_end or "either", (OpenEnds.RIGHT, OpenEnds.LEFT))
    return (OpenEnds.BOTH,) if appliance.open_ends_count else (OpenEnds.NONE,)


def check_supply(survey: Survey, appliance: Appliance, notes: Notes) -> None:
    """A fire for fixed wiring has no plug to put into a socket in reach."""
    wanted = survey.services.supply_wanted if survey.services else None
    if wanted is SupplyWanted.PLUG_IN_REACH and appliance.connection == "hard_wired":
        notes.contradict(
            (f"{SERVICES}/supply_wanted", f"{BRIEF}/appliance"),
            detail="plug_in_reach, but this fire is made for fixed wiring and has no plug",
            remedy="send fused_connection or new_circuit, or another fire",
        )


def check_survey(survey: Survey, today: str, notes: Notes) -> None:
    """Contradictions and impossible values that need no design."""
    _check_studs(survey, notes)
    _check_points(survey, notes)
    _check_joists(survey, notes)
    _check_levels(survey, notes)
    _check_slope(survey, notes)
    _check_rectangles(survey, notes)
    _check_dates(survey, today, notes)
    _check_cleared(survey, notes)
    check_provenance(survey, notes)


def _check_studs(survey: Survey, notes: Notes) -> None:
    pointer, positions_mm = f"{WALL}/stud_positions_mm", (survey.wall.stud_positions_mm if survey.wall else None) or ()
    length_mm = survey.room.wall_length_mm if survey.room else None
    _check_pitch(pointer, positions_mm, notes)
    for position_mm in positions_mm:
        if length_mm is not None and position_mm > length_mm:
            notes.contradict(
                (pointer, f"{ROOM}/wall_length_mm"),
                detail=f"a stud at {position_mm:g} lies beyond a wall {length_mm:g} long",
                remedy="measure from the left end of the wall",
            )


def _check_points(survey: Survey, notes: Notes) -> None:
    """Heights and levels are measured in front of the wall, so none lies beyond its end."""
    length_mm = survey.room.wall_length_mm if survey.room else None
    heights_mm = [point.x_mm for point in (survey.room.heights if survey.room else None) or ()]
    levels_mm = [point.x_mm for point in (survey.floor.levels if survey.floor else None) or ()]
    for pointer, places_mm in ((f"{ROOM}/heights", heights_mm), (f"{FLOOR}/levels", levels_mm)):
        for index, x_mm in enumerate(places_mm):
            if length_mm is not None and x_mm > length_mm:
                notes.contradict(
                    (f"{pointer}/{index}/x_mm", f"{ROOM}/wall_length_mm"),
                    detail=f"a point at {x_mm:g} lies beyond a wall {length_mm:g} long",
                    remedy="measure from the left end of the wall",
                )


def _check_joists(survey: Survey, notes: Notes) -> None:
    positions_mm = (survey.ceiling.joist_positions_mm if survey.ceiling else None) or ()
    _check_pitch(f"{CEILING}/joist_positions_mm", positions_mm, notes)


def _check_pitch(pointer: str, positions_mm: tuple[float, ...], notes: Notes) -> None:
    low_mm, high_mm = USUAL_PITCH_MM
    for first_mm, second_mm in pairwise(sorted(positions_mm)):
        pitch_mm = second_mm - first_mm
        if pitch_mm < SAME_PLACE_MM:
            detail = f"{first_mm:g} and {second_mm:g} are the same place"
            notes.contradict((pointer,), detail=detail, remedy="name each position once")
        elif not low_mm <= pitch_mm <= high_mm:
            notes.doubt(pointer, pitch_mm, f"a pitch of {pitch_mm:g} is outside the usual {low_mm:g} to {high_mm:g}")


def _check_levels(survey: Survey, notes: Notes) -> None:
    levels_mm = [point.level_mm for point in (survey.floor.levels if survey.floor else None) or ()]
    if not levels_mm:
        return
    there_mm, sent_mm = max(levels_mm) - min(levels_mm), survey.floor.fall_mm if survey.floor else None
    if sent_mm is not None and abs(there_mm - sent_mm) > FALL_AGREES_MM:
        notes.contradict(
            (f"{FLOOR}/fall_mm", f"{FLOOR}/levels"),
            detail=f"a fall of {sent_mm:g} where the levels differ by {there_mm:g}",
            remedy="send one of them, or correct it",
        )
    if there_mm > GREATEST_FALL_MM:
        notes.refuse(
            Reason.IMPOSSIBLE_VALUE,
            f"{FLOOR}/levels",
            detail=f"levels differ by {there_mm:g}; a breast stands on a floor that falls by {GREATEST_FALL_MM:g} at most",
            remedy="measure again, or have the floor repaired first",
        )
    elif there_mm > DOUBTFUL_FALL_MM:
        notes.doubt(f"{FLOOR}/levels", there_mm, f"levels differ by {there_mm:g}: please confirm")


def _check_slope(survey: Survey, notes: Notes) -> None:
    heights_mm = [point.height_mm for point in (survey.room.heights if survey.room else None) or ()]
    slope_deg = (survey.ceiling.slope_deg if survey.ceiling else None) or 0.0
    spread_mm = max(heights_mm) - min(heights_mm) if heights_mm else 0.0
    if slope_deg > 0 and len(heights_mm) > 1 and spread_mm < FLAT_SPREAD_MM:
        notes.contradict(
            (f"{CEILING}/slope_deg", f"{ROOM}/heights"),
            detail=f"a slope of {slope_deg:g} degrees, but heights within {spread_mm:g}",
            remedy="send slope_deg 0, or the heights along the slope",
        )
    if slope_deg > 0 or spread_mm > SLOPING_SPREAD_MM:
        notes.by_hand.append("a sloping ceiling is not laid out yet: quote this part by hand")
    elif spread_mm > DOUBTFUL_SPREAD_MM:
        notes.doubt(f"{ROOM}/heights", spread_mm, f"heights differ by {spread_mm:g}: measure again")


def _check_rectangles(survey: Survey, notes: Notes) -> None:
    obstacles = (survey.room.obstacles if survey.room else None) or ()
    radiators = (survey.services.radiators if survey.services else None) or ()
    crossed = [
        f"{ROOM}/obstacles/{index}" for index, one in enumerate(obstacles) if one.x1_mm <= one.x0_mm or one.z1_mm <= one.z0_mm
    ]
    crossed += [f"{SERVICES}/radiators/{index}" for index, one in enumerate(radiators) if one.x1_mm <= one.x0_mm]
    for pointer in crossed:
        notes.refuse(
            Reason.IMPOSSIBLE_VALUE,
            pointer,
            detail="its right or upper edge does not lie beyond the other",
            remedy="send x0 < x1 and z0 < z1",
        )


def _check_dates(survey: Survey, today: str, notes: Notes) -> None:
    surveyed_on = survey.site.surveyed_on if survey.site else None
    dates = [(f"{SITE}/surveyed_on", surveyed_on)] if surveyed_on else []
    dates += [(f"/survey/cleared/{index}/on", item.on) for index, item in enumerate(survey.cleared or ())]
    for pointer, day in dates:
        if not is_day(day):
            detail = f"{day} is no day of the calendar"
            notes.refuse(Reason.IMPOSSIBLE_VALUE, pointer, detail=detail, remedy="send a day that exists")
        elif is_day(today) and day > today:
            remedy = "send the day on which it was done"
            notes.refuse(Reason.IMPOSSIBLE_VALUE, pointer, detail=f"{day} lies after {today}", remedy=remedy)
    if surveyed_on and is_day(surveyed_on) and is_day(today) and _days_between(surveyed_on, today) > SURVEY_HOLDS_DAYS:
        notes.doubt(f"{SITE}/surveyed_on", surveyed_on, f"measured more than {SURVEY_HOLDS_DAYS} days ago: measure again")


def _check_cleared(survey: Survey, notes: Notes) -> None:
    for index, item in enumerate(survey.cleared or ()):
        if item.code[0] not in CAUTION_LETTERS:
            detail, remedy = f"there is no caution {item.code}", "send a code of the answer's cautions"
            notes.refuse(Reason.IMPOSSIBLE_VALUE, f"/survey/cleared/{index}/code", detail=detail, remedy=remedy)


def _days_between(first: str, second: str) -> int:
    return (datetime.date.fromisoformat(second) - datetime.date.fromisoformat(first)).days
