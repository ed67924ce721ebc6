from __future__ import annotations

import msgspec
import pytest

from service.catalogue import Catalogue, PriceStep, demo_catalogue, price_step

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


def with_price(**changes: object) -> Catalogue:
    step = PriceStep(
        code="TM-1007V", amount_minor=125, currency="GBP", from_count=1, supplier="a", lead_days=1, valid_from="2026-01-01"
    )
    return msgspec.structs.replace(DEMO, prices={"TM-1007V": (msgspec.structs.replace(step, **changes),)})


@pytest.mark.parametrize(
    ("per", "amount_minor"),
    [("pack", 125), ("metre", 300), ("square_metre", 19)],
)
def test_a_price_by_measure_is_that_of_a_pack(per: str, amount_minor: int) -> None:
    """By hand: a bar of 2400 x 63; 1.25 x 2.4 m = 3.00; 1.25 x 2.4 x 0.063 m2 = 0.189."""
    step = price_step(with_price(per=per), "TM-1007V", "2026-12-01")

    assert step is not None
    assert (amount_minor, "pack") == (step.amount_minor, step.per)


def test_a_pack_of_several_pieces_is_as_long_as_all_of_them() -> None:
    material = msgspec.structs.replace(DEMO.materials["TM-1007V"], pack_count=10)
    book = msgspec.structs.replace(with_price(per="metre"), materials={"TM-1007V": material})

    assert 3000 == getattr(price_step(book, "TM-1007V", "2026-12-01"), "amount_minor", None)


def test_a_price_by_measure_of_what_has_none_is_no_price() -> None:
    material = msgspec.structs.replace(DEMO.materials["TM-1007V"], length_mm=None)
    book = msgspec.structs.replace(with_price(per="metre"), materials={"TM-1007V": material})

    assert None is price_step(book, "TM-1007V", "2026-12-01")


def test_prices_of_another_currency_are_not_taken() -> None:
    assert None is price_step(with_price(currency="EUR"), "TM-1007V", "2026-12-01")
