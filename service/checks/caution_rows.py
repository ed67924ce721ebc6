"""The rows of `knowledge/cautions.md` that need no calculation: code, trigger, text, what it stops, for whom, who clears it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.brief import Job, supply_of
from service.checks.handling import count_lifts, may_be_tilted
from service.checks.result import Audience, CautionState, Stops
from service.frame import Frame
from service.rules import RuleSet
from service.survey.ceiling import Ceiling, CeilingKind, JoistDirection
from service.survey.fields import Answer
from service.survey.floor import Floor, FloorConstruction
from service.survey.services import Chimney, Flue, GasState, Services, SupplyWanted
from service.survey.site import Building, Country, Site, Workspace
from service.survey.terms import Scope, SuppliedBy
from service.survey.wall import Damp, Wall, WallConstruction

if TYPE_CHECKING:
    from collections.abc import Iterator

C, F, S = Audience.CUSTOMER, Audience.FITTER, Audience.SHOP
FIRES, OPEN = CautionState.FIRES, CautionState.NOT_VERIFIED
CP, FM = "common practice, no source", "from memory"
CLEARED_BY = {  # roles that may clear a row: "who clears" of cautions.md
    "B03": ("gas_engineer",),
    "B04": ("gas_engineer", "building_control"),
    "B05": ("surveyor",),
    "B06": ("owner",),
    "B11": ("owner", "building_control"),
    "B17": ("surveyor", "owner"),
    "E01": ("electrician",),
    "E02": ("building_control", "electrician"),
    "E05": ("electrician", "surveyor"),
    "E06": ("electrician",),
    "H01": ("maker",),
    "S03": ("surveyor", "structural_engineer"),
    "S08": ("surveyor", "structural_engineer"),
    "S09": ("surveyor",),
    "B02": ("surveyor",),
    "V06": ("owner",),
    "M01": ("owner", "surveyor"),
}
OLD_YEAR = 2000  # presumption of asbestos before it: seen on a trade reference page
LEAD_YEAR = 1992  # from memory
PLUG_LIMIT_W = 13 * 230  # a 13 A fuse at 230 V


class Facts(msgspec.Struct, frozen=True, kw_only=True):
    """What triggers read."""

    job: Job
    frame: Frame
    rules: RuleSet


class Row(msgspec.Struct, frozen=True, kw_only=True):
    """One row whose trigger is true, or cannot be verified."""

    code: str
    says: str
    stops: Stops
    audience: tuple[Audience, ...]
    who_clears: tuple[str, ...]
    source: str = CP
    state: CautionState = FIRES


def rows_of(facts: Facts) -> Iterator[Row]:
    """Rows of every section."""
    yield from _fire(facts)
    yield from _electricity(facts)
    yield from _structure(facts)
    yield from _building(facts)
    yield from _site(facts)
    yield from _work(facts)
    yield from _money(facts)


def _fire(facts: Facts) -> Iterator[Row]:
    job = facts.job
    if job.missing_figures:
        names = ", ".join(pointer.rsplit("/", 1)[1] for pointer in job.missing_figures)
        yield Row(code="H01", says=f"the makers do not state {names}: to be taken from the manual before building", stops=Stops.FIRM_QUOTE, audience=(C, S), who_clears=("maker",))
    if job.screen and facts.frame.screen_hung:
        limit = job.screen.max_ambient_deg_c or 40
        yield Row(code="H04", says=f"screens are commonly limited to {limit:g} degrees around them: keep the gaps of this design open top and bottom", stops=Stops.NOTHING, audience=(C, F), who_clears=("maker",), source=FM)
    yield Row(code="H14", says=f"keep curtains, furniture and drying racks {job.appliance.clear_front_mm or 1000:g} mm from the front of the fire", stops=Stops.NOTHING, audience=(C,), who_clears=("maker",))
    if facts.frame.levels.platform_tenth_mm < 6_000 and job.appliance.heat_output_w > 0:
        yield Row(code="H15", says="hot surfaces at the height of a child: a guard, and the lock of the fire", stops=Stops.NOTHING, audience=(C,), who_clears=("maker",))
    yield Row(code="H17", says="clearances to timber are the maker's: build to the manual, which outranks this design", stops=Stops.NOTHING, audience=(F, S), who_clears=("maker",), source="IEC 60335-1 clause 11, from memory")


def _electricity(facts: Facts) -> Iterator[Row]:
    job = facts.job
    services = job.survey.services or Services()
    country = (job.survey.site or Site()).country or Country.GB
    yield Row(code="E01", says="connection, tests and certificate by a qualified electrician", stops=Stops.THIS_WORK, audience=(C, F), who_clears=("electrician",), source="BS 7671, from memory")
    if supply_of(job) is SupplyWanted.NEW_CIRCUIT:
        yield Row(code="E02", says="a new circuit is notifiable work: a registered installer, or building control beforehand", stops=Stops.THIS_WORK, audience=(C, F), who_clears=("code",), source="Approved Document P, 2013 edition: seen in summaries")
    if country not in {Country.GB, Country.GB_ENGLAND}:
        yield Row(code="E03", says="notification rules differ here: ask the local authority and a registered electrician", stops=Stops.THIS_WORK, audience=(C, F), who_clears=("code",), source=FM)
    load = job.appliance.heat_output_w + (job.screen.power_w or 0 if job.screen else 0) + (services.other_load_w or 0)
    if load > PLUG_LIMIT_W:
        yield Row(code="E04", says=f"{load:g} W together are above the {PLUG_LIMIT_W} W of a 13 A connection: a circuit of its own", stops=Stops.THIS_WORK, audience=(C, F), who_clears=("electrician",), source="computed: 13 A x 230 V")
    if not job.cables_scanned:
        yield Row(code="E05", says="no cable scan: cables may lie in the wall within 150 mm of ceiling and corners and in line with accessories; scan and isolate before drilling", stops=Stops.THIS_WORK, audience=(F,), who_clears=("electrician",), source="BS 7671 522.6.202, seen quoted in electricians' articles")
    yield from _accessories(facts, services)
    yield Row(code="E10", says="no extension lead or adaptor for the fire, and no plug behind its body", stops=Stops.THIS_WORK, audience=(C, F), who_clears=("maker",))


def _accessories(facts: Facts, services: Services) -> Iterator[Row]:
    job, half = facts.job, facts.frame.sizes.finished_width_tenth_mm / 2
    if services.accessories is None:
        yield Row(code="E06", says="accessories on the wall were not told: any inside the breast is moved or kept reachable, never buried", stops=Stops.THIS_WORK, audience=(C, F), who_clears=("electrician",), source="BS 7671 526.3, from memory", state=OPEN)
        return
    inside = [one for one in services.accessories if abs(one.x_mm * 10 - job.wall_centre_tenth_mm) <= half]
    if inside:
        names = ", ".join(f"{one.kind.value} at {one.x_mm:g}" for one in inside)
        yield Row(code="E06", says=f"inside the breast: {names}; moved or kept reachable by an electrician, never buried", stops=Stops.THIS_WORK, audience=(C, F), who_clears=("electrician",), source="BS 7671 526.3, from memory")


def _structure(facts: Facts) -> Iterator[Row]:
    job, frame = facts.job, facts.frame
    if frame.left_open or frame.right_open:
        yield Row(code="S01", says="the upper frame hangs: every wall and ceiling fixing is in before the props go, and nothing bears on the fire", stops=Stops.THIS_WORK, audience=(F,), who_clears=("surveyor",))
    wall = job.wall_construction
    if wall is WallConstruction.UNKNOWN:
        yield Row(code="S03", says="the wall is unknown: no strength is taken for it; tell what it is made of", stops=Stops.FIRM_QUOTE, audience=(C, S), who_clears=("surveyor",), state=OPEN)
    notes = {
        WallConstruction.STEEL_STUD: ("S04", "steel studs carry light frames only and never an arm: a pattress, or ladders that stand on the floor", Stops.FIRM_QUOTE, (F, S), "engineer"),
        WallConstruction.AERATED_BLOCK: ("S05", "aerated block: declared plugs, no hammer action, more fixings", Stops.NOTHING, (F,), "maker"),
        WallConstruction.PLASTERBOARD_ON_DABS: ("S06", "plasterboard on dabs carries nothing: long fixings to the masonry, packed solid", Stops.NOTHING, (F,), "maker"),
        WallConstruction.LATH_AND_PLASTER: ("S07", "lath and plaster: into the studs only, pre-drilled; plaster may fall", Stops.NOTHING, (F,), "surveyor"),
    }
    if wall in notes:
        code, says, stops, audience, clears = notes[wall]
        yield Row(code=code, says=says, stops=stops, audience=audience, who_clears=(clears,))
    if wall in {WallConstruction.TIMBER_STUD, WallConstruction.STEEL_STUD, WallConstruction.LATH_AND_PLASTER}:
        yield from _studs(facts)
    if frame.full_height:
        yield from _ceiling(facts)


def _studs(facts: Facts) -> Iterator[Row]:
    studs = facts.job.studs_tenth_mm
    behind = [x for x in studs or () if 0 <= x <= facts.frame.sizes.frame_width_tenth_mm]
    if len(behind) < 2:
        says = "the studs of the wall were not found" if studs is None else f"{len(behind)} studs behind the breast are not enough: a pattress"
        yield Row(code="S08", says=f"{says}; no fixing between studs counts", stops=Stops.FIRM_QUOTE, audience=(F, S), who_clears=("surveyor",), state=OPEN if studs is None else FIRES)


def _ceiling(facts: Facts) -> Iterator[Row]:
    job = facts.job
    kind = (job.survey.ceiling or Ceiling()).kind
    if job.joists is not JoistDirection.ACROSS_WALL:
        state = OPEN if job.joists is JoistDirection.UNKNOWN else FIRES
        yield Row(code="S09", says="screws into ceiling board alone count for nothing: noggins between the joists first, or none", stops=Stops.THIS_WORK, audience=(F,), who_clears=("surveyor",), state=state)
    if kind in {CeilingKind.HOLLOW_PLANK, CeilingKind.POST_TENSIONED, CeilingKind.CONCRETE_CAST, CeilingKind.BEAM_AND_BLOCK}:
        yield Row(code="S10", says="no drilling into this slab before drawings or a scan", stops=Stops.THIS_WORK, audience=(F,), who_clears=("engineer",))
    if kind is CeilingKind.SUSPENDED_GRID:
        yield Row(code="S11", says="nothing is fixed to a suspended grid", stops=Stops.THIS_WORK, audience=(F,), who_clears=("surveyor",))


def _building(facts: Facts) -> Iterator[Row]:
    job = facts.job
    services, chimney, wall = job.survey.services or Services(), job.survey.chimney or Chimney(), job.survey.wall or Wall()
    if chimney.flue in {Flue.OPEN, Flue.BLOCKED_NOT_VENTED}:
        yield Row(code="B02", says="the old flue is swept, capped with a vent, and vented to the room through the face or side of the breast", stops=Stops.THIS_WORK, audience=(C, F), who_clears=("surveyor",))
    if chimney.flue in {None, Flue.UNKNOWN}:
        yield Row(code="B17", says="whether there is an old flue, and whose, is not known: find out before closing the wall", stops=Stops.FIRM_QUOTE, audience=(C, S), who_clears=("surveyor", "owner"), state=OPEN)
    if services.gas is GasState.PRESENT:
        yield Row(code="B03", says="gas at this wall: capped off by a registered gas engineer first", stops=Stops.DESIGN, audience=(C, S), who_clears=("gas",), source="Gas Safety (Installation and Use) Regulations 1998, from memory")
    elif services.gas is GasState.UNKNOWN or (services.gas is None and chimney.flue is not Flue.NONE):
        yield Row(code="B03", says="whether there is gas at this wall is not known", stops=Stops.FIRM_QUOTE, audience=(C, S), who_clears=("gas",), state=OPEN)
    if wall.damp in {Damp.SUSPECTED, Damp.SHOWING}:
        yield Row(code="B05", says="damp: find the cause; ventilate or insulate before building in front", stops=Stops.FIRM_QUOTE, audience=(C, S), who_clears=("surveyor",))


def _site(facts: Facts) -> Iterator[Row]:
    job = facts.job
    site, floor = job.survey.site or Site(), job.survey.floor or Floor()
    if site.build_year is None or site.build_year < OLD_YEAR:
        state = OPEN if site.build_year is None else FIRES
        yield Row(code="B06", says="before 2000: coatings, boards, tiles and flue linings are presumed to hold asbestos until sampled", stops=Stops.THIS_WORK, audience=(C, F), who_clears=("owner",), source="Control of Asbestos Regulations 2012, from memory", state=state)
    if site.build_year is not None and site.build_year < LEAD_YEAR:
        yield Row(code="B07", says="old paint may hold lead: wet methods, no dry sanding", stops=Stops.NOTHING, audience=(F,), who_clears=("surveyor",), source=FM)
    if floor.underfloor_heating in {Answer.YES, Answer.UNKNOWN, None}:
        state = FIRES if floor.underfloor_heating is Answer.YES else OPEN
        yield Row(code="B08", says="nothing is fixed into a floor whose pipes or heating are not located", stops=Stops.THIS_WORK, audience=(F,), who_clears=("surveyor",), state=state)
    if floor.construction is FloorConstruction.FLOATING:
        yield Row(code="B09", says="a floating floor is not pinned: cut it out, or fix to the wall only", stops=Stops.NOTHING, audience=(F,), who_clears=("surveyor",))
    if Answer.YES in {site.listed, site.conservation, site.leasehold, site.tenancy}:
        yield Row(code="B11", says="consent in writing of the owner or authority before work", stops=Stops.THIS_WORK, audience=(C,), who_clears=("owner", "code"))
    if site.building is Building.FLAT:
        yield Row(code="B12", says="holes to a neighbour or common part are stopped against fire and sound", stops=Stops.THIS_WORK, audience=(F,), who_clears=("code",), source="Approved Document B, from memory")


def _work(facts: Facts) -> Iterator[Row]:
    job = facts.job
    for lift in count_lifts(facts.frame, job, facts.rules):
        if lift.help != "none":
            yield Row(code="W01", says=f"{lift.what}, {lift.mass_kg:g} kg: two people take about {lift.two_people_kg:g} at that height; {lift.help.replace('_', ' ')}", stops=Stops.NOTHING, audience=(F, S), who_clears=("surveyor",), source="knowledge/handling.md 1: HSE filter, from memory")
    if not may_be_tilted(facts.frame, job):
        yield Row(code="W02", says="the upper frame cannot be tilted up whole under this ceiling: built in place, ladder by ladder", stops=Stops.NOTHING, audience=(F, S), who_clears=("surveyor",), source="geometry, computed")
    if (job.survey.site or Site()).workspace in {Workspace.IN_ROOM, Workspace.NONE}:
        yield Row(code="W04", says="cutting indoors: M-class extraction and masks; limits 3 mg/m3 for hardwood and MDF, 5 for softwood", stops=Stops.NOTHING, audience=(F,), who_clears=("code",), source="EH40, seen in trade articles")
    yield Row(code="W06", says="work above 2 m: steps or a platform, two people under a hung frame", stops=Stops.NOTHING, audience=(F,), who_clears=("code",), source="Work at Height Regulations 2005, from memory")
    if job.board.board_kind == "plasterboard":
        yield Row(code="W12", says="gypsum waste is kept apart", stops=Stops.NOTHING, audience=(F,), who_clears=("code",), source=FM)


def _money(facts: Facts) -> Iterator[Row]:
    job = facts.job
    open_fields = [note.pointer for note in job.assumptions if note.needed_for_firm]
    if open_fields:
        yield Row(code="M01", says=f"{len(open_fields)} fields are assumed; see assumptions for each and its effect", stops=Stops.FIRM_QUOTE, audience=(C, S), who_clears=("owner",), state=OPEN)
    if job.terms.scope in {None, Scope.SUPPLY_AND_FIT}:
        yield Row(code="M02", says="agreed at home or at a distance: 14 days to cancel; a written request to start earlier", stops=Stops.EARLY_START, audience=(C,), who_clears=("code",), source="Consumer Contracts Regulations 2013, seen on trading standards pages")
    if SuppliedBy.CUSTOMER in {job.terms.appliance_supplied_by, job.terms.screen_supplied_by} or (job.screen and job.terms.screen_supplied_by is None):
        yield Row(code="M07", says="no warranty on a fire or screen that the customer brings; its measured body must match this design", stops=Stops.NOTHING, audience=(C,), who_clears=("owner",))
    if job.screen_standing == "size_class":
        yield Row(code="V06", says="the screen is taken by its size class only: the next model may be larger", stops=Stops.FIRM_QUOTE, audience=(C, S), who_clears=("owner",))
