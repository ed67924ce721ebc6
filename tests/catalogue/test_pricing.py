from __future__ import annotations

import msgspec
import pytest

from service.catalogue import PriceStep, demo_catalogue, price_step

DEMO = demo_catalogue()


@pytest.mark.parametrize(("packs_count", "amount_minor"), [(0, 2_390), (1, 2_390), (9, 2_390), (10, 2_271), (50, 2_271)])
def test_the_step_of_a_number_of_packs(packs_count: int, amount_minor: int) -> None:
    """Demo price book: BD-2015R 23.90, from 10 on 22.71."""
    step = price_step(DEMO, "BD-2015R", "2026-12-01", packs_count)

    assert step is not None
    assert amount_minor == step.amount_minor


@pytest.mark.parametrize(("day", "held"), [("2026-08-31", False), ("2026-09-01", True), ("2027-01-01", True)])
def test_a_price_holds_from_its_day(day: str, held: bool) -> None:
    assert held == (price_step(DEMO, "BD-2015R", day) is not None)


def test_what_the_book_does_not_hold_has_no_price() -> None:
    assert None is price_step(DEMO, "XX-0000A", "2026-12-01")


def test_of_two_steps_that_hold_the_later_one_is_taken() -> None:
    old = PriceStep(code="T", amount_minor=100, currency="GBP", from_count=1, supplier="a", lead_days=1, valid_from="2026-01-01")
    new = msgspec.structs.replace(old, amount_minor=120, valid_from="2026-06-01")
    book = msgspec.structs.replace(DEMO, prices={"T": (old, new)})
    found = [price_step(book, "T", day) for day in ("2026-05-31", "2026-06-01")]

    assert [old, new] == found
