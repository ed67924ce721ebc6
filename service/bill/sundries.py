"""Sockets and plates; what is used up on site; what is hired and carted away (`knowledge/materials.md`, section 2)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import msgspec

from service import hardware
from service.bill.bill import LineGroup
from service.bill.counting import free_area_mm2
from service.bill.needs import packs, pieces
from service.brief import supply_of
from service.checks import lifter_days
from service.survey.services import SupplyWanted
from service.survey.terms import Scope

if TYPE_CHECKING:
    from service.bill.needs import Facts, Need


def electrical_needs(facts: Facts) -> tuple[Need, ...]:
    """Sockets, boxes and plates, and grilles; the electrician brings cable."""
    catalogue = facts.market.catalogue
    recess = facts.measures.recess_perimeter_m > 0
    fixed = supply_of(facts.job) is not SupplyWanted.PLUG_IN_REACH
    wanted = [("double_socket", "recess"), ("double_box", "recess"), ("brush_plate", "recess")] if recess else []
    wanted += [("fused_connection", "fire"), ("single_box", "fire")] if fixed else []
    needs = [pieces(hardware.by_use(use, catalogue), use.replace("_", " "), 1, rule) for use, rule in wanted]
    if facts.counts.grilles_count:
        inlet_mm2, free_mm2 = facts.job.appliance.air_inlet_area_mm2 or 0.0, free_area_mm2(facts.market)
        rule = f"air inlet {inlet_mm2:g} mm2, {free_mm2:g} mm2 free in each"
        needs.append(pieces(hardware.by_use("grille", catalogue), "air grille", facts.counts.grilles_count, rule))
    return tuple(needs)


def site_needs(facts: Facts, waste_kg: float, gypsum_kg: float) -> tuple[Need, ...]:
    """Dust sheets, abrasive, masks, sacks, disposal and hire: only where the shop works on site."""
    if facts.market.scope is not Scope.SUPPLY_AND_FIT:
        return ()
    return (*_protection(facts, waste_kg), _disposal(facts, waste_kg, gypsum_kg), *_hire(facts))


def _protection(facts: Facts, waste_kg: float) -> list[Need]:
    take, catalogue = facts.market.rules.take_off, facts.market.catalogue
    sheets = take.dust_sheet_count + int(facts.job.parking_distance_mm / 1000 // take.sheet_route_m)
    job_packs = 1 if facts.measures.paint_m2 < take.small_job_m2 else 2
    of_job = f"1 pack under {take.small_job_m2:g} m2 of paint, else 2"
    sacks = math.ceil(waste_kg / take.waste_sack_kg)
    route = f"{take.dust_sheet_count}, and 1 for every {take.sheet_route_m:g} m of route; used again, so charged in part"
    sheet = pieces(hardware.by_use("dust_sheet", catalogue), "dust sheets", sheets, route)
    return [
        msgspec.structs.replace(sheet, charged_ratio=catalogue.account.dust_sheet_charge_ratio),
        packs(hardware.by_use("abrasive", catalogue), "abrasive", job_packs, of_job),
        packs(hardware.by_use("dust_mask", catalogue), "dust masks", job_packs, of_job),
        pieces(
            hardware.by_use("waste_sack", catalogue), "waste sacks", sacks, f"one for every {take.waste_sack_kg:g} kg of waste"
        ),
    ]


def _disposal(facts: Facts, waste_kg: float, gypsum_kg: float) -> Need:
    """Loads, at least one; gypsum goes apart (landfill rules for gypsum, from memory)."""
    take = facts.market.rules.take_off
    parts = (("mixed", waste_kg - gypsum_kg), ("gypsum, kept apart", gypsum_kg))
    loads = {name: max(math.ceil(kg / take.waste_kg_m3 / take.load_m3), 1) for name, kg in parts if kg > 0}
    rule = f"{waste_kg:.0f} kg of waste: " + " + ".join(f"{name} {count}" for name, count in loads.items())
    need = packs(hardware.by_use("disposal_load", facts.market.catalogue), "disposal load", sum(loads.values()), rule)
    return msgspec.structs.replace(need, group=LineGroup.DISPOSAL)


def _hire(facts: Facts) -> list[Need]:
    days = lifter_days(facts.lifts)
    if not days:
        return []
    what = ", ".join(lift.what for lift in facts.lifts if lift.help == "lifter")
    need = packs(
        hardware.by_use("lifter", facts.market.catalogue), "lifter, per day", days, f"a day each time it is used: {what}"
    )
    return [msgspec.structs.replace(need, group=LineGroup.HIRE)]
