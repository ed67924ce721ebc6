"""Wishes that cannot both hold, and wishes that this service leaves to a person (`knowledge/survey.md`, section 10)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.survey.appliance import OpenEnds
from service.survey.ceiling import CorniceKind
from service.survey.wishes import Finish, ScreenPlace

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.survey.survey import Survey
    from service.survey.wishes import Brief

BRIEF = "/survey/brief"
UNBUILT_FINISHES = (Finish.TILED, Finish.SLATTED)
WIDEST_TENTH_MM = 30_000  # wider breasts are built in modules: framing.md, section 14


def check_wishes(brief: Brief, ends: OpenEnds, notes: Notes) -> None:
    """Contradictions and doubts between wishes."""
    if brief.appliance_shift_mm and ends is not OpenEnds.NONE:
        notes.contradict(
            (f"{BRIEF}/appliance_shift_mm", f"{BRIEF}/appliance"),
            detail=f"a shift of {brief.appliance_shift_mm:g}, but glass at an end keeps the fire at that end",
            remedy="leave appliance_shift_mm out",
        )
    if brief.screen is None and brief.screen_bracket is not None:
        notes.doubt(f"{BRIEF}/screen_bracket", "sent", "a bracket without a screen is left out: please confirm")


def note_by_hand(survey: Survey, finish: Finish, frame_width_tenth_mm: int, notes: Notes, *, full_height: bool) -> None:
    """Note every wish that is not laid out or priced here."""
    brief, ceiling, chimney = survey.brief, survey.ceiling, survey.chimney
    if finish in UNBUILT_FINISHES:
        notes.by_hand.append(f"a {finish.value} face is not priced yet: quote it by hand")
    elif brief.facing_kg_m2:
        notes.by_hand.append("a facing on the board is not priced yet: quote it by hand")
    if brief.screen is not None and brief.screen_place is ScreenPlace.ON_FACE:
        notes.by_hand.append("a screen on the face is not laid out yet: quote it by hand, or ask for a recess")
    if frame_width_tenth_mm > WIDEST_TENTH_MM:
        notes.by_hand.append("a breast wider than 3 m is built in modules, which is not laid out yet: quote it by hand")
    cornice = ceiling.cornice if ceiling else None
    if full_height and cornice is not None and cornice.kind is not CorniceKind.NONE:
        notes.by_hand.append("a cornice is not laid out yet: quote this by hand, or ask for part height")
    if chimney is not None and chimney.hearth_height_mm:
        says = "an old hearth is taken away, or counted in platform_height_mm: please confirm"
        notes.doubt("/survey/chimney/hearth_height_mm", chimney.hearth_height_mm, says)
