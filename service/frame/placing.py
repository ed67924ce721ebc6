"""Placing one member: its box from a corner and sizes, its cut length by fit, and evenly spread positions."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.frame.member import Axis, Box, CutWhen, EndJoint, Fit, Member, Role, Unit
from service.units import whole_mm_down, whole_mm_nearest

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from service.frame.setting_out import SettingOut

type Range = tuple[int, int]  # from, to, along one axis, in tenths of a millimetre

PREFIX = {
    Role.RAIL: "R", Role.UPRIGHT: "U", Role.CROSS_NOGGIN: "N", Role.LADDER_UPRIGHT: "L", Role.LADDER_NOGGIN: "N",
    Role.TRIMMER: "T", Role.TRIMMER_PLY: "TP", Role.SILL_RAIL: "S", Role.UPSTAND_RAIL: "S", Role.HEAD_RAIL: "H",
    Role.TOP_RAIL_FRONT: "TF", Role.TOP_RAIL_REAR: "TR", Role.REAR_BOTTOM_RAIL: "RB", Role.REAR_MID_RAIL: "RM",
    Role.EXTRA_REAR_RAIL: "RX", Role.JAMB_STUD: "J", Role.CRIPPLE_BELOW: "CB", Role.CRIPPLE_ABOVE: "CA", Role.FRONT_STUD: "F",
    Role.SCREEN_BEARER: "B", Role.JACK_STUD: "K", Role.CHEEK_NOGGIN: "CN", Role.CHEEK_STUD: "CS", Role.JAMB_PACKER: "P",
    Role.PACK: "K", Role.LID_JOIST: "LJ",
}  # fmt: skip


class Place(msgspec.Struct, frozen=True, kw_only=True):
    """What is said of one member before it has a mark."""

    role: Role
    unit: Unit
    box: Box
    along: Axis
    fit: Fit
    cut_when: CutWhen = CutWhen.NOW
    start: EndJoint = EndJoint.SCREWED
    end: EndJoint = EndJoint.SCREWED
    from_bar: bool = True
    reason: str = ""


def box(x: Range, y: Range, z: Range) -> Box:
    """A box from its three ranges, in tenths of a millimetre."""
    return Box(x0_tenth_mm=x[0], x1_tenth_mm=x[1], y0_tenth_mm=y[0], y1_tenth_mm=y[1], z0_tenth_mm=z[0], z1_tenth_mm=z[1])


def front(at: SettingOut) -> Range:
    """The front zone F of framing.md, section 4."""
    return at.df - at.d, at.df


def rear(at: SettingOut) -> Range:
    """The rear zone R of framing.md, section 4."""
    return 0, at.d


def ceiling_cut(at: SettingOut) -> CutWhen:
    """Pieces that end under the ceiling are cut after measuring; in part height nothing follows from the ceiling."""
    return CutWhen.AFTER_MEASURE if at.full_height else CutWhen.NOW


def length_of(place: Box, along: Axis) -> int:
    """Extent of a box along an axis, in tenths of a millimetre."""
    return {
        Axis.X: place.x1_tenth_mm - place.x0_tenth_mm,
        Axis.Y: place.y1_tenth_mm - place.y0_tenth_mm,
        Axis.Z: place.z1_tenth_mm - place.z0_tenth_mm,
    }[along]


def mark_members(
    places: Iterable[Place], shortest_bar_piece_tenth_mm: int, class_of: Callable[[Role], str]
) -> tuple[Member, ...]:
    """Give every placed member its mark: unit, role, number in the order of placing; and the strength class of its role."""
    counts: dict[str, int] = {}
    made = []
    for place in places:
        stem = f"{'B' if place.unit is Unit.BASE else 'U'}-{PREFIX[place.role]}"
        counts[stem] = counts.get(stem, 0) + 1
        made.append(_member(place, f"{stem}{counts[stem]}", class_of(place.role), shortest_bar_piece_tenth_mm))
    return tuple(made)


def _member(place: Place, mark: str, strength_class: str, shortest_bar_piece_tenth_mm: int) -> Member:
    length = length_of(place.box, place.along)
    sides = sorted(length_of(place.box, axis) for axis in Axis if axis is not place.along)
    return Member(
        mark=mark,
        role=place.role,
        unit=place.unit,
        thickness_tenth_mm=sides[0],
        width_tenth_mm=sides[1],
        strength_class=strength_class,
        along=place.along,
        length_tenth_mm=length,
        cut_length_mm=whole_mm_down(length) if place.fit is Fit.BETWEEN else whole_mm_nearest(length),
        fit=place.fit,
        cut_when=place.cut_when,
        box=place.box,
        start_joint=place.start,
        end_joint=place.end,
        from_bar=place.from_bar and length >= shortest_bar_piece_tenth_mm,
        reason=place.reason,
    )


def spread_half(first: int, last: int, pitch: int) -> tuple[int, ...]:
    """Positions between two, evenly, no further apart than a pitch; the two themselves left out.

    Args:
        first: in half tenths of a millimetre, so that a centre of an odd width is exact.
        last: the same.
        pitch: greatest spacing in tenths of a millimetre.

    Returns:
        Positions in tenths of a millimetre, each rounded half up.
    """
    whole = last - first
    count = -(-whole // (2 * pitch))
    return tuple((first * count + whole * step + count) // (2 * count) for step in range(1, count))


def between(centre: int, thickness: int) -> Range:
    """Range of a member about its centre; of an odd thickness the lower half is the smaller."""
    return centre - thickness // 2, centre - thickness // 2 + thickness
