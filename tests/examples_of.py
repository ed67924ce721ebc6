"""The worked examples A, B, C and C0 as requests, and short ways from a request to its job and frame.

Source of the inputs: `knowledge/worked-examples.md`, the lines "Inputs" and "Site settings" of each example. What these
leave open (room, services, site) is filled with values that change no number of the examples, so that nothing that a firm
quote needs is missing.
"""

from __future__ import annotations

import copy
from typing import TYPE_CHECKING, Any

import msgspec

from service.brief import resolve
from service.catalogue import demo_catalogue
from service.errors import RequestFaultsError, UnbuildableError, Unmet
from service.frame import lay_out
from service.rules import load_rules
from service.survey import SurveyRequest

if TYPE_CHECKING:
    from service.brief import Deal, Job
    from service.errors import Fault
    from service.frame import Additions, Frame

type Request = dict[str, Any]

DAY = "2026-12-01"
SURVEYED_ON = "2026-11-20"


def _points(centre_mm: float, width_mm: float, depth_mm: float) -> list[dict[str, float]]:
    """Left, middle and right at the wall, left and right at the depth: the five points of a firm survey."""
    left_mm, right_mm = centre_mm - width_mm / 2, centre_mm + width_mm / 2
    places = ((left_mm, 0), (centre_mm, 0), (right_mm, 0), (left_mm, depth_mm), (right_mm, depth_mm))
    return [{"x_mm": x, "y_mm": y} for x, y in places]


def _heights(points: list[dict[str, float]], height_mm: float) -> list[Request]:
    return [{**point, "height_mm": height_mm} for point in points]


def _site() -> Request:
    return {
        "country": "gb_england", "building": "house", "storey": 0, "build_year": 2005, "longest_length_mm": 4800,
        "largest_board_length_mm": 2440, "largest_board_width_mm": 1220, "narrowest_door_mm": 760, "stairs": "straight",
        "parking_distance_mm": 20_000, "workspace": "outside", "occupied": "yes", "pets": "no", "children": "no",
        "linked_alarm": "no", "listed": "no", "conservation": "no", "leasehold": "no", "tenancy": "no",
        "hours_allowed": "08:00-18:00", "surveyed_on": SURVEYED_ON,
    }  # fmt: skip


def _services(cable_scan: str) -> Request:
    return {
        "accessories": [], "cable_scan": cable_scan, "rcd": "yes", "spare_way": "yes", "supply_wanted": "fused_connection",
        "gas": "none", "pipes": [], "radiators": [], "air_vents": [], "alarms": [], "data_count": 1, "aerial_count": 1,
    }  # fmt: skip


def _wall() -> Request:
    return {
        "construction": "solid_brick", "units": "sound", "lining_mm": 15, "plumb_mm": 0, "flat_mm": 2, "square_mm": 0,
        "external": False, "damp": "none", "party": "no", "thickness_mm": 215, "finish": "paint",
    }  # fmt: skip


def _floor() -> Request:
    return {
        "construction": "boards", "covering": "none", "underfloor_heating": "no", "sound": "yes", "skirting_height_mm": 120,
        "skirting_thickness_mm": 15, "skirting_profile": "known_stock", "skirting_reuse": False,
    }  # fmt: skip


def example_a() -> Request:
    """Three-sided fire, recess, full height, painted MDF; every field that a firm quote needs was measured."""
    points = _points(1950, 1357, 435)
    survey: Request = {
        "room": {
            "heights": _heights(points, 2515), "wall_length_mm": 3900, "breast_centre_from_left_mm": 1950, "depth_mm": 4200,
            "seat_distance_mm": 3000, "eye_height_mm": 1100, "volume_m3": 40, "obstacles": [],
        },
        "wall": _wall(),
        "ceiling": {
            "kind": "boarded_joists", "joists": "across_wall", "joist_positions_mm": [1350, 1750, 2150, 2550],
            "joist_thickness_mm": 38, "noggins": "none", "access_above": "none", "lining_mm": 12.5, "slope_deg": 0,
            "textured_coating": "no", "cornice": {"kind": "none"}, "fittings": [],
        },
        "floor": {**_floor(), "fall_mm": 0, "levels": [{**point, "level_mm": 0} for point in points]},
        "services": _services("done"),
        "chimney": {"flue": "none", "existing_breast": "none", "hearth_height_mm": 0},
        "site": _site(),
        "brief": {
            "appliance": {"kind": "catalogue", "model": "AF-302"}, "screen": {"kind": "catalogue", "model": "SC-043"},
            "screen_bracket": {"kind": "catalogue", "model": "BK-301"}, "open_ends": "both", "breast_width_mm": None,
            "breast_depth_mm": 435, "top": {"kind": "ceiling"}, "platform_height_mm": 430, "sill_above_appliance_mm": 210,
            "screen_gap_mm": 50, "screen_place": "recess", "timber": {"kind": "catalogue", "code": "TM-1035A"},
            "board": {"kind": "catalogue", "code": "BD-2015R"}, "finish": "painted", "extras": [],
        },
        "measured": None,
        "provenance": {"/survey": "measured"},
    }  # fmt: skip
    terms = {
        "scope": "supply_and_fit", "date": DAY, "appliance_supplied_by": "shop", "screen_supplied_by": "customer",
        "bracket_supplied_by": "shop", "visit_days_count": 5, "margin_ratio": 0.2, "reference": "Q-1042",
    }  # fmt: skip
    return {"survey": survey, "terms": terms}


