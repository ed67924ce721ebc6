"""A catalogue revision as one immutable value: everything of the shop that a quote depends on."""

from __future__ import annotations

import msgspec

from service.catalogue.materials import FixingLoad, Material
from service.catalogue.models import Appliance, Bracket, Screen
from service.catalogue.rates import Account, LabourRate, PriceStep, Trade


class Catalogue(msgspec.Struct, frozen=True, kw_only=True):
    """Materials, models, prices, rates and account settings of one revision. Maps are keyed by code or model."""

    revision: str  # names all that follows; two catalogues of one revision are equal
    price_book: str
    account: Account
    materials: dict[str, Material]
    appliances: dict[str, Appliance]
    screens: dict[str, Screen]
    brackets: dict[str, Bracket]
    fixing_loads: tuple[FixingLoad, ...]
    labour_rates: tuple[LabourRate, ...]
    trades: dict[str, Trade]
    prices: dict[str, tuple[PriceStep, ...]]  # steps of a code, `from_count` rising
