"""Grounds for the tests of checks: any request laid out with what is given, and the hardware that its bill buys."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec

from service.bill import Market
from service.catalogue import demo_catalogue
from service.checks.ground import Ground
from service.frame import NOTHING_ADDED, lay_out
from service.hardware import choose_hardware
from service.rules import load_rules
from tests.examples_of import job_of

if TYPE_CHECKING:
    from service.frame import Additions
    from service.rules import RuleSet


def rules_without_ladder(rules: RuleSet | None = None) -> RuleSet:
    """The rules with the hung ladder of structure.md 5.13 switched off, as the worked examples are written."""
    on = rules or load_rules()
    return msgspec.structs.replace(on, members=msgspec.structs.replace(on.members, hung_ladder_count=0))


def ground_of(request: dict[str, Any], additions: Additions | None = None, rules: RuleSet | None = None) -> Ground:
    """What the checks read of a request, laid out with what strengthening adds; by the newest rules if none are given."""
    rules = rules or load_rules()
    job, added = job_of(request), additions or NOTHING_ADDED
    hardware = choose_hardware(job, Market(catalogue=demo_catalogue(), rules=rules), added)
    return Ground(job=job, frame=lay_out(job, rules, added), rules=rules, hardware=hardware)
