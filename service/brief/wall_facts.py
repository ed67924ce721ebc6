"""Facts of the host wall as the layout needs them, every default noted (`knowledge/survey.md`, section 4)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.survey.fields import Answer
from service.survey.wall import Backing, Damp, Units, Wall, WallConstruction
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.rules import RuleSet
    from service.survey.survey import Survey

WALL = "/survey/wall"
MASONRY = frozenset({WallConstruction.SOLID_BRICK, WallConstruction.DENSE_BLOCK, WallConstruction.AERATED_BLOCK})
STUD_WALLS = frozenset({WallConstruction.TIMBER_STUD, WallConstruction.STEEL_STUD, WallConstruction.LATH_AND_PLASTER})
ANOTHER_WALL = "wall checks are not verified; +8 percent of fixing and labour lines if it proves hard or weak"


class WallFacts(msgspec.Struct, frozen=True, kw_only=True):
    """What is known of the wall; stud positions count from its left end."""

    wall_construction: WallConstruction
    wall_lining_tenth_mm: int
    wall_void_tenth_mm: int
    lean_mm: float
    leans_in: bool
    studs_mm: tuple[float, ...] | None  # None: no stud wall, or studs not found


def take_wall(survey: Survey, rules: RuleSet, notes: Notes) -> WallFacts:
    """Read the wall."""
    wall = survey.wall or Wall()
    construction = notes.take(f"{WALL}/construction", wall.construction, WallConstruction.UNKNOWN, ANOTHER_WALL)
    lining_mm = notes.take(f"{WALL}/lining_mm", wall.lining_mm, rules.defaults.wall_lining_mm, "length of the wall fixings")
    _take_state(wall, construction, rules, notes)
    plumb_mm = notes.take(f"{WALL}/plumb_mm", wall.plumb_mm, rules.defaults.plumb_mm, "scribing of the returns")
    return WallFacts(
        wall_construction=construction,
        wall_lining_tenth_mm=tenths(lining_mm),
        wall_void_tenth_mm=tenths(_void_mm(wall, construction, rules, notes)),
        lean_mm=abs(plumb_mm),
        leans_in=plumb_mm >= 0,
        studs_mm=_studs_mm(wall, construction, notes),
    )


def _take_state(wall: Wall, construction: WallConstruction, rules: RuleSet, notes: Notes) -> None:
    if construction in MASONRY:
        notes.take(f"{WALL}/units", wall.units, Units.SOUND, "weaker bricks or blocks take less a fixing")
    notes.take(f"{WALL}/external", wall.external, default=False, effect="an outside wall may be damp behind the breast")
    notes.take(f"{WALL}/damp", wall.damp, Damp.NONE, "damp is cured first")
    notes.take(f"{WALL}/party", wall.party, Answer.UNKNOWN, "no hole deeper than half the wall, and hours of noise")
    notes.take(f"{WALL}/flat_mm", wall.flat_mm, rules.defaults.flat_mm, "over 10 mm: packers at every fixing")


def _void_mm(wall: Wall, construction: WallConstruction, rules: RuleSet, notes: Notes) -> float:
    if construction is not WallConstruction.PLASTERBOARD_ON_DABS:
        return wall.void_mm or 0.0
    notes.take(f"{WALL}/backing", wall.backing, Backing.UNKNOWN, "which plug holds in the masonry behind")
    return notes.take(f"{WALL}/void_mm", wall.void_mm, rules.defaults.wall_void_mm, "length of the wall fixings")


def _studs_mm(wall: Wall, construction: WallConstruction, notes: Notes) -> tuple[float, ...] | None:
    if construction not in STUD_WALLS:
        return None
    if wall.stud_positions_mm is None:
        notes.take(f"{WALL}/stud_positions_mm", None, "not found", "no fixing into a stud counts before they are found")
        return None
    return tuple(sorted(wall.stud_positions_mm))
