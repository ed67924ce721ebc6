"""The base frame: what the platform height asks for, from nothing to the normal two-ladder box.

Forms and members: `knowledge/framing.md`, section 3; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame.frame import Station
from service.frame.member import Axis, EndJoint, Fit, Role, Unit
from service.frame.placing import Place, box
from service.survey.floor import LowEnd
from service.units import tenths

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet


def stations(at: SettingOut, job: Job) -> tuple[Station, ...]:
    """Lines of uprights across the width, with the packer that the fall of the floor asks at each."""
    run = at.wf - at.b
    count = -(-run // at.m) + 1
    places = [(2 * run * index + count - 1) // (2 * (count - 1)) for index in range(count)]
    return tuple(Station(x_tenth_mm=x, packer_tenth_mm=fall_at(x, run, job)) for x in places)


def fall_at(x: int, run: int, job: Job) -> int:
    """How much lower the floor lies at a distance from the left end, by a straight line to its low end."""
    if job.low_end is LowEnd.RIGHT:
        return (2 * job.fall_tenth_mm * x + run) // (2 * run)
    if job.low_end is LowEnd.LEFT:
        return (2 * job.fall_tenth_mm * (run - x) + run) // (2 * run)
    return job.fall_tenth_mm


def lay_base(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Place, ...]:
    """Members of the base frame; a pad of sheets is laid with the panels."""
    places = tuple(station.x_tenth_mm for station in stations(at, job))
    if at.z0 < at.b:
        return ()
    if at.z0 < 2 * at.b + tenths(rules.frame.low_platform_room_mm):
        return _flat_frame(at, places)
    return _normal_base(at, places, rules)


def is_normal(at: SettingOut, rules: RuleSet) -> bool:
    """Whether the platform is high enough for uprights."""
    return at.z0 >= 2 * at.b + tenths(rules.frame.low_platform_room_mm)


def _zones(at: SettingOut) -> tuple[tuple[int, int], tuple[int, int]]:
    return (at.df - at.d, at.df), (0, at.d)


def _rails(at: SettingOut, levels: tuple[tuple[int, int], ...]) -> list[Place]:
    return [
        Place(
            role=Role.RAIL, unit=Unit.BASE, box=box((0, at.wf), zone, level), along=Axis.X, fit=Fit.THROUGH, start=EndJoint.NONE, end=EndJoint.NONE
        )
        for zone in _zones(at)
        for level in levels
    ]  # fmt: skip


def _noggins(at: SettingOut, places: tuple[int, ...], level: tuple[int, int]) -> list[Place]:
    if at.n == 0:
        return []
    return [
        Place(role=Role.CROSS_NOGGIN, unit=Unit.BASE, box=box((x, x + at.b), (at.d, at.df - at.d), level), along=Axis.Y, fit=Fit.BETWEEN)
        for x in places
    ]


def _flat_noggins(at: SettingOut, places: tuple[int, ...]) -> list[Place]:
    """Noggins lying flat, kept inside the ends of the frame."""
    if at.n == 0:
        return []
    lefts = [min(max(x + at.b // 2 - at.d // 2, 0), at.wf - at.d) for x in places]
    return [
        Place(
            role=Role.CROSS_NOGGIN, unit=Unit.BASE, box=box((x, x + at.d), (at.d, at.df - at.d), (at.z0 - at.b, at.z0)), along=Axis.Y, fit=Fit.BETWEEN
        )
        for x in lefts
    ]  # fmt: skip


def _flat_frame(at: SettingOut, places: tuple[int, ...]) -> tuple[Place, ...]:
    packs = [
        Place(
            role=Role.PACK, unit=Unit.BASE, box=box((x, x + at.b), zone, (0, at.z0 - at.b)), along=Axis.Z, fit=Fit.BETWEEN, from_bar=False
        )
        for x in places
        for zone in _zones(at)
        if at.z0 > at.b
    ]  # fmt: skip
    return (*_rails(at, ((at.z0 - at.b, at.z0),)), *_flat_noggins(at, places), *packs)


def _normal_base(at: SettingOut, places: tuple[int, ...], rules: RuleSet) -> tuple[Place, ...]:
    uprights = [
        Place(role=Role.UPRIGHT, unit=Unit.BASE, box=box((x, x + at.b), zone, (at.b, at.z0 - at.b)), along=Axis.Z, fit=Fit.BETWEEN)
        for x in places
        for zone in _zones(at)
    ]
    top = _noggins(at, places, (at.z0 - at.d, at.z0)) if at.z0 >= at.d else _flat_noggins(at, places)
    bottom = _noggins(at, places, (0, at.d)) if at.z0 >= 2 * at.d + tenths(rules.frame.bottom_noggin_room_mm) else []
    return (*_rails(at, ((0, at.b), (at.z0 - at.b, at.z0))), *uprights, *top, *bottom)
