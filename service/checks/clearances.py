"""The makers' clearances round fire and screen: what the manuals ask, what the design leaves (`knowledge/heat.md`, 2, 3 and 5).

A maker's figure that is missing is never invented: the check says what is there and stays provisional.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.amounts import length
from service.checks.check import Check, Skipped
from service.frame import Layer
from service.rules import Source
from service.survey.appliance import CustomAppliance, OpenEnds
from service.survey.fields import Answer
from service.survey.wishes import ExtraKind

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

CLEAR_ABOVE = "heat.clear_above"
CLEAR_BESIDE = "heat.clear_beside"
CLEAR_BEHIND = "heat.clear_behind"
CLEAR_FRONT = "heat.clear_front"
OUTLET_TO_SCREEN = "heat.outlet_to_screen"
OUTLET_TO_SCREEN_USUAL = "heat.outlet_to_screen_usual"
OUTLET_TO_SHELF = "heat.outlet_to_shelf"
SCREEN_GAP = "heat.screen_gap"
ZONE_BOARD = "heat.zone_board"
ZONE_TIMBER = "heat.zone_timber"

FIRE, SCREEN = "fire", "screen"
MANUAL: Final = Source(document="manual of the fire", clause="clearances")
SCREEN_SHEET: Final = Source(document="sheet of the screen", clause="free air")
USUAL: Final = Source(document="common practice, no source", clause="warm air under a screen")
ZONE_BOARDS: Final = frozenset({"cement_board", "calcium_silicate"})  # heat.md, section 2
FACE_OUTLETS: Final = frozenset({"front_top", "top_front"})
ON_THE_FRONT: Final = frozenset({ExtraKind.SHELF, ExtraKind.BEAM})


def clearance_checks(ground: Ground) -> tuple[Result, ...]:
    """Gaps over, beside, behind and before the fire; outlet to screen and shelf; free air round the screen."""
    return (
        _above(ground),
        _beside(ground),
        _behind(ground),
        _front(ground),
        *_to_screen(ground),
        _to_shelf(ground),
        _air(ground),
    )


def zone_checks(ground: Ground) -> tuple[Result, ...]:
    """What may burn inside the zone that the maker keeps free of it, over the opening and beside it."""
    appliance, own = ground.job.appliance, own_figures(ground)
    above_mm = appliance.non_combustible_above_mm or 0.0
    side_mm = (own.non_combustible_side_mm if own else None) or 0.0
    if above_mm <= 0 and side_mm <= 0:
        why = "the manual names no zone in which nothing may burn"
        return tuple(Skipped(code=code, why=why) for code in (ZONE_BOARD, ZONE_TIMBER))
    boards = [_zone_above(ground, above_mm)] if above_mm > 0 else []
    if side_mm > 0 and ground.job.open_ends is not OpenEnds.BOTH:
        boards.append(_zone_board(ground, "boards beside the opening", side_mm, _face_width_mm(ground)))
    return (*boards, _zone_timber(ground, max(above_mm, side_mm), own))


def own_figures(ground: Ground) -> CustomAppliance | None:
    """The manual as the request carries it; None where the fire comes from the catalogue."""
    told = ground.job.survey.brief.appliance
    return told if isinstance(told, CustomAppliance) else None


def outlet_to_screen_mm(ground: Ground) -> float | None:
    """From the outlet to the underside of the screen's body; None where the maker does not say where the outlet is."""
    job, sill = ground.job, ground.frame.levels.recess_sill_tenth_mm
    if job.appliance.outlet_height_mm is None or sill is None:
        return None
    screen = sill + job.lining.thickness_tenth_mm + job.gaps.bottom_tenth_mm
    return (screen - ground.frame.levels.platform_tenth_mm) / 10 - job.appliance.outlet_height_mm


def _gap(code: str, says: str, there_mm: float, *, asked_mm: float | None, house_mm: float) -> Check:
    """A gap that the maker asks, or the house's where the manual is silent."""
    asked = house_mm if asked_mm is None else asked_mm
    silent = "" if asked_mm is not None else f"the manual states no such gap; {house_mm:g} mm is assumed"
    remedy = f"ask the maker for this gap; {there_mm:g} mm is there" if silent else ""
    return Check(
        code=code, subject=FIRE, says=says, demand=length("asked", asked), resistance=length("there", there_mm), clause=MANUAL,
        unverified=silent, remedy=remedy if there_mm >= asked else f"a gap of at least {asked:g} mm",
    )  # fmt: skip


def _above(ground: Ground) -> Check:
    levels, job = ground.frame.levels, ground.job
    there_mm = (levels.appliance_top_tenth_mm - levels.platform_tenth_mm) / 10 - job.appliance.body_height_mm
    says = f"{there_mm:g} mm are free over the body of the fire"
    return _gap(CLEAR_ABOVE, says, there_mm, asked_mm=job.appliance.clear_above_mm, house_mm=ground.rules.frame.gap_over_fire_mm)


