"""A handful of answers as the survey that is designed, and faults of that survey as faults of the answers."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.survey import Survey, SurveyRequest, Terms
from service.survey.ceiling import Ceiling
from service.survey.floor import Floor
from service.survey.room import HeightPoint, Room
from service.survey.services import Services
from service.survey.site import Site
from service.survey.wall import Wall
from service.survey.wishes import BoardKind, Brief, CatalogueBoard, Finish

if TYPE_CHECKING:
    from service.catalogue import Catalogue
    from service.errors import Fault
    from service.offers.estimate_wire import EstimateRequest, RoomAnswers
    from service.survey.appliance import ApplianceChoice
    from service.survey.wishes import ScreenChoice

MEMBERS: Final = {  # pointer into the survey: pointer into the answers
    "/survey/room/heights": "/room_height_mm",
    "/survey/wall/construction": "/wall",
    "/survey/ceiling/joists": "/joists",
    "/survey/floor/fall_mm": "/floor_fall_mm",
    "/survey/services/supply_wanted": "/supply",
    "/survey/site/storey": "/flights_count",
    "/terms/date": "/date",
    "/survey/brief": "",
}


LEAST_PLASTERED_MM: Final = 12.0  # house choice: thinner plasterboard is not taken unasked
PLASTERED: Final = "plasterboard of the house: plaster and tape do not hold on wood-based board"


def survey_of(asked: EstimateRequest, catalogue: Catalogue) -> SurveyRequest:
    """The survey that the answers make; sections that nothing was said of are left out."""
    brief = brief_with(asked, asked.appliance, asked.screen, board_for(asked.finish, catalogue))
    brief = msgspec.structs.replace(brief, open_ends=asked.open_ends)
    return SurveyRequest(survey=survey_with(asked, brief), terms=Terms(date=asked.date) if asked.date else None)


def brief_with(
    asked: RoomAnswers, appliance: ApplianceChoice, screen: ScreenChoice | None, board: CatalogueBoard | None
) -> Brief:
    """What is wanted, as told, with a fire, a screen and a board."""
    return Brief(
        appliance=appliance,
        screen=screen,
        board=board,
        finish=asked.finish,
        breast_width_mm=asked.breast_width_mm,
        breast_depth_mm=asked.breast_depth_mm,
        platform_height_mm=asked.platform_height_mm,
        sill_above_appliance_mm=asked.sill_above_appliance_mm,
    )


def survey_with(asked: RoomAnswers, brief: Brief) -> Survey:
    """The room as told, with a brief."""
    height_mm = asked.room_height_mm
    heights = None if height_mm is None else (HeightPoint(x_mm=0.0, y_mm=0.0, height_mm=height_mm),)
    return Survey(
        room=Room(heights=heights) if heights else None,
        wall=Wall(construction=asked.wall) if asked.wall else None,
        ceiling=Ceiling(joists=asked.joists) if asked.joists else None,
        floor=Floor(fall_mm=asked.floor_fall_mm) if asked.floor_fall_mm is not None else None,
        services=Services(supply_wanted=asked.supply) if asked.supply else None,
        site=Site(storey=asked.flights_count) if asked.flights_count is not None else None,
        brief=brief,
    )


def board_for(finish: Finish | None, catalogue: Catalogue) -> CatalogueBoard | None:
    """The board that a plastered finish goes with; None: the house's own will do."""
    if finish not in {Finish.SKIMMED, Finish.TAPED}:
        return None
    rows = [row for row in catalogue.materials.values() if row.kind == "board" and row.board_kind == BoardKind.PLASTERBOARD]
    fitting = [(row.thickness_mm, row.code) for row in rows if row.thickness_mm and row.thickness_mm >= LEAST_PLASTERED_MM]
    return CatalogueBoard(code=min(fitting)[1]) if fitting else None


def fault_as_asked(fault: Fault) -> Fault:
    """A fault of the survey, pointing into the answers."""
    return msgspec.structs.replace(fault, pointer=_member(fault.pointer), related=tuple(_member(one) for one in fault.related))


def _member(pointer: str) -> str:
    for start, member in MEMBERS.items():
        if pointer.startswith(start):
            return member + (pointer.removeprefix(start) if start == "/survey/brief" else "")
    return pointer
