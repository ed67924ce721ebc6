from __future__ import annotations

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.errors import Fault, Reason
from service.offers import EstimateRequest
from service.offers.estimate_survey import MEMBERS, board_for, fault_as_asked, survey_of
from service.survey.survey import Survey
from service.survey.wishes import CatalogueBoard, Finish

FIRE = {"kind": "catalogue", "model": "AF-302"}


def asked(**members: object) -> EstimateRequest:
    return msgspec.convert({"appliance": FIRE, **members}, EstimateRequest)


def test_what_is_not_told_is_left_out() -> None:
    survey = survey_of(asked(), demo_catalogue()).survey

    assert [None] * 5 == [survey.room, survey.wall, survey.ceiling, survey.floor, survey.site]


def test_what_is_told_stands_where_a_survey_has_it() -> None:
    told = {"room_height_mm": 2515, "wall": "solid_brick", "joists": "across_wall", "floor_fall_mm": 4, "flights_count": 2}
    body = msgspec.to_builtins(survey_of(asked(**told, supply="new_circuit", date="2026-12-01"), demo_catalogue()))
    survey = body["survey"]

    assert 2515 == survey["room"]["heights"][0]["height_mm"]
    assert "solid_brick" == survey["wall"]["construction"]
    assert "across_wall" == survey["ceiling"]["joists"]
    assert (4, 2, "new_circuit") == (
        survey["floor"]["fall_mm"], survey["site"]["storey"], survey["services"]["supply_wanted"],
    )  # fmt: skip
    assert "2026-12-01" == body["terms"]["date"]


@pytest.mark.parametrize("finish", [Finish.SKIMMED, Finish.TAPED])
def test_plaster_gets_plasterboard(finish: Finish) -> None:
    board = board_for(finish, demo_catalogue())

    assert isinstance(board, CatalogueBoard)
    assert "plasterboard" == demo_catalogue().materials[board.code].board_kind


def test_paint_keeps_the_board_of_the_house() -> None:
    assert board_for(Finish.PAINTED, demo_catalogue()) is None


def test_faults_point_into_the_answers() -> None:
    fault = Fault(
        pointer="/survey/brief/appliance/model",
        reason=Reason.UNKNOWN_MODEL,
        detail="none",
        remedy="another",
        related=("/survey/room/heights",),
    )

    assert ("/appliance/model", ("/room_height_mm",)) == (fault_as_asked(fault).pointer, fault_as_asked(fault).related)


def test_every_pointer_names_a_member_of_both() -> None:
    for inside, outside in MEMBERS.items():
        assert not outside or outside[1:] in EstimateRequest.__struct_fields__
        assert inside.startswith("/terms") or inside.split("/")[2] in Survey.__struct_fields__
