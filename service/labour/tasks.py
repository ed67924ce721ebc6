"""Inputs of every task of a job: how many pieces, metres, square metres, jobs (`knowledge/labour.md`, section 1)."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import msgspec

from service.bill import Bill
from service.brief import Job, supply_of
from service.checks import Lift, may_be_tilted
from service.cutting import FramePlan
from service.frame import Frame
from service.rules import RuleSet
from service.survey.services import SupplyWanted
from service.survey.terms import Scope
from service.survey.wall import WallConstruction
from service.survey.wishes import Finish

if TYPE_CHECKING:
    from collections.abc import Iterator

WALL_FACTORS = {  # on the rate of a wall fixing: from memory, +-30 percent (knowledge/labour.md, section 1)
    WallConstruction.SOLID_BRICK: 1.0,
    WallConstruction.DENSE_BLOCK: 1.0,
    WallConstruction.CONCRETE: 1.0,
    WallConstruction.AERATED_BLOCK: 1.2,
    WallConstruction.TIMBER_STUD: 0.6,
    WallConstruction.BOARDED_BEHIND_PLASTERBOARD: 0.5,
    WallConstruction.STEEL_STUD: 1.5,
    WallConstruction.PLASTERBOARD_ON_DABS: 1.5,
    WallConstruction.LATH_AND_PLASTER: 1.3,
    WallConstruction.UNKNOWN: 1.3,
}
BOARD_INPUTS = {  # kind of board: what its rates are called; plywood is cut and fixed like MDF
    "plasterboard": "plasterboard",
    "cement_board": "cement_or_silicate",
    "calcium_silicate": "cement_or_silicate",
}
HARD_TO_SET_OUT = frozenset({WallConstruction.LATH_AND_PLASTER, WallConstruction.UNKNOWN})
BUILT_IN_PLACE_RATIO = 1.5  # from memory
LEAN_RATIO = 1.5  # from memory
MIST_COAT, PRIMER, FINISH_COATS = 1, 1, 2


class Site(msgspec.Struct, frozen=True, kw_only=True):
    """What the tasks are read from."""

    frame: Frame
    plan: FramePlan
    bill: Bill
    job: Job
    rules: RuleSet
    lifts: tuple[Lift, ...]
    scope: Scope


class Input(NamedTuple):
    """So much of what a rate is for; the factor is on the rate."""

    task: str
    name: str
    quantity: float
    factor: float = 1.0


def task_inputs(site: Site) -> tuple[Input, ...]:
    """Inputs of all tasks that the scope asks for, in the order of the programme."""
    if site.scope is Scope.SUPPLY_ONLY:
        return ()
    parts = (_arrival, _cutting, _frame_work, _electrics, _boards, _finish, _fitting_out)
    wanted = parts if site.scope is Scope.SUPPLY_AND_FIT else (_cutting,)
    return tuple(row for part in wanted for row in part(site) if row.quantity > 0)


def needs_electrician(job: Job, frame: Frame) -> bool:
    """A fixed connection, or the socket in a screen recess, is an electrician's work."""
    return supply_of(job) is not SupplyWanted.PLUG_IN_REACH or frame.screen_hung


def _arrival(site: Site) -> Iterator[Input]:
    job, take = site.job, site.rules.take_off
    steps = max(job.parking_distance_mm / 1000 - take.carry_free_m, 0) / take.carry_step_m
    yield Input("L01", "job", 1)
    yield Input("L01", "flight", job.storey_count)
    yield Input("L01", "ten_m_beyond_20_m", steps)
    yield Input("L02", "job", 1)
    yield Input("L02", "job_on_lath_and_plaster_or_unknown", job.wall_construction in HARD_TO_SET_OUT)
    if job.skirting_height_mm > 0:
        sizes = site.frame.sizes
        stripped = sizes.finished_width_tenth_mm + site.frame.side_walls_count * sizes.finished_depth_tenth_mm
        yield Input("L03", "job", 1)
        yield Input("L03", "m_stripped", stripped / 10_000)


def _cutting(site: Site) -> Iterator[Input]:
    yield Input("L04", "piece", site.bill.counts.bar_pieces_count)
    yield Input("L04", "bar", site.plan.bars_count)


def _frame_work(site: Site) -> Iterator[Input]:
    frame, counts, job = site.frame, site.bill.counts, site.job
    yield Input("L05", "joint", counts.joints_count)
    yield Input("L05", "laminating_screw", counts.laminating_screws_count)
    yield Input("L05", "bracket", counts.rail_brackets_count + counts.heavy_brackets_count)
    if frame.levels.platform_tenth_mm > 0:
        yield Input("L06", "job", 1)
        yield Input("L06", "station", len(frame.stations))
        yield Input("L06", "job_with_fall_over_15_mm", job.fall_tenth_mm / 10 > site.rules.take_off.fall_extra_mm)
    yield Input("L07", _raising(frame), 1, 1.0 if may_be_tilted(frame, job, site.rules) else BUILT_IN_PLACE_RATIO)
    wall_fixings = counts.wall_fixings_count + counts.base_brackets_count
    yield Input("L08", "wall_fixing", wall_fixings, WALL_FACTORS[job.wall_construction])
    yield Input("L08", "wall_fixing", counts.side_fixings_count, WALL_FACTORS[job.side_construction])
    yield Input("L08", "ceiling_screw", counts.ceiling_screws_count)
    yield Input("L08", "firring", counts.firrings_count)
    yield Input("L08", "noggin_between_joists", counts.joist_noggins_count)