def example_b() -> Request:
    """Two-sided fire open at the right, wide screen, skimmed plasterboard, floor 9 mm lower at the right end."""
    points = _points(2000, 1650, 400)
    falls_mm = (0, 4.5, 9, 0, 9)  # under a level ceiling: left, middle, right at the wall, left and right at the depth
    survey: Request = {
        "room": {
            "heights": [{**point, "height_mm": 2620 + fall_mm} for point, fall_mm in zip(points, falls_mm, strict=True)],
            "wall_length_mm": 4000, "breast_centre_from_left_mm": 2000, "seat_distance_mm": 3000, "obstacles": [],
        },
        "wall": _wall(),
        "ceiling": {
            "kind": "boarded_joists", "joists": "along_wall", "noggins": "none", "lining_mm": 12.5, "textured_coating": "no",
        },
        "floor": {
            **_floor(), "low_end": "right",
            "levels": [{**point, "level_mm": -fall_mm} for point, fall_mm in zip(points, falls_mm, strict=True)],
        },
        "services": _services("not_done"),
        "chimney": {"flue": "none"},
        "site": _site(),
        "brief": {
            "appliance": {"kind": "catalogue", "model": "AF-201"}, "screen": {"kind": "catalogue", "model": "SC-060"},
            "open_ends": "right", "breast_width_mm": 1650, "breast_depth_mm": 400, "top": {"kind": "ceiling"},
            "platform_height_mm": 250, "sill_above_appliance_mm": 180, "screen_gap_mm": 50,
            "timber": {"kind": "catalogue", "code": "TM-1091L"}, "board": {"kind": "catalogue", "code": "BD-2125K"},
            "finish": "skimmed",
        },
    }  # fmt: skip
    return {"survey": survey, "terms": {"date": DAY}}


def example_c() -> Request:
    """One-sided fire 60 mm left of the middle, part height with lid, no screen, low platform, 12 mm board."""
    points = _points(2000, 1355, 300)
    survey: Request = {
        "room": {
            "heights": _heights(points, 2450), "wall_length_mm": 4000, "breast_centre_from_left_mm": 2000, "obstacles": [],
        },
        "wall": _wall(),
        "floor": {**_floor(), "fall_mm": 0},
        "services": _services("not_done"),
        "chimney": {"flue": "none"},
        "site": _site(),
        "brief": {
            "appliance": {"kind": "catalogue", "model": "AF-102"}, "screen": None, "open_ends": "none",
            "breast_width_mm": 1355, "breast_depth_mm": 300, "top": {"kind": "part_height", "height_mm": 1180},
            "platform_height_mm": 134, "sill_above_appliance_mm": 190, "appliance_shift_mm": -60,
            "timber": {"kind": "catalogue", "code": "TM-1007V"}, "board": {"kind": "catalogue", "code": "BD-2012M"},
            "finish": "painted",
        },
    }  # fmt: skip
    return {"survey": survey, "terms": {"date": DAY}}


def example_c0() -> Request:
    """Example C with the fire on the floor."""
    return changed(example_c(), {"/survey/brief/platform_height_mm": 0})


def changed(request: Request, values: Request) -> Request:
    """A copy with other values at plain pointers; parts on the way are made, `None` is written as null."""
    made = copy.deepcopy(request)
    for pointer, value in values.items():
        *way, last = pointer.split("/")[1:]
        part = made
        for name in way:
            part = part.setdefault(name, {})
            if part is None:
                message = f"{pointer}: {name} is null"
                raise KeyError(message)
        part[last] = value
    return made


def without(request: Request, *pointers: str) -> Request:
    """A copy with some fields left out."""
    made = copy.deepcopy(request)
    for pointer in pointers:
        *way, last = pointer.split("/")[1:]
        part = made
        for name in way:
            part = part[name]
        part.pop(last, None)
    return made


def request_of(data: Request) -> SurveyRequest:
    """The request decoded as the service decodes it."""
    return msgspec.convert(data, SurveyRequest)


def job_of(data: Request) -> Job:
    """The job of a request with the demo catalogue."""
    return job_and_deal_of(data)[0]


def job_and_deal_of(data: Request) -> tuple[Job, Deal]:
    """Job and deal of a request with the demo catalogue."""
    return resolve(request_of(data), demo_catalogue(), load_rules(), DAY)


def frame_of(data: Request, additions: Additions | None = None) -> Frame:
    """The laid-out frame of a request."""
    job = job_of(data)
    return lay_out(job, load_rules()) if additions is None else lay_out(job, load_rules(), additions)


def unmet_of(data: Request) -> tuple[Unmet, ...]:
    """What keeps a request from being built; empty: it is designed."""
    try:
        frame_of(data)
    except UnbuildableError as error:
        return error.unmet
    return ()


def faults_of(data: Request) -> tuple[Fault, ...]:
    """What is wrong with a request; empty: a job is made of it."""
    try:
        job_of(data)
    except RequestFaultsError as error:
        return error.faults
    return ()
