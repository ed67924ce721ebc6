from __future__ import annotations

import pytest

from service.checks.amounts import (
    HOUSE,
    angle,
    count,
    current,
    eurocode_5,
    force,
    house,
    length,
    mass,
    moment,
    newton_metres,
    power,
    ratio,
    stress,
)


def test_quantities_name_units_without_a_line() -> None:
    made = [one("x", 2.0) for one in (force, moment, length, stress, ratio, count, mass, power, current, angle)]

    assert ["n", "n_mm", "mm", "mpa", "ratio", "count", "kg", "w", "a", "deg"] == [one.unit for one in made]
    assert {("x", 2.0)} == {(one.symbol, one.value) for one in made}


def test_clauses() -> None:
    assert ("EN 1995-1-1", "2004 + A1 + A2", "6.1.6") == tuple(
        getattr(eurocode_5("6.1.6"), name) for name in ("document", "edition", "clause")
    )
    assert HOUSE.document == house("why").document
    assert "why" == house("why").clause


@pytest.mark.parametrize(("value_n_mm", "expected"), [(534_400.0, "534.4 N m"), (49.9, "0.0 N m")])
def test_moments_are_read_in_newton_metres(value_n_mm: float, expected: str) -> None:
    assert expected == newton_metres(value_n_mm)
