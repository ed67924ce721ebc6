"""Checks and strengthening on the wire."""

from __future__ import annotations

import msgspec

from service.checks import Content, Quantity, Strengthened, Verdict
from service.rules import Source


class CheckAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """One check: it passes where the demand does not exceed the resistance. Codes are stable; clients must tolerate new ones."""

    code: str
    subject: str  # mark of the member, or what the check is about
    says: str
    verdict: Verdict
    binding: bool  # false: it only advises
    demand: Quantity
    resistance: Quantity | None  # null: not known, see `unverified`
    utilisation_ratio: float | None  # demand over resistance, rounded up to 0.01; null: nothing resists, or not known
    clause: Source
    inputs: tuple[Quantity, ...]  # what is needed to do it again by hand
    unverified: str  # what is assumed or not known; empty: nothing
    remedy: str  # what to change, with the number that would pass


class Strengthening(msgspec.Struct, frozen=True, kw_only=True):
    """What the design was laid out with, the steps that the checks asked for, in order, and what it is settled with."""

    laid_out: Content
    steps: tuple[Strengthened, ...]
    settled: Content
