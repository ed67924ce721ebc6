"""The kinds of rows that a shop's catalogue is made of: the struct of each, and what names one row."""

from __future__ import annotations

from enum import StrEnum
from typing import Final

import msgspec

from service.catalogue.materials import FixingLoad, Material
from service.catalogue.models import Appliance, Bracket, Screen
from service.catalogue.rates import LabourRate, PriceStep, Trade

type Row = Material | Appliance | Screen | Bracket | FixingLoad | LabourRate | Trade | PriceStep


class RowKind(StrEnum):
    """One file, one list of a draft."""

    PRICES = "prices"
    MATERIALS = "materials"
    APPLIANCES = "appliances"
    SCREENS = "screens"
    BRACKETS = "brackets"
    FIXING_LOADS = "fixing_loads"
    LABOUR_RATES = "labour_rates"
    TRADES = "trades"


class KindForm(msgspec.Struct, frozen=True, kw_only=True):
    """How the rows of a kind look."""

    struct: type[Row]
    keys: tuple[str, ...]  # of two rows with equal values here one would hide the other
    left_out: tuple[str, ...] = ()  # fields that a file does not have: the book says them


FORMS: Final[dict[RowKind, KindForm]] = {
    RowKind.PRICES: KindForm(struct=PriceStep, keys=("code", "currency", "from_count"), left_out=("valid_from",)),
    RowKind.MATERIALS: KindForm(struct=Material, keys=("code",)),
    RowKind.APPLIANCES: KindForm(struct=Appliance, keys=("model",)),
    RowKind.SCREENS: KindForm(struct=Screen, keys=("model",)),
    RowKind.BRACKETS: KindForm(struct=Bracket, keys=("model",)),
    RowKind.FIXING_LOADS: KindForm(struct=FixingLoad, keys=("code", "wall", "units", "embedment_mm")),
    RowKind.LABOUR_RATES: KindForm(struct=LabourRate, keys=("task", "term", "input", "trade")),
    RowKind.TRADES: KindForm(struct=Trade, keys=("trade",)),
}


def key_of(kind: RowKind, row: Row) -> tuple[str, ...]:
    """What one row is for, as text; what is not stated is empty."""
    values = (getattr(row, name) for name in FORMS[kind].keys)
    return tuple("" if value is None else str(value).removesuffix(".0") for value in values)
