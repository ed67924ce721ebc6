"""Cautions B: building, old chimney, damp (`knowledge/cautions.md`, section 4; `knowledge/services.md`, section 7)."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from service.checks.cold_wall import DEW_POINT
from service.checks.finding import Finding, said
from service.checks.result import CautionState, Stops
from service.survey.fields import Answer
from service.survey.floor import Covering, FloorConstruction
from service.survey.services import Flue, GasState, VentServes
from service.survey.site import Building
from service.survey.wall import Damp, ExternalBuild

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.finding import Facts

FIRES, OPEN = CautionState.FIRES, CautionState.NOT_VERIFIED
ASBESTOS_YEAR = 2000  # presumption of asbestos before it: seen on a trade reference page
LEAD_YEAR = 1992  # from memory
OLD_SURVEY_DAYS = 90  # common practice, no source
RADIATOR_MARGIN_MM = 100.0  # common practice, no source
OBSTACLE_MARGIN_MM = 300.0  # common practice, no source (knowledge/cautions.md, B13)
UNEVEN_MM = (15.0, 15.0, 10.0)  # spread of the ceiling, fall of the floor, lean of the wall: common practice, no source


def building_rows(facts: Facts) -> Iterator[Finding]:
    """Rows of the building."""
    yield from _flue(facts)
    yield from _gas(facts)
    yield from _vents(facts)
    yield from _damp(facts)
    yield from _age(facts)
    yield from _floor(facts)
    yield from _consent(facts)
    yield from _around(facts)
    yield from _survey(facts)


def _flue(facts: Facts) -> Iterator[Finding]:
    flue, shared = facts.chimney.flue, facts.chimney.flue_shared
    if flue is Flue.NONE:
        return
    if flue in {Flue.OPEN, Flue.BLOCKED_NOT_VENTED}:
        yield Finding(
            "B02",
            "The old flue is swept and capped with a vent on top, and vented to the room through the face or side of the breast.",
        )
    elif flue in {None, Flue.UNKNOWN}:
        yield Finding(
            "B02",
            "Whether there is an old flue is not known. If so it is swept, capped and vented to the room before it is closed.",
            OPEN,
        )
    beside = facts.site.building is Building.FLAT or facts.wall.party is Answer.YES
    if shared is Answer.YES:
        yield Finding("B17", "The flue is shared with another dwelling.")
    elif shared is not Answer.NO and beside:
        says = (
            "Whether another dwelling uses the flue is not known. Ask the neighbour or the freeholder before anything is closed."
        )
        yield Finding("B17", says, OPEN, Stops.FIRM_QUOTE)


def _gas(facts: Facts) -> Iterator[Finding]:
    gas = facts.services.gas
    if gas is GasState.PRESENT:
        yield Finding("B03", "There is gas at this wall. A registered gas engineer caps it off first.")
    elif gas is GasState.UNKNOWN or (gas is None and facts.chimney.flue is not Flue.NONE):
        yield Finding(
            "B03", "Whether there is gas at this wall is not known. A registered gas engineer tells.", OPEN, Stops.FIRM_QUOTE
        )


def _vents(facts: Facts) -> Iterator[Finding]:
    for vent in facts.services.air_vents or ():
        if not facts.holds(vent.x_mm):
            continue
        if vent.serves is VentServes.UNKNOWN:
            says = f"What the air vent at {vent.x_mm:g} serves is not known. An appliance's vent is never covered."
            yield Finding("B04", says, OPEN, Stops.FIRM_QUOTE)
        elif vent.serves is VentServes.APPLIANCE:
            yield Finding("B04", f"The air vent at {vent.x_mm:g} serves an appliance.", stops=Stops.DESIGN)
        else:
            yield Finding(
                "B04", f"The {vent.serves.value} vent at {vent.x_mm:g} is ducted to the face or side of the breast, never closed."
            )


def _damp(facts: Facts) -> Iterator[Finding]:
    wall = facts.wall
    if wall.damp is Damp.SHOWING:
        yield Finding(
            "B05",
            "Damp is showing on this wall. Its cause is found and cured before anything is built in front.",
            stops=Stops.DESIGN,
        )
    elif wall.damp is Damp.SUSPECTED:
        yield Finding("B05", "Damp is suspected. Find the cause; ventilate behind the breast.")
    elif wall.external and wall.external_build is ExternalBuild.SOLID:
        for check in facts.report.of(DEW_POINT):
            yield Finding("B05", said(check))
    if wall.external and wall.external_build is ExternalBuild.TIMBER_FRAME:
        yield Finding(
            "B14",
            "The outside wall is a timber frame. Pierce its vapour layer no deeper than needed, and keep off cavity barriers.",
        )


def _age(facts: Facts) -> Iterator[Finding]:
    year = facts.site.build_year
    if year is None or year < ASBESTOS_YEAR:
        states = _old_materials(facts)
        if states:
            state = FIRES if year is not None and FIRES in states.values() else OPEN
            what = ", ".join(states)
            says = f"Before 2000 {what} are presumed to hold asbestos: nothing is drilled before a sample says otherwise."
            yield Finding("B06", says, state)
    if year is not None and year < LEAD_YEAR:
        yield Finding("B07", "Old paint may hold lead. Work wet; no dry sanding.")


def _old_materials(facts: Facts) -> dict[str, CautionState]:
    """What would be drilled and may hold asbestos."""
    coating = facts.ceiling.textured_coating
    found: dict[str, CautionState] = {}
    if facts.frame.full_height and coating is not Answer.NO:
        found["textured coatings"] = FIRES if coating is Answer.YES else OPEN
    if facts.floor.covering is Covering.TILE:
        found["floor tiles"] = FIRES
    if facts.chimney.flue is not Flue.NONE:
        found["flue linings"] = OPEN if facts.chimney.flue in {None, Flue.UNKNOWN} else FIRES
    return found


def _floor(facts: Facts) -> Iterator[Finding]:
    heating = facts.floor.underfloor_heating
    if heating is Answer.YES:
        yield Finding("B08", "The floor is heated. Nothing is fixed into it.")
    elif heating is not Answer.NO:
        yield Finding(
            "B08", "Whether the floor is heated is not known. Nothing is fixed into it before its pipes are located.", OPEN
        )
    if facts.floor.construction is FloorConstruction.FLOATING:
        yield Finding("B09", "A floating floor is not pinned. Cut it out under the breast, or fix to the wall only.")


def _consent(facts: Facts) -> Iterator[Finding]:
    site = facts.site
    if Answer.YES in {site.listed, site.conservation, site.leasehold, site.tenancy}:
        yield Finding("B11", "The owner or the authority consents in writing before work starts.")
    if site.building is Building.FLAT:
        yield Finding("B12", "Holes to a neighbour or a common part are stopped against fire and sound.")


def _around(facts: Facts) -> Iterator[Finding]:
    radiators = [one for one in facts.services.radiators or () if facts.reaches(one.x0_mm, one.x1_mm, RADIATOR_MARGIN_MM)]
    if radiators:
        yield Finding(
            "B10", f"A radiator is nearer than {RADIATOR_MARGIN_MM:g} mm to the breast. A heating engineer moves it first."
        )
    near = [one for one in facts.room.obstacles or () if facts.reaches(one.x0_mm, one.x1_mm, OBSTACLE_MARGIN_MM)]
    if near:
        names = ", ".join(sorted({one.kind.value.replace("_", " ") for one in near}))
        yield Finding("B13", f"Nearer than {OBSTACLE_MARGIN_MM:g} mm to the breast: {names}. Keep the way of escape 900 mm wide.")


def _survey(facts: Facts) -> Iterator[Finding]:
    heights = [point.height_mm for point in facts.room.heights or ()]
    spread_mm = max(heights) - min(heights) if heights else 0.0
    measured = (("ceiling", spread_mm), ("floor", facts.job.fall_tenth_mm / 10), ("wall", facts.job.lean_mm))
    uneven = [f"{name} {value:g} mm" for (name, value), limit in zip(measured, UNEVEN_MM, strict=True) if value > limit]
    if uneven:
        yield Finding(
            "B15",
            f"Out of level or plumb: {', '.join(uneven)}. Packing, tapered boards or a shadow gap take it up, and it may show.",
        )
    day = facts.site.surveyed_on
    if day is not None:
        age_days = (datetime.date.fromisoformat(facts.job.today) - datetime.date.fromisoformat(day)).days
        if age_days > OLD_SURVEY_DAYS:
            yield Finding("B16", f"The survey is {age_days} days old, more than {OLD_SURVEY_DAYS}. Measure again before cutting.")
