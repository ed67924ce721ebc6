from __future__ import annotations

from typing import Any

import pytest

from tests.checks.grounds import rules_without_ladder
from tests.checks.row_cases import A, B, cases, codes, found_in, late_facts, on, row, rows


@pytest.mark.parametrize(("code", "fires", "quiet"), cases("W"), ids=lambda value: value if isinstance(value, str) else "")
def test_each_row_fires_and_keeps_quiet(code: str, fires: dict[str, Any], quiet: dict[str, Any]) -> None:
    """`knowledge/cautions.md`: triggers of the rows W."""
    assert code in codes(fires)
    assert code not in codes(quiet)


def test_every_heavy_thing_is_named_with_what_it_takes() -> None:
    """`knowledge/worked-examples.md`, "lifting" of example A: frame 37.9 kg and fire 41 kg: lifter."""
    says = [one.says for one in rows(A, rules_without_ladder()) if one.code == "W01"]

    assert [
        "The fire weighs 41 kg; at waist height two people take about 27.3 and three 30.8. It wants a lifter.",
        "The upper frame weighs 37.9 kg; at shoulder height two people take about 17.6 and three 19.8. It wants a lifter.",
    ] == says


def test_boards_for_two_are_named() -> None:
    """Example B: "face board 1.81 m2 > 1.5: cladding by two"."""
    assert "Boards that two people carry and fix: P-FU1." in [one.says for one in rows(B)]


def test_a_heat_alarm_needs_no_cover() -> None:
    assert "W11" not in codes(on(A, survey__services__alarms=[{"kind": "heat", "x_mm": 100, "y_mm": 3_000}]))


def test_what_comes_after_the_first_day() -> None:
    """W09: ten days from 1 December; who begins on the day that is named waits for nothing."""
    assert (
        "Ordered today, not there on the first day: the fire (10 days). Begin 1 days later."
        == found_in(late_facts("2026-12-10"))["W09"]
    )
    assert all("W09" not in found_in(late_facts(day)) for day in ("2026-12-11", None))


def test_what_may_not_be_on_site() -> None:
    """W08: the customer's fire; a screen that is not bought."""
    waits = on(A, survey__brief__screen={"kind": "size_class", "diagonal_in": 43, "bought": False})
    both = on(waits, terms__appliance_supplied_by="customer")

    assert "The screen may not" in row(waits, "W08").says
    assert "The fire and screen may not" in row(both, "W08").says
    assert "W08" not in codes(on(A, survey__brief__screen={"kind": "size_class", "diagonal_in": 43}))
