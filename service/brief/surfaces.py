"""Ceiling and floor as they were measured point by point (`knowledge/survey.md`, sections 3 and 6; `framing.md`, section 14).

Points are told apart by the row that they lie in, behind or in front of the middle of the breast's depth.
"""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

import msgspec

from service.brief.job import Spot
from service.survey.floor import LowEnd
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.room_facts import RoomFacts
    from service.survey.floor import FloorLevel
    from service.survey.survey import Survey

EVEN_TENTH_MM = 10  # levels no further than this from an even fall are taken as one: the thinnest packer, house choice


class Surfaces(msgspec.Struct, frozen=True, kw_only=True):
    """Ceiling and floor over and under the breast, by the names that a job gives them; empty where they are even."""

    ceiling_rear: tuple[Spot, ...] = ()
    ceiling_front: tuple[Spot, ...] = ()
    floor_rear: tuple[Spot, ...] = ()
    floor_front: tuple[Spot, ...] = ()


class _Point(msgspec.Struct, frozen=True, kw_only=True):
    x_tenth_mm: int
    y_tenth_mm: int
    off_tenth_mm: int


def read_surfaces(survey: Survey, room: RoomFacts, *, left_tenth_mm: int, width_tenth_mm: int, depth_tenth_mm: int) -> Surfaces:
    """What was measured, in frame axes.

    Args:
        survey: the survey.
        room: its fall and low end.
        left_tenth_mm: survey x of the frame's left end.
        width_tenth_mm: of the frame.
        depth_tenth_mm: of the breast.
    """
    ceiling = _shifted(_rises(survey), left_tenth_mm)
    floor = _shifted(_drops(survey), left_tenth_mm)
    over = _rows(ceiling, depth_tenth_mm) if any(point.off_tenth_mm for point in ceiling) else ((), ())
    under = _rows(floor, depth_tenth_mm) if _is_uneven(floor, room, width_tenth_mm) else ((), ())
    return Surfaces(ceiling_rear=over[0], ceiling_front=over[1], floor_rear=under[0], floor_front=under[1])


def _rises(survey: Survey) -> list[_Point]:
    """How much higher than its lowest point the ceiling is; the floor is taken as even where its level was not taken."""
    heights = (survey.room.heights if survey.room else None) or ()
    levels = {(point.x_mm, point.y_mm): point.level_mm for point in _levels(survey)}
    known = all((point.x_mm, point.y_mm) in levels for point in heights)
    tops = [tenths(point.height_mm + (levels[point.x_mm, point.y_mm] if known and levels else 0.0)) for point in heights]
    return [
        _Point(x_tenth_mm=tenths(point.x_mm), y_tenth_mm=tenths(point.y_mm), off_tenth_mm=top - min(tops))
        for point, top in zip(heights, tops, strict=True)
    ]


def _drops(survey: Survey) -> list[_Point]:
    """How much lower than its highest point the floor is."""
    levels = _levels(survey)
    highest = max((point.level_mm for point in levels), default=0.0)
    return [
        _Point(
            x_tenth_mm=tenths(point.x_mm), y_tenth_mm=tenths(point.y_mm),
            off_tenth_mm=tenths(highest) - tenths(point.level_mm),
        )
        for point in levels
    ]  # fmt: skip


def _levels(survey: Survey) -> tuple[FloorLevel, ...]:
    return (survey.floor.levels if survey.floor else None) or ()


def _shifted(points: list[_Point], left_tenth_mm: int) -> list[_Point]:
    return [msgspec.structs.replace(point, x_tenth_mm=point.x_tenth_mm - left_tenth_mm) for point in points]


def _rows(points: list[_Point], depth_tenth_mm: int) -> tuple[tuple[Spot, ...], tuple[Spot, ...]]:
    """The points behind and in front; a row without any is taken like the other."""
    rear = [point for point in points if 2 * point.y_tenth_mm <= depth_tenth_mm]
    front = [point for point in points if 2 * point.y_tenth_mm > depth_tenth_mm]
    return _spots(rear or front), _spots(front or rear)


def _spots(points: list[_Point]) -> tuple[Spot, ...]:
    """One row from left to right; of points at one place the one furthest off."""
    ordered = sorted(points, key=lambda point: (point.x_tenth_mm, point.off_tenth_mm))
    groups = [list(group) for _x, group in groupby(ordered, key=lambda point: point.x_tenth_mm)]
    return tuple(Spot(x_tenth_mm=group[-1].x_tenth_mm, off_tenth_mm=group[-1].off_tenth_mm) for group in groups)


def _is_uneven(floor: list[_Point], room: RoomFacts, width_tenth_mm: int) -> bool:
    """Whether levels lie off the even fall to the low end by more than the thinnest packer."""
    return any(abs(point.off_tenth_mm - _even(point, floor, room, width_tenth_mm)) > EVEN_TENTH_MM for point in floor)


def _even(point: _Point, floor: list[_Point], room: RoomFacts, width_tenth_mm: int) -> int:
    """What an even fall would give at a point."""
    fall = room.fall_tenth_mm
    along = min(max(point.x_tenth_mm, 0), width_tenth_mm)
    deepest = max(one.y_tenth_mm for one in floor)
    shares = {
        LowEnd.RIGHT: (along, width_tenth_mm),
        LowEnd.LEFT: (width_tenth_mm - along, width_tenth_mm),
        LowEnd.FRONT: (point.y_tenth_mm, deepest),
        LowEnd.BACK: (deepest - point.y_tenth_mm, deepest),
    }
    part, whole = shares.get(room.low_end, (0, 1))
    return fall * part // max(whole, 1)
