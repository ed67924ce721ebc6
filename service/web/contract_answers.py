"""What each operation takes and answers, for the contract."""

from __future__ import annotations

from http import HTTPStatus
from typing import TYPE_CHECKING, Any, Final

from service.catalogue import Appliance, Bracket, Screen
from service.cut_plans import CutPlanMade, CutPlanRequest
from service.offers import EstimateAnswer, EstimateRequest, ShortlistAnswer, ShortlistRequest
from service.quote import BillAnswer, FrameAnswer, QuoteAnswer
from service.store import KeyRow
from service.survey import SurveyRequest
from service.web.catalogue_wire import AppliancePage, BracketPage, MaterialPage, PricedMaterial, ScreenPage
from service.web.contract_answered import HELD, Answered
from service.web.contract_books import BOOK_ANSWERS
from service.web.health import Alive, Ready
from service.web.keys import KeyList, KeyRequest, NewKeyAnswer, RotationRequest
from service.workers import DrawingRequest, example_survey

if TYPE_CHECKING:
    from collections.abc import Mapping

    import msgspec

OF_CATALOGUE: Final = ("Catalogue-Age-Seconds", "Catalogue-Revision")
ROTATE_FIRST: Final = {"rotate_key": {"operationId": "rotate_key", "parameters": {"key_id": "$response.body#/items/0/key_id"}}}
ROTATE_NEW: Final = {
    name: {"operationId": name, "parameters": {"key_id": "$response.body#/row/key_id"}} for name in ("rotate_key", "revoke_key")
}
FIRST_CODE: Final = "$response.body#/items/0/"


EXAMPLE_CUTS: Final[Mapping[str, Any]] = {
    "bars": {
        "pieces": [
            {"label": "rail", "length_mm": 1327, "pieces_count": 4},
            {"label": "stud", "length_mm": 2005, "pieces_count": 3, "after_measure": True},
            {"label": "noggin", "length_mm": 314, "pieces_count": 8},
        ],
        "stock": [
            {"code": "4.8 m", "length_mm": 4800, "price": {"amount": "6.95", "currency": "GBP"}},
            {"code": "2.4 m", "length_mm": 2400, "price": {"amount": "3.60", "currency": "GBP"}, "available_count": 4},
            {"code": "rack", "length_mm": 1450, "available_count": 1, "offcut": True},
        ],
        "kerf_mm": 4,
        "least_offcut_mm": 300,
    },
    "sheets": {
        "pieces": [
            {"label": "face", "width_mm": 1200, "height_mm": 700, "may_turn": True},
            {"label": "return", "width_mm": 430, "height_mm": 1100, "pieces_count": 2, "may_turn": True},
        ],
        "stock": [{"code": "board", "width_mm": 2400, "height_mm": 1200, "price": {"amount": "14.20", "currency": "GBP"}}],
        "kerf_mm": 3,
        "least_offcut_width_mm": 300,
        "least_offcut_height_mm": 300,
    },
    "effort": "quick",
}


EXAMPLE_ANSWERS: Final[Mapping[str, Any]] = {
    "appliance": {"kind": "catalogue", "model": "AF-302"},
    "screen": {"kind": "catalogue", "model": "SC-043"},
    "room_height_mm": 2515,
    "wall": "solid_brick",
    "finish": "painted",
}
EXAMPLE_FEWEST: Final[Mapping[str, Any]] = {
    "appliance": {"kind": "size_class", "open_ends_count": 0, "length_mm": 1200},
    "screen": {"kind": "size_class", "diagonal_in": 50, "bought": False},
    "room_height_mm": 2600,
}


EXAMPLE_ROOM: Final[Mapping[str, Any]] = {
    "room_height_mm": 2515,
    "wall": "solid_brick",
    "open_ends_count": 2,
    "least_diagonal_in": 43,
    "most_width_mm": 1800,
}


def _calculation(description: str, answer: Any, name: str) -> Answered:  # noqa: ANN401 - a type
    return Answered(
        description=description,
        answer=answer,
        name=name,
        headers=OF_CATALOGUE,
        body=SurveyRequest,
        examples=(("three_sided", example_survey()),),
    )