def _raising(frame: Frame) -> str:
    if not frame.full_height:
        return "job_part_height"
    return "job_full_height_with_open_end" if frame.left_open or frame.right_open else "job_full_height_all_ends_closed"


def _electrics(site: Site) -> Iterator[Input]:
    if needs_electrician(site.job, site.frame):
        new_circuit = supply_of(site.job) is SupplyWanted.NEW_CIRCUIT
        yield Input("L09", "new_circuit" if new_circuit else "fused_connection", 1)


def _boards(site: Site) -> Iterator[Input]:
    at, counts, job = site.bill.measures, site.bill.counts, site.job
    kind = BOARD_INPUTS.get(job.board.board_kind, "mdf")
    yield Input("L10", f"{kind}_m2", at.facing_gross_m2)
    yield Input("L10", f"{kind}_screw", counts.face_screws_count)
    yield Input("L10", "mdf_m2", at.lid_m2)
    yield Input("L10", "mdf_screw", counts.lid_screws_count)
    if site.frame.screen_hung:
        yield Input("L11", "job_with_recess", 1)
        yield Input("L11", "m2", at.lining_m2 + at.backboard_m2)
    yield Input("L12", "fire_or_recess_opening", counts.openings_count)
    yield Input("L12", "socket_grille_or_hatch", counts.small_openings_count)
    lean = LEAN_RATIO if job.lean_mm > site.rules.take_off.lean_extra_mm else 1.0
    yield Input("L13", "m_wall_edge", at.return_edge_m + at.lid_edge_m, lean)
    yield Input("L13", "m_ceiling_edge", at.ceiling_edge_m, lean)


def _finish(site: Site) -> Iterator[Input]:
    at, finish = site.bill.measures, site.job.finish
    filled_joint_m = 0.0 if finish is Finish.SKIMMED else at.face_joint_m
    if at.painted_board_gross_m2 > 0 or filled_joint_m > 0:
        yield Input("L14a", "job", 1)
        yield Input("L14a", "m2", at.painted_board_gross_m2)
        yield Input("L14a", "m_joint", filled_joint_m)
    if finish in {Finish.SKIMMED, Finish.TAPED}:
        yield Input("L14b", "job", 1)
        yield Input("L14b", "m_bead", sum(at.bead_edges_mm) / 1000)
        yield Input("L14b", "m_scrim", at.scrim_m)
        yield Input("L14b", "m2", at.skim_m2)
    yield Input("L15", "m", at.return_edge_m + (at.ceiling_edge_m or at.lid_edge_m) + at.skirting_m)
    yield from _paint(site)
    yield Input("L17", "m", at.skirting_m)
    yield Input("L17", "mitre_or_scribe", at.skirting_joints_count)


def _paint(site: Site) -> Iterator[Input]:
    at = site.bill.measures
    if site.job.finish is not Finish.SKIMMED:
        yield Input("L16", "coat", PRIMER + FINISH_COATS)
        yield Input("L16", "m2_coat", (PRIMER + FINISH_COATS) * at.paint_m2)
        return
    board_m2 = at.paint_m2 - at.skim_m2
    yield Input("L16", "coat", MIST_COAT + FINISH_COATS + (PRIMER if board_m2 > 0 else 0))
    yield Input("L16", "m2_coat", PRIMER * board_m2 + FINISH_COATS * at.paint_m2)
    yield Input("L16", "m2_mist_coat", at.skim_m2)


def _fitting_out(site: Site) -> Iterator[Input]:
    job, at = site.job, site.rules.handling
    yield Input("L18", "job", 1)
    yield Input("L18", "job_over_45_kg", job.appliance.mass_kg > at.heavy_fire_kg)
    if needs_electrician(job, site.frame):
        yield Input("L19", "job", 1)
        yield Input("L19", "new_circuit", supply_of(job) is SupplyWanted.NEW_CIRCUIT)
    if job.screen and site.frame.screen_hung:
        yield Input("L20", "job", 1)
        yield Input("L20", "job_over_25_kg", job.screen.mass_kg > at.heavy_screen_kg)
    yield Input("L21", "job", 1)
    for ledge in site.frame.ledges:
        yield Input("L22", ledge.kind, 1)
    yield Input("L22", "niche", site.frame.niche is not None)
    yield Input("L22", "removable_panel", site.bill.counts.access_panels_count)
    yield Input("L23", "lift", sum(lift.help == "third_person" for lift in site.lifts))
    yield Input("L24", "lift", sum(lift.help == "lifter" for lift in site.lifts))
