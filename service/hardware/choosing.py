"""Choosing from the catalogue: screws by what they pass and grip, plugs by wall, the rest by use.

No price is looked at: the smallest size that does wins (length, then diameter, then code).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.survey.wall import Backing, WallConstruction

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from service.brief import Job
    from service.catalogue import Catalogue, FixingLoad, Material
    from service.hardware.shelf import Shelf
    from service.rules import RuleSet

JOINT_DIAMETER_MM = 5.0  # common practice, no source (knowledge/materials.md, section 1)
STEEL_THREAD_MM = 10.0  # of a screw through the flange of a steel stud: common practice, no source
BOARD_SCREWS = {  # kind of board, thickness: kind of screw, diameter, length; common practice, no source (cladding.md, section 3)
    ("mdf", 12.0): ("wood_screw", 4.0, 40.0),
    ("mdf", 15.0): ("wood_screw", 4.0, 40.0),
    ("mdf", 18.0): ("wood_screw", 4.5, 50.0),
    ("plywood", 18.0): ("wood_screw", 5.0, 50.0),
    ("plasterboard", 9.5): ("board_screw", 3.5, 32.0),
    ("plasterboard", 12.5): ("board_screw", 3.5, 38.0),
    ("cement_board", 12.0): ("board_screw", 4.2, 42.0),
    ("calcium_silicate", 9.0): ("board_screw", 4.2, 42.0),
    ("calcium_silicate", 12.0): ("board_screw", 4.2, 42.0),
}
FIRE_SCREW = ("wood_screw", 5.0, 50.0)
BOARD_HEADS = frozenset({"countersunk", "bugle"})
WOOD_BASED = frozenset({"mdf", "plywood"})
PLUGS_FIRST = ("frame_plug", "concrete_screw")
SCREWED_WALLS = frozenset(
    {WallConstruction.TIMBER_STUD, WallConstruction.LATH_AND_PLASTER, WallConstruction.BOARDED_BEHIND_PLASTERBOARD}
)


def by_use(use: str, catalogue: Catalogue) -> Material | None:
    """The first code, in order, that the shop uses for something."""
    return min((row for row in catalogue.materials.values() if use in row.uses), key=lambda row: row.code, default=None)


def smallest(rows: Iterable[Material]) -> Material | None:
    """Length, then diameter, then code."""
    return min(rows, key=_size, default=None)


def _size(row: Material) -> tuple[float, float, str]:
    return row.length_mm or 0, row.diameter_mm or 0, row.code


def nth(rows: Iterable[Material], index: int) -> Material | None:
    """The smallest, or the one so many sizes above it; None where there are not so many."""
    found = sorted(rows, key=_size)
    return found[index] if index < len(found) else None


def joint_screw(passed_mm: float, shelf: Shelf) -> Material | None:
    """Screw for a joint: through what it passes, with its grip in the second piece (EN 1995-1-1, 8.7.2(3))."""
    grip = shelf.rules.take_off.screw_grip_diameter_ratio
    screws = _framing_screws(shelf.catalogue)
    return smallest(row for row in screws if (row.length_mm or 0) >= passed_mm + grip * (row.diameter_mm or 0))


def laminating_screw(thickness_mm: float, catalogue: Catalogue) -> Material | None:
    """The longest thin framing screw that stays inside two plies, driven from alternate faces where it is shorter."""
    thin = [row for row in _framing_screws(catalogue) if row.diameter_mm == JOINT_DIAMETER_MM]
    inside = [row for row in thin if thickness_mm < (row.length_mm or 0) < 2 * thickness_mm]
    return max(inside, key=lambda row: (row.length_mm or 0, row.code), default=None)


def board_screw(board_kind: str, thickness_mm: float, shelf: Shelf) -> Material | None:
    """Screw for a board: the table's, else the shortest with enough thread behind the board."""
    named = BOARD_SCREWS.get((board_kind, thickness_mm))
    if named:
        return _exact(named, shelf.catalogue)
    kind = "wood_screw" if board_kind in WOOD_BASED else "board_screw"
    long_enough = thickness_mm + shelf.rules.take_off.board_thread_mm
    rows = (row for row in shelf.catalogue.materials.values() if row.kind == kind and row.head_form in BOARD_HEADS)
    return smallest(row for row in rows if (row.length_mm or 0) >= long_enough)


