"""Facts of services, chimney and site, every default noted (`knowledge/survey.md`, sections 7 to 9)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.survey.fields import Answer
from service.survey.services import CableScan, Chimney, Flue, GasState, Services, SupplyWanted
from service.survey.site import Building, Country, RouteKind, Site, Stairs, Workspace
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.rules import DefaultRules, RuleSet
    from service.survey.survey import Survey

SERVICES, CHIMNEY, SITE = "/survey/services", "/survey/chimney", "/survey/site"


class SiteFacts(msgspec.Struct, frozen=True, kw_only=True):
    """What is known of services and the way in."""

    cables_scanned: bool
    storey_count: int
    parking_distance_mm: float
    longest_length_mm: float
    largest_board_length_tenth_mm: int
    largest_board_width_tenth_mm: int


def take_site(survey: Survey, rules: RuleSet, notes: Notes) -> SiteFacts:
    """Read services, chimney and site."""
    services, site, defaults = survey.services or Services(), survey.site or Site(), rules.defaults
    _take_services(services, survey.chimney or Chimney(), notes)
    scan = notes.take(
        f"{SERVICES}/cable_scan",
        services.cable_scan,
        CableScan.NOT_DONE,
        "a row of fixings within 150 mm of the ceiling does not count",
    )
    stairs = notes.take(f"{SITE}/stairs", site.stairs, Stairs.STRAIGHT, "winding stairs want shorter lengths")
    storey = _take_house(site, defaults, notes)
    board_mm = _largest_board_mm(site, stairs, defaults, notes)
    return SiteFacts(
        cables_scanned=scan is CableScan.DONE,
        storey_count=storey,
        parking_distance_mm=notes.suppose(
            f"{SITE}/parking_distance_mm",
            site.parking_distance_mm,
            defaults.parking_distance_mm,
            "0.1 h for every 10 m beyond 20 m",
        ),
        longest_length_mm=_longest_mm(site, stairs, defaults, notes),
        largest_board_length_tenth_mm=tenths(board_mm[0]),
        largest_board_width_tenth_mm=tenths(board_mm[1]),
    )


def _take_services(services: Services, chimney: Chimney, notes: Notes) -> None:
    sockets = "one double socket is expected inside the breast; moved or blanked by an electrician"
    notes.take(f"{SERVICES}/accessories", services.accessories, (), sockets)
    breaker = "without residual-current protection the electrician upgrades the circuit"
    notes.take(f"{SERVICES}/rcd", services.rcd, Answer.YES, breaker)
    circuit = "a new circuit is a provisional sum of the electrician"
    notes.take(f"{SERVICES}/supply_wanted", services.supply_wanted, SupplyWanted.FUSED_CONNECTION, circuit)
    old_flue = "an old flue is swept, capped and vented, or the work is refused"
    flue = notes.take(f"{CHIMNEY}/flue", chimney.flue, Flue.UNKNOWN, old_flue)
    gas = GasState.NONE if flue is Flue.NONE else GasState.UNKNOWN
    notes.take(f"{SERVICES}/gas", services.gas, gas, "gas is capped off by a registered engineer first")
    notes.take(f"{SERVICES}/air_vents", services.air_vents, (), "an air vent is never closed")
    notes.take(f"{SERVICES}/pipes", services.pipes, (), "no fixing within 50 mm of a pipe")


def _take_house(site: Site, defaults: DefaultRules, notes: Notes) -> int:
    """Note what is taken of the building; returns the storey."""
    notes.take(f"{SITE}/country", site.country, Country.GB, "electrical and building rules of England are taken")
    notes.take(f"{SITE}/building", site.building, Building.HOUSE, "a flat: carrying, lift, hours of work")
    if site.build_year is None:
        asbestos = "before 2000 a coating is presumed to hold asbestos until sampled"
        notes.take(f"{SITE}/build_year", None, "unknown", asbestos)
    notes.take(f"{SITE}/narrowest_door_mm", site.narrowest_door_mm, defaults.narrowest_door_mm, "cartons must pass")
    cutting = "without room to cut, dust extraction and cutting at the yard"
    notes.take(f"{SITE}/workspace", site.workspace, Workspace.OUTSIDE, cutting)
    notes.take(f"{SITE}/surveyed_on", site.surveyed_on, "not told", "measures older than 90 days are taken again")
    return notes.take(f"{SITE}/storey", site.storey, 0, "0.25 h for every flight of stairs")


def _longest_mm(site: Site, stairs: Stairs, defaults: DefaultRules, notes: Notes) -> float:
    upstairs_flat = site.building is Building.FLAT and (site.storey or 0) > 0
    longest_mm = defaults.longest_length_flat_mm if upstairs_flat else defaults.longest_length_house_mm
    if stairs is Stairs.WINDING:
        longest_mm = min(longest_mm, defaults.longest_length_winding_mm)
    return notes.take(f"{SITE}/longest_length_mm", site.longest_length_mm, longest_mm, "longer timber is not offered")


def _largest_board_mm(site: Site, stairs: Stairs, defaults: DefaultRules, notes: Notes) -> tuple[float, float]:
    """Greatest length and width of a board that passes; ripped at the yard where there is a lift or a winding stair."""
    narrow = stairs is Stairs.WINDING or any(part.kind is RouteKind.LIFT for part in site.route or ())
    width_mm = defaults.ripped_board_width_mm if narrow else defaults.largest_board_width_mm
    effect = "a larger piece of board is divided"
    return (
        notes.take(f"{SITE}/largest_board_length_mm", site.largest_board_length_mm, defaults.largest_board_length_mm, effect),
        notes.take(f"{SITE}/largest_board_width_mm", site.largest_board_width_mm, width_mm, effect),
    )
