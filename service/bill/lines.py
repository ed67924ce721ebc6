"""From needs and plans to lines of the bill: one a code, packs rounded once, over the whole job."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import msgspec

from service.bill.bill import BillLine, LineGroup

if TYPE_CHECKING:
    from service.bill.needs import Need
    from service.catalogue import Catalogue

EXACT = 1e-9  # of a pack: float noise of a sum of lengths, far below any real remainder


def merge_needs(needs: tuple[Need, ...]) -> tuple[Need, ...]:
    """One need a code: packs are rounded once, over the whole job."""
    merged: dict[str, Need] = {}
    for need in needs:
        key = need.material.code if need.material else f"? {need.wanted}"
        known = merged.get(key)
        merged[key] = need if known is None else _both(known, need)
    return tuple(merged.values())


def pack_count(need: float, per_pack: float) -> int:
    """Whole packs that hold a need; noise of a float sum opens no further pack."""
    return max(math.ceil(need / per_pack - EXACT), 0)


def line_of(need: Need) -> BillLine:
    """The line that covers a need; without a material it names what is wanted, for a person to choose."""
    row = need.material
    waste = row.waste_ratio if row else 0.0
    return BillLine(
        code=row.code if row else "",
        description=row.description if row else need.wanted,
        group=need.group,
        unit=row.unit if row else need.need_unit,
        need=round(need.need, 3),
        need_unit=need.need_unit,
        waste_ratio=waste,
        packs_count=pack_count(need.need * (1 + waste), need.per_pack),
        used_packs_ratio=round(need.need * (1 + waste) / need.per_pack, 4),
        charged_ratio=need.charged_ratio,
        rule=need.rule,
    )


def plan_line(code: str, wanted: str, packs_count: int, *, rule: str, catalogue: Catalogue) -> BillLine:
    """The line of so many lengths or sheets of a cutting plan; `wanted` says what is cut where the catalogue has no code."""
    row = catalogue.materials.get(code)
    return BillLine(
        code=row.code if row else "",
        description=row.description if row else wanted,
        group=LineGroup.MATERIAL,
        unit=row.unit if row else "",
        need=None,
        need_unit="",
        waste_ratio=0.0,
        packs_count=packs_count,
        used_packs_ratio=float(packs_count),
        charged_ratio=1.0,
        rule=rule,
    )


def _both(known: Need, need: Need) -> Need:
    return msgspec.structs.replace(known, need=known.need + need.need, rule=f"{known.rule}; {need.rule}")
