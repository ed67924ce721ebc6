"""The words of a family of checks on a few designs, as lines that a person has read; run as a module it writes them anew.

Numbers are proved elsewhere: here stand symbols, units, sentences, clauses and remedies, so that none changes unseen.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from service.checks.check import Check
from service.checks.clearances import clearance_checks, zone_checks
from service.checks.cold_wall import damp_checks
from service.checks.handling_checks import lifting_checks, replacement_checks, way_in_checks
from service.checks.linings import lining_checks
from service.checks.pipes import pipe_checks
from service.checks.supply import cable_checks, load_checks
from service.checks.viewing import viewing_checks
from service.checks.void_heat import recess_checks, void_checks
from tests.bill.bill_facts import one_sided
from tests.checks.by_manual import by_manual, under_screen
from tests.checks.grounds import ground_of
from tests.examples_of import changed
from tests.sold_examples import sold

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.checks.check import Quantity, Result
    from service.checks.ground import Ground

FOLDER = Path(__file__).parent / "words"
FAMILIES: dict[str, tuple[Callable[[Ground], tuple[Result, ...]], ...]] = {
    "clearances": (clearance_checks, zone_checks),
    "void_heat": (void_checks, recess_checks),
    "cold_wall": (damp_checks,),
    "linings": (lining_checks,),
    "pipes": (pipe_checks,),
    "supply": (load_checks, cable_checks),
    "viewing": (viewing_checks,),
    "handling_checks": (way_in_checks, lifting_checks, replacement_checks),
}
SILENT = dict.fromkeys(
    ("clear_above_mm", "clear_side_mm", "clear_rear_mm", "clear_front_mm", "outlet_to_screen_least_mm", "max_void_deg_c",
     "air_inlet_area_mm2"),
)  # fmt: skip
OUTSIDE: dict[str, object] = {"/survey/wall/external": True, "/survey/wall/thickness_mm": None}
SHEET: dict[str, object] = {
    "kind": "custom", "name": "s", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
    "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200, "connectors": "rear",
}  # fmt: skip
AWKWARD: dict[str, object] = {
    "non_combustible_above_mm": 300, "non_combustible_side_mm": 80, "air_may_face": "void", "air_outlet_area_mm2": 4000,
    "outlet_rise_k": 70, "service_access": "side", "heat_output_w": 3000, "current_a": 14,
}  # fmt: skip


def requests() -> dict[str, dict[str, Any]]:
    """Designs that between them make most sentences be said."""
    hard = {
        "/survey/wall/external": True, "/survey/wall/external_build": "solid", "/survey/wall/thickness_mm": None,
        "/survey/services/rcd": "no", "/survey/services/spare_way": "no", "/survey/services/supply_wanted": "new_circuit",
        "/survey/services/cable_scan": "not_done", "/survey/room/seat_distance_mm": 1000, "/survey/room/eye_height_mm": 600,
        "/survey/site/route": [{"kind": "corridor", "width_mm": 600}] * 2, "/survey/site/narrowest_door_mm": 500,
        "/survey/services/pipes": [{"kind": "water", "x0_mm": 1300, "z0_mm": 0, "x1_mm": 1300, "z1_mm": 2500}],
        "/survey/room/depth_mm": 1500,
    }  # fmt: skip
    untold = {
        "/survey/room/seat_distance_mm": None, "/survey/room/eye_height_mm": None, "/survey/services/rcd": None,
        "/survey/site/longest_length_mm": None, "/survey/site/largest_board_length_mm": None,
        "/survey/site/narrowest_door_mm": None,
    }  # fmt: skip
    return {
        "A": sold("A"),
        "B": sold("B"),
        "C": sold("C"),
        "a hard site": changed(sold("A"), hard),
        "an untold site": changed(sold("A"), untold),
        "a silent manual": under_screen(**SILENT),
        "an awkward manual": by_manual(**AWKWARD),
        "an open cavity": changed(sold("A"), {**OUTSIDE, "/survey/wall/external_build": "cavity_open"}),
        "an insulated wall": changed(sold("A"), {**OUTSIDE, "/survey/wall/external_build": "cavity_insulated"}),
        "an unknown wall": changed(sold("A"), {**OUTSIDE, "/survey/wall/external_build": "unknown"}),
        "an undeclared screen": changed(under_screen(outlet_to_screen_least_mm=None), {"/survey/brief/screen": SHEET}),
        "a screen without a limit": changed(sold("A"), {"/survey/brief/screen": {**SHEET, "power_w": 75}}),
        "a hot screen": changed(sold("A"), {"/survey/brief/screen": {**SHEET, "power_w": 3000, "max_ambient_deg_c": 40}}),
        "a cold void": by_manual(max_void_deg_c=25, outlet_height_mm=None),
        "much on one circuit": changed(sold("A"), {"/survey/services/other_load_w": 4000}),
        "too much on a circuit of its own": changed(
            by_manual(heat_output_w=6000), {"/survey/services/supply_wanted": "new_circuit", "/survey/services/spare_way": None}
        ),
        "plywood": changed(sold("C"), {"/survey/brief/board": {"kind": "catalogue", "code": "BD-2218L"}}),
        "air from the void": changed(one_sided("AF-105"), {"/survey/brief/breast_depth_mm": 330}),
        "flames only": by_manual(heat_output_w=0, outlet_position="none", air_inlet_area_mm2=0),
    }


def words_of(family: str) -> str:
    """Every result of a family on every design."""
    grounds = {name: ground_of(request) for name, request in requests().items()}
    blocks = []
    for name, ground in grounds.items():
        lines = [_line(one) for run in FAMILIES[family] for one in run(ground)]
        blocks.append("\n".join((f"# {name}", *lines)))
    return "\n\n".join(blocks) + "\n"


def reviewed(family: str) -> str:
    """The words that were read."""
    return (FOLDER / f"{family}.txt").read_text("utf-8")


def _line(one: Result) -> str:
    if not isinstance(one, Check):
        return f"{one.code} | does not apply: {one.why}"
    clause = " ".join(part for part in (one.clause.document, one.clause.edition, one.clause.clause) if part)
    there = _text(one.resistance) if one.resistance else "-"
    more = ", ".join(_text(quantity) for quantity in one.inputs)
    parts = (
        one.code, one.subject, one.verdict.value, f"{_text(one.demand)} of {there}", more, one.says, one.unverified, one.remedy,
        clause, "" if one.binding else "advice",
    )  # fmt: skip
    return " | ".join(part for part in parts if part)


def _text(quantity: Quantity) -> str:
    return f"{quantity.symbol} {quantity.value:.4g} {quantity.unit}"


if __name__ == "__main__":
    for each in FAMILIES:
        (FOLDER / f"{each}.txt").write_text(words_of(each), "utf-8")