def _beside(ground: Ground) -> Result:
    job = ground.job
    if job.open_ends is OpenEnds.BOTH:
        return Skipped(code=CLEAR_BESIDE, why="the fire shows glass at both ends, so no frame stands beside its body")
    free_mm = ground.frame.sizes.opening_width_tenth_mm / 10 - job.appliance.body_width_mm
    one_end = job.open_ends is not OpenEnds.NONE
    there_mm = round(free_mm + job.inset_tenth_mm / 10 if one_end else free_mm / 2, 1)
    says = f"{there_mm:g} mm are free beside the body of the fire"
    return _gap(
        CLEAR_BESIDE, says, there_mm, asked_mm=job.appliance.clear_side_mm, house_mm=ground.rules.frame.gap_beside_fire_mm
    )


def _behind(ground: Ground) -> Check:
    job = ground.job
    there_mm = round(ground.frame.sizes.finished_depth_tenth_mm / 10 - job.appliance.body_depth_mm, 1)
    says = f"{there_mm:g} mm are free behind the body of the fire, its front in the finished face"
    return _gap(CLEAR_BEHIND, says, there_mm, asked_mm=job.appliance.clear_rear_mm, house_mm=ground.rules.frame.rear_clearance_mm)


def _front(ground: Ground) -> Result:
    asked_mm = ground.job.appliance.clear_front_mm
    if asked_mm is None:
        return Check(
            code=CLEAR_FRONT, subject=FIRE, says="how far furniture keeps from the fire is the maker's to say",
            demand=length("asked", 0.0), resistance=None, clause=MANUAL, unverified="the manual states no distance to furniture",
            remedy="ask the maker for the clear distance before the fire",
        )  # fmt: skip
    depth_mm = ground.job.survey.room.depth_mm if ground.job.survey.room else None
    if depth_mm is None:
        why = f"the depth of the room was not told; {asked_mm:g} mm before the fire stay clear (caution H14)"
        return Skipped(code=CLEAR_FRONT, why=why)
    there_mm = depth_mm - ground.frame.sizes.finished_depth_tenth_mm / 10
    return Check(
        code=CLEAR_FRONT, subject=FIRE, says=f"{there_mm:g} mm lie between the fire and the opposite wall",
        demand=length("asked", asked_mm), resistance=length("there", there_mm), clause=MANUAL,
        inputs=(length("room depth", depth_mm),),
        remedy="" if there_mm >= asked_mm else f"a breast less deep by {asked_mm - there_mm:g} mm, or another wall",
    )  # fmt: skip


def _to_screen(ground: Ground) -> tuple[Result, ...]:
    appliance = ground.job.appliance
    if not ground.frame.screen_hung or appliance.outlet_position == "none":
        why = "no screen hangs over the fire" if not ground.frame.screen_hung else "the fire blows no warm air"
        return (Skipped(code=OUTLET_TO_SCREEN, why=why), Skipped(code=OUTLET_TO_SCREEN_USUAL, why=why))
    asked_mm, there_mm = appliance.outlet_to_screen_least_mm, outlet_to_screen_mm(ground)
    if asked_mm is None or there_mm is None:
        lacks = "the height of the outlet" if there_mm is None else "the least distance from outlet to screen"
        there = () if there_mm is None else (length("there", there_mm),)
        silent = Check(
            code=OUTLET_TO_SCREEN, subject=SCREEN, says="whether warm air reaches the screen is the maker's to say",
            demand=length("asked", asked_mm or 0.0), resistance=None, clause=MANUAL, inputs=there,
            unverified=f"the manual does not state {lacks}", remedy=f"ask the maker for {lacks}",
        )  # fmt: skip
        return (silent, _usual(ground, there_mm))
    says = f"{there_mm:g} mm lie between the outlet and the underside of the screen"
    short_mm = asked_mm - there_mm
    stated = Check(
        code=OUTLET_TO_SCREEN, subject=SCREEN, says=says, demand=length("asked", asked_mm), resistance=length("there", there_mm),
        clause=MANUAL, remedy=f"an upstand higher by {short_mm:g} mm" if short_mm > 0 else "",
    )  # fmt: skip
    return (stated, Skipped(code=OUTLET_TO_SCREEN_USUAL, why="the maker's own distance governs"))


def _usual(ground: Ground, there_mm: float | None) -> Result:
    """A rule of thumb where the maker is silent: it warns and permits nothing."""
    if there_mm is None or ground.job.appliance.outlet_position not in FACE_OUTLETS:
        return Skipped(code=OUTLET_TO_SCREEN_USUAL, why="the rule of thumb is for a known outlet high in the face of the fire")
    usual_mm = ground.rules.heat.outlet_to_screen_usual_mm
    more = f"an upstand higher by {usual_mm - there_mm:g} mm, or as the maker's manual states" if there_mm < usual_mm else ""
    return Check(
        code=OUTLET_TO_SCREEN_USUAL, subject=SCREEN, binding=False, clause=USUAL, remedy=more,
        says=f"{there_mm:g} mm lie between the outlet and the screen; the maker states no distance",
        demand=length("usual", usual_mm), resistance=length("there", there_mm),
        unverified="a rule of thumb: the maker states no distance",
    )  # fmt: skip


