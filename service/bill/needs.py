"""What is needed of one thing, before waste and packs, with the rule that the number comes from."""

from __future__ import annotations

import msgspec

from service import hardware
from service.bill.bill import Counts, LineGroup, Measures
from service.bill.market import Market
from service.brief import Job
from service.catalogue import Material
from service.checks import Lift
from service.hardware import Hardware


class Need(msgspec.Struct, frozen=True, kw_only=True):
    """One thing needed. `per_pack` is how much of `need` one pack gives."""

    material: Material | None
    wanted: str  # what it is for, where nothing in the catalogue does it
    need: float
    need_unit: str
    per_pack: float
    per_pack_unit: str  # as `need_unit`
    rule: str
    group: LineGroup = LineGroup.MATERIAL
    charged_ratio: float = 1.0


class Facts(msgspec.Struct, frozen=True, kw_only=True):
    """What the needs are read from."""

    job: Job
    market: Market
    counts: Counts
    measures: Measures
    lifts: tuple[Lift, ...]
    hardware: Hardware  # what the checks proved is what is bought


def pieces(material: Material | None, wanted: str, count: int, rule: str) -> Need:
    """So many pieces of a thing sold by the piece or the box."""
    per_pack = float(material.pack_count if material else 1)
    return _need(material, wanted, float(count), rule=rule, unit="pieces", per_pack=per_pack)


def packs(material: Material | None, wanted: str, count: int, rule: str) -> Need:
    """So many whole packs."""
    return _need(material, wanted, float(count), rule=rule, unit="packs", per_pack=1.0)


def spread(facts: Facts, use: str, need: float, *, unit: str, rule: str) -> Need:
    """A length, area or volume of what the shop uses for something; one pack goes so far."""
    material = hardware.by_use(use, facts.market.catalogue)
    per_pack = (material.coverage if material else None) or 1.0
    return _need(material, use.replace("_", " "), need, rule=rule, unit=unit, per_pack=per_pack)


def litres(facts: Facts, use: str, need: float, rule: str) -> Need:
    """Paint of a use."""
    material = hardware.by_use(use, facts.market.catalogue)
    per_pack = (material.pack_content if material else None) or 1.0
    return _need(material, use.replace("_", " "), need, rule=rule, unit="litre", per_pack=per_pack)


def _need(material: Material | None, wanted: str, need: float, *, rule: str, unit: str, per_pack: float) -> Need:
    return Need(
        material=material, wanted=wanted, need=need, need_unit=unit, per_pack=per_pack, per_pack_unit=unit, rule=rule
    )  # fmt: skip
