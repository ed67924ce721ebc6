"""One fire with every screen: designed one after the other, so that each begins where the smaller one ended."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

import msgspec

from service.cutting import cut_frame
from service.errors import RequestFaultsError, UnbuildableError
from service.offers.changes import FAMILIES, Wish, depths, platforms, sills, widths
from service.offers.estimate_survey import brief_with, survey_with
from service.offers.patch import patched
from service.quote import Made, design, price_plan, take_brief, yard_of
from service.survey import SurveyRequest, Terms
from service.survey.appliance import CatalogueAppliance
from service.survey.wishes import CatalogueScreen

if TYPE_CHECKING:
    from service.catalogue import Appliance, Screen
    from service.checks import Check
    from service.errors import Unmet
    from service.frame import Additions
    from service.offers.changes import Change
    from service.offers.shortlist_wire import ShortlistRequest
    from service.quote import Desk
    from service.survey.wishes import CatalogueBoard

OWN_FAMILIES: Final = (platforms, sills, depths, widths)  # another fire or screen is another pair
MOST_TRIES_COUNT: Final = 6  # of changes for one pair: house choice
MOST_DESIGNS_COUNT: Final = 2  # of them, whole designs


class Pair(NamedTuple):
    """A fire with a screen, and what came of it: a design whose checks pass, or why there is none and what would help."""

    appliance: Appliance
    screen: Screen
    request: SurveyRequest
    made: Made | None
    unmet: tuple[Unmet, ...]
    failing: tuple[Check, ...]
    fault: str
    change: Change | None
    additions: Additions | None  # of its strengthening


class Room(NamedTuple):
    """What all pairs share."""

    asked: ShortlistRequest
    board: CatalogueBoard | None
    desk: Desk


def pairs_of(appliance: Appliance, screens: tuple[Screen, ...], room: Room) -> tuple[Pair, ...]:
    """A fire with each screen, smallest first: strengthening is carried on to the next, which is rarely lighter.

    What failed with the strengthening of a smaller one that failed needs not be tried from the start; what passes with it is
    designed again from the last that passed, so that nothing is paid for that only a failing design asked for.
    """
    good = desk = room.desk
    found = []
    for screen in screens:
        request = request_of(appliance, screen, room)
        pair = _designed(appliance, screen, request, desk)
        if pair.made is not None and desk is not good:
            pair = _designed(appliance, screen, request, good)
        if pair.additions is not None:
            desk = msgspec.structs.replace(desk, additions=_carried(pair.additions))
            good = good if pair.made is None else desk
        found.append(pair)
    return tuple(_with_change(pair, good) if pair.unmet else pair for pair in found)


def request_of(appliance: Appliance, screen: Screen, room: Room) -> SurveyRequest:
    """The survey of one pair."""
    fire, wide = CatalogueAppliance(model=appliance.model), CatalogueScreen(model=screen.model)
    brief = brief_with(room.asked, fire, wide, room.board)
    terms = Terms(date=room.asked.date) if room.asked.date else None
    return SurveyRequest(survey=survey_with(room.asked, brief), terms=terms)


def _designed(appliance: Appliance, screen: Screen, request: SurveyRequest, desk: Desk) -> Pair:
    """Designed, and priced where every check passes."""
    bare = Pair(appliance, screen, request, None, (), (), "", None, None)
    try:
        job, deal = take_brief(request, desk)
        settled = design(job, desk)
    except UnbuildableError as error:
        return bare._replace(unmet=error.unmet)
    except RequestFaultsError as error:
        return bare._replace(fault="; ".join(one.detail for one in error.faults))
    bare = bare._replace(additions=settled.frame.additions)
    if settled.report.failing:
        return bare._replace(failing=settled.report.failing)
    plan = cut_frame(settled.frame, job, yard_of(request, desk))
    return bare._replace(made=price_plan(job, deal, settled, plan, desk=desk))


def _carried(additions: Additions) -> Additions:
    """Rails at a height are of one design only, and the base of a wider breast has its own stations; all else goes on."""
    return msgspec.structs.replace(
        additions,
        extra_rear_rails_tenth_mm=(),
        foot_stations=False,
        station_pitch_tenth_mm=None,
        second_uprights=False,
        wide_packers=False,
    )


def _with_change(pair: Pair, desk: Desk) -> Pair:
    """The first change of platform, sill, depth or width that makes a pair work, of few that are tried."""
    job, _deal = take_brief(pair.request, desk)
    wish = Wish(job, desk.catalogue, pair.unmet)
    designs = 0
    for change in _changes(wish):
        outcome = _works(patched(pair.request, change.operations), desk)
        designs += outcome is not None
        if outcome:
            return pair._replace(change=change)
        if designs == MOST_DESIGNS_COUNT:
            break
    return pair


def _changes(wish: Wish) -> list[Change]:
    helping = {family for one in wish.unmet for family in FAMILIES.get(one.code, ())}
    found = [change for family in OWN_FAMILIES if family in helping for change in family(wish)]
    return found[:MOST_TRIES_COUNT]


def _works(request: SurveyRequest, desk: Desk) -> bool | None:
    """Whether a design passes its checks; None where there is none."""
    try:
        job, _deal = take_brief(request, desk)
        return not design(job, desk).report.failing
    except (UnbuildableError, RequestFaultsError):
        return None
