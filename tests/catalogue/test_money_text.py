from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.catalogue import money, to_minor
from service.units import Money


@pytest.mark.parametrize(("minor", "written"), [(0, "0.00"), (7, "0.07"), (500_266, "5002.66"), (-705, "-7.05"), (-5, "-0.05")])
def test_minor_units_become_a_decimal(minor: int, written: str) -> None:
    assert Money(amount=written, currency="GBP") == money(minor, "GBP")


@given(st.integers(-(10**12), 10**12))
def test_no_penny_is_lost(minor: int) -> None:
    assert minor == to_minor(money(minor, "GBP").amount, "GBP")
