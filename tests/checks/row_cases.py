"""For every caution a request that makes it fire, and one, else alike, that does not.

Triggers: `knowledge/cautions.md`. The base is a worked example in which nothing is left unknown.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec

from service.bill import Market
from service.catalogue import demo_catalogue
from service.checks import Awaited, Caution, Check, Quantity, Report, cautions_of, settle
from service.checks.cautions import SECTIONS
from service.checks.clearances import CLEAR_BEHIND, OUTLET_TO_SHELF
from service.checks.finding import Facts
from service.checks.handling_checks import REPLACEMENT
from service.rules import Source, load_rules
from service.survey.wishes import Extra, ExtraKind, Finish
from tests.bill.bill_facts import one_sided
from tests.checks.by_manual import by_manual, under_screen
from tests.examples_of import changed, job_of
from tests.sold_examples import sold

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.rules import RuleSet

type Request = dict[str, Any]

MARKET = Market(catalogue=demo_catalogue(), rules=load_rules())

A, B, C, C0 = (sold(name) for name in ("A", "B", "C", "C0"))
REVERSE_CHARGE = {"/terms/tax": {"kind": "reverse_charge", "evidence": "both registered"}}
COLD_FIRE = {
    "kind": "custom", "name": "flames only", "open_ends_count": 0, "body_width_mm": 760, "body_height_mm": 535,
    "body_depth_mm": 210, "mass_kg": 12, "heat_output_w": 0, "connection": "plug", "outlet_position": "none",
}  # fmt: skip
SMALL = {
    "/survey/brief/appliance": {"kind": "catalogue", "model": "AF-101"}, "/survey/brief/breast_width_mm": 950,
    "/survey/brief/breast_depth_mm": 250, "/survey/brief/top": {"kind": "part_height", "height_mm": 880},
    "/survey/brief/appliance_shift_mm": 0,
}  # fmt: skip
REAR_PLUGS = {
    "kind": "custom", "name": "s", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
    "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200, "connectors": "rear",
}  # fmt: skip
TIGHT = {
    "/survey/brief/top": {"kind": "ceiling"}, "/survey/brief/platform_height_mm": 0, "/survey/brief/breast_depth_mm": 500,
}  # fmt: skip
STUDS = [1300, 1700, 2100, 2500]  # behind the breast of example A, 1271.5 to 2628.5


def on(request: Request, **changes: object) -> Request:
    """A request with changes; `__` stands for each `/`."""
    return changed(request, {f"/{key.replace('__', '/')}": value for key, value in changes.items()})


def wall(construction: str, **more: object) -> Request:
    """Example A on another wall."""
    return on(A, **{"survey__wall__construction": construction, **{f"survey__wall__{key}": value for key, value in more.items()}})


CASES: dict[str, tuple[Request, Request]] = {  # fires, does not
    "H01": (one_sided("AF-107"), one_sided("AF-103")),
    "H03": (under_screen(outlet_to_screen_least_mm=None, outlet_height_mm=501), under_screen()),
    "H04": (A, C),
    "H05": (on(one_sided("AF-106"), survey__brief__breast_depth_mm=320), one_sided("AF-104")),
    "H06": (B, on(B, survey__brief__board={"kind": "catalogue", "code": "BD-2412X"})),
    "H07": (changed(one_sided("AF-105"), {"/survey/brief/breast_depth_mm": 330}), one_sided("AF-103")),
    "H09": (on(A, survey__services__accessories=[{"kind": "socket", "x_mm": 1_287, "z_mm": 300}]),
            on(A, survey__services__accessories=[{"kind": "socket", "x_mm": 1_286, "z_mm": 300}])),  # opening 1286.5 to 2613.5
    "H13": (on(A, survey__services__gas="capped_off"), A),
    "H16": (on(A, survey__room__depth_mm=1_500), A),  # 4.5 m2 of board, floor 5.9 m2
    "H11": (C, on(C, survey__brief__appliance=COLD_FIRE)),
    "H12": (on(A, survey__room__volume_m3=49), on(A, survey__room__volume_m3=50)),
    "H15": (on(A, survey__brief__platform_height_mm=599), on(A, survey__brief__platform_height_mm=600)),
    "E02": (on(A, survey__services__supply_wanted="new_circuit"), A),
    "E03": (on(A, survey__site__country="gb_scotland"), A),
    "E04": (on(A, survey__services__other_load_w=871), on(A, survey__services__other_load_w=870)),  # 2000 + 45 + 75 + 870 = 2990
    "E05": (on(A, survey__services__cable_scan="not_done"), A),
    "E06": (on(A, survey__services__accessories=[{"kind": "socket", "x_mm": 1_950, "z_mm": 300}]),
            on(A, survey__services__accessories=[{"kind": "socket", "x_mm": 900, "z_mm": 300}])),
    "E07": (by_manual(service_access="side"), by_manual(service_access="front")),
    "E08": (C, A),
    "E11": (A, C),
    "E13": (on(A, survey__site__build_year=2025, survey__services__accessories=[{"kind": "socket", "x_mm": 900, "z_mm": 449}]),
            on(A, survey__site__build_year=2024, survey__services__accessories=[{"kind": "socket", "x_mm": 900, "z_mm": 449}])),
    "E15": (on(A, survey__wall__party="yes", survey__services__accessories=[{"kind": "socket", "x_mm": 900, "z_mm": 500}]),
            on(A, survey__services__accessories=[{"kind": "socket", "x_mm": 900, "z_mm": 500}])),
    "E09": (on(A, survey__services__rcd="no"), A),
    "E10": (C, A),
    "E14": (on(A, survey__services__alarms=[{"kind": "heat", "x_mm": 1_950, "y_mm": 735}]),
            on(A, survey__services__alarms=[{"kind": "heat", "x_mm": 1_950, "y_mm": 736}])),
    "S01": (A, C),
    "S03": (wall("unknown"), A),
    "S04": (wall("steel_stud", stud_positions_mm=STUDS), A),
    "S05": (wall("aerated_block"), A),
    "S06": (wall("plasterboard_on_dabs", void_mm=25, backing="solid_brick"), A),
    "S07": (wall("lath_and_plaster", stud_positions_mm=STUDS), A),
    "S08": (wall("timber_stud", stud_positions_mm=STUDS[:1]), wall("timber_stud", stud_positions_mm=STUDS)),
    "S09": (B, A),
    "S10": (on(A, survey__ceiling__kind="hollow_plank"), A),
    "S11": (on(A, survey__ceiling__kind="suspended_grid"), A),
    "S13": (B, on(B, survey__floor__construction="concrete")),  # 203 kg on 1.65 x 0.40 m: 3.02 kN/m2
    "S14": (on(A, survey__chimney__existing_breast="removed_above"), on(A, survey__chimney__existing_breast="kept")),
    "S18": (on(A, survey__wall__party="yes"), A),
    "S21": (wall("solid_brick", units="soft_or_old"), A),
    "S20": (on(C, survey__brief__breast_depth_mm=400), C),
    "B02": (on(A, survey__chimney__flue="open"), on(A, survey__chimney__flue="blocked_and_vented")),
    "B03": (on(A, survey__services__gas="unknown"), on(A, survey__services__gas="capped_off")),
    "B04": (on(A, survey__services__air_vents=[{"x_mm": 2_000, "z_mm": 200, "serves": "room"}]),
            on(A, survey__services__air_vents=[{"x_mm": 700, "z_mm": 200, "serves": "room"}])),
    "B05": (on(A, survey__wall__damp="suspected"), A),
    "B06": (on(A, survey__site__build_year=1999, survey__ceiling__textured_coating="yes"), on(A, survey__site__build_year=1999)),
    "B07": (on(A, survey__site__build_year=1991), on(A, survey__site__build_year=1992)),
    "B08": (on(A, survey__floor__underfloor_heating="yes"), A),
    "B09": (on(A, survey__floor__construction="floating"), A),
    "B10": (on(A, survey__services__radiators=[{"x0_mm": 2_728, "x1_mm": 3_300}]),
            on(A, survey__services__radiators=[{"x0_mm": 2_729, "x1_mm": 3_300}])),
    "B11": (on(A, survey__site__leasehold="yes"), A),
    "B12": (on(A, survey__site__building="flat"), A),
    "B13": (on(A, survey__room__obstacles=[{"kind": "window", "x0_mm": 2_928, "x1_mm": 3_600}]),
            on(A, survey__room__obstacles=[{"kind": "window", "x0_mm": 2_929, "x1_mm": 3_600}])),
    "B14": (on(A, survey__wall__external=True, survey__wall__external_build="timber_frame"), A),
    "B15": (on(A, survey__wall__plumb_mm=10.5), on(A, survey__wall__plumb_mm=10)),
    "B16": (on(A, survey__site__surveyed_on="2026-09-01"), on(A, survey__site__surveyed_on="2026-09-02")),  # 91 and 90 days
    "B17": (on(A, survey__chimney__flue="open", survey__site__building="flat"),
            on(A, survey__chimney__flue="open", survey__site__building="flat", survey__chimney__flue_shared="no")),
    "V01": (on(A, survey__room__eye_height_mm=600, survey__room__seat_distance_mm=1_500), A),
    "V02": (on(A, survey__room__seat_distance_mm=3_277), on(A, survey__room__seat_distance_mm=3_276)),
    "V03": (B, A),
    "V04": (on(A, survey__brief__screen=REAR_PLUGS, survey__brief__cable_room_mm=30), on(A, survey__brief__screen=REAR_PLUGS)),
    "V05": (on(A, survey__room__obstacles=[{"kind": "window", "x0_mm": 3_000, "x1_mm": 3_600}]), A),
    "V06": (on(A, survey__brief__screen={"kind": "size_class", "diagonal_in": 43}), A),
    "V07": (on(A, survey__brief__screen={**REAR_PLUGS, "sound": "down"}), on(A, survey__brief__screen=REAR_PLUGS)),
    "V08": (A, B),
    "V10": (on(C0, survey__floor__covering="carpet"), C0),
    "V12": (on(A, survey__room__wall_length_mm=3_528), on(A, survey__room__wall_length_mm=3_529)),  # 2628.5 and 900
    "W03": (on(A, survey__site__route=[{"kind": "corridor", "width_mm": 600}] * 2), A),
    "W01": (A, on(C, **{key.removeprefix("/").replace("/", "__"): value for key, value in SMALL.items()})),
    "W02": (changed(one_sided("AF-104"), TIGHT), one_sided("AF-104")),
    "W04": (on(A, survey__site__workspace="in_room"), A),
    "W05": (on(C, survey__brief__board={"kind": "catalogue", "code": "BD-2312N"}), C),
    "W06": (A, C),
    "W07": (A, changed(A, REVERSE_CHARGE)),
    "W08": (C, A),
    "W10": (A, on(A, survey__brief__board={"kind": "catalogue", "code": "BD-2218L"})),
    "W11": (on(A, survey__services__alarms=[{"kind": "smoke", "x_mm": 100, "y_mm": 3_000}]), A),
    "W12": (B, A),
    "M01": (on(A, survey__wall__damp=None), A),
    "M02": (A, changed(A, REVERSE_CHARGE)),
    "M03": (changed(A, REVERSE_CHARGE), A),
    "M07": (A, on(A, terms__screen_supplied_by="shop")),
}  # fmt: skip
MM = Quantity(symbol="gap", value=10.0, unit="mm")


def facts_of(request: Request, *unmet: str, extras: tuple[ExtraKind, ...] = (), finish: Finish | None = None) -> Facts:
    """Facts that no request reaches, as its design is refused or laid out so that they cannot be: checks failed, wishes held."""
    job, settled = job_of(request), settle(job_of(request), MARKET)
    wanted = tuple(Extra(kind=kind) for kind in extras)
    brief = msgspec.structs.replace(job.survey.brief, extras=wanted or job.survey.brief.extras)
    survey = msgspec.structs.replace(job.survey, brief=brief)
    made = msgspec.structs.replace(job, survey=survey, finish=finish or job.finish)
    short = msgspec.structs.replace(MM, value=9.0)
    source = Source(document="manual")
    checks = (
        Check(code=code, subject="fire", says="too small", demand=MM, resistance=short, clause=source, remedy="larger")
        for code in unmet
    )
    return Facts(job=made, frame=settled.frame, rules=load_rules(), report=Report(checks=tuple(checks)))


def late_facts(first_day: str | None) -> Facts:
    """Example A of 1 December with a fire that takes 10 days."""
    facts = facts_of(on(A, terms__first_day=first_day))
    return msgspec.structs.replace(facts, awaited=(Awaited(what="the fire", lead_days=10), Awaited(what="MDF", lead_days=2)))


CONTRIVED: dict[str, Callable[[], Facts]] = {
    "H02": lambda: facts_of(A, CLEAR_BEHIND),
    "H08": lambda: facts_of(A, OUTLET_TO_SHELF),
    "H10": lambda: facts_of(A, finish=Finish.SLATTED),
    "S02": lambda: facts_of(A, "fixings.wall_path"),
    "S12": lambda: facts_of(A, "structure.trimmer_sag"),
    "S16": lambda: facts_of(C, extras=(ExtraKind.SHELF,)),
    "S17": lambda: facts_of(A, "structure.end_joint"),
    "S19": lambda: facts_of(A, "structure.facing_mass"),
    "E12": lambda: facts_of(A, extras=(ExtraKind.LIGHTS,)),
    "V11": lambda: facts_of(A, REPLACEMENT),
    "W09": lambda: late_facts("2026-12-10"),
}


def found_in(facts: Facts) -> dict[str, str]:
    """Codes that fire on facts, each with what it says."""
    return {one.code: one.says for section in SECTIONS for one in section(facts)}


ALWAYS = {"E01", "H14", "H17", "M06"}  # every breast with an electric fire


def rows(request: Request, rules: RuleSet | None = None) -> tuple[Caution, ...]:
    """Cautions of a request, by the newest rules if none are given."""
    market = MARKET if rules is None else Market(catalogue=demo_catalogue(), rules=rules)
    settled = settle(job_of(request), market)
    return cautions_of(job_of(request), settled.frame, market.rules, settled.report)


def row(request: Request, code: str) -> Caution:
    """The first caution of a code."""
    return next(one for one in rows(request) if one.code == code)


def codes(request: Request) -> set[str]:
    """Codes of the cautions of a request."""
    return {one.code for one in rows(request)}


def cases(letter: str) -> list[tuple[str, Request, Request]]:
    """Cases of a section, for a parametrized test."""
    return [(code, fires, quiet) for code, (fires, quiet) in CASES.items() if code[0] == letter]
