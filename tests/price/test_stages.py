from __future__ import annotations

import msgspec
import pytest

from service.price.stages import stages_of, valid_until
from service.survey.terms import Scope
from tests.price.purse_facts import CATALOGUE, purse_of
from tests.sold_examples import made


def amounts(total: int, **deal: float) -> tuple[int, ...]:
    price = made("A").price
    return tuple(stage.amount_minor for stage in stages_of(total, price.sale, price.bill_lines, purse_of("A", CATALOGUE, **deal)))


@pytest.mark.parametrize(
    ("total", "expected"),
    [
        (500_266, (151_260, 200_106, 148_900)),  # price A: fire and boards with tax (1144.00 + 116.50) x 1.2
        (1_000_000, (250_000, 400_000, 350_000)),  # a quarter is more
        (200_000, (100_000, 80_000, 20_000)),  # at most half
        (0, (0, 0, 0)),
        (1, (1, 0, 0)),
    ],
)
def test_deposit_and_stages(total: int, expected: tuple[int, int, int]) -> None:
    """`knowledge/labour.md`, section 6: the larger of 25 percent and fire and boards with VAT, at most 50; then 40."""
    assert expected == amounts(total)
    assert total == sum(expected)


def test_the_terms_set_the_share() -> None:
    assert 500_000 == amounts(1_000_000, deposit_ratio=0.5)[0]


@pytest.mark.parametrize(
    ("date", "days", "last"),
    [("2026-12-01", 30, "2026-12-31"), ("2028-02-15", 14, "2028-02-29"), ("2026-12-31", 1, "2027-01-01")],
)
def test_a_quote_ends_on_a_day(date: str, days: int, last: str) -> None:
    """`knowledge/labour.md`, section 8: expiry is a date in the document."""
    assert last == valid_until(purse_of("A", date=date, validity_days=days).deal)


def test_what_is_not_fitted_is_paid_for_when_it_comes() -> None:
    price = made("A").price
    stages = stages_of(500_266, price.sale, price.bill_lines, purse_of("A", scope=Scope.KIT))

    assert [("deposit", 151_260), ("delivery", 349_006)] == [(stage.name, stage.amount_minor) for stage in stages]


def test_deposit_and_frame_never_exceed_the_total() -> None:
    """`knowledge/labour.md`, section 6: 40 percent at frame complete, less if deposit and 40 percent exceed the total."""
    account = msgspec.structs.replace(CATALOGUE.account, stage_ratio=0.8)
    purse = purse_of("A", msgspec.structs.replace(CATALOGUE, account=account), deposit_ratio=0.5)
    price = made("A").price
    stages = stages_of(1_000_000, price.sale, price.bill_lines, purse)

    assert [500_000, 500_000, 0] == [stage.amount_minor for stage in stages]