def _to_shelf(ground: Ground) -> Result:
    """From the outlet to the underside of what stands over the fire, where that is laid out."""
    wanted = [extra for extra in ground.job.survey.brief.extras or () if extra.kind in ON_THE_FRONT]
    if not wanted:
        return Skipped(code=OUTLET_TO_SHELF, why="no shelf and no beam is wanted over the fire")
    asked_mm, there_mm = ground.job.appliance.outlet_to_shelf_least_mm, _under_shelf_mm(ground)
    lacks = "the manual states no distance to a shelf" if asked_mm is None else ""
    if not lacks and there_mm is None:
        lacks = "the height of the outlet or of the shelf is not known"
    measured = f"{there_mm or 0.0:g} mm from the outlet to the shelf or beam"
    table = f"at least {asked_mm or 0.0:g} mm, by the manual's table of heights and projections"
    return Check(
        code=OUTLET_TO_SHELF, subject="shelf",
        says="a shelf or beam over the fire is not confirmed" if lacks else measured,
        demand=length("asked", asked_mm or 0.0), resistance=None if lacks or there_mm is None else length("there", there_mm),
        clause=MANUAL, unverified=lacks,
        remedy="ask the maker" if asked_mm is None else table,
    )  # fmt: skip


def _under_shelf_mm(ground: Ground) -> float | None:
    """Least height of a shelf or beam over the outlet; None: one of them is not known."""
    outlet_mm = ground.job.appliance.outlet_height_mm
    if outlet_mm is None or not ground.frame.ledges:
        return None
    low = min(ledge.box.z0_tenth_mm for ledge in ground.frame.ledges)
    return (low - ground.frame.levels.platform_tenth_mm) / 10 - outlet_mm


def _air(ground: Ground) -> Result:
    job = ground.job
    if job.screen is None or not ground.frame.screen_hung:
        return Skipped(code=SCREEN_GAP, why="no screen hangs in a recess")
    asked_mm, house_mm = job.screen.least_gap_mm, ground.rules.frame.screen_gap_mm
    there_mm = min(job.gaps.side_tenth_mm, job.gaps.top_tenth_mm, job.gaps.bottom_tenth_mm) / 10
    asked = house_mm if asked_mm is None else asked_mm
    silent = "" if asked_mm is not None else f"the screen's maker states no free air; {house_mm:g} mm is assumed"
    return Check(
        code=SCREEN_GAP, subject=SCREEN, says=f"{there_mm:g} mm are free round the screen", demand=length("asked", asked),
        resistance=length("there", there_mm), clause=SCREEN_SHEET, unverified=silent,
        remedy=f"a gap of at least {asked:g} mm" if there_mm < asked else "ask the maker of the screen" if silent else "",
    )  # fmt: skip


def _zone_above(ground: Ground, zone_mm: float) -> Check:
    """The first board over the opening that burns: the face itself, or the linings of the recess behind a face that does not."""
    levels, job = ground.frame.levels, ground.job
    sill, top = levels.recess_sill_tenth_mm, levels.finished_top_tenth_mm
    lined = sill is not None and job.lining.board_kind not in ZONE_BOARDS
    free_mm = ((sill if lined and sill is not None else top) - levels.appliance_top_tenth_mm) / 10
    return _zone_board(ground, "boards over the opening", zone_mm, free_mm)


def _face_width_mm(ground: Ground) -> float:
    return ground.frame.sizes.finished_width_tenth_mm / 10


def _zone_board(ground: Ground, subject: str, zone_mm: float, free_mm: float) -> Check:
    kind = ground.job.board.board_kind
    there_mm = max(min(free_mm, zone_mm), 0.0) if kind in ZONE_BOARDS else 0.0
    name = kind.replace("_", " ")
    return Check(
        code=ZONE_BOARD, subject=subject, clause=MANUAL,
        says=f"the maker wants {zone_mm:g} mm of calcium silicate or cement board here; the face is {name}",
        demand=length("zone", zone_mm), resistance=length("clear of it", there_mm),
        remedy="" if there_mm >= zone_mm else f"calcium silicate or cement board for {zone_mm:g} mm, and the recess above it",
    )  # fmt: skip


def _zone_timber(ground: Ground, zone_mm: float, own: CustomAppliance | None) -> Check:
    """Timber behind the board of the zone: only the maker can say that it may stand there."""
    allowed = own is not None and own.timber_housing is Answer.YES
    near = [one for one in ground.frame.panels if one.layer is Layer.FACING]
    return Check(
        code=ZONE_TIMBER, subject="frame behind the zone", clause=MANUAL,
        says="timber of the frame stands behind the boards of this zone",
        demand=length("zone", zone_mm), resistance=length("allowed", zone_mm) if allowed else None,
        inputs=(length("board before it", near[0].thickness_tenth_mm / 10),) if near else (),
        unverified="" if allowed else "the manual does not say that timber may stand behind a board of this zone",
        remedy="" if allowed else "ask the maker about a frame of timber",
    )  # fmt: skip
