"""Where the layout places fixings: into the wall, into the ceiling. A pattern, not a proof; the checks decide.

Pattern: `knowledge/framing.md`, section 10.1 and `knowledge/materials.md`, section 1; common practice, no source.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import msgspec

from service.frame.frame import CeilingScrew, WallFixing
from service.frame.member import Role
from service.frame.surfaces import ceiling_packing, wall_packing
from service.survey.ceiling import JoistDirection, Noggins
from service.units import tenths

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.member import Member
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

REAR_RAILS = (Role.REAR_BOTTOM_RAIL, Role.REAR_MID_RAIL, Role.EXTRA_REAR_RAIL, Role.TOP_RAIL_REAR)


class _Row(msgspec.Struct, frozen=True, kw_only=True):
    level_tenth_mm: int
    mark: str
    counted: bool
    more_count: int = 0  # fixings through its rail that strengthening adds
    top: bool = False  # the highest row that counts


def wall_fixings(at: SettingOut, job: Job, rules: RuleSet, *, members: tuple[Member, ...]) -> tuple[WallFixing, ...]:
    """Fixings of the upper frame: a row through every rear rail, the rest through the rear ladder uprights."""
    rows = _rows(at, job, rules, members=members)
    found = _stud_found(job)
    placed = [
        WallFixing(x_tenth_mm=x + aside, z_tenth_mm=row.level_tenth_mm, counted=row.counted and found, through=row.mark)
        for row, aside in zip(rows, _asides(rows, job, rules), strict=True)
        for x in _rail_places(at, job, rules, more=row.more_count)
    ]
    rear = [member for member in members if member.role is Role.LADDER_UPRIGHT and member.box.y0_tenth_mm == 0]
    for upright in rear:
        placed += _upright_fixings(at, job, rules, upright=upright, rows=rows)
    packed = [msgspec.structs.replace(one, packing_tenth_mm=wall_packing(at, job, one.z_tenth_mm)) for one in placed]
    return tuple(sorted(packed, key=lambda one: (one.z_tenth_mm, one.x_tenth_mm)))


def ceiling_screws(at: SettingOut, job: Job, rules: RuleSet, *, members: tuple[Member, ...]) -> tuple[CeilingScrew, ...]:
    """Where each top rail crosses a joist that was found: one screw, or two; none in part height or where nothing was found."""
    rails: dict[Role, str] = {member.role: member.mark for member in members}
    rows = ((Role.TOP_RAIL_REAR, at.d // 2), (Role.TOP_RAIL_FRONT, at.df - at.d // 2))
    half = at.added.ceiling_screws_apart_tenth_mm // 2
    shifts = (-half, half) if half else (0,)
    return tuple(
        CeilingScrew(
            x_tenth_mm=x,
            y_tenth_mm=y + shift,
            through=rails[role],
            packing_tenth_mm=ceiling_packing(at, job, x, rear=role is Role.TOP_RAIL_REAR),
        )
        for role, y in rows
        for x in _crossings(at, job, rules)
        for shift in shifts
    )


def joist_noggin_count(at: SettingOut, job: Job, rules: RuleSet) -> int:
    """Noggins still to be fitted between joists that run along the wall."""
    wanted = at.full_height and job.noggins is Noggins.TO_BE_FITTED and job.joists is JoistDirection.ALONG_WALL
    return len(_noggin_places(at, rules)) if wanted and job.ceiling_holds_screws else 0


def _crossings(at: SettingOut, job: Job, rules: RuleSet) -> tuple[int, ...]:
    if not (at.full_height and job.ceiling_holds_screws):
        return ()
    if job.joists is JoistDirection.ACROSS_WALL:
        return tuple(x for x in job.joists_tenth_mm if at.b <= x <= at.wf - at.b)
    if job.joists is JoistDirection.ALONG_WALL and job.noggins is not Noggins.NONE:
        return _noggin_places(at, rules)
    return ()


def _noggin_places(at: SettingOut, rules: RuleSet) -> tuple[int, ...]:
    count = -(-at.lr // tenths(rules.frame.noggin_between_joists_pitch_mm)) + 1
    return tuple(at.b + at.lr * (2 * step + 1) // (2 * count) for step in range(count))


def _rows(at: SettingOut, job: Job, rules: RuleSet, *, members: tuple[Member, ...]) -> tuple[_Row, ...]:
    rows = []
    for member in members:
        if member.role not in REAR_RAILS:
            continue
        level = (member.box.z0_tenth_mm + member.box.z1_tenth_mm) // 2
        counted = _clear_of_cables(level, at, job, rules)
        if not counted and at.added.extra_rear_rails_tenth_mm:
            continue  # the extra rail carries the row
        rows.append(_Row(level_tenth_mm=level, mark=member.mark, counted=counted, more_count=at.added.all_rail_fixings_count))
    rows.sort(key=lambda row: row.level_tenth_mm)
    top = max((index for index, row in enumerate(rows) if row.counted), default=None)
    if top is not None:
        more = rows[top].more_count + at.added.top_rail_fixings_count
        rows[top] = msgspec.structs.replace(rows[top], more_count=more, top=True)
    return tuple(rows)


def _clear_of_cables(level: int, at: SettingOut, job: Job, rules: RuleSet) -> bool:
    """Whether a level lies clear of the zone under the ceiling, or the wall was scanned for cables."""
    strip = job.clear_height_tenth_mm - tenths(rules.frame.cable_zone_mm)
    return job.cables_scanned or level <= strip or not at.full_height


def _rail_places(at: SettingOut, job: Job, rules: RuleSet, *, more: int) -> tuple[int, ...]:
    if job.studs_tenth_mm is not None:
        return tuple(x for x in job.studs_tenth_mm if at.b < x < at.wf - at.b)
    most = at.lr // tenths(rules.walls.fixing_spacing_mm) - 1
    count = min(max(0, -(-at.lr // tenths(rules.frame.rail_fixing_pitch_mm)) - 1) + more, max(most, 0))
    return tuple(at.b + at.lr * step // (count + 1) for step in range(1, count + 1))


def _asides(rows: tuple[_Row, ...], job: Job, rules: RuleSet) -> list[int]:
    """How far the fixings of each row stand aside, so that those of two close rows keep their distance; none on studs."""
    apart = tenths(rules.walls.fixing_spacing_mm)
    asides: list[int] = []
    for index, row in enumerate(rows):
        close = job.studs_tenth_mm is None and index > 0 and row.level_tenth_mm - rows[index - 1].level_tenth_mm < apart
        asides.append(apart if close and not asides[-1] else 0)
    return asides


def _stud_found(job: Job) -> bool:
    """In a stud wall a fixing counts only where the studs were found."""
    walls_on_studs = {"timber_stud", "steel_stud", "lath_and_plaster"}
    return job.wall_construction.value not in walls_on_studs or job.studs_tenth_mm is not None


def _upright_fixings(at: SettingOut, job: Job, rules: RuleSet, *, upright: Member, rows: tuple[_Row, ...]) -> list[WallFixing]:
    left, right = upright.box.x0_tenth_mm, upright.box.x1_tenth_mm
    x = (left + right) // 2
    if job.studs_tenth_mm is not None and not any(left <= stud <= right for stud in job.studs_tenth_mm):
        return []
    own = -(-upright.length_tenth_mm // tenths(rules.frame.upright_fixing_pitch_mm)) + 1
    rows = _kept(rows, rules)
    levels = [row.level_tenth_mm for row in rows]
    closed = upright.box.z0_tenth_mm < at.z1
    spare = shared_levels(levels, own - len(levels), upright.box.z0_tenth_mm if closed else None)
    spare = _clear(spare, tuple(levels), rules)
    spare += _under_top(at, rules, rows=rows, taken=(*levels, *spare))
    found = _stud_found(job)
    return [
        *(
            WallFixing(x_tenth_mm=x, z_tenth_mm=row.level_tenth_mm, counted=row.counted and found, through=upright.mark)
            for row in rows
        ),
        *(
            WallFixing(
                x_tenth_mm=x, z_tenth_mm=level, counted=found and _clear_of_cables(level, at, job, rules), through=upright.mark
            )
            for level in spare
        ),
    ]


def _under_top(at: SettingOut, rules: RuleSet, *, rows: tuple[_Row, ...], taken: tuple[int, ...]) -> tuple[int, ...]:
    """Levels of what strengthening adds in an upright: under the highest row that counts, each clear of the others."""
    apart = tenths(rules.walls.fixing_spacing_mm)
    top = next((row.level_tenth_mm for row in rows if row.top), None)
    if top is None:
        return ()
    return _clear(tuple(top - apart * step for step in range(1, at.added.top_upright_fixings_count + 1)), taken, rules)


def _kept(rows: tuple[_Row, ...], rules: RuleSet) -> tuple[_Row, ...]:
    """The rows that an upright has a fixing in: of two that are too close the top row that counts stays, else the lower one."""
    kept: list[_Row] = []
    for row in sorted(rows, key=lambda one: (not one.top, one.level_tenth_mm)):
        if _clear((row.level_tenth_mm,), tuple(one.level_tenth_mm for one in kept), rules):
            kept.append(row)
    return tuple(sorted(kept, key=lambda one: one.level_tenth_mm))


def _clear(levels: tuple[int, ...], taken: tuple[int, ...], rules: RuleSet) -> tuple[int, ...]:
    """Levels that keep their distance from what is there (`knowledge/fixings.md`, 2.3)."""
    apart = tenths(rules.walls.fixing_spacing_mm)
    return tuple(level for level in levels if all(abs(level - other) >= apart for other in taken))


def shared_levels(rows: list[int], count: int, foot: int | None) -> tuple[int, ...]:
    """Levels of the fixings that are left of an upright: one by one into the longest stretch, always shared out equally.

    Args:
        rows: levels of the rows that the upright already has, rising, tenths of a millimetre.
        count: fixings that are left; not positive: none.
        foot: lower end of an upright that stands on the base, or None at an open end.
    """
    edges = ([foot] if foot is not None else []) + rows
    stretches = [[low, high, 0] for low, high in pairwise(edges)]
    for _each in range(max(count, 0) if stretches else 0):
        longest = max(stretches, key=lambda one: ((one[1] - one[0]) / (one[2] + 1), one[0]))
        longest[2] += 1
    return tuple(
        (2 * (low * (inside + 1) + (high - low) * step) + inside + 1) // (2 * (inside + 1))
        for low, high, inside in stretches
        for step in range(1, inside + 1)
    )
