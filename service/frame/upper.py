"""The upper frame: rails between the ladders, plies behind the trimmer, bearers of the screen bracket.

Members: `knowledge/framing.md`, sections 4 and 10.1; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame.ladders import lay_ladders
from service.frame.member import Axis, EndJoint, Fit, Role, Unit
from service.frame.placing import Place, box, front, rear
from service.frame.studs import lay_cheeks, lay_studs

if TYPE_CHECKING:
    from service.frame.additions import Additions
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

HUNG_ROLES = frozenset({Role.REAR_BOTTOM_RAIL, Role.REAR_MID_RAIL, Role.TOP_RAIL_REAR, Role.TOP_RAIL_FRONT, Role.EXTRA_REAR_RAIL})


def lay_upper(at: SettingOut, rules: RuleSet, additions: Additions) -> tuple[Place, ...]:
    """Members of the upper frame in the order of their marks."""
    return (
        *lay_ladders(at, rules),
        *_rails(at, additions),
        *_plies(at),
        *lay_studs(at),
        *_bearers(at),
        *lay_cheeks(at, rules),
    )


def _rails(at: SettingOut, additions: Additions) -> list[Place]:
    f, r = front(at), rear(at)
    sill = at.zs - at.b
    levels: list[tuple[Role, Range, int]] = [(Role.SILL_RAIL if at.recess else Role.UPSTAND_RAIL, f, sill)]
    if at.recess:
        levels.append((Role.HEAD_RAIL, f, at.zh))
    levels += [
        (Role.TOP_RAIL_FRONT, f, at.z2 - at.b),
        (Role.REAR_BOTTOM_RAIL, r, at.z1),
        (Role.REAR_MID_RAIL, r, sill),
        (Role.TOP_RAIL_REAR, r, at.z2 - at.b),
        *((Role.EXTRA_REAR_RAIL, r, low) for low in additions.extra_rear_rails_tenth_mm),
    ]
    return [_trimmer(at), *(_rail(at, role, zone, low, additions=additions) for role, zone, low in levels)]


def _trimmer(at: SettingOut) -> Place:
    """The front bottom rail; its end at a jack bears on it, the other hangs in a bracket."""
    ends = [EndJoint.BEARING if at.jack_at(left=left) else EndJoint.BRACKET for left in (True, False)]
    place = box((at.b, at.wf - at.b), front(at), (at.z1, at.z1 + at.b))
    return Place(role=Role.TRIMMER, unit=Unit.UPPER, box=place, along=Axis.X, fit=Fit.BETWEEN, start=ends[0], end=ends[1])


def _rail(at: SettingOut, role: Role, zone: Range, low: int, *, additions: Additions) -> Place:
    hung = role in HUNG_ROLES and (at.left_open or at.right_open)
    joint = EndJoint.BRACKET if hung or role.value in additions.bracketed_roles else EndJoint.SCREWED
    reasons = additions.reasons or ("added by the checks",)
    return Place(
        role=role, unit=Unit.UPPER, box=box((at.b, at.wf - at.b), zone, (low, low + at.b)), along=Axis.X, fit=Fit.BETWEEN,
        start=joint, end=joint, reason=reasons[0] if role is Role.EXTRA_REAR_RAIL else "",
    )  # fmt: skip


def _plies(at: SettingOut) -> list[Place]:
    back = at.df - at.d
    return [
        _on_edge(Role.TRIMMER_PLY, at, (back - ply * at.b, back - (ply - 1) * at.b), at.z1) for ply in range(1, at.ply_count + 1)
    ]


def _bearers(at: SettingOut) -> list[Place]:
    if at.recess is None:
        return []
    back = at.recess.bearer_back_tenth_mm
    return [_on_edge(Role.SCREEN_BEARER, at, (back - at.b, back), row - at.d // 2) for row in at.recess.row_levels_tenth_mm]


def _on_edge(role: Role, at: SettingOut, y: Range, low: int) -> Place:
    place = box((at.b, at.wf - at.b), y, (low, low + at.d))
    return Place(
        role=role, unit=Unit.UPPER, box=place, along=Axis.X, fit=Fit.BETWEEN, start=EndJoint.BRACKET, end=EndJoint.BRACKET
    )
