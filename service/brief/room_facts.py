"""Facts of room, wall, ceiling, floor and site as the layout needs them, every default noted."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.survey.ceiling import Ceiling, CeilingKind, JoistDirection, Noggins
from service.survey.floor import Floor, FloorConstruction, LowEnd
from service.survey.services import CableScan, Chimney, Flue, GasState, Services, SupplyWanted
from service.survey.site import Building, Country, Site, Stairs, Workspace
from service.survey.survey import Provenance
from service.survey.wall import Backing, Damp, Units, Wall, WallConstruction
from service.survey.fields import Answer
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.rules import RuleSet
    from service.survey.survey import Survey

MASONRY = frozenset({WallConstruction.SOLID_BRICK, WallConstruction.DENSE_BLOCK, WallConstruction.AERATED_BLOCK})
STUD_WALLS = frozenset({WallConstruction.TIMBER_STUD, WallConstruction.STEEL_STUD, WallConstruction.LATH_AND_PLASTER})
JOISTED = frozenset({CeilingKind.BOARDED_JOISTS, CeilingKind.LATH_AND_PLASTER, CeilingKind.EXPOSED_BEAMS})
MANY_POINTS = 5


class RoomFacts(msgspec.Struct, frozen=True, kw_only=True):
    """What was measured, or taken as if it had been; positions still count from the left end of the wall."""

    clear_height_tenth_mm: int
    fall_tenth_mm: int
    low_end: LowEnd
    centre_tenth_mm: int
    wall: WallConstruction
    wall_lining_tenth_mm: int
    wall_void_tenth_mm: int
    studs_mm: tuple[float, ...] | None
    lean_mm: float
    joists: JoistDirection
    joists_mm: tuple[float, ...]
    ceiling_lining_tenth_mm: int
    ceiling_holds_screws: bool
    noggins: Noggins
    cables_scanned: bool
    skirting_height_mm: float
    skirting_thickness_mm: float
    longest_length_mm: float
    storey_count: int
    parking_distance_mm: float


def take_room_facts(survey: Survey, full_height: bool, rules: RuleSet, notes: Notes) -> RoomFacts:  # noqa: FBT001 - a fact, not a switch
    """Read every section of the survey; what is left out is filled and noted."""
    floor, wall, ceiling, site = survey.floor or Floor(), survey.wall or Wall(), survey.ceiling or Ceiling(), survey.site or Site()
    fall_mm, low_end = _floor(floor, survey, rules, notes)
    construction = notes.take("/survey/wall/construction", wall.construction, WallConstruction.UNKNOWN, "wall checks are not verified; +8 percent of fixing and labour lines if it proves hard or weak")
    joists, positions = _joists(ceiling, survey, full_height, notes)
    kind = notes.take("/survey/ceiling/kind", ceiling.kind, CeilingKind.BOARDED_JOISTS, "another ceiling may take no screws")
    _services(survey.services or Services(), survey.chimney or Chimney(), notes)
    longest_mm, storey = _site(site, rules, notes)
    return RoomFacts(
        clear_height_tenth_mm=_clear_height(survey, fall_mm, rules, notes),
        fall_tenth_mm=tenths(fall_mm),
        low_end=low_end,
        centre_tenth_mm=_centre(survey, rules, notes),
        wall=construction,
        wall_lining_tenth_mm=tenths(notes.take("/survey/wall/lining_mm", wall.lining_mm, rules.defaults.wall_lining_mm, "length of the wall fixings")),
        wall_void_tenth_mm=tenths(_void(wall, construction, rules, notes)),
        studs_mm=_studs(wall, construction, notes),
        lean_mm=_wall_state(wall, construction, rules, notes),
        joists=joists,
        joists_mm=positions,
        ceiling_lining_tenth_mm=tenths(notes.take("/survey/ceiling/lining_mm", ceiling.lining_mm, rules.defaults.ceiling_lining_mm, "length of the ceiling screws")),
        ceiling_holds_screws=kind in JOISTED,
        noggins=ceiling.noggins or Noggins.NONE,
        cables_scanned=notes.take("/survey/services/cable_scan", survey.services.cable_scan if survey.services else None, CableScan.NOT_DONE, "a row of fixings within 150 mm of the ceiling does not count") is CableScan.DONE,
        skirting_height_mm=notes.take("/survey/floor/skirting_height_mm", floor.skirting_height_mm, rules.defaults.skirting_height_mm, "new skirting round the breast"),
        skirting_thickness_mm=notes.take("/survey/floor/skirting_thickness_mm", floor.skirting_thickness_mm, rules.defaults.skirting_thickness_mm, "length of the new skirting"),
        longest_length_mm=longest_mm,
        storey_count=storey,
        parking_distance_mm=notes.suppose("/survey/site/parking_distance_mm", site.parking_distance_mm, rules.defaults.parking_distance_mm, "0.1 h for every 10 m beyond 20 m"),
    )


def _floor(floor: Floor, survey: Survey, rules: RuleSet, notes: Notes) -> tuple[float, LowEnd]:
    levels = floor.levels or ()
    if levels:
        fall_mm = max(point.level_mm for point in levels) - min(point.level_mm for point in levels)
        lowest = min(levels, key=lambda point: (point.level_mm, point.x_mm))
        middle_mm = sum(point.x_mm for point in levels) / len(levels)
        low_end = floor.low_end or (LowEnd.LEFT if lowest.x_mm < middle_mm else LowEnd.RIGHT)
    else:
        fall_mm = notes.take("/survey/floor/fall_mm", floor.fall_mm, rules.defaults.floor_fall_mm, "packers and tapered base boards; the clear height is less by it")
        low_end = floor.low_end or LowEnd.UNKNOWN
        if floor.low_end is None and fall_mm > 0:
            notes.take("/survey/floor/low_end", None, LowEnd.UNKNOWN, "every board that meets the floor is cut longer by the fall")
    notes.take("/survey/floor/construction", floor.construction, FloorConstruction.BOARDS, "a floating floor is not pinned")
    notes.take("/survey/floor/sound", floor.sound, Answer.YES, "an unsound floor is repaired first")
    notes.take("/survey/floor/underfloor_heating", floor.underfloor_heating, Answer.NO, "nothing is fixed into a heated floor")
    return fall_mm, low_end


def _clear_height(survey: Survey, fall_mm: float, rules: RuleSet, notes: Notes) -> int:
    heights = (survey.room.heights if survey.room else None) or ()
    levels = (survey.floor.levels if survey.floor else None) or ()
    if not heights:
        height_mm = notes.take("/survey/room/heights", None, rules.defaults.clear_height_mm, "100 mm more or less changes a board joint and 3 percent of the timber")
        return tenths(height_mm - fall_mm)
    if len(heights) < MANY_POINTS:
        notes.take("/survey/room/heights", None, f"{len(heights)} of {MANY_POINTS} points", "a firm quote wants left, middle, right at the wall and left, right at the depth")
    for point in heights:
        notes.doubt_outside("/survey/room/heights", point.height_mm, 2_200, 3_000)
    known = {(point.x_mm, point.y_mm): point.level_mm for point in levels}
    if levels and all((point.x_mm, point.y_mm) in known for point in heights):
        return tenths(min(known[point.x_mm, point.y_mm] + point.height_mm for point in heights) - max(known.values()))
    return tenths(min(point.height_mm for point in heights) - fall_mm)


def _centre(survey: Survey, rules: RuleSet, notes: Notes) -> int:
    room = survey.room
    length_mm = notes.take("/survey/room/wall_length_mm", room.wall_length_mm if room else None, rules.defaults.wall_length_mm, "whether the breast fits")
    return tenths(notes.take("/survey/room/breast_centre_from_left_mm", room.breast_centre_from_left_mm if room else None, length_mm / 2, "which joists and studs are met"))


def _void(wall: Wall, construction: WallConstruction, rules: RuleSet, notes: Notes) -> float:
    if construction is not WallConstruction.PLASTERBOARD_ON_DABS:
        return wall.void_mm or 0.0
    notes.take("/survey/wall/backing", wall.backing, Backing.UNKNOWN, "which plug holds in the masonry behind")
    return notes.take("/survey/wall/void_mm", wall.void_mm, rules.defaults.wall_void_mm, "length of the wall fixings")


def _studs(wall: Wall, construction: WallConstruction, notes: Notes) -> tuple[float, ...] | None:
    if construction not in STUD_WALLS:
        return None
    if wall.stud_positions_mm is None:
        notes.take("/survey/wall/stud_positions_mm", None, "not found", "no fixing into a stud counts before they are found")
    return wall.stud_positions_mm


def _wall_state(wall: Wall, construction: WallConstruction, rules: RuleSet, notes: Notes) -> float:
    if construction in MASONRY:
        notes.take("/survey/wall/units", wall.units, Units.SOUND, "weaker bricks or blocks take less a fixing")
    notes.take("/survey/wall/external", wall.external, default=False, effect="an outside wall may be damp behind the breast")
    notes.take("/survey/wall/damp", wall.damp, Damp.NONE, "damp is cured first")
    notes.take("/survey/wall/party", wall.party, Answer.UNKNOWN, "no hole deeper than half the wall, and hours of noise")
    notes.take("/survey/wall/flat_mm", wall.flat_mm, rules.defaults.flat_mm, "over 10 mm: packers at every fixing")
    notes.doubt_outside("/survey/wall/plumb_mm", wall.plumb_mm, -rules.frame.scribe_mm, rules.frame.scribe_mm)
    return abs(notes.take("/survey/wall/plumb_mm", wall.plumb_mm, rules.defaults.plumb_mm, "scribing of the returns"))


def _joists(ceiling: Ceiling, survey: Survey, full_height: bool, notes: Notes) -> tuple[JoistDirection, tuple[float, ...]]:  # noqa: FBT001
    notes.take("/survey/ceiling/textured_coating", ceiling.textured_coating, Answer.UNKNOWN, "before 2000: presumed to hold asbestos until sampled")
    if not full_height:
        return JoistDirection.UNKNOWN, ()
    direction = notes.take("/survey/ceiling/joists", ceiling.joists, JoistDirection.UNKNOWN, "no ceiling screw counts; +1.5 h with noggins if they run along the wall")
    if direction is not JoistDirection.ACROSS_WALL:
        return direction, ()
    if ceiling.joist_positions_mm is not None:
        return direction, tuple(sorted(ceiling.joist_positions_mm))
    if ceiling.first_joist_mm is not None and ceiling.joist_spacing_mm is not None and not _assumed(survey, "/survey/ceiling/joist_spacing_mm"):
        return direction, _pitched(ceiling.first_joist_mm, ceiling.joist_spacing_mm)
    notes.take("/survey/ceiling/joist_positions_mm", None, "not found", "no ceiling screw counts before the joists are found")
    return direction, ()


def _pitched(first_mm: float, pitch_mm: float) -> tuple[float, ...]:
    """Joists both ways from the one found, over the longest wall there is."""
    before = int(first_mm // pitch_mm)
    return tuple(first_mm + pitch_mm * step for step in range(-before, int(15_000 // pitch_mm)))


def _assumed(survey: Survey, pointer: str) -> bool:
    return provenance_of(survey, pointer) is Provenance.ASSUMED


def provenance_of(survey: Survey, pointer: str) -> Provenance:
    """How a value that was sent is known: the longest pointer that covers it wins; not named is stated."""
    covering = [key for key in survey.provenance or {} if pointer == key or pointer.startswith(key + "/") or key == ""]
    return (survey.provenance or {})[max(covering, key=len)] if covering else Provenance.STATED


def _services(services: Services, chimney: Chimney, notes: Notes) -> None:
    notes.take("/survey/services/accessories", services.accessories, (), "one double socket is expected inside the breast; moved or blanked by an electrician")
    notes.take("/survey/services/rcd", services.rcd, Answer.YES, "without residual-current protection the electrician upgrades the circuit")
    notes.take("/survey/services/supply_wanted", services.supply_wanted, SupplyWanted.FUSED_CONNECTION, "a new circuit is a provisional sum of the electrician")
    flue = notes.take("/survey/chimney/flue", chimney.flue, Flue.UNKNOWN, "an old flue is swept, capped and vented, or the work is refused")
    notes.take("/survey/services/gas", services.gas, GasState.NONE if flue is Flue.NONE else GasState.UNKNOWN, "gas is capped off by a registered engineer first")
    notes.take("/survey/services/air_vents", services.air_vents, (), "an air vent is never closed")
    notes.take("/survey/services/pipes", services.pipes, (), "no fixing within 50 mm of a pipe")


def _site(site: Site, rules: RuleSet, notes: Notes) -> tuple[float, int]:
    notes.take("/survey/site/country", site.country, Country.GB, "electrical and building rules of England are taken")
    building = notes.take("/survey/site/building", site.building, Building.HOUSE, "a flat: carrying, lift, hours of work")
    storey = notes.take("/survey/site/storey", site.storey, 0, "0.25 h for every flight of stairs")
    notes.take("/survey/site/build_year", site.build_year, "unknown", "before 2000 a coating is presumed to hold asbestos until sampled") if site.build_year is None else None
    notes.take("/survey/site/narrowest_door_mm", site.narrowest_door_mm, rules.defaults.narrowest_door_mm, "cartons must pass")
    notes.take("/survey/site/stairs", site.stairs, Stairs.STRAIGHT, "winding stairs want shorter lengths")
    notes.take("/survey/site/workspace", site.workspace, Workspace.OUTSIDE, "without room to cut, dust extraction and cutting at the yard")
    notes.take("/survey/site/surveyed_on", site.surveyed_on, "not told", "measures older than 90 days are taken again")
    upstairs_flat = building is Building.FLAT and storey > 0
    default_mm = rules.defaults.longest_length_flat_mm if upstairs_flat else rules.defaults.longest_length_house_mm
    longest_mm = notes.take("/survey/site/longest_length_mm", site.longest_length_mm, default_mm, "longer timber is not offered")
    return longest_mm, storey
