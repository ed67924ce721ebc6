"""What the breast is built of and for: fire, screen, bracket, timber and boards, all looked up or none."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.brief.job import Board, Timber
from service.brief.models import find_appliance, find_bracket, find_screen
from service.brief.stock import boards_for_pads, find_board, find_timber, house_board
from service.catalogue import Appliance, Bracket, Screen
from service.errors import Reason
from service.survey.appliance import CatalogueAppliance, CustomAppliance

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.catalogue import Catalogue
    from service.rules import RuleSet
    from service.survey.wishes import Brief

BRIEF = "/survey/brief"


class Things(msgspec.Struct, frozen=True, kw_only=True):
    """Everything looked up, by the names that a job gives it."""

    appliance: Appliance
    appliance_standing: str
    screen: Screen | None
    screen_standing: str
    bracket: Bracket | None
    timber: Timber
    board: Board
    lining: Board
    backboard: Board
    lid: Board
    pads: tuple[Board, ...]


class Found(msgspec.Struct, frozen=True, kw_only=True):
    """What a look-up gave; None where there is none such, with a fault noted."""

    appliance: Appliance | None
    screen: Screen | None
    bracket: Bracket | None
    timber: Timber | None
    board: Board | None
    lining: Board | None
    backboard: Board | None
    lid: Board | None


def look_up(brief: Brief, catalogue: Catalogue, rules: RuleSet, notes: Notes, *, longest_length_mm: float) -> Found:
    """Look up everything, so that all that is wrong is known at once."""
    screen = find_screen(brief.screen, catalogue, notes)
    return Found(
        appliance=find_appliance(brief.appliance, catalogue, notes),
        screen=screen,
        bracket=find_bracket(brief.screen_bracket, screen, catalogue, notes),
        timber=find_timber(brief.timber, catalogue, longest_length_mm, notes),
        board=find_board(brief.board, catalogue, rules, notes),
        lining=_house_board(("mdf", rules.frame.lining_mm, "recess linings"), catalogue, notes),
        backboard=_house_board(("plywood", rules.frame.backboard_mm, "the backboard"), catalogue, notes),
        lid=_house_board(("mdf", rules.frame.lid_mm, "the lid"), catalogue, notes),
    )


def complete(found: Found, brief: Brief, catalogue: Catalogue) -> Things | None:
    """The things, or None where one is missing."""
    if found.appliance is None or found.timber is None or found.board is None:
        return None
    if found.lining is None or found.backboard is None or found.lid is None:
        return None
    by_size = found.screen is not None and found.screen.standing == "size_class"
    return Things(
        appliance=found.appliance,
        appliance_standing=_standing(brief),
        screen=found.screen,
        screen_standing="size_class" if by_size else "named",
        bracket=found.bracket,
        timber=found.timber,
        board=found.board,
        lining=found.lining,
        backboard=found.backboard,
        lid=found.lid,
        pads=boards_for_pads(catalogue),
    )


def _house_board(wanted: tuple[str, float, str], catalogue: Catalogue, notes: Notes) -> Board | None:
    kind, thickness_mm, use = wanted
    board = house_board(kind, thickness_mm, catalogue)
    if board is None:
        detail = f"the catalogue holds no {kind} {thickness_mm:g} for {use}"
        notes.refuse(Reason.UNKNOWN_MODEL, BRIEF, detail=detail, remedy="add it to the catalogue")
    return board


def _standing(brief: Brief) -> str:
    if isinstance(brief.appliance, CatalogueAppliance):
        return "catalogue"
    return "custom" if isinstance(brief.appliance, CustomAppliance) else "size_class"
