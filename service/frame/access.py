"""A removable panel in a return, so that a connection behind the boards can be reached: its edges lie on ladder timber.

Rules: `knowledge/framing.md`, section 12, and `knowledge/cladding.md`, section 7; common practice, no source.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import msgspec

from service.errors import Unmet
from service.frame.frame import PanelRole
from service.frame.ladders import noggin_levels
from service.units import millimetres, tenths, text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.joints import Wanted
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

JOINT_TENTH_MM = 20  # open all round a removable panel: cladding.md, section 7
ROLES = {True: PanelRole.RETURN_ACCESS_LEFT, False: PanelRole.RETURN_ACCESS_RIGHT}


def at_left(at: SettingOut, job: Job) -> bool:
    """Which end gets the panel: as wished, else the right one, unless that stands against a wall."""
    wish = job.access
    return at.right_wall if wish is None or wish.left is None else wish.left


def with_access(
    wanted: list[tuple[PanelRole, Wanted]], at: SettingOut, job: Job, rules: RuleSet, *, left: bool
) -> list[tuple[PanelRole, Wanted]]:
    """The boards of a return with the panel taken out of the one that it lies in."""
    bay = _bay(at, job, rules) if job.access and at_left(at, job) is left else None
    if bay is None:
        return wanted
    found: list[tuple[PanelRole, Wanted]] = []
    for role, whole in wanted:
        inside = whole.low_tenth_mm < bay[0] and bay[1] < whole.high_tenth_mm
        found += _split(role, whole, bay, left=left) if inside else [(role, whole)]
    return found


def access_refusals(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Unmet, ...]:
    """A panel that has no return, or no bay of the ladder that is large enough."""
    if job.access is None or (at.z1 >= at.z2 or at.n < 0):
        return ()
    high, wide = _asked(job, rules)
    at_wall = at.left_wall if at_left(at, job) else at.right_wall
    there = 0 if at_wall else max((top - low for low, top in _bays(at, job, rules)), default=0)
    found = []
    if high > there:
        smaller = text_mm(there) if there >= tenths(rules.power.access_long_mm) else ""
        found.append(_unmet(high, there, "high", f"a panel {smaller} high, or" if smaller else ""))
    if wide > at.df and not at_wall:
        found.append(_unmet(wide, at.df, "wide", f"a breast {text_mm(wide + at.tf)} deep, or"))
    return tuple(found)


def access_notes(at: SettingOut, job: Job, rules: RuleSet) -> list[str]:
    """Where the panel lies and how it is held."""
    bay = _bay(at, job, rules) if job.access else None
    if bay is None:
        return []
    side = "left" if at_left(at, job) else "right"
    levels = f"from {text_mm(bay[0])} to {text_mm(bay[1])} above the floor"
    return [f"the return at the {side} holds a removable panel {levels}: joints of 2, on 4 magnets, the connection behind it"]


def _asked(job: Job, rules: RuleSet) -> tuple[int, int]:
    """Height and width: the wish, never less than what a hand with a tool wants."""
    high, wide = tenths(rules.power.access_long_mm), tenths(rules.power.access_short_mm)
    return max(high, job.access.height_tenth_mm if job.access else 0), max(wide, job.access.width_tenth_mm if job.access else 0)


def _bays(at: SettingOut, job: Job, rules: RuleSet) -> list[Range]:
    """Clear heights of a panel between neighbouring noggins on edge, from the lowest up; none on noggins too narrow for both."""
    if at.d // 2 - JOINT_TENTH_MM < tenths(rules.frame.joint_support_mm):
        return []
    levels = [one for one in noggin_levels(at, rules, left=at_left(at, job)) if not one.flat]
    centres = [(one.low_tenth_mm + one.high_tenth_mm) // 2 for one in levels]
    return [(low + JOINT_TENTH_MM, high - JOINT_TENTH_MM) for low, high in pairwise(centres)]


def _bay(at: SettingOut, job: Job, rules: RuleSet) -> Range | None:
    """The lowest bay that is high enough: nearest to the connection of the fire."""
    high, _wide = _asked(job, rules)
    return next(((low, top) for low, top in _bays(at, job, rules) if top - low >= high), None)


def _split(role: PanelRole, whole: Wanted, bay: Range, *, left: bool) -> list[tuple[PanelRole, Wanted]]:
    """The board below, the panel, the board above; the joints are not filled."""
    replace = msgspec.structs.replace
    under, over = bay[0] - JOINT_TENTH_MM, bay[1] + JOINT_TENTH_MM
    return [
        (role, replace(whole, high_tenth_mm=under, grow_high_tenth_mm=0)),
        (ROLES[left], replace(whole, low_tenth_mm=bay[0], high_tenth_mm=bay[1], grow_low_tenth_mm=0, grow_high_tenth_mm=0)),
        (role, replace(whole, low_tenth_mm=over, grow_low_tenth_mm=0)),
    ]


def _unmet(asked: int, available: int, way: str, offer: str) -> Unmet:
    return Unmet(
        code="access",
        says=f"a removable panel wants to be {text_mm(asked)} {way} and the return leaves {text_mm(available)}",
        asked_mm=millimetres(asked),
        available_mm=millimetres(available),
        short_by_mm=millimetres(asked - available),
        offer=f"{offer} the panel at the other end, or a connection in reach outside the breast".strip(),
    )
