"""Sizes of the breast from its brief: gaps of the makers or the house, width and depth as wished or the least that fits.

Formulas and defaults: `knowledge/framing.md`, sections 1, 2 and 5; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.brief.extras import Extras
from service.brief.job import ScreenGaps
from service.brief.things import Things
from service.survey.appliance import OpenEnds
from service.survey.wishes import Connectors, CustomScreen, Finish, HandsAt
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.catalogue import Appliance
    from service.rules import RuleSet
    from service.survey.wishes import Brief

BRIEF = "/survey/brief"
UPSTAND_STEP_TENTH_MM = 50  # an upstand that we choose is rounded up to 5 mm: framing.md, section 13


class Clearances(msgspec.Struct, frozen=True, kw_only=True):
    """Room round the body of the fire, by the names that a job gives it."""

    gap_over_tenth_mm: int
    gap_beside_tenth_mm: int
    rear_clearance_tenth_mm: int
    inset_tenth_mm: int


class Hanging(msgspec.Struct, frozen=True, kw_only=True):
    """Room round and behind the screen; all 0 without one."""

    gaps: ScreenGaps
    set_back_tenth_mm: int
    cable_room_tenth_mm: int


class Facing(msgspec.Struct, frozen=True, kw_only=True):
    """How the board is finished, and what that adds to its thickness."""

    finish: Finish
    skim_tenth_mm: int


class Fitted(msgspec.Struct, frozen=True, kw_only=True):
    """What width and depth follow from."""

    open_ends: OpenEnds
    things: Things
    clearances: Clearances
    hanging: Hanging
    facing: Facing
    extras: Extras

    @property
    def tf(self) -> int:
        """Board and skim, in tenths of a millimetre."""
        return self.things.board.thickness_tenth_mm + self.facing.skim_tenth_mm


def take_clearances(appliance: Appliance, rules: RuleSet) -> Clearances:
    """The maker's figures, the house's where there is none.

    A maker's 0 over or beside the body is no room at all: the frame never touches the fire, so the house's gap stands.
    """
    frame = rules.frame
    rear_mm, inset_mm = appliance.clear_rear_mm, appliance.frame_inset_mm
    return Clearances(
        gap_over_tenth_mm=tenths(appliance.clear_above_mm or frame.gap_over_fire_mm),
        gap_beside_tenth_mm=tenths(appliance.clear_side_mm or frame.gap_beside_fire_mm),
        rear_clearance_tenth_mm=tenths(frame.rear_clearance_mm if rear_mm is None else rear_mm),
        inset_tenth_mm=tenths(frame.frame_inset_mm if inset_mm is None else inset_mm),
    )


def take_hanging(brief: Brief, things: Things, rules: RuleSet, notes: Notes) -> Hanging:
    """Gaps round the screen, set-back of its glass and room for its plugs."""
    if things.screen is None:
        return Hanging(
            gaps=ScreenGaps(side_tenth_mm=0, top_tenth_mm=0, bottom_tenth_mm=0), set_back_tenth_mm=0, cable_room_tenth_mm=0
        )
    set_back_mm = notes.choose(
        f"{BRIEF}/glass_set_back_mm", brief.glass_set_back_mm, rules.frame.glass_set_back_mm, "glass behind the finished face"
    )
    room_mm = notes.choose(
        f"{BRIEF}/cable_room_mm", brief.cable_room_mm, _plug_room_mm(brief, rules), "room for the plugs behind the screen"
    )
    return Hanging(
        gaps=_gaps(brief, things, rules, notes), set_back_tenth_mm=tenths(set_back_mm), cable_room_tenth_mm=tenths(room_mm)
    )


def take_facing(brief: Brief, things: Things, rules: RuleSet, notes: Notes) -> Facing:
    """The finish; plasterboard is skimmed where nothing is said."""
    usual = Finish.SKIMMED if things.board.board_kind == "plasterboard" else Finish.PAINTED
    finish = notes.choose(f"{BRIEF}/finish", brief.finish, usual, "how the face is finished")
    return Facing(finish=finish, skim_tenth_mm=tenths(rules.frame.skim_mm) if finish is Finish.SKIMMED else 0)


def take_upstand(brief: Brief, fitted: Fitted, rules: RuleSet, notes: Notes) -> int:
    """The wish, or the house's upstand, never less than the maker's distance from outlet to screen asks."""
    least = least_upstand(fitted.things.appliance, over=fitted.clearances.gap_over_tenth_mm, under=_under_screen(fitted))
    cripple = 2 * fitted.things.timber.thickness_tenth_mm + tenths(rules.frame.least_cripple_mm)
    ledge = fitted.extras.ledge
    over = ledge.above_tenth_mm + ledge.height_tenth_mm if ledge else 0  # counted from the top of a beam: framing.md, section 14
    house = max(tenths(rules.frame.upstand_mm), cripple, least - over if fitted.things.screen else 0)
    effect = "height of the screen over the fire"
    return over + tenths(notes.choose(f"{BRIEF}/sill_above_appliance_mm", brief.sill_above_appliance_mm, house / 10, effect))


def _under_screen(fitted: Fitted) -> int:
    lining, gap = fitted.things.lining.thickness_tenth_mm, fitted.hanging.gaps.bottom_tenth_mm
    niche = fitted.extras.niche
    rail = fitted.things.timber.thickness_tenth_mm
    return lining + gap + (niche.clear_height_tenth_mm + 2 * lining + rail if niche else 0)


def least_upstand(appliance: Appliance, *, over: int, under: int) -> int:
    """The least upstand that keeps the maker's distance from outlet to screen (framing.md, section 5), rounded up to 5 mm.

    Args:
        appliance: the fire.
        over: gap over its body, tenths of a millimetre.
        under: lining and gap under the screen, tenths of a millimetre.

    Returns:
        Tenths of a millimetre; 0 where the maker asks for none.
    """
    if appliance.outlet_position == "none" or appliance.outlet_to_screen_least_mm is None or appliance.outlet_height_mm is None:
        return 0
    there = tenths(appliance.body_height_mm - appliance.outlet_height_mm) + over + under
    asked = tenths(appliance.outlet_to_screen_least_mm) - there
    return max(-(-asked // UPSTAND_STEP_TENTH_MM) * UPSTAND_STEP_TENTH_MM, 0)


def take_width(brief: Brief, fitted: Fitted, rules: RuleSet, notes: Notes) -> int | None:
    """W: as wished; else the least with jack studs and jambs; None where the fire sets it."""
    if brief.breast_width_mm is not None:
        return tenths(brief.breast_width_mm)
    if fitted.open_ends is OpenEnds.BOTH:
        return None
    b, body = fitted.things.timber.thickness_tenth_mm, tenths(fitted.things.appliance.body_width_mm)
    beside = fitted.clearances.gap_beside_tenth_mm
    if fitted.open_ends is OpenEnds.NONE:
        least = body + 2 * beside + 4 * b + 2 * tenths(abs(brief.appliance_shift_mm or 0.0))
    else:
        least = body - fitted.clearances.inset_tenth_mm + beside + 2 * b
    if fitted.things.screen:
        clear = tenths(fitted.things.screen.body_width_mm) + 2 * fitted.hanging.gaps.side_tenth_mm
        niche = fitted.extras.niche
        clear = max(clear, niche.clear_width_tenth_mm if niche else 0)
        least = max(least, clear + 2 * fitted.things.lining.thickness_tenth_mm + 4 * b)
    return _step_up(least + 2 * fitted.tf, f"{BRIEF}/breast_width_mm", rules, notes)


def take_depth(brief: Brief, fitted: Fitted, rules: RuleSet, notes: Notes) -> int:
    """D: as wished, else the least that fits fire, ladders and recess."""
    if brief.breast_depth_mm is not None:
        return tenths(brief.breast_depth_mm)
    things, hanging = fitted.things, fitted.hanging
    b, d = things.timber.thickness_tenth_mm, things.timber.width_tenth_mm
    fire = tenths(things.appliance.body_depth_mm) + fitted.clearances.rear_clearance_tenth_mm
    least = max(fire, 2 * d + tenths(rules.frame.least_noggin_mm) + fitted.tf)
    if things.screen and things.bracket:
        behind = max(tenths(things.bracket.depth_mm), hanging.cable_room_tenth_mm)
        recess = hanging.set_back_tenth_mm + tenths(things.screen.body_depth_mm) + behind
        least = max(least, recess + things.backboard.thickness_tenth_mm + b)
    if fitted.extras.niche:
        niche = fitted.extras.niche.bar_depth_tenth_mm + tenths(rules.frame.soundbar_room_mm)
        least = max(least, niche + things.backboard.thickness_tenth_mm)
    return _step_up(least, f"{BRIEF}/breast_depth_mm", rules, notes)


def _gaps(brief: Brief, things: Things, rules: RuleSet, notes: Notes) -> ScreenGaps:
    """Per side the largest of the house's least, the maker's and the wish; more at the sides where hands go in."""
    wish_mm = notes.choose(f"{BRIEF}/screen_gap_mm", brief.screen_gap_mm, rules.frame.screen_gap_mm, "free air round the screen")
    maker_mm = (things.screen.least_gap_mm if things.screen else None) or 0.0
    least_mm = max(wish_mm, rules.frame.screen_gap_mm, maker_mm)
    own = brief.screen if isinstance(brief.screen, CustomScreen) else None
    top_mm, side_mm, bottom_mm = (own.gap_top_mm, own.gap_side_mm, own.gap_bottom_mm) if own else (None, None, None)
    hands = brief.hands_at or HandsAt(things.bracket.hands_at if things.bracket else "none")
    hands_mm = rules.frame.hands_gap_mm if hands is HandsAt.SIDES else 0.0
    return ScreenGaps(
        side_tenth_mm=tenths(max(least_mm, side_mm or 0.0, hands_mm)),
        top_tenth_mm=tenths(max(least_mm, top_mm or 0.0)),
        bottom_tenth_mm=tenths(max(least_mm, bottom_mm or 0.0)),
    )


def _plug_room_mm(brief: Brief, rules: RuleSet) -> float:
    """25 for plugs to the side; for plugs straight out of the back what they need, 60 where that is not said."""
    own = brief.screen if isinstance(brief.screen, CustomScreen) else None
    if own is None or own.connectors is not Connectors.REAR:
        return rules.frame.cable_room_mm
    return own.straight_plug_length_mm or rules.frame.straight_plug_room_mm


def _step_up(least_tenth_mm: int, pointer: str, rules: RuleSet, notes: Notes) -> int:
    step = tenths(rules.defaults.unit_width_step_mm)
    size = -(-least_tenth_mm // step) * step
    return tenths(notes.take(pointer, None, size / 10, "the least that fits, rounded up to 10 mm"))
