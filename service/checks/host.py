"""What the host wall gives a fixing: a declared or low-set value, a screw into a stud, nothing, or nobody knows.

Rules: `knowledge/fixings.md`, sections 2.1 to 2.3 and 2.6.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.engineering import host_walls
from service.survey.wall import Backing, Units, Wall, WallConstruction

if TYPE_CHECKING:
    from service.checks.ground import Ground
    from service.rules import RuleSet, WallLoad

NEWTON_PER_KN = 1000.0
INTO_STUDS: Final = frozenset({WallConstruction.TIMBER_STUD, WallConstruction.LATH_AND_PLASTER})
ON_STUDS: Final = INTO_STUDS | {WallConstruction.STEEL_STUD}
WEAK_UNITS: Final = frozenset({Units.SOFT_OR_OLD, Units.PERFORATED, Units.LIGHT_AGGREGATE})
NOT_KNOWN = "what the wall is made of is not known"
BACKING_NOT_KNOWN = "the masonry behind the plasterboard is not known"
STUDS_NOT_FOUND = "the studs of the wall were not found"
NEVER_DECLARED = "boards behind plasterboard count for nothing until a document or a pull test declares what they hold"
NOTHING_SOLD = "no fixing that is sold reaches through the frame and holds in this wall"


class Host(msgspec.Struct, frozen=True, kw_only=True):
    """What one fixing bears in the wall by itself; a screw into a stud is reckoned by the timber rules."""

    tension_n: float = 0.0  # design values
    shear_n: float = 0.0
    into_studs: bool = False
    unknown: str = ""  # why nobody can say: the wall path is not verified
    nothing: str = ""  # why no fixing holds: there is no wall path
    assumed: str = ""  # the value is a low-set one, or turns on something assumed


def masonry_of(ground: Ground) -> WallConstruction:
    """The wall that a fixing bites in: that behind the plasterboard where it stands on dabs."""
    wall = ground.job.wall_construction
    if wall is not WallConstruction.PLASTERBOARD_ON_DABS:
        return wall
    backing = wall_told(ground).backing or Backing.UNKNOWN
    return WallConstruction(backing.value)


def wall_told(ground: Ground) -> Wall:
    """What the survey tells of the wall."""
    return ground.job.survey.wall or Wall()


def host_of(ground: Ground) -> Host:
    """What the host wall gives a fixing of the upper frame."""
    wall, told = masonry_of(ground), wall_told(ground)
    if wall is WallConstruction.UNKNOWN:
        return Host(unknown=BACKING_NOT_KNOWN if ground.job.wall_construction is not wall else NOT_KNOWN)
    if wall in ON_STUDS and ground.job.studs_tenth_mm is None:
        return Host(unknown=STUDS_NOT_FOUND)
    if told.declared_tension_kn is not None and told.declared_shear_kn is not None:
        return _from_working(told.declared_tension_kn, told.declared_shear_kn, ground.rules, "")
    if wall is WallConstruction.BOARDED_BEHIND_PLASTERBOARD:
        return Host(nothing=NEVER_DECLARED)
    if ground.hardware.wall_fixing is None:
        return Host(nothing=NOTHING_SOLD)
    return Host(into_studs=True) if wall in INTO_STUDS else _declared_or_low(wall, ground)


def _declared_or_low(wall: WallConstruction, ground: Ground) -> Host:
    """The maker's row for this wall; else the lowest of the low-set values, as for units that nobody looked at."""
    load, units = ground.hardware.wall_load, wall_told(ground).units
    carried_over = load is not None and load.units is None and units in WEAK_UNITS
    if load is not None and not carried_over and units is not Units.UNKNOWN:
        return _from_working(load.working_tension_kn, load.working_shear_kn, ground.rules, "")
    row = _low_row(wall, units, ground)
    if row is None:
        return Host(nothing=f"no value is known of a fixing in {wall.value.replace('_', ' ')}")
    says = f"assumed low-set working load of {row.name}: no declared value, no site test"
    return _from_working(row.tension_kn, row.shear_kn, ground.rules, says)


def _low_row(wall: WallConstruction, units: Units | None, ground: Ground) -> WallLoad | None:
    """The low-set row of a wall, its units and the size of the plug; of what is not known the lowest."""
    rows = [row for row in ground.rules.wall_loads if row.name.startswith(f"{wall.value}.")]
    sound = Units.SOUND if units is None else units
    rows = [row for row in rows if row.name.split(".")[1] == sound.value] or rows
    fixing = ground.hardware.wall_fixing
    hole_mm = fixing.plug_hole_mm if fixing else None
    rows = [row for row in rows if hole_mm is not None and row.name.endswith(f"_{hole_mm:g}")] or rows
    return min(rows, key=lambda row: (row.tension_kn, row.shear_kn, row.name), default=None)


def _from_working(tension_kn: float, shear_kn: float, rules: RuleSet, assumed: str) -> Host:
    """Design values from working loads: fixings.md 2.2."""
    ratio = rules.partial.plug_working_ratio
    return Host(
        tension_n=host_walls.design_from_working_kn(tension_kn, ratio) * NEWTON_PER_KN,
        shear_n=host_walls.design_from_working_kn(shear_kn, ratio) * NEWTON_PER_KN,
        assumed=assumed,
    )
