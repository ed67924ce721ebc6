"""The price on the wire."""

from __future__ import annotations

import msgspec

from service.price import SaleKind, StepKind
from service.units import Money


class Answer(msgspec.Struct, frozen=True, kw_only=True):
    """What every part of a price is: immutable, by keyword."""


class StepAnswer(Answer, frozen=True, kw_only=True):
    """One step of the shop's reckoning."""

    kind: StepKind
    name: str
    working: str
    amount: Money
    sum: bool


class SaleAnswer(Answer, frozen=True, kw_only=True):
    """One line of the sale."""

    kind: SaleKind
    code: str
    name: str
    working: str
    net: Money
    tax_ratio: float
    tax: Money


class StageAnswer(Answer, frozen=True, kw_only=True):
    """One payment."""

    name: str
    amount: Money


class PriceBody(Answer, frozen=True, kw_only=True):
    """The price. Lines sum to net, net and tax to total, stages to total."""

    build_up: tuple[StepAnswer, ...]
    lines: tuple[SaleAnswer, ...]
    net: Money
    tax: Money
    total: Money
    tax_note: str
    stages: tuple[StageAnswer, ...]
    valid_until: str
    complete: bool  # false: something of the bill has no price, see `unpriced` of the bill
    unpriced: tuple[str, ...]  # provisional sums whose amount is still to be stated, by name; the total is without them
