"""From a request to a Job: models looked up, defaults taken and listed, every fault reported at once."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
from msgspec.structs import asdict, replace

from service.brief.beside import Beside, take_beside
from service.brief.ceiling_facts import CeilingFacts, take_ceiling
from service.brief.deal import resolve_deal
from service.brief.extras import take_extras
from service.brief.faults import check_open_ends, check_supply, check_survey
from service.brief.job import Job
from service.brief.measured import Surveyed, check_bars, take_measured, with_floor
from service.brief.notes import Notes
from service.brief.place import check_place
from service.brief.room_facts import RoomFacts, take_room
from service.brief.site_facts import SiteFacts, take_site
from service.brief.sizes import (
    Fitted,
    take_clearances,
    take_depth,
    take_facing,
    take_hanging,
    take_upstand,
    take_width,
)
from service.brief.surfaces import read_surfaces
from service.brief.things import complete, look_up
from service.brief.usual import check_usual
from service.brief.wall_facts import WallFacts, take_wall
from service.brief.wishes import check_wishes, note_by_hand
from service.errors import RequestFaultsError
from service.survey.appliance import OpenEnds
from service.survey.services import SupplyWanted
from service.survey.terms import Terms
from service.survey.wishes import TopCeiling, TopPartHeight
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.deal import Deal
    from service.brief.measured import Real
    from service.catalogue import Appliance, Catalogue
    from service.rules import RuleSet
    from service.survey import SurveyRequest
    from service.survey.survey import Survey
    from service.survey.wishes import Brief

BRIEF = "/survey/brief"


class Extent(msgspec.Struct, frozen=True, kw_only=True):
    """How large the breast is to be, by the names that a job gives it."""

    open_ends: OpenEnds
    full_height: bool
    clear_height_tenth_mm: int
    finished_top_tenth_mm: int
    width_tenth_mm: int | None
    depth_tenth_mm: int
    platform_tenth_mm: int
    upstand_tenth_mm: int
    shift_tenth_mm: int
    allowance_mm: int


class Facts(msgspec.Struct, frozen=True, kw_only=True):
    """What the survey says of the place."""

    room: RoomFacts
    wall: WallFacts
    ceiling: CeilingFacts
    site: SiteFacts


def resolve(request: SurveyRequest, catalogue: Catalogue, rules: RuleSet, today: str) -> tuple[Job, Deal]:
    """Make the job and the deal of a request.

    Raises:
        RequestFaultsError: with every contradiction, impossible value and unknown model.
    """
    notes = Notes()
    brief = request.survey.brief
    deal = resolve_deal(request, catalogue, today, notes)
    check_survey(request.survey, deal.date, notes)
    check_usual(request.survey, notes)
    top = _top(brief, notes)
    facts = _take_facts(request.survey, rules, notes, full_height=isinstance(top, TopCeiling))
    found = look_up(brief, catalogue, rules, notes, longest_length_mm=facts.site.longest_length_mm)
    ends = _check_fire(request.survey, found.appliance, notes)
    things = complete(found, brief, catalogue)
    if things is None or ends is None:
        _check_sent_place(request.survey, notes)
        raise RequestFaultsError(tuple(notes.faults))
    clearances, facing = take_clearances(things.appliance, rules), take_facing(brief, things, rules, notes)
    hanging = take_hanging(brief, things, rules, notes)
    extras = take_extras(brief, notes)
    fitted = Fitted(open_ends=ends, things=things, clearances=clearances, hanging=hanging, facing=facing, extras=extras)
    extent = _take_extent(request.survey, top, facts=facts, fitted=fitted, rules=rules, notes=notes)
    width = _finished_width(extent, fitted)
    check_wishes(brief, ends, notes)
    walls = check_place(width / 10, extent.depth_tenth_mm / 10, request.survey, notes)
    beside = take_beside(request.survey, walls, rules, notes, depth_tenth_mm=extent.depth_tenth_mm)
    note_by_hand(request.survey, facing.finish, width - 2 * fitted.tf, notes, full_height=extent.full_height)
    real = _measure(request, catalogue, rules, facts=facts, extent=extent, fitted=fitted, beside=beside, notes=notes)
    if notes.faults:
        raise RequestFaultsError(tuple(notes.faults))
    if real:
        fitted, extent = _as_built(real, fitted, extent)
    job = _make_job(request, rules, deal, facts=facts, fitted=fitted, extent=extent, beside=beside, notes=notes)
    return with_floor(job, real.floor if real else ()), deal


def _top(brief: Brief, notes: Notes) -> TopCeiling | TopPartHeight:
    if brief.top is None:
        notes.take(f"{BRIEF}/top", None, "ceiling", "the breast goes up to the ceiling")
        return TopCeiling()
    return brief.top


def _take_facts(survey: Survey, rules: RuleSet, notes: Notes, *, full_height: bool) -> Facts:
    return Facts(
        room=take_room(survey, rules, notes),
        wall=take_wall(survey, rules, notes),
        ceiling=take_ceiling(survey, rules, notes, full_height=full_height),
        site=take_site(survey, rules, notes),
    )


def _check_fire(survey: Survey, appliance: Appliance | None, notes: Notes) -> OpenEnds | None:
    """What the fire itself allows; None where there is no such fire."""
    if appliance is None:
        return None
    check_supply(survey, appliance, notes)
    return check_open_ends(survey.brief.open_ends, appliance, notes)


def _check_sent_place(survey: Survey, notes: Notes) -> None:
    """Where nothing can be designed, the width as sent against what is in its way."""
    brief = survey.brief
    if brief.breast_width_mm is not None:
        check_place(brief.breast_width_mm, brief.breast_depth_mm or 0.0, survey, notes)


def _take_extent(
    survey: Survey, top: TopCeiling | TopPartHeight, *, facts: Facts, fitted: Fitted, rules: RuleSet, notes: Notes
) -> Extent:
    brief, house = survey.brief, rules
    platform_mm = notes.take(
        f"{BRIEF}/platform_height_mm",
        brief.platform_height_mm,
        house.defaults.platform_height_mm,
        "height of the fire above the floor",
    )
    allowance_mm = notes.choose(
        f"{BRIEF}/after_measure_allowance_mm",
        brief.after_measure_allowance_mm,
        house.frame.after_measure_allowance_mm,
        "bought longer where the length follows from the ceiling",
    )
    clear = facts.room.clear_height_tenth_mm
    return Extent(
        open_ends=fitted.open_ends,
        full_height=isinstance(top, TopCeiling),
        clear_height_tenth_mm=clear,
        finished_top_tenth_mm=clear if isinstance(top, TopCeiling) else tenths(top.height_mm),
        width_tenth_mm=take_width(brief, fitted, rules, notes),
        depth_tenth_mm=take_depth(brief, fitted, rules, notes),
        platform_tenth_mm=tenths(platform_mm),
        upstand_tenth_mm=take_upstand(brief, fitted, rules, notes),
        shift_tenth_mm=tenths(brief.appliance_shift_mm or 0.0) if fitted.open_ends is OpenEnds.NONE else 0,
        allowance_mm=round(allowance_mm),
    )


def _measure(
    request: SurveyRequest,
    catalogue: Catalogue,
    rules: RuleSet,
    *,
    facts: Facts,
    extent: Extent,
    fitted: Fitted,
    beside: Beside,
    notes: Notes,
) -> Real | None:
    """The sizes as measured on site; None before."""
    measured, survey = request.survey.measured, request.survey
    if measured is None:
        return None
    timber, body = fitted.things.timber, fitted.things.appliance
    check_bars(measured, (timber.thickness_tenth_mm, timber.width_tenth_mm), catalogue, notes)
    sides = [beside.side_packing_tenth_mm if wall else fitted.tf for wall in (beside.left_wall, beside.right_wall)]
    surveyed = Surveyed(
        full_height=extent.full_height,
        heights_sent=bool(survey.room and survey.room.heights),
        fire_top_tenth_mm=extent.platform_tenth_mm + tenths(body.body_height_mm),
        clear_height_tenth_mm=extent.clear_height_tenth_mm,
        frame_width_tenth_mm=_finished_width(extent, fitted) - sum(sides),
        frame_depth_tenth_mm=extent.depth_tenth_mm - fitted.tf,
        body_width_tenth_mm=tenths(body.body_width_mm),
        open_both=extent.open_ends is OpenEnds.BOTH,
        fall_tenth_mm=facts.room.fall_tenth_mm,
    )
    return take_measured(measured, surveyed, rules, notes)


def _as_built(real: Real, fitted: Fitted, extent: Extent) -> tuple[Fitted, Extent]:
    """The sizes as they are on site. Nothing is left longer for a measure that has been taken."""
    clear, width = real.clear_height_tenth_mm, extent.width_tenth_mm
    if real.inset_tenth_mm is not None:
        fitted = replace(fitted, clearances=replace(fitted.clearances, inset_tenth_mm=real.inset_tenth_mm))
    return fitted, replace(
        extent,
        clear_height_tenth_mm=clear,
        finished_top_tenth_mm=clear if extent.full_height else extent.finished_top_tenth_mm,
        width_tenth_mm=None if width is None else width + real.wider_tenth_mm,
        depth_tenth_mm=extent.depth_tenth_mm + real.deeper_tenth_mm,
        allowance_mm=0,
    )


def _finished_width(extent: Extent, fitted: Fitted) -> int:
    if extent.width_tenth_mm is not None:
        return extent.width_tenth_mm
    return tenths(fitted.things.appliance.body_width_mm) - 2 * fitted.clearances.inset_tenth_mm + 2 * fitted.tf


def _make_job(
    request: SurveyRequest,
    rules: RuleSet,
    deal: Deal,
    *,
    facts: Facts,
    fitted: Fitted,
    extent: Extent,
    beside: Beside,
    notes: Notes,
) -> Job:
    """The job: the parts by their names, and what was found on the wall counted from the left end of the frame."""
    parts = (
        fitted.things,
        fitted.clearances,
        fitted.hanging,
        fitted.facing,
        fitted.extras,
        facts.room,
        facts.wall,
        facts.ceiling,
        facts.site,
        extent,
        beside,
    )
    named = {name: value for part in parts for name, value in asdict(part).items() if name in Job.__struct_fields__}
    width = _finished_width(extent, fitted)
    left = facts.room.wall_centre_tenth_mm - width // 2
    left += beside.side_packing_tenth_mm if beside.left_wall else fitted.tf
    surfaces = read_surfaces(
        request.survey, facts.room, left_tenth_mm=left, width_tenth_mm=width - 2 * fitted.tf, depth_tenth_mm=extent.depth_tenth_mm
    )
    studs_mm = facts.wall.studs_mm
    return Job(
        survey=request.survey,
        terms=request.terms or Terms(),
        today=deal.date,
        rule_edition=rules.edition,
        studs_tenth_mm=None if studs_mm is None else tuple(tenths(x) - left for x in studs_mm),
        joists_tenth_mm=tuple(tenths(x) - left for x in facts.ceiling.joists_mm),
        assumptions=tuple(notes.assumptions),
        doubts=tuple(notes.doubts),
        by_hand=tuple(notes.by_hand),
        missing_figures=tuple(notes.missing_figures),
        ceiling_rear=surfaces.ceiling_rear,
        ceiling_front=surfaces.ceiling_front,
        floor_rear=surfaces.floor_rear,
        floor_front=surfaces.floor_front,
        **named,
    )


def supply_of(job: Job) -> SupplyWanted:
    """How the fire is connected: as wished, else a fused connection on the circuit there is."""
    services = job.survey.services
    return (services.supply_wanted if services else None) or SupplyWanted.FUSED_CONNECTION