def _page(things: str, answer: type[msgspec.Struct], item: str, key: str) -> Answered:
    links = {item: {"operationId": item, "parameters": {"code": FIRST_CODE + key}}}
    return Answered(description=f"A page of {things}.", answer=answer, headers=(*OF_CATALOGUE, *HELD), links=links)


def _item(thing: str, answer: type[msgspec.Struct], code: str) -> Answered:
    return Answered(description=f"The {thing}.", answer=answer, headers=(*OF_CATALOGUE, *HELD), code=code)


ANSWERS: Final[Mapping[str, Answered]] = {
    "create_frame": _calculation("The design, or why there is none.", FrameAnswer, "FrameAnswer"),
    "create_bill": _calculation("What to buy, or why there is no design.", BillAnswer, "BillAnswer"),
    "create_quote": _calculation("The quote, or why there is no design.", QuoteAnswer, "QuoteAnswer"),
    "create_drawing": Answered(
        description="The drawing.",
        answer=str,
        media_type="image/svg+xml",
        headers=OF_CATALOGUE,
        body=DrawingRequest,
        examples=(("three_sided", {**example_survey(), "view": "front_elevation"}),),
    ),
    "create_cut_plan": Answered(
        description="The plan.",
        answer=CutPlanMade,
        body=CutPlanRequest,
        examples=(("studding_and_board", EXAMPLE_CUTS),),
    ),
    "create_estimate": Answered(
        description="The price range, or why there is no design.",
        answer=EstimateAnswer,
        name="EstimateAnswer",
        headers=OF_CATALOGUE,
        body=EstimateRequest,
        examples=(("three_sided", EXAMPLE_ANSWERS), ("no_screen_yet", EXAMPLE_FEWEST)),
    ),
    "create_shortlist": Answered(
        description="Every pair, best first.",
        answer=ShortlistAnswer,
        headers=OF_CATALOGUE,
        body=ShortlistRequest,
        examples=(("a_room", EXAMPLE_ROOM),),
    ),
    "list_materials": _page("materials", MaterialPage, "get_material", "code"),
    "get_material": _item("material", PricedMaterial, "TM-1035A"),
    "list_appliances": _page("fires", AppliancePage, "get_appliance", "model"),
    "get_appliance": _item("fire", Appliance, "AF-302"),
    "list_screens": _page("screens", ScreenPage, "get_screen", "model"),
    "get_screen": _item("screen", Screen, "SC-043"),
    "list_brackets": _page("screen brackets", BracketPage, "get_bracket", "model"),
    "get_bracket": _item("screen bracket", Bracket, "BK-301"),
    **BOOK_ANSWERS,
    "list_keys": Answered(description="The keys.", answer=KeyList, links=ROTATE_FIRST),
    "create_key": Answered(
        description="The key, shown this once.",
        status=HTTPStatus.CREATED,
        conflicts=True,
        answer=NewKeyAnswer,
        body=KeyRequest,
        examples=(
            ("page", {"label": "planner on our page", "use": {"kind": "browser"}}),
            ("till", {"label": "till", "use": {"kind": "server", "scopes": ["quote"]}, "lifetime_days": 365}),
        ),
        links=ROTATE_NEW,
    ),
    "rotate_key": Answered(
        description="The key in its place, shown this once.",
        status=HTTPStatus.CREATED,
        conflicts=True,
        answer=NewKeyAnswer,
        body=RotationRequest,
        examples=(("a_day", {"overlap_seconds": 86_400}),),
        code="0123456789ab",
        links=ROTATE_NEW,
    ),
    "revoke_key": Answered(description="The key, which has ended.", answer=KeyRow, code="0123456789ab"),
    "get_live": Answered(description="The process answers.", answer=Alive),
    "get_ready": Answered(description="The process can calculate.", answer=Ready),
    "get_contract": Answered(description="The document.", answer=dict, headers=HELD),
}
