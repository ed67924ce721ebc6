"""The way in, raising, lifting, work at height, and taking fire and screen out again (`knowledge/handling.md`).

Lifting is a filter, not a limit: it advises help, which the bill and the hours hold.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from service.checks.amounts import length, mass
from service.checks.check import Check, Quantity, Skipped
from service.checks.clearances import FIRE, SCREEN
from service.checks.handling import boards_for_two, count_lifts, one_person_kg, tilt_reach_mm, tilt_room_mm, unit_mass_kg
from service.checks.masses import panel_kg
from service.engineering import lifting, passing
from service.frame import Unit
from service.rules import Source
from service.survey.appliance import OpenEnds
from service.survey.site import RouteKind, Site

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground
    from service.survey.site import RoutePart

BAR = "handling.bar_way_in"
BOARD = "handling.board_way_in"
CARTON = "handling.carton_way_in"
TILT = "handling.tilt_up"
LIFT = "handling.lift"
LIFT_END = "handling.lift_end"
BOARDS = "handling.boards"
HEIGHT = "handling.work_at_height"
REPLACEMENT = "handling.replacement"

LADDER: Final = Source(document="geometry", clause="a long piece round a right-angled corner")
GEOMETRY: Final = Source(document="geometry")
HOUSE: Final = Source(document="house choice", clause="handling.md, sections 2, 3 and 5")
FILTER: Final = Source(document="HSE L23", clause="figure of the lift filter, from memory")
AT_HEIGHT: Final = Source(document="Work at Height Regulations 2005", clause="from memory")
TURNS: Final = frozenset({RouteKind.CORRIDOR, RouteKind.LANDING})  # where a piece goes round a corner
PACKING_MM = 150.0  # of a carton, beyond the body each way: survey.md, section 9, common practice, no source
FLOOR_ZONE = "below_mid_lower_leg"


def way_in_checks(ground: Ground) -> tuple[Result, ...]:
    """Whether the longest bar, the largest board and the cartons get into the room."""
    return (_bar(ground), _board(ground), _carton(ground))


def lifting_checks(ground: Ground) -> tuple[Result, ...]:
    """Raising the frame, what is lifted, boards for two, work at height."""
    return (_tilt(ground), *_lifts(ground), _lift_end(ground), _boards(ground), _height(ground))


def replacement_checks(ground: Ground) -> tuple[Result, ...]:
    """Whether fire and screen come out again without breaking the face."""
    return (_fire_out(ground), _screen_out(ground))


def corner_mm(route: tuple[RoutePart, ...], thick_mm: float, margin_mm: float) -> float | None:
    """Longest piece, carried level, that turns every corner of the way in; None where no corner was told.

    Neighbours in the list of which one is a corridor or a landing are taken to meet at a right angle: the safe side.
    """
    corners = [(one, two) for one, two in pairwise(route) if {one.kind, two.kind} & TURNS]
    passing_mm = [
        passing.passing_length_mm(one.width_mm - 2 * margin_mm, two.width_mm - 2 * margin_mm, thick_mm) for one, two in corners
    ]
    return min(passing_mm, default=None)


def _site(ground: Ground) -> Site:
    return ground.job.survey.site or Site()


def _route_mm(ground: Ground, told_mm: float, thick_mm: float) -> tuple[float, bool]:
    """What the way in lets through: as told, or less where a corner of the route is narrower; and whether a corner governs."""
    turned_mm = corner_mm(_site(ground).route or (), thick_mm, ground.rules.access.corner_margin_mm)
    return (told_mm, False) if turned_mm is None or turned_mm >= told_mm else (turned_mm, True)


def _bar(ground: Ground) -> Check:
    """Longest member as it is cut, with what is added for the measure; longer stock is cut before it comes in."""
    allowance_mm, job = ground.job.allowance_mm, ground.job
    longest = max(ground.frame.members, key=lambda one: (one.cut_length_mm, one.mark))
    asked_mm = float(longest.cut_length_mm + (allowance_mm if longest.cut_when.value == "after_measure" else 0))
    told_mm = _site(ground).longest_length_mm
    there_mm, by_corner = _route_mm(
        ground, told_mm or job.timber.stock[-1].length_tenth_mm / 10, job.timber.thickness_tenth_mm / 10
    )
    silent = "" if told_mm is not None else "the longest bar that passes the way in is assumed"
    why = "a corner of the way in" if by_corner else "the way in"
    return Check(
        code=BAR, subject=longest.mark, clause=LADDER, unverified=silent,
        says=f"{why} lets bars of {there_mm:.0f} mm through; the longest piece is {asked_mm:g} mm",
        demand=length("longest piece", asked_mm), resistance=length("passes", there_mm),
        remedy=f"pieces of at most {there_mm:.0f} mm, joined in the room" if asked_mm > there_mm
        else "measure the longest bar that passes" if silent else "",
    )  # fmt: skip


def _board(ground: Ground) -> Check:
    job, site = ground.job, _site(ground)
    largest = max(ground.frame.panels, key=lambda one: (max(one.cut_width_mm, one.cut_height_mm), one.mark))
    asked_mm = float(max(largest.cut_width_mm, largest.cut_height_mm))
    told = site.largest_board_length_mm is not None
    there_mm, by_corner = _route_mm(ground, job.largest_board_length_tenth_mm / 10, largest.thickness_tenth_mm / 10)
    why = "a corner of the way in" if by_corner else "the way in"
    silent = "" if told else "the largest board that passes the way in is assumed"
    return Check(
        code=BOARD, subject=largest.mark, clause=LADDER, unverified=silent,
        says=f"{why} lets boards of {there_mm:.0f} mm through, carried on edge; the longest panel is {asked_mm:g} mm",
        demand=length("longest panel", asked_mm), resistance=length("passes", there_mm),
        remedy=f"panels of at most {there_mm:.0f} mm: one more joint" if asked_mm > there_mm
        else "measure the largest board that passes" if silent else "",
    )  # fmt: skip


def _carton(ground: Ground) -> Check:
    """The fire in its carton, carried end on through the narrowest door."""
    body, told_mm = ground.job.appliance, _site(ground).narrowest_door_mm
    parts = [part.width_mm for part in _site(ground).route or () if part.kind is RouteKind.DOOR]
    door_mm = min((told_mm or ground.rules.defaults.narrowest_door_mm, *parts))
    asked_mm = min(body.body_depth_mm, body.body_height_mm) + PACKING_MM
    there_mm = door_mm - ground.rules.access.door_margin_mm
    silent = "" if told_mm is not None or parts else f"a narrowest door of {door_mm:g} mm is assumed"
    return Check(
        code=CARTON, subject=FIRE, clause=HOUSE, unverified=silent,
        says=f"the carton of the fire, about {asked_mm:g} mm on its small side, goes through a door of {door_mm:g} mm",
        demand=length("carton", asked_mm), resistance=length("door less margin", there_mm),
        remedy="unpack the fire before the door" if asked_mm > there_mm else "measure the narrowest door" if silent else "",
    )  # fmt: skip


def _tilt(ground: Ground) -> Result:
    frame = ground.frame
    if not frame.full_height:
        return Skipped(code=TILT, why="a part-height frame is raised well under the ceiling")
    reach_mm, room_mm = tilt_reach_mm(frame), tilt_room_mm(ground.job, ground.rules)
    depth_mm = frame.sizes.frame_depth_tenth_mm / 10
    tallest_mm = passing.tilting_height_mm(room_mm, depth_mm)
    return Check(
        code=TILT, subject="upper frame", binding=False, clause=GEOMETRY,
        says=f"raised whole, its far corner comes {reach_mm:.0f} mm high; the room allows {room_mm:g} mm",
        demand=length("reach", reach_mm), resistance=length("room", room_mm), inputs=(length("depth", depth_mm),),
        remedy="" if reach_mm <= room_mm else f"build it in place by ladders; {tallest_mm:.0f} mm would turn up",
    )  # fmt: skip


def _lifts(ground: Ground) -> tuple[Check, ...]:
    words = {"none": "", "third_person": "a third person", "lifter": "a lifter"}
    return tuple(
        Check(
            code=LIFT, subject=lift.what, binding=False, clause=FILTER,
            says=f"the {lift.what} weighs {lift.mass_kg:g} kg; two people take {lift.two_people_kg:g} kg at {lift.zone} height",
            demand=mass("mass", lift.mass_kg), resistance=mass("two people", lift.two_people_kg),
            inputs=(mass("one person", lift.one_person_kg), mass("three people", lift.three_people_kg)),
            remedy=words[lift.help] if lift.mass_kg > lift.two_people_kg else "",
        )
        for lift in count_lifts(ground.frame, ground.job, ground.rules)
    )  # fmt: skip


def _lift_end(ground: Ground) -> Check:
    """Half of the frame, from the floor, as it is raised by one end."""
    rules = ground.rules
    end_kg = lifting.end_mass_kg(unit_mass_kg(ground.frame, Unit.UPPER, rules))
    one_kg = one_person_kg(FLOOR_ZONE, rules) * rules.handling.awkward_load_ratio
    two_kg = lifting.team_mass_kg((one_kg, one_kg))
    return Check(
        code=LIFT_END, subject="upper frame", binding=False, clause=FILTER,
        says=f"raised by one end the frame weighs {end_kg:.1f} kg there; two people take {two_kg:.1f} kg from the floor",
        demand=mass("end", end_kg), resistance=mass("two people", two_kg),
        remedy="blocks under its upper end before it is raised, or a lifter" if end_kg > two_kg else "",
    )  # fmt: skip


def _boards(ground: Ground) -> Result:
    marks = boards_for_two(ground.frame, ground.job, ground.rules)
    if not marks:
        return Skipped(code=BOARDS, why="one person carries and fixes every board")
    two = [panel for panel in ground.frame.panels if panel.mark in marks]
    heaviest = max(two, key=lambda one: (panel_kg(one, ground.job), one.mark))
    mass_kg = panel_kg(heaviest, ground.job)
    one_kg = one_person_kg("shoulder_to_elbow", ground.rules) * ground.rules.handling.awkward_load_ratio
    two_kg = lifting.team_mass_kg((one_kg, one_kg))
    return Check(
        code=BOARDS, subject=heaviest.mark, binding=False, clause=FILTER,
        says=f"two people carry and fix {', '.join(marks)}; the heaviest weighs {mass_kg:.1f} kg",
        demand=mass("mass", mass_kg), resistance=mass("two people", two_kg),
        remedy="a board lifter, or one more joint" if mass_kg > two_kg else "",
    )  # fmt: skip


def _height(ground: Ground) -> Result:
    if not ground.frame.full_height:
        return Skipped(code=HEIGHT, why="nothing is fixed to the ceiling")
    clear_mm, limit_mm = ground.job.clear_height_tenth_mm / 10, ground.rules.access.platform_height_mm
    return Check(
        code=HEIGHT, subject="ceiling fixings", binding=False, clause=AT_HEIGHT,
        says=f"fixings at the ceiling are made {clear_mm:g} mm above the floor",
        demand=length("ceiling", clear_mm), resistance=length("from steps", limit_mm),
        remedy="hire a platform for this work" if clear_mm > limit_mm else "",
    )  # fmt: skip


def _fire_out(ground: Ground) -> Check:
    """The fire is drawn forward out of its opening: the board's edge lets the body pass, glass ends are open anyway."""
    job, sizes = ground.job, ground.frame.sizes
    wide_mm, high_mm = job.appliance.body_width_mm, job.appliance.body_height_mm
    if job.open_ends is not OpenEnds.NONE:  # the body stands past the frame at an open end by its inset
        wide_mm -= job.inset_tenth_mm / 10 * (2 if job.open_ends is OpenEnds.BOTH else 1)
    free = min(sizes.opening_width_tenth_mm / 10 / wide_mm, sizes.opening_height_tenth_mm / 10 / high_mm)
    return Check(
        code=REPLACEMENT, subject=FIRE, clause=HOUSE, says="the fire is drawn forward out of its opening",
        demand=Quantity(symbol="body", value=1.0, unit="ratio"), resistance=Quantity(symbol="opening", value=free, unit="ratio"),
        inputs=(length("body width", wide_mm), length("body height", high_mm)),
        remedy="" if free >= 1.0 else f"an opening of at least {wide_mm:g} x {high_mm:g} mm",
    )  # fmt: skip


def _screen_out(ground: Ground) -> Result:
    recess, screen = ground.frame.sizes.recess, ground.job.screen
    if recess is None or screen is None or not ground.frame.screen_hung:
        return Skipped(code=REPLACEMENT, why="no screen hangs in a recess")
    lift_mm = (ground.job.bracket.lift_height_mm if ground.job.bracket else None) or 0.0
    there_mm = min(ground.job.gaps.top_tenth_mm / 10, (recess.clear_height_tenth_mm / 10) - screen.body_height_mm)
    return Check(
        code=REPLACEMENT, subject=SCREEN, clause=HOUSE,
        says=f"the screen is lifted {lift_mm:g} mm off its bracket; {there_mm:g} mm are free over it",
        demand=length("lift", lift_mm), resistance=length("there", there_mm),
        remedy="" if there_mm >= lift_mm else f"a gap over the screen of at least {lift_mm:g} mm",
    )  # fmt: skip
