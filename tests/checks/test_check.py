from __future__ import annotations

import math

import msgspec
import pytest

from service.checks.check import Check, Quantity, Verdict
from service.rules import Source


def made(demand: float, resistance: float | None, *, unverified: str = "", binding: bool = True) -> Check:
    return Check(
        code="structure.trial", subject="U-T1", says="a trial",
        demand=Quantity(symbol="E_d", value=demand, unit="n"),
        resistance=None if resistance is None else Quantity(symbol="R_d", value=resistance, unit="n"),
        clause=Source(document="EN 1990", clause="6.4.2"), unverified=unverified, binding=binding,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("demand", "resistance", "options", "verdict", "utilisation"),
    [
        (90.0, 100.0, {}, Verdict.PASS, 0.9),
        (100.0, 100.0, {}, Verdict.PASS, 1.0),
        (100.00001, 100.0, {}, Verdict.FAIL, 1.01),  # rounded up: 1.00 on paper is a pass
        (100.1, 100.0, {"binding": False}, Verdict.ADVISE, 1.01),
        (90.0, 100.0, {"unverified": "withdrawal not declared"}, Verdict.PROVISIONAL, 0.9),
        (110.0, 100.0, {"unverified": "withdrawal not declared"}, Verdict.FAIL, 1.1),
        (90.0, None, {"unverified": "the wall is not known"}, Verdict.PROVISIONAL, None),
        (90.0, 0.0, {}, Verdict.FAIL, None),
        (0.0, 0.0, {}, Verdict.PASS, 0.0),
        (-5.0, 10.0, {}, Verdict.PASS, 0.0),
    ],
)
def test_verdict_and_utilisation(
    demand: float, resistance: float | None, options: dict[str, object], verdict: Verdict, utilisation: float | None
) -> None:
    check = made(demand, resistance, **options)  # type: ignore[arg-type]  # options by name

    assert (verdict, utilisation) == (check.verdict, check.utilisation_ratio)


@pytest.mark.parametrize(("demand", "resistance"), [(math.nan, 1.0), (1.0, math.inf), (1.0, None)])
def test_what_could_pass_by_mistake_is_refused(demand: float, resistance: float | None) -> None:
    with pytest.raises(ValueError, match=r"structure\.trial"):
        made(demand, resistance)


def test_other_units_are_refused() -> None:
    with pytest.raises(ValueError, match="of one unit"):
        msgspec.structs.replace(made(1.0, 2.0), resistance=Quantity(symbol="R_d", value=2.0, unit="kn"))
