"""Steps of ends and of hung ladders: brackets, heavier, in pairs, more noggins (`knowledge/framing.md`, 10.2, 8 and 13a)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.step import in_stronger_class, stronger
from service.frame import Added, Axis, Role

if TYPE_CHECKING:
    from service.checks.step import Stronger, Weak
    from service.frame import Member

PLATE_OVER_TENTH_MM: Final = 20  # a bracket may be so much wider than the timber under it: structure.md, 5.13 b


def bracket(weak: Weak) -> Stronger | None:
    """A bracket at each end of that role, where screws in end grain do not hold."""
    member = weak.member
    if member is None or member.role.value in weak.added.bracketed_roles or weak.ground.hardware.bracket is None:
        return None
    if member.start_joint.bracket_count or member.end_joint.bracket_count:
        return None
    roles = (*weak.added.bracketed_roles, member.role.value)
    return stronger(weak, f"a bracket at each end of the {_name(member)}", bracketed_roles=roles)


def heavy_bracket(weak: Weak) -> Stronger | None:
    """The heavy bracket instead of the light one, where it is no wider than the timber."""
    member, heavy, added = weak.member, weak.ground.hardware.heavy_bracket, weak.added
    if member is None or heavy is None or member.role.value in {*added.heavy_roles, *added.paired_roles}:
        return None
    if (heavy.width_mm or 0.0) * 10 > _face(member) + PLATE_OVER_TENTH_MM:
        return None
    return stronger(
        weak, f"the heavy bracket at each end of the {_name(member)}",
        bracketed_roles=_with(added.bracketed_roles, member), heavy_roles=(*added.heavy_roles, member.role.value),
    )  # fmt: skip


def bracket_pair(weak: Weak) -> Stronger | None:
    """Light brackets over and under each end."""
    member, added = weak.member, weak.added
    if member is None or weak.ground.hardware.bracket is None or member.role.value in added.paired_roles:
        return None
    return stronger(
        weak, f"brackets over and under each end of the {_name(member)}",
        bracketed_roles=_with(added.bracketed_roles, member), paired_roles=(*added.paired_roles, member.role.value),
        heavy_roles=tuple(role for role in added.heavy_roles if role != member.role.value),
    )  # fmt: skip


def ladder_brackets(weak: Weak) -> Stronger | None:
    """A bracket at both ends of every noggin of the hung ladders."""
    if weak.added.ladder_brackets or weak.ground.hardware.bracket is None:
        return None
    return stronger(weak, "brackets at both ends of every noggin of the hung side ladders", ladder_brackets=True)


def ladder_halved(weak: Weak) -> Stronger | None:
    """A noggin half way in each bay of the hung ladders that has room."""
    if weak.added.ladder_halved:
        return None
    return stronger(weak, "a noggin half way in each bay of the hung side ladders", Added.LADDER_NOGGIN, ladder_halved=True)


def stronger_noggins(weak: Weak) -> Stronger | None:
    """Ladder noggins of the next class."""
    return in_stronger_class(weak, (Role.LADDER_NOGGIN, Role.LADDER_UPRIGHT))


def _with(roles: tuple[str, ...], member: Member) -> tuple[str, ...]:
    return roles if member.role.value in roles else (*roles, member.role.value)


def _face(member: Member) -> int:
    """Width of the face that a bracket lies on, over or under the end."""
    box = member.box
    return box.x1_tenth_mm - box.x0_tenth_mm if member.along is Axis.Y else box.y1_tenth_mm - box.y0_tenth_mm


def _name(member: Member) -> str:
    return member.role.value.replace("_", " ")
