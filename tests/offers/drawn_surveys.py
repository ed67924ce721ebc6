"""Answers of a shopper, and full surveys of the same room: what the shopper did not say is drawn from survey.md's ranges."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec

from service.catalogue import demo_catalogue
from service.offers import EstimateRequest
from service.survey import SurveyRequest
from service.workers import example_survey

if TYPE_CHECKING:
    from random import Random

DAY = "2026-12-01"
CATALOGUE = demo_catalogue()
MASONRY = ("solid_brick", "dense_block", "aerated_block", "concrete")
WALLS = (*MASONRY, "plasterboard_on_dabs")

type Json = dict[str, Any]


def draw_answers(chance: Random) -> EstimateRequest:
    """What a page might send: always a fire, mostly a height, sometimes more."""
    fire = chance.choice(sorted(CATALOGUE.appliances))
    fitting = [one for one in sorted(CATALOGUE.screens) if one < "SC-060"]
    screen = chance.choice([None, *fitting])
    body: Json = {
        "appliance": {"kind": "catalogue", "model": fire},
        "screen": screen and {"kind": "catalogue", "model": screen},
        "finish": chance.choice(["painted", "painted", "skimmed", None]),
        "room_height_mm": chance.choice([None, 2350, 2400, 2515, 2600, 2800, 3000]),
        "wall": chance.choice([None, None, *WALLS]),
        "supply": chance.choice([None, None, "fused_connection", "new_circuit"]),
        "flights_count": chance.choice([None, None, 0, 1]),
        "floor_fall_mm": chance.choice([None, None, 0, 8]),
        "date": DAY,
    }
    return msgspec.convert(body, EstimateRequest)


def draw_survey(asked: EstimateRequest, brief: Json, chance: Random) -> SurveyRequest:
    """A full survey of the room; ranges of `knowledge/survey.md`, sections 3 to 9."""
    body = example_survey()
    survey: Json = body["survey"]
    height_mm = asked.room_height_mm or chance.uniform(2_300, 2_500)
    fall_mm = chance.uniform(0, 15) if asked.floor_fall_mm is None else asked.floor_fall_mm
    places = [(1_000, 0), (2_000, 0), (3_000, 0), (1_000, 400), (3_000, 400)]
    survey["room"] |= {
        "heights": [{"x_mm": x, "y_mm": y, "height_mm": height_mm} for x, y in places],
        "wall_length_mm": 6_000,
        "breast_centre_from_left_mm": 3_000,
    }
    survey["wall"] |= _wall(asked, chance)
    survey["ceiling"] = {name: value for name, value in survey["ceiling"].items() if name != "joist_positions_mm"}
    joists = str(asked.joists) if asked.joists else chance.choice(["across_wall", "along_wall"])
    survey["ceiling"] |= {"joists": joists, "first_joist_mm": 200, "joist_spacing_mm": 400}
    survey["floor"] = {name: value for name, value in survey["floor"].items() if name != "levels"}
    survey["floor"] |= {
        "fall_mm": round(fall_mm, 1),
        "skirting_height_mm": chance.randint(45, 300),
        "skirting_thickness_mm": chance.randint(9, 30),
    }
    survey["services"]["supply_wanted"] = asked.supply or _supply(asked, chance)
    survey["site"] |= {
        "storey": chance.choice([0, 0, 0, 1, 2, 3]) if asked.flights_count is None else asked.flights_count,
        "parking_distance_mm": chance.randint(0, 40_000),
    }
    survey["brief"] = brief
    survey["provenance"] = {"/survey": chance.choice(["measured", "stated"])}
    return msgspec.convert({"survey": survey, "terms": {"date": DAY}}, SurveyRequest)


def _wall(asked: EstimateRequest, chance: Random) -> Json:
    construction = str(asked.wall) if asked.wall else chance.choice(WALLS)
    drawn: Json = {
        "construction": construction,
        "units": chance.choice(["sound", "sound", "soft_or_old"]),
        "lining_mm": chance.randint(10, 30),
        "plumb_mm": chance.randint(0, 12),
        "flat_mm": chance.randint(0, 6),
    }
    dabs = {"backing": chance.choice(MASONRY), "void_mm": chance.randint(10, 40)}
    return drawn | (dabs if construction == "plasterboard_on_dabs" else {})


def _supply(asked: EstimateRequest, chance: Random) -> str:
    fire = CATALOGUE.appliances[asked.appliance.model] if hasattr(asked.appliance, "model") else None
    plug = ["plug_in_reach"] if fire and fire.connection == "plug" else []
    return chance.choice([*plug, "fused_connection", "fused_connection", "fused_connection", "new_circuit"])
