"""Choosing what to buy from the catalogue: screws by what they pass and grip, plugs by wall, the rest by use.

No price is looked at: the smallest size that does wins (length, then diameter, then code).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.survey.wall import WallConstruction

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.brief import Job
    from service.catalogue import Catalogue, Material
    from service.rules import RuleSet

JOINT_DIAMETER_MM = 5.0  # common practice, no source (knowledge/materials.md, section 1)
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
MASONRY_KINDS = ("frame_plug", "concrete_screw")
STUD_WALLS = frozenset({WallConstruction.TIMBER_STUD, WallConstruction.LATH_AND_PLASTER, WallConstruction.BOARDED_BEHIND_PLASTERBOARD})


def by_use(use: str, catalogue: Catalogue) -> Material | None:
    """The first code, in order, that the shop uses for something."""
    return next((catalogue.materials[code] for code in sorted(catalogue.materials) if use in catalogue.materials[code].uses), None)


def smallest(rows: Iterable[Material]) -> Material | None:
    """Length, then diameter, then code."""
    return min(rows, key=lambda row: (row.length_mm or 0, row.diameter_mm or 0, row.code), default=None)


def joint_screw(passed_mm: float, catalogue: Catalogue, rules: RuleSet) -> Material | None:
    """Screw for a joint: through what it passes, with its grip in the second piece (EN 1995-1-1, 8.7.2(3))."""
    grip = rules.take_off.screw_grip_diameter_ratio
    return smallest(row for row in _framing_screws(catalogue) if (row.length_mm or 0) >= passed_mm + grip * (row.diameter_mm or 0))


def laminating_screw(thickness_mm: float, catalogue: Catalogue) -> Material | None:
    """The longest thin framing screw that stays inside two plies, driven from alternate faces where it does not reach through."""
    inside = [row for row in _framing_screws(catalogue) if row.diameter_mm == JOINT_DIAMETER_MM and thickness_mm < (row.length_mm or 0) < 2 * thickness_mm]
    return max(inside, key=lambda row: (row.length_mm or 0, row.code), default=None)


def board_screw(board_kind: str, thickness_mm: float, catalogue: Catalogue, rules: RuleSet) -> Material | None:
    """Screw for a board: the table's, else the shortest with enough thread behind the board."""
    named = BOARD_SCREWS.get((board_kind, thickness_mm))
    if named:
        return _exact(named, catalogue)
    kind = "wood_screw" if board_kind in {"mdf", "plywood"} else "board_screw"
    long_enough = thickness_mm + rules.take_off.board_thread_mm
    return smallest(row for row in catalogue.materials.values() if row.kind == kind and row.head_form in {"countersunk", "bugle"} and (row.length_mm or 0) >= long_enough)


def fire_screw(catalogue: Catalogue) -> Material | None:
    """Screw for the brackets of the fire where its maker names none."""
    return _exact(FIRE_SCREW, catalogue)


def ceiling_screw(job: Job, catalogue: Catalogue, rules: RuleSet) -> Material | None:
    """Flange-head screw through top rail, packing and ceiling board into the joist."""
    passed = (job.timber.thickness_tenth_mm + job.ceiling_lining_tenth_mm) / 10 + rules.frame.ceiling_packing_mm
    long_enough = passed + rules.take_off.ceiling_thread_mm
    return smallest(row for row in catalogue.materials.values() if row.kind == "wood_screw" and row.head_form == "flange" and (row.length_mm or 0) >= long_enough)


def wall_fixing(job: Job, passed_mm: float, catalogue: Catalogue, rules: RuleSet) -> Material | None:
    """Fixing into the host wall: through a member, packing, lining and void, with the embedment that its wall asks.

    Args:
        job: says the wall.
        passed_mm: timber (or bracket) that the fixing passes, mm; thick timber may be counterbored.
        catalogue: what is sold, and in which walls it holds.
        rules: packing, counterbore, least embedment in a stud.
    """
    take = rules.take_off
    on_wall = take.wall_packing_mm + (job.wall_lining_tenth_mm + job.wall_void_tenth_mm) / 10
    if passed_mm - take.counterbore_mm >= take.counterbore_leaves_mm:
        passed_mm -= take.counterbore_mm
    if job.wall_construction in STUD_WALLS:
        rows = [row for row in _framing_screws(catalogue) if (row.diameter_mm or 0) > JOINT_DIAMETER_MM]
        return smallest(row for row in rows if (row.length_mm or 0) >= passed_mm + on_wall + take.stud_thread_mm)
    if job.wall_construction is WallConstruction.STEEL_STUD:
        return smallest(row for row in catalogue.materials.values() if row.kind == "steel_stud_screw")
    wall = _masonry(job)
    kinds = MASONRY_KINDS[::-1] if wall == "concrete" else MASONRY_KINDS
    for kind in kinds:
        loads = {load.code: load for load in catalogue.fixing_loads if load.wall == wall}
        rows = [row for row in catalogue.materials.values() if row.kind == kind and row.code in loads]
        found = smallest(
            row for row in rows if (row.length_mm or 0) >= passed_mm + on_wall + (loads[row.code].embedment_mm or row.least_embedment_mm or 0)
        )
        if found:
            return found
    return None


def _masonry(job: Job) -> str:
    """The masonry that a fixing bites in; an unknown wall is billed as brick, and said to be not verified."""
    if job.wall_construction is WallConstruction.PLASTERBOARD_ON_DABS:
        backing = job.survey.wall.backing if job.survey.wall else None
        return backing.value if backing and backing.value != "unknown" else WallConstruction.SOLID_BRICK.value
    if job.wall_construction is WallConstruction.UNKNOWN:
        return WallConstruction.SOLID_BRICK.value
    return job.wall_construction.value


def light_bracket(catalogue: Catalogue) -> Material | None:
    """The lightest angle bracket by its declared upward resistance."""
    rows = [row for row in catalogue.materials.values() if row.kind == "angle_bracket"]
    return min(rows, key=lambda row: (row.bracket_up_n or 0, row.code), default=None)


def _framing_screws(catalogue: Catalogue) -> list[Material]:
    return [
        row
        for row in catalogue.materials.values()
        if row.kind == "wood_screw" and row.head_form == "countersunk" and (row.diameter_mm or 0) >= JOINT_DIAMETER_MM
    ]


def _exact(named: tuple[str, float, float], catalogue: Catalogue) -> Material | None:
    kind, diameter_mm, length_mm = named
    rows = [row for row in catalogue.materials.values() if (row.kind, row.diameter_mm, row.length_mm) == (kind, diameter_mm, length_mm)]
    return smallest(row for row in rows if row.head_form in {"countersunk", "bugle"})
