"""Sight of the screen and the flames: advice, never a refusal (`knowledge/viewing.md`); only its cables bind."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.checks.amounts import angle, length
from service.checks.check import Check, Quantity, Skipped
from service.checks.clearances import FIRE, SCREEN
from service.engineering import sightlines
from service.rules import Source
from service.survey.room import Room
from service.survey.wishes import Connectors, CustomScreen
from service.units import MM_PER_INCH

if TYPE_CHECKING:
    from service.brief import Job
    from service.catalogue import Screen
    from service.checks.check import Result
    from service.checks.ground import Ground

PICTURE_ANGLE = "viewing.picture_angle"
SEAT_NEAR = "viewing.seat_near"
SEAT_FAR = "viewing.seat_far"
HEIGHT = "viewing.height"
TOP_EDGE = "viewing.top_edge"
SILL = "viewing.sill"
PLATE_ZONE = "viewing.plate_zone"
CABLE_ROOM = "viewing.cable_room"
FLAMES = "viewing.flames"

OF_SCREEN: Final = (PICTURE_ANGLE, SEAT_NEAR, SEAT_FAR, HEIGHT, TOP_EDGE, SILL, PLATE_ZONE, CABLE_ROOM)
EG_18: Final = Source(document="SMPTE EG 18", clause="angles, from memory")
RP_196: Final = Source(document="SMPTE 196M", edition="2003", clause="9")
USUAL: Final = Source(document="common practice, no source", clause="seats and heights of screens")
HOUSE: Final = Source(document="house choice", clause="viewing.md, sections 5 and 6")


class Sight(msgspec.Struct, frozen=True, kw_only=True):
    """One seat before the screen, and what of it is assumed."""

    seat_mm: float  # eyes to screen, level
    eye_mm: float  # eyes above the floor
    centre_mm: float  # of the picture above the floor
    width_mm: float  # of the picture
    height_mm: float
    diagonal_mm: float
    seat_assumed: str
    eyes_assumed: str  # seat and eyes


def viewing_checks(ground: Ground) -> tuple[Result, ...]:
    """Size, distance and height of the picture, its surroundings and cables, and the height of the flames."""
    screen, centre = ground.job.screen, ground.frame.levels.screen_centre_tenth_mm
    if screen is None or centre is None or not ground.frame.screen_hung:
        return (*(Skipped(code=code, why="no screen hangs in the breast") for code in OF_SCREEN), _flames(ground))
    sight = _sight(ground, screen, centre)
    return (
        _angle(ground, sight),
        _near(ground, sight),
        _far(ground, sight),
        _height(ground, sight),
        _top(ground, sight),
        _sill(ground, sight),
        _plate(ground),
        _cables(ground, screen),
        _flames(ground),
    )


def _sight(ground: Ground, screen: Screen, centre_tenth_mm: int) -> Sight:
    room, rules, defaults = ground.job.survey.room or Room(), ground.rules.viewing, ground.rules.defaults
    seat_assumed = "" if room.seat_distance_mm else f"a seat distance of {defaults.seat_distance_mm:g} mm is assumed"
    eye_assumed = "" if room.eye_height_mm else f"an eye height of {defaults.eye_height_mm:g} mm is assumed"
    shape = (rules.aspect_width_ratio, rules.aspect_height_ratio)
    return Sight(
        seat_mm=room.seat_distance_mm or defaults.seat_distance_mm,
        eye_mm=room.eye_height_mm or defaults.eye_height_mm,
        centre_mm=centre_tenth_mm / 10,
        width_mm=sightlines.picture_width_mm(screen.diagonal_in, *shape),
        height_mm=sightlines.picture_height_mm(screen.diagonal_in, *shape),
        diagonal_mm=screen.diagonal_in * MM_PER_INCH,
        seat_assumed=seat_assumed,
        eyes_assumed=", ".join(part for part in (seat_assumed, eye_assumed) if part),
    )


def _seat(sight: Sight) -> tuple[Quantity, ...]:
    return (length("d", sight.seat_mm), length("h e", sight.eye_mm), length("z c", sight.centre_mm))


def _helps(remedy: str, assumed: str, *, held: bool) -> str:
    """The remedy where it is not met, else word of what is assumed."""
    return remedy if not held else "tell the seat's distance and the height of the eyes" if assumed else ""


def _angle(ground: Ground, sight: Sight) -> Check:
    rules = ground.rules.viewing
    fills_deg, asked_deg = sightlines.picture_angle_deg(sight.width_mm, sight.seat_mm), rules.small_angle_deg
    larger_in = sightlines.diagonal_for_angle_in(
        sight.seat_mm,
        asked_deg,
        aspect_width_ratio=rules.aspect_width_ratio,
        aspect_height_ratio=rules.aspect_height_ratio,
    )
    small = "small for the room" if fills_deg < asked_deg else "too close for a living room"
    word = "comfortable" if asked_deg <= fills_deg <= rules.close_angle_deg else "close"
    word = small if not asked_deg <= fills_deg <= rules.too_close_angle_deg else word
    return Check(
        code=PICTURE_ANGLE, subject=SCREEN, binding=False, clause=EG_18, unverified=sight.seat_assumed, inputs=_seat(sight),
        says=f"from {sight.seat_mm:g} mm the picture, {sight.width_mm:.0f} mm wide, fills {fills_deg:.1f} degrees: {word}",
        demand=angle("asked", asked_deg), resistance=angle("fills", fills_deg),
        remedy=_helps(
            f"a screen of {larger_in:.1f} inches or more, or a nearer seat", sight.seat_assumed,
            held=fills_deg >= asked_deg,
        ),
    )  # fmt: skip


def _near(ground: Ground, sight: Sight) -> Check:
    asked_mm = ground.rules.viewing.least_seat_diagonal_ratio * sight.diagonal_mm
    return Check(
        code=SEAT_NEAR, subject=SCREEN, binding=False, clause=USUAL, unverified=sight.seat_assumed,
        says=f"the seat is {sight.seat_mm:g} mm from a screen of {sight.diagonal_mm:.0f} mm diagonal",
        demand=length("least", asked_mm), resistance=length("seat", sight.seat_mm),
        remedy=_helps(
            f"a seat at least {asked_mm:.0f} mm away, or a smaller screen", sight.seat_assumed,
            held=sight.seat_mm >= asked_mm,
        ),
    )  # fmt: skip


def _far(ground: Ground, sight: Sight) -> Check:
    limit_mm = ground.rules.viewing.greatest_seat_diagonal_ratio * sight.diagonal_mm
    larger_in = sight.seat_mm / ground.rules.viewing.greatest_seat_diagonal_ratio / MM_PER_INCH
    return Check(
        code=SEAT_FAR, subject=SCREEN, binding=False, clause=USUAL, unverified=sight.seat_assumed,
        says=f"the seat is {sight.seat_mm:g} mm from a screen of {sight.diagonal_mm:.0f} mm diagonal",
        demand=length("seat", sight.seat_mm), resistance=length("greatest", limit_mm),
        remedy=_helps(
            f"a screen of {larger_in:.1f} inches or more, or a nearer seat", sight.seat_assumed,
            held=sight.seat_mm <= limit_mm,
        ),
    )  # fmt: skip


def _height(ground: Ground, sight: Sight) -> Check:
    rules = ground.rules.viewing
    rise_deg = sightlines.rise_deg(sight.centre_mm, sight.eye_mm, sight.seat_mm)
    highest_mm = sightlines.height_for_rise_mm(sight.eye_mm, sight.seat_mm, rules.comfort_rise_deg)
    words = ((rules.good_rise_deg, "good"), (rules.comfort_rise_deg, "acceptable"), (rules.high_rise_deg, "high for the neck"))
    word = next((word for limit_deg, word in words if rise_deg <= limit_deg), "very high")
    lower_mm = sight.centre_mm - highest_mm
    remedy = f"the screen lower by {lower_mm:.0f} mm, or a seat further away; a tilting bracket does not help the neck"
    return Check(
        code=HEIGHT, subject=SCREEN, binding=False, clause=RP_196, unverified=sight.eyes_assumed, inputs=_seat(sight),
        says=f"the centre is {rise_deg:.1f} degrees above the eyes: {word}; up to {highest_mm:.0f} mm above the floor is comfort",
        demand=angle("rise", rise_deg), resistance=angle("comfort", rules.comfort_rise_deg),
        remedy=_helps(remedy, sight.eyes_assumed, held=rise_deg <= rules.comfort_rise_deg),
    )  # fmt: skip


def _top(ground: Ground, sight: Sight) -> Check:
    limit_deg = ground.rules.viewing.top_rise_deg
    top_mm = sight.centre_mm + sight.height_mm / 2
    rise_deg = sightlines.rise_deg(top_mm, sight.eye_mm, sight.seat_mm)
    lower_mm = top_mm - sightlines.height_for_rise_mm(sight.eye_mm, sight.seat_mm, limit_deg)
    return Check(
        code=TOP_EDGE, subject=SCREEN, binding=False, clause=EG_18, unverified=sight.eyes_assumed, inputs=_seat(sight),
        says=f"the top of the picture is {rise_deg:.1f} degrees above the eyes",
        demand=angle("rise", rise_deg), resistance=angle("greatest", limit_deg),
        remedy=_helps(
            f"the screen lower by {lower_mm:.0f} mm, or a seat further away", sight.eyes_assumed,
            held=rise_deg <= limit_deg,
        ),
    )  # fmt: skip


def _sill(ground: Ground, sight: Sight) -> Check:
    """What the sill of the recess hides of the lower edge, where remote control and sound have their window."""
    limit_mm, sill = ground.rules.viewing.hidden_window_mm, ground.frame.levels.recess_sill_tenth_mm or 0
    sill_mm = (sill + ground.job.lining.thickness_tenth_mm) / 10
    rise_deg = sightlines.rise_deg(sill_mm, sight.eye_mm, sight.seat_mm)
    shown_mm = sightlines.hidden_mm(ground.job.set_back_tenth_mm / 10, rise_deg)
    hidden_mm = max(shown_mm - ground.job.gaps.bottom_tenth_mm / 10, 0.0)
    return Check(
        code=SILL, subject=SCREEN, binding=False, clause=HOUSE, unverified=sight.eyes_assumed, inputs=_seat(sight),
        says=f"the sill of the recess hides {hidden_mm:.0f} mm of the screen from the seat",
        demand=length("hidden", hidden_mm), resistance=length("greatest", limit_mm),
        remedy=_helps(
            f"a gap under the screen larger by {hidden_mm - limit_mm:.0f} mm", sight.eyes_assumed,
            held=hidden_mm <= limit_mm,
        ),
    )  # fmt: skip


def _plate(ground: Ground) -> Result:
    recess, bracket = ground.frame.sizes.recess, ground.job.bracket
    if recess is None or bracket is None:
        return Skipped(code=PLATE_ZONE, why="no bracket is chosen")
    asked_mm = bracket.plate_width_mm + 2 * ground.rules.viewing.plate_zone_mm
    there_mm = recess.framing_width_tenth_mm / 10
    return Check(
        code=PLATE_ZONE, subject="screen bracket", binding=False, clause=HOUSE,
        says=f"the backboard is {there_mm:g} mm wide behind a plate of {bracket.plate_width_mm:g}",
        demand=length("asked", asked_mm), resistance=length("there", there_mm),
        remedy="" if there_mm >= asked_mm else f"a recess wider by {asked_mm - there_mm:g} mm, so that the plate may be shifted",
    )  # fmt: skip


def _cables(ground: Ground, screen: Screen) -> Check:
    """Room behind the body for plugs and cables: the bracket's depth, or what was left for them."""
    asked_mm = _plug_room_mm(ground)
    recess = ground.frame.sizes.recess
    deep_mm = recess.depth_tenth_mm / 10 if recess else 0.0
    there_mm = deep_mm - ground.job.set_back_tenth_mm / 10 - screen.body_depth_mm
    return Check(
        code=CABLE_ROOM, subject=SCREEN, clause=USUAL, says=f"{there_mm:g} mm are free behind the screen for its plugs",
        demand=length("asked", asked_mm), resistance=length("there", there_mm), inputs=(length("recess depth", deep_mm),),
        remedy="" if there_mm >= asked_mm else f"cable_room_mm of at least {asked_mm:g}",
    )  # fmt: skip


def _plug_room_mm(ground: Ground) -> float:
    job: Job = ground.job
    own = job.survey.brief.screen if isinstance(job.survey.brief.screen, CustomScreen) else None
    if own is None or own.connectors is not Connectors.REAR:
        return ground.rules.frame.cable_room_mm
    return own.straight_plug_length_mm or ground.rules.frame.straight_plug_room_mm


def _flames(ground: Ground) -> Check:
    limit_mm = ground.rules.viewing.flame_centre_mm
    there_mm = ground.frame.levels.platform_tenth_mm / 10 + ground.job.appliance.body_height_mm / 2
    return Check(
        code=FLAMES, subject=FIRE, binding=False, clause=USUAL,
        says=f"the middle of the fire is {there_mm:g} mm above the floor",
        demand=length("middle", there_mm), resistance=length("seated eyes", limit_mm),
        remedy="" if there_mm <= limit_mm else f"a platform lower by {there_mm - limit_mm:g} mm",
    )  # fmt: skip
