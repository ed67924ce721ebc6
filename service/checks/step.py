"""The form of a step: what it reads, what it yields, and short ways that steps share (`knowledge/framing.md`, 10.2)."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import msgspec

from service.frame import Reason
from service.units import tenths

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.checks.check import Check
    from service.checks.ground import Ground
    from service.frame import Added, Additions, Member, Role
    from service.hardware import Shelf


class Weak(NamedTuple):
    """What a step reads: the check that fails, the design that it fails in, and what is sold."""

    check: Check
    ground: Ground
    shelf: Shelf

    @property
    def added(self) -> Additions:
        """What was added so far."""
        return self.ground.frame.additions

    @property
    def member(self) -> Member | None:
        """The member that the check is about; None where it is about something else."""
        return next((one for one in self.ground.frame.members if one.mark == self.check.subject), None)


class Stronger(NamedTuple):
    """What a step adds, and that in words."""

    additions: Additions
    says: str


type Step = Callable[[Weak], Stronger | None]  # None: used up, no room, or not sold


class Row(NamedTuple):
    """One row of the table: the checks that it answers, and its steps, first to last."""

    codes: frozenset[str]
    steps: tuple[Step, ...]


def stronger(weak: Weak, says: str, because: Added | None = None, **changes: object) -> Stronger:
    """Additions with some fields changed, and with the reason where what is added is a member."""
    if because is not None:
        reason = Reason(added=because, says=f"{weak.check.code}: {says}")
        changes["reasons"] = (*weak.added.reasons, reason)
    return Stronger(msgspec.structs.replace(weak.added, **changes), says)


def stronger_class(weak: Weak) -> str:
    """The next class above the job's that its section is sold in; empty: none."""
    timber, rules = weak.ground.job.timber, weak.ground.rules
    known = {row.name: row.bending_mpa for row in rules.timber}
    section = (timber.thickness_tenth_mm, timber.width_tenth_mm)
    sold = {
        row.strength_class
        for row in weak.shelf.catalogue.materials.values()
        if row.kind == "timber" and (tenths(row.thickness_mm or 0), tenths(row.width_mm or 0)) == section
    }
    above = [name for name in sold if name and known.get(name, 0.0) > known.get(timber.strength_class, 0.0)]
    return min(above, key=lambda name: known[name], default="")


def in_stronger_class(weak: Weak, roles: tuple[Role, ...]) -> Stronger | None:
    """These roles of the next class that is sold."""
    name = stronger_class(weak)
    new = tuple(role for role in roles if role not in weak.added.strong_roles)
    if not name or not new:
        return None
    says = f"{name} for {', '.join(role.value.replace('_', ' ') for role in new)}"
    return stronger(weak, says, strong_class=name, strong_roles=(*weak.added.strong_roles, *new))


def deeper_section(weak: Weak, role: Role, width_tenth_mm: int) -> int | None:
    """The next wider section of the same thickness and class that is sold; None: none."""
    timber = weak.ground.job.timber
    wanted = weak.added.class_of(role, timber.strength_class)
    widths = {
        tenths(row.width_mm or 0)
        for row in weak.shelf.catalogue.materials.values()
        if row.kind == "timber" and row.strength_class == wanted and tenths(row.thickness_mm or 0) == timber.thickness_tenth_mm
    }
    return min((width for width in widths if width > width_tenth_mm), default=None)
