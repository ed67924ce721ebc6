"""The form of a check: what is asked, what there is, the clause, the verdict, and what would pass.

One direction for all: a check passes where demand <= resistance (a clearance asks for the least distance and gives the
distance there is). Nothing is stored twice; the verdict comes from the unrounded numbers.
"""

from __future__ import annotations

import math
from enum import StrEnum

import msgspec

from service.rules import Source


class Verdict(StrEnum):
    """What a check says."""

    PASS = "pass"  # noqa: S105 - a verdict, no password
    ADVISE = "advise"  # a check that does not bind is not met
    PROVISIONAL = "provisional"  # turns on something that is not declared, not known or not verified
    FAIL = "fail"


class Quantity(msgspec.Struct, frozen=True, kw_only=True):
    """A number with its symbol and unit, such as M_d 534.4 N m."""

    symbol: str
    value: float
    unit: str  # mm, n, n_mm, mpa, kg, ratio, w, k, ...: a suffix of `service.units` without its line


class Check(msgspec.Struct, frozen=True, kw_only=True):
    """One result. `resistance` None: not known, which `unverified` explains; the verdict is provisional then."""

    code: str  # "structure.trimmer_bending": family and name, stable on the wire
    subject: str  # the member's mark, or what the check is about
    says: str  # the result as a sentence
    demand: Quantity
    resistance: Quantity | None
    clause: Source
    inputs: tuple[Quantity, ...] = ()
    binding: bool = True  # False: it only advises
    unverified: str = ""  # what is assumed or unknown: never a pass while it stands
    remedy: str = ""  # what to change, with the number that would pass

    def __post_init__(self) -> None:
        """Refuse what could pass by mistake: other units, numbers that are none, an unknown without its reason."""
        quantities = (self.demand, *((self.resistance,) if self.resistance else ()))
        if any(not math.isfinite(one.value) or one.unit != self.demand.unit for one in quantities):
            message = f"{self.code}: demand and resistance must be finite and of one unit"
            raise ValueError(message)
        if self.resistance is None and not self.unverified:
            message = f"{self.code}: an unknown resistance needs its reason"
            raise ValueError(message)

    @property
    def holds(self) -> bool:
        """Whether the demand is met; an unknown resistance meets nothing."""
        return self.resistance is not None and self.demand.value <= self.resistance.value

    @property
    def verdict(self) -> Verdict:
        """Pass, advise, provisional or fail. What is assumed and not met fails; what is unknown is provisional."""
        if self.resistance is None or (self.holds and self.unverified):
            return Verdict.PROVISIONAL
        if self.holds:
            return Verdict.PASS
        return Verdict.FAIL if self.binding else Verdict.ADVISE

    @property
    def utilisation_ratio(self) -> float | None:
        """Demand over resistance, rounded up to 0.01, so that 1.00 on paper is a pass; None where nothing resists."""
        if self.resistance is None or self.resistance.value <= 0:
            return 0.0 if self.resistance is not None and self.demand.value <= 0 else None
        return math.ceil(round(max(self.demand.value, 0.0) / self.resistance.value * 100, 9)) / 100


class Skipped(msgspec.Struct, frozen=True, kw_only=True):
    """A check that does not apply, and why."""

    code: str
    why: str


type Result = Check | Skipped
