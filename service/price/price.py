"""The price as a value: every step of the build-up, the lines that a customer sees, tax, deposit and stages.

All money in integer minor units of one currency.
"""

from __future__ import annotations

from enum import StrEnum

import msgspec


class StepKind(StrEnum):
    """Steps of the build-up in their order (`knowledge/labour.md`, section 6)."""

    MATERIALS = "materials"
    HANDLING = "handling"
    LABOUR = "labour"
    SUBCONTRACT = "subcontract"
    TRAVEL = "travel"
    DELIVERY = "delivery"
    PARKING = "parking"
    DISPOSAL = "disposal"
    HIRE = "hire"
    TOOL_WEAR = "tool_wear"
    DIRECT_COST = "direct_cost"
    RISK = "risk"
    OVERHEAD = "overhead"
    COST = "cost"


class Step(msgspec.Struct, frozen=True, kw_only=True):
    """One step of the shop's own reckoning; never in the customer's version."""

    kind: StepKind
    name: str
    working: str
    amount_minor: int
    sum: bool = False  # True: a sum of the steps above, not a cost of its own


class SaleKind(StrEnum):
    """What a line of the sale is."""

    WORKS = "works"
    SUPPLY = "supply"
    PROVISIONAL_SUM = "provisional_sum"
    DISCOUNT = "discount"
    ROUNDING = "rounding"


class SaleLine(msgspec.Struct, frozen=True, kw_only=True):
    """One line that the customer sees, without tax."""

    kind: SaleKind
    code: str
    name: str
    working: str
    net_minor: int
    tax_ratio: float
    tax_minor: int  # of this line alone; with tax per invoice the sum of these may differ from the tax


class Stage(msgspec.Struct, frozen=True, kw_only=True):
    """One payment."""

    name: str
    amount_minor: int


class PricedLine(msgspec.Struct, frozen=True, kw_only=True):
    """Price of one line of the bill."""

    code: str
    description: str
    packs_count: int
    each_minor: int
    charged_minor: int
    supplier: str
    lead_days: int


class Price(msgspec.Struct, frozen=True, kw_only=True):
    """The whole price. `sum(sale lines) = net`, `net + tax = total`, `sum(stages) = total`, each to the minor unit."""

    currency: str
    steps: tuple[Step, ...]
    bill_lines: tuple[PricedLine, ...]
    sale: tuple[SaleLine, ...]
    materials_minor: int
    cost_minor: int
    net_minor: int
    tax_minor: int
    total_minor: int
    tax_note: str  # how tax was rounded, or why there is none
    stages: tuple[Stage, ...]
    valid_until: str  # RFC 3339 full-date
    unpriced: tuple[str, ...]  # things and work without a price: the total is not complete
