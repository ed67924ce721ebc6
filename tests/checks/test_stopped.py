from __future__ import annotations

import msgspec
import pytest

from service.checks.check import Quantity
from service.checks.report import Report
from service.checks.stopped import stopped_by
from service.rules import load_rules
from tests.checks.test_check import made

RULES = load_rules()


@pytest.mark.parametrize(
    ("code", "demand", "resistance", "expected"),
    [
        ("structure.hung_mass", 200.1, 200.0, ["wall"]),
        ("structure.hung_mass", 200.0, 200.0, []),
        ("structure.arm_screen_mass", 60.5, 60.0, ["wall"]),
        ("structure.hung_paths", 1.0, 0.0, ["wall"]),
        ("structure.facing_mass", 45.1, 20.0, ["facing"]),
        ("structure.facing_mass", 45.0, 20.0, []),  # over 20: an engineer, no refusal
        ("structure.trimmer_sag", 2.0, 1.0, []),  # fails, and stays a failed check
    ],
)
def test_what_stops_a_design(code: str, demand: float, resistance: float, expected: list[str]) -> None:
    """`knowledge/structure.md`, section 6: 200 kg hung, 60 kg on an arm, 45 kg/m2 of facing."""
    check = msgspec.structs.replace(made(demand, resistance), code=code, remedy="a closed end")
    found = stopped_by(Report(checks=(check,)), RULES)

    assert expected == [unmet.code for unmet in found]
    assert all(unmet.offer == "a closed end" and f"{demand:.4g} asked" in unmet.says for unmet in found)


def test_what_is_not_known_stops_nothing() -> None:
    check = msgspec.structs.replace(made(1.0, None, unverified="the wall is not known"), code="structure.hung_paths")

    assert () == stopped_by(Report(checks=(check,)), RULES)
    assert Quantity(symbol="E_d", value=1.0, unit="n") == check.demand