def fire_screw(catalogue: Catalogue) -> Material | None:
    """Screw for the brackets of the fire where its maker names none."""
    return _exact(FIRE_SCREW, catalogue)


def ceiling_packing_mm(job: Job, rules: RuleSet) -> float:
    """The most that a ceiling screw passes between rail and ceiling: over more than packers there is a firring."""
    rise = max((spot.off_tenth_mm for spot in (*job.ceiling_rear, *job.ceiling_front)), default=0)
    return min(rules.frame.ceiling_packing_mm + rise / 10, rules.frame.greatest_packer_mm)


def wall_packing_mm(job: Job, rules: RuleSet) -> float:
    """The most that a wall fixing passes between frame and wall; behind a leaning wall the lean."""
    return max(rules.take_off.wall_packing_mm, job.lean_mm)


def ceiling_screw(job: Job, shelf: Shelf, longer: int = 0) -> Material | None:
    """Flange-head screw through top rail, packing and ceiling board into the joist; so many sizes longer than needed."""
    passed = (job.timber.thickness_tenth_mm + job.ceiling_lining_tenth_mm) / 10 + ceiling_packing_mm(job, shelf.rules)
    long_enough = passed + shelf.rules.take_off.ceiling_thread_mm
    rows = (row for row in shelf.catalogue.materials.values() if row.kind == "wood_screw" and row.head_form == "flange")
    return nth([row for row in rows if (row.length_mm or 0) >= long_enough], longer)


def wall_fixing(job: Job, passed_mm: float, shelf: Shelf, stronger: int = 0) -> Material | None:
    """Fixing into the host wall: through a member, packing, lining and void, with the grip that its wall asks.

    Args:
        job: says the wall.
        passed_mm: timber (or bracket) that the fixing passes, mm; the head is sunk where enough timber is left under it.
        shelf: what is sold, in which walls it holds, packing and counterbore.
        stronger: so many sizes above the smallest, each declared to bear more in that wall than the one before.
    """
    wall = job.wall_construction
    on_wall_mm = wall_packing_mm(job, shelf.rules) + (job.wall_lining_tenth_mm + job.wall_void_tenth_mm) / 10
    sunk_mm = _sunk(passed_mm, shelf.rules)
    if wall in SCREWED_WALLS:
        return _stud_screw(passed_mm + on_wall_mm, shelf, stronger) or _stud_screw(sunk_mm + on_wall_mm, shelf, stronger)
    if wall is WallConstruction.STEEL_STUD:
        rows = (row for row in shelf.catalogue.materials.values() if row.kind == "steel_stud_screw")
        return nth([row for row in rows if (row.length_mm or 0) >= passed_mm + on_wall_mm + STEEL_THREAD_MM], stronger)
    plugs = _plugs(_masonry(job), sunk_mm + on_wall_mm, shelf.catalogue)
    return _rising(plugs, lambda row: _tension_kn(job, row, shelf.catalogue), stronger)


def wall_load(job: Job, fixing: Material | None, catalogue: Catalogue) -> FixingLoad | None:
    """What a fixing is declared to bear in the host wall; None for an unknown wall, one for other units, or no value.

    A row that names units holds for these only; one that names none holds for all units of its wall.
    """
    if fixing is None or job.wall_construction is WallConstruction.UNKNOWN:
        return None
    wall, units = _masonry(job), job.survey.wall.units if job.survey.wall else None
    rows = [row for row in catalogue.fixing_loads if row.code == fixing.code and row.wall == wall]
    return next((row for row in rows if row.units in {None, units}), None)


