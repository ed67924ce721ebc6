"""The base frame: what the platform height asks for, from nothing to the normal two-ladder box.

Forms and members: `knowledge/framing.md`, section 3; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame.additions import Added
from service.frame.frame import Station
from service.frame.member import Axis, EndJoint, Fit, Role, Unit
from service.frame.placing import Place, box, front, rear
from service.frame.surfaces import most_off, off_at
from service.survey.floor import LowEnd
from service.units import tenths

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet


FOOT_INSIDE_TENTH_MM = 1_000  # from the side of the opening to the middle of a foot: from memory, makers state it seldom


def stations(at: SettingOut, job: Job) -> tuple[Station, ...]:
    """Lines of uprights across the width, with the packer that the fall of the floor asks at each."""
    run = at.wf - at.b
    count = -(-run // (at.added.station_pitch_tenth_mm or at.m)) + 1
    places = [(2 * run * index + count - 1) // (2 * (count - 1)) for index in range(count)]
    places += [foot for foot in _feet(at) if all(abs(foot - x) >= at.b for x in places)]
    return tuple(_station(x, run, job) for x in sorted(places))


def _feet(at: SettingOut) -> tuple[int, ...]:
    """Left edges of the uprights under the feet of the fire, taken a hand's width inside its opening."""
    if not at.added.foot_stations:
        return ()
    half = at.b // 2
    return at.opening_left + FOOT_INSIDE_TENTH_MM - half, at.opening_right - FOOT_INSIDE_TENTH_MM - half


def _station(x: int, run: int, job: Job) -> Station:
    fall = fall_at(x, run, job)
    if job.floor_rear:
        rear, front = off_at(job.floor_rear, x), off_at(job.floor_front, x)
    else:
        rear, front = (0 if job.low_end is LowEnd.FRONT else fall), (0 if job.low_end is LowEnd.BACK else fall)
    return Station(x_tenth_mm=x, packer_tenth_mm=fall, rear_packer_tenth_mm=rear, front_packer_tenth_mm=front)


def fall_at(x: int, run: int, job: Job) -> int:
    """How much lower the floor lies at a distance from the left end: as measured, else by a straight line to its low end."""
    if job.floor_rear:
        return max(off_at(job.floor_rear, x), off_at(job.floor_front, x))
    if job.low_end is LowEnd.RIGHT:
        return (2 * job.fall_tenth_mm * x + run) // (2 * run)
    if job.low_end is LowEnd.LEFT:
        return (2 * job.fall_tenth_mm * (run - x) + run) // (2 * run)
    return job.fall_tenth_mm


def fall_under(stretch: Range, run: int, job: Job) -> int:
    """The greatest fall under a board that stands on a stretch of the width."""
    if job.floor_rear:
        return max(most_off(job.floor_rear, stretch), most_off(job.floor_front, stretch))
    return max(fall_at(x, run, job) for x in stretch)


def lay_base(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Place, ...]:
    """Members of the base frame; a pad of sheets is laid with the panels."""
    places = tuple(station.x_tenth_mm for station in stations(at, job))
    if at.z0 < at.b:
        return ()
    return _normal_base(at, places, rules) if is_normal(at, rules) else _flat_frame(at, places)


def is_normal(at: SettingOut, rules: RuleSet) -> bool:
    """Whether the platform is high enough for uprights."""
    return at.z0 >= 2 * at.b + tenths(rules.frame.low_platform_room_mm)


def _rails(at: SettingOut, levels: tuple[Range, ...]) -> list[Place]:
    return [
        Place(
            role=Role.RAIL, unit=Unit.BASE, box=box((0, at.wf), zone, level), along=Axis.X, fit=Fit.THROUGH,
            start=EndJoint.NONE, end=EndJoint.NONE,
        )
        for zone in (front(at), rear(at))
        for level in levels
    ]  # fmt: skip


def _noggin(at: SettingOut, x: Range, level: Range) -> Place:
    return Place(role=Role.CROSS_NOGGIN, unit=Unit.BASE, box=box(x, (at.d, at.df - at.d), level), along=Axis.Y, fit=Fit.BETWEEN)


def _noggins(at: SettingOut, places: tuple[int, ...], level: Range) -> list[Place]:
    """Noggins on edge over or under the uprights; none where front and rear rail touch."""
    return [_noggin(at, (x, x + at.b), level) for x in places] if at.n else []


def _flat_noggins(at: SettingOut, places: tuple[int, ...]) -> list[Place]:
    """Noggins lying flat, kept inside the ends of the frame; of two that would overlap the inner one is left out."""
    if at.n == 0:
        return []
    last = at.wf - at.d
    lefts = [0]
    for x in places[1:-1]:
        left = x + at.b // 2 - at.d // 2
        if lefts[-1] + at.d <= left <= last - at.d:
            lefts.append(left)
    return [_noggin(at, (left, left + at.d), (at.z0 - at.b, at.z0)) for left in (*lefts, last)]


def _flat_frame(at: SettingOut, places: tuple[int, ...]) -> tuple[Place, ...]:
    packs = [
        Place(
            role=Role.PACK, unit=Unit.BASE, box=box((x, x + at.b), zone, (0, at.z0 - at.b)), along=Axis.Z, fit=Fit.BETWEEN,
            from_bar=False,
        )
        for x in places
        for zone in (front(at), rear(at))
        if at.z0 > at.b
    ]  # fmt: skip
    return (*_rails(at, ((at.z0 - at.b, at.z0),)), *_flat_noggins(at, places), *packs)


def _upright(at: SettingOut, x: int, zone: Range, reason: str = "") -> Place:
    return Place(
        role=Role.UPRIGHT, unit=Unit.BASE, box=box((x, x + at.b), zone, (at.b, at.z0 - at.b)), along=Axis.Z, fit=Fit.BETWEEN,
        reason=reason,
    )  # fmt: skip


def _beside(at: SettingOut, x: int) -> int:
    """Where a second upright stands: beside the first, towards the middle of the frame."""
    return x + at.b if 2 * x + at.b < at.wf else x - at.b


def _normal_base(at: SettingOut, places: tuple[int, ...], rules: RuleSet) -> tuple[Place, ...]:
    uprights = [_upright(at, x, zone) for x in places for zone in (front(at), rear(at))]
    seconds = [
        _upright(at, _beside(at, x), zone, at.added.reason(Added.SECOND_UPRIGHT))
        for x in places
        if at.added.second_uprights and all(abs(_beside(at, x) - other) >= at.b for other in places)
        for zone in (front(at), rear(at))
    ]  # fmt: skip
    top = _noggins(at, places, (at.z0 - at.d, at.z0)) if at.z0 >= at.d else _flat_noggins(at, places)
    bottom = _noggins(at, places, (0, at.d)) if at.z0 >= 2 * at.d + tenths(rules.frame.bottom_noggin_room_mm) else []
    return (*_rails(at, ((0, at.b), (at.z0 - at.b, at.z0))), *uprights, *top, *bottom, *seconds)
