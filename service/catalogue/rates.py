"""Labour rates and trades, prices, and the settings of an account. Money in integer minor units."""

from __future__ import annotations

import msgspec


class LabourRate(msgspec.Struct, frozen=True, kw_only=True):
    """One term of a task: hours for one unit of its input (`knowledge/labour.md`, section 1)."""

    task: str
    term: str
    input: str
    rate_hours: float
    trade: str
    crew_count: int
    note: str = ""


class Trade(msgspec.Struct, frozen=True, kw_only=True):
    """What an hour of a trade is charged at."""

    trade: str
    charge_per_hour_minor: int
    currency: str
    least_hours_per_visit_hours: float | None = None
    standing: str = "stated"


class PriceStep(msgspec.Struct, frozen=True, kw_only=True):
    """Price from a number of packs on: of one pack, or of a metre or square metre of what is in it."""

    code: str
    amount_minor: int
    currency: str
    from_count: int
    supplier: str
    lead_days: int
    per: str = "pack"  # pack, metre, square_metre
    valid_from: str  # RFC 3339 full-date


class Account(msgspec.Struct, frozen=True, kw_only=True):
    """Settings of a shop, frozen with the catalogue revision. Demo values: `knowledge/labour.md`, section 6."""

    account: str
    currency: str
    handling_ratio: float
    subcontract_handling_ratio: float
    overhead_ratio: float
    margin_ratio: float
    risk_measured_ratio: float
    risk_stated_ratio: float
    risk_assumed_ratio: float
    tool_wear_ratio: float
    dust_sheet_charge_ratio: float
    electrician_certificate_minor: int
    travel_per_day_minor: int
    delivery_minor: int
    delivery_free_from_minor: int
    delivery_suppliers: tuple[str, ...]
    tax_standard_ratio: float
    tax_reduced_ratio: float
    tax_rounding: str  # per_line or per_invoice
    packs_charged: str  # whole or pro_rata
    validity_days: int
    deposit_ratio: float
    deposit_greatest_ratio: float
    stage_ratio: float
    crew_count: int
    standing: str = "stated"
