from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.price import share, to_minor_units
from service.price.rounding import percent, text


@pytest.mark.parametrize(
    ("exact", "rounded"),
    [("0.5", 1), ("0.49", 0), ("1.5", 2), ("2.5", 3), ("-0.5", -1), ("-2.5", -3), ("86547.00", 86_547), ("25752.72", 25_753)],
)
def test_half_a_penny_goes_up_away_from_nought(exact: str, rounded: int) -> None:
    """`knowledge/labour.md`, section 6: half up; not to even."""
    assert rounded == to_minor_units(Decimal(exact))


@pytest.mark.parametrize(
    ("amount", "ratio", "expected"),
    [
        (208_358, 0.03, 6_251),
        (214_609, 0.12, 25_753),
        (108_094, 0.015, 1_621),
        (416_888, 0.2, 83_378),
        (235, 0.1, 24),
        (-235, 0.1, -24),
    ],
)
def test_shares_of_the_worked_build_ups(amount: int, ratio: float, expected: int) -> None:
    """`knowledge/worked-examples.md`, "Price A": risk, overhead, tool wear, VAT. 23.5 goes up."""
    assert expected == share(amount, ratio)


@given(st.integers(-(10**9), 10**9), st.integers(0, 1000))
def test_a_share_is_never_off_by_more_than_half(amount: int, thousandths: int) -> None:
    assert abs(share(amount, thousandths / 1000) - Decimal(amount * thousandths) / 1000) <= Decimal("0.5")


@pytest.mark.parametrize(("amount", "written"), [(0, "0.00"), (5, "0.05"), (123_456, "1234.56"), (-705, "-7.05")])
def test_amounts_in_workings(amount: int, written: str) -> None:
    assert written == text(amount)


@pytest.mark.parametrize(
    ("ratio", "written"),
    [(0.2, "20 percent"), (0.015, "1.5 percent"), (0.3333, "33.33 percent"), (0.0, "0 percent"), (1.0, "100 percent")],
)
def test_shares_in_workings(ratio: float, written: str) -> None:
    assert written == percent(ratio)