def light_bracket(catalogue: Catalogue) -> Material | None:
    """The lightest angle bracket by its declared upward resistance."""
    rows = [row for row in catalogue.materials.values() if row.kind == "angle_bracket"]
    return min(rows, key=lambda row: (row.bracket_up_n or 0, row.code), default=None)


def heavy_bracket(catalogue: Catalogue) -> Material | None:
    """The next angle bracket above the lightest by its declared upward resistance."""
    rows = [row for row in catalogue.materials.values() if row.kind == "angle_bracket"]
    light = light_bracket(catalogue)
    stronger = [row for row in rows if light and (row.bracket_up_n or 0) > (light.bracket_up_n or 0)]
    return min(stronger, key=lambda row: (row.bracket_up_n or 0, row.code), default=None)


def _sunk(passed_mm: float, rules: RuleSet) -> float:
    """Timber under a head that is counterbored, or all of it where too little would be left."""
    left_mm = passed_mm - rules.take_off.counterbore_mm
    return left_mm if left_mm >= rules.take_off.counterbore_leaves_mm else passed_mm


def _stud_screw(passed_mm: float, shelf: Shelf, stronger: int) -> Material | None:
    thick = [row for row in _framing_screws(shelf.catalogue) if (row.diameter_mm or 0) > JOINT_DIAMETER_MM]
    return nth([row for row in thick if (row.length_mm or 0) >= passed_mm + shelf.rules.take_off.stud_thread_mm], stronger)


def _plugs(wall: str, passed_mm: float, catalogue: Catalogue) -> list[Material]:
    """Fixings with a value in this masonry that are long enough, smallest first; in concrete a concrete screw before a plug."""
    for kind in reversed(PLUGS_FIRST) if wall == WallConstruction.CONCRETE else PLUGS_FIRST:
        found = {
            row.code: row
            for load in catalogue.fixing_loads
            if load.wall == wall and (row := catalogue.materials.get(load.code)) and row.kind == kind
            if passed_mm <= (row.greatest_fixture_mm or passed_mm)
            and (row.length_mm or 0) >= passed_mm + (load.embedment_mm or row.least_embedment_mm or 0)
        }
        if found:
            return sorted(found.values(), key=_size)
    return []


def _rising(rows: list[Material], value: Callable[[Material], float], index: int) -> Material | None:
    """The first, or one so many above it, counting only those that are worth more than all before."""
    best: list[Material] = []
    for row in rows:
        if not best or value(row) > value(best[-1]):
            best.append(row)
    return best[index] if index < len(best) else None


def _tension_kn(job: Job, row: Material, catalogue: Catalogue) -> float:
    load = wall_load(job, row, catalogue)
    return load.working_tension_kn if load else 0.0


def _masonry(job: Job) -> str:
    """The masonry that a fixing bites in; an unknown one is billed as brick, and said to be not verified."""
    wall = job.wall_construction
    if wall is WallConstruction.PLASTERBOARD_ON_DABS:
        backing = (job.survey.wall.backing if job.survey.wall else None) or Backing.UNKNOWN
        return WallConstruction.SOLID_BRICK if backing is Backing.UNKNOWN else backing
    return WallConstruction.SOLID_BRICK if wall is WallConstruction.UNKNOWN else wall


def _framing_screws(catalogue: Catalogue) -> list[Material]:
    rows = [row for row in catalogue.materials.values() if row.kind == "wood_screw" and row.head_form == "countersunk"]
    return [row for row in rows if (row.diameter_mm or 0) >= JOINT_DIAMETER_MM]


def _exact(named: tuple[str, float, float], catalogue: Catalogue) -> Material | None:
    rows = [row for row in catalogue.materials.values() if (row.kind, row.diameter_mm, row.length_mm) == named]
    return smallest(row for row in rows if row.head_form in BOARD_HEADS)
