"""What a check reads: the frame, the job, the numbers of the trade and the fixings that the bill will buy. Never a price."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.brief import Job
from service.frame import Frame
from service.hardware import Hardware
from service.rules import RuleSet

if TYPE_CHECKING:
    from service.frame import Member
    from service.rules import StrengthClass


class Ground(msgspec.Struct, frozen=True, kw_only=True):
    """What a check reads."""

    job: Job
    frame: Frame
    rules: RuleSet
    hardware: Hardware


def class_of(member: Member, ground: Ground) -> StrengthClass:
    """Strength of a member: that of the job's timber, or of a stronger class that the checks asked for."""
    return ground.rules.strength_class(member.strength_class)


def hangs_ladders(ground: Ground) -> bool:
    """Whether ladders at open ends are checked as hung frames; one switch of the rule set (`knowledge/structure.md`, 5.13)."""
    return ground.rules.members.hung_ladder_count > 0 and (ground.frame.left_open or ground.frame.right_open)
