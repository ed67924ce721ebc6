"""Things besides the plain breast that are laid out here, and why the others are left to a person (framing.md, section 14)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.brief.job import AccessWish, LedgeWish, NicheWish
from service.survey.wishes import ExtraKind, ScreenPlace, Side
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.survey.wishes import Brief, Extra

LEDGES = frozenset({ExtraKind.BEAM, ExtraKind.SHELF})
SECOND = "is the second of its kind; one is laid out"


class Extras(msgspec.Struct, frozen=True, kw_only=True):
    """What is laid out of the extras, by the names that a job gives them."""

    niche: NicheWish | None = None
    access: AccessWish | None = None
    ledge: LedgeWish | None = None


def take_extras(brief: Brief, notes: Notes) -> Extras:
    """Read the extras; those that are not laid out are noted with the reason."""
    found = Extras()
    for index, extra in enumerate(brief.extras or (), start=1):
        reason = _why_by_hand(extra, brief, found)
        if reason:
            notes.by_hand.append(f"extra {index} ({extra.kind.value.replace('_', ' ')}) {reason}: quote it by hand")
        elif extra.kind is ExtraKind.SOUNDBAR_NICHE:
            found = msgspec.structs.replace(found, niche=_niche(extra))
        elif extra.kind is ExtraKind.ACCESS_PANEL:
            found = msgspec.structs.replace(found, access=_access(extra))
        else:
            found = msgspec.structs.replace(found, ledge=_ledge(extra))
    return found


def _niche(extra: Extra) -> NicheWish:
    return NicheWish(
        clear_width_tenth_mm=tenths(extra.width_mm or 0.0),
        clear_height_tenth_mm=tenths(extra.height_mm or 0.0),
        bar_depth_tenth_mm=tenths(extra.depth_mm or 0.0),
    )


def _access(extra: Extra) -> AccessWish:
    return AccessWish(
        left=None if extra.side is None else extra.side is Side.LEFT,
        width_tenth_mm=tenths(extra.width_mm or 0.0),
        height_tenth_mm=tenths(extra.height_mm or 0.0),
    )


def _ledge(extra: Extra) -> LedgeWish:
    return LedgeWish(
        kind=extra.kind.value,
        width_tenth_mm=tenths(extra.width_mm or 0.0),
        height_tenth_mm=tenths(extra.height_mm or 0.0),
        projection_tenth_mm=tenths(extra.depth_mm or 0.0),
        above_tenth_mm=tenths(extra.above_opening_mm or 0.0),
        mass_kg=extra.mass_kg or 0.0,
    )


def _why_by_hand(extra: Extra, brief: Brief, found: Extras) -> str:
    """Empty where the extra is laid out."""
    if extra.kind is ExtraKind.ACCESS_PANEL:
        return SECOND if found.access else ""
    if extra.kind in LEDGES:
        return SECOND if found.ledge else _ledge_lacks(extra)
    if extra.kind is ExtraKind.SOUNDBAR_NICHE:
        return SECOND if found.niche else _niche_lacks(extra, brief)
    return "is not laid out yet"


def _ledge_lacks(extra: Extra) -> str:
    known = extra.height_mm and extra.depth_mm and extra.mass_kg and extra.above_opening_mm is not None
    return "" if known else "wants height, projection and mass, and how far its underside lies over the opening"


def _niche_lacks(extra: Extra, brief: Brief) -> str:
    if brief.screen is None or brief.screen_place is ScreenPlace.ON_FACE:
        return "is laid out under a screen in a recess only"
    sizes = (extra.width_mm, extra.height_mm, extra.depth_mm)
    return "" if all(sizes) else "wants its clear width and height and the depth of the soundbar"
