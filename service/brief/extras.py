"""Things besides the plain breast that are laid out here, and why the others are left to a person (framing.md, section 14)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.brief.job import AccessWish, NicheWish
from service.survey.wishes import ExtraKind, ScreenPlace, Side
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.survey.wishes import Brief, Extra

SECOND = "is the second of its kind; one is laid out"


class Extras(msgspec.Struct, frozen=True, kw_only=True):
    """What is laid out of the extras, by the names that a job gives them."""

    niche: NicheWish | None = None
    access: AccessWish | None = None


def take_extras(brief: Brief, notes: Notes) -> Extras:
    """Read the extras; those that are not laid out are noted with the reason."""
    found = Extras()
    for index, extra in enumerate(brief.extras or (), start=1):
        reason = _why_by_hand(extra, brief, found)
        if reason:
            notes.by_hand.append(f"extra {index} ({extra.kind.value.replace('_', ' ')}) {reason}: quote it by hand")
        elif extra.kind is ExtraKind.SOUNDBAR_NICHE:
            found = msgspec.structs.replace(found, niche=_niche(extra))
        else:
            found = msgspec.structs.replace(found, access=_access(extra))
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


def _why_by_hand(extra: Extra, brief: Brief, found: Extras) -> str:
    """Empty where the extra is laid out."""
    if extra.kind is ExtraKind.ACCESS_PANEL:
        return SECOND if found.access else ""
    if extra.kind is not ExtraKind.SOUNDBAR_NICHE:
        return "is not laid out yet"
    if brief.screen is None or brief.screen_place is ScreenPlace.ON_FACE:
        return "is laid out under a screen in a recess only"
    if found.niche:
        return SECOND
    sizes = (extra.width_mm, extra.height_mm, extra.depth_mm)
    return "" if all(sizes) else "wants its clear width and height and the depth of the soundbar"
