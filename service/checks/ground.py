"""What a check reads: the frame, the job, the numbers of the trade and the fixings that the bill will buy. Never a price."""

from __future__ import annotations

import msgspec

from service.brief import Job
from service.frame import Frame
from service.hardware import Hardware
from service.rules import RuleSet


class Ground(msgspec.Struct, frozen=True, kw_only=True):
    """What a check reads."""

    job: Job
    frame: Frame
    rules: RuleSet
    hardware: Hardware
