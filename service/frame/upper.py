"""The upper frame: rails between the ladders, plies behind the trimmer, bearers of the screen bracket.

Members: `knowledge/framing.md`, sections 4 and 10.1; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import msgspec

from service.frame.additions import Added
from service.frame.ladders import lay_ladders
from service.frame.member import Axis, EndJoint, Fit, Role, Unit
from service.frame.placing import Place, Range, between, box, front, rear, spread_half
from service.frame.studs import lay_cheeks, lay_studs

if TYPE_CHECKING:
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

HUNG_ROLES = frozenset({Role.REAR_BOTTOM_RAIL, Role.REAR_MID_RAIL, Role.TOP_RAIL_REAR, Role.TOP_RAIL_FRONT, Role.EXTRA_REAR_RAIL})


class _Edge(NamedTuple):
    y: Range
    z: Range


def lay_upper(at: SettingOut, rules: RuleSet) -> tuple[Place, ...]:
    """Members of the upper frame in the order of their marks."""
    places = (
        *lay_ladders(at, rules),
        *_rails(at),
        *_plies(at),
        *lay_studs(at),
        *_bearers(at),
        *lay_cheeks(at, rules),
        *_lid_joists(at),
    )
    return tuple(_joined(place, at) for place in places)


def _rails(at: SettingOut) -> list[Place]:
    f, r = front(at), rear(at)
    sill = at.zs - at.b
    levels: list[tuple[Role, Range, int]] = [(Role.SILL_RAIL if at.recess else Role.UPSTAND_RAIL, f, sill)]
    if at.ledge_rail is not None:
        levels.insert(0, (Role.SILL_RAIL, f, at.ledge_rail))
    if at.niche:
        levels.insert(0, (Role.SILL_RAIL, f, at.zn - at.b))
    if at.recess:
        levels.append((Role.HEAD_RAIL, f, at.zh))
    levels += [
        (Role.TOP_RAIL_FRONT, f, at.z2 - at.b),
        (Role.REAR_BOTTOM_RAIL, r, at.z1),
        (Role.REAR_MID_RAIL, r, sill),
        (Role.TOP_RAIL_REAR, r, at.z2 - at.b),
        *((Role.EXTRA_REAR_RAIL, r, low) for low in at.added.extra_rear_rails_tenth_mm),
    ]
    return [_trimmer(at), *(_rail(at, role, zone, low) for role, zone, low in levels)]


def _trimmer(at: SettingOut) -> Place:
    """The front bottom rail; its end at a jack bears on it, the other hangs in a bracket."""
    ends = [EndJoint.BEARING if at.jack_at(left=left) else EndJoint.BRACKET for left in (True, False)]
    place = box((at.b, at.wf - at.b), front(at), (at.z1, at.z1 + at.b))
    return Place(role=Role.TRIMMER, unit=Unit.UPPER, box=place, along=Axis.X, fit=Fit.BETWEEN, start=ends[0], end=ends[1])


def _rail(at: SettingOut, role: Role, zone: Range, low: int) -> Place:
    hung = role in HUNG_ROLES and (at.left_open or at.right_open)
    joint = EndJoint.BRACKET if hung else EndJoint.SCREWED
    extra = role is Role.EXTRA_REAR_RAIL
    return Place(
        role=role, unit=Unit.UPPER, box=box((at.b, at.wf - at.b), zone, (low, low + at.b)), along=Axis.X, fit=Fit.BETWEEN,
        start=joint, end=joint, reason=(at.added.reason(Added.REAR_RAIL) or "added by the checks") if extra else "",
    )  # fmt: skip


def _plies(at: SettingOut) -> list[Place]:
    back, depth = at.df - at.d, at.added.ply_width_tenth_mm or at.d
    reason = at.added.reason(Added.DEEP_PLY) or at.added.reason(Added.PLY)
    return [
        _on_edge(Role.TRIMMER_PLY, at, _Edge((back - ply * at.b, back - (ply - 1) * at.b), (at.z1, at.z1 + depth)), reason)
        for ply in range(1, at.ply_count + 1)
    ]


def _bearers(at: SettingOut) -> list[Place]:
    if at.recess is None:
        return []
    back, depth = at.recess.bearer_back_tenth_mm, at.added.bearer_width_tenth_mm or at.d
    lows = [row - depth // 2 for row in at.recess.row_levels_tenth_mm]
    reason = at.added.reason(Added.BEARER)
    return [_on_edge(Role.SCREEN_BEARER, at, _Edge((back - at.b, back), (low, low + depth)), reason) for low in lows]


def _on_edge(role: Role, at: SettingOut, edge: _Edge, reason: str) -> Place:
    return Place(
        role=role, unit=Unit.UPPER, box=box((at.b, at.wf - at.b), edge.y, edge.z), along=Axis.X, fit=Fit.BETWEEN,
        start=EndJoint.BRACKET, end=EndJoint.BRACKET, reason=reason,
    )  # fmt: skip


def _lid_joists(at: SettingOut) -> list[Place]:
    """Joists on edge under the lid, between front and rear top rail."""
    pitch = at.added.lid_joist_pitch_tenth_mm
    if pitch is None or at.full_height or at.n <= 0:
        return []
    reason, low = at.added.reason(Added.LID_JOIST), at.z2 - at.d
    return [
        Place(
            role=Role.LID_JOIST, unit=Unit.UPPER, box=box(between(x, at.b), (at.d, at.df - at.d), (low, at.z2)), along=Axis.Y,
            fit=Fit.BETWEEN, reason=reason,
        )
        for x in spread_half(at.b, 2 * at.wf - at.b, pitch)
    ]  # fmt: skip


def _joined(place: Place, at: SettingOut) -> Place:
    """The joints of a member as strengthening makes them; an end that bears on a jack stays."""
    added = at.added
    if place.role.value not in added.bracketed_roles:
        return place
    joint = EndJoint.BRACKET
    if place.role.value in added.heavy_roles:
        joint = EndJoint.HEAVY_BRACKET
    elif place.role.value in added.paired_roles:
        joint = EndJoint.BRACKET_PAIR
    ends = [one if one is EndJoint.BEARING else joint for one in (place.start, place.end)]
    return msgspec.structs.replace(place, start=ends[0], end=ends[1])
