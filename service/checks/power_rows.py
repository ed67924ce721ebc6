"""Cautions E: electricity (`knowledge/cautions.md`, section 2)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.brief import supply_of
from service.checks.finding import Finding, said
from service.checks.result import CautionState, Stops
from service.checks.supply import ACCESS, CABLE_COVER, CONNECTION
from service.survey.fields import Answer
from service.survey.services import AccessoryKind, CableScan, SupplyWanted
from service.survey.site import Country
from service.survey.wall import WallConstruction
from service.survey.wishes import ExtraKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.finding import Facts

OPEN = CautionState.NOT_VERIFIED
ALARM_MARGIN_MM = 300.0  # from walls and lights: Approved Document B, older text (services.md, section 6)
NEW_DWELLING_YEARS = 1  # a house is new in the year it is built and the next: house choice
SOCKET_HEIGHTS_MM = (450.0, 1_200.0)  # Approved Document M volume 1, from memory
RADIO = frozenset({AccessoryKind.ROUTER, AccessoryKind.THERMOSTAT})


def power_rows(facts: Facts) -> Iterator[Finding]:
    """Rows of electricity."""
    yield Finding("E01", "Connection, tests and certificate are the work of a qualified electrician.")
    yield from _rules(facts)
    yield from _load(facts)
    if not facts.job.cables_scanned:
        state = CautionState.FIRES if facts.services.cable_scan is CableScan.NOT_DONE else OPEN
        yield Finding(
            "E05",
            "No cable scan was made. Cables may lie within 150 mm of the ceiling and of corners and in line with accessories: "
            "scan and isolate before drilling.",
            state,
        )
    yield from _accessories(facts)
    yield from _alarms(facts)
    yield from _connection(facts)
    yield from _metal_and_lights(facts)
    yield from _heights(facts)


def _rules(facts: Facts) -> Iterator[Finding]:
    country = facts.site.country or Country.GB
    if supply_of(facts.job) is SupplyWanted.NEW_CIRCUIT:
        yield Finding(
            "E02", "A new circuit is notifiable work in England: a registered installer, or building control beforehand."
        )
    if country not in {Country.GB, Country.GB_ENGLAND}:
        yield Finding(
            "E03", "The notification rules of England do not hold here. Ask the local authority and a registered electrician."
        )
    rcd = facts.services.rcd
    if rcd is Answer.NO:
        yield Finding("E09", "The circuit has no residual-current protection. The electrician prices the upgrade.")
    elif rcd is not Answer.YES:
        yield Finding(
            "E09", "Whether the circuit has residual-current protection is not known. The electrician looks first.", OPEN
        )


def _load(facts: Facts) -> Iterator[Finding]:
    for check in facts.unmet(CONNECTION):
        yield Finding("E04", said(check))
    if supply_of(facts.job) is SupplyWanted.PLUG_IN_REACH:
        yield Finding(
            "E10", "The fire plugs straight into a socket in reach: no extension lead, no adaptor, no plug behind its body."
        )


def _accessories(facts: Facts) -> Iterator[Finding]:
    accessories = facts.services.accessories
    if accessories is None:
        yield Finding(
            "E06",
            "Sockets and switches on the wall were not told. Any inside the breast is moved or kept in reach, never buried.",
            OPEN,
        )
        return
    inside = [one for one in accessories if facts.holds(one.x_mm)]
    if inside:
        names = ", ".join(f"{one.kind.value} at {one.x_mm:g}, {one.z_mm:g} high" for one in inside)
        yield Finding("E06", f"Inside the breast: {names}. An electrician moves it or keeps it in reach; nothing is buried.")
    radio = sorted({one.kind.value for one in inside if one.kind in RADIO})
    if radio:
        yield Finding("E14", f"Inside the breast: {', '.join(radio)}. Move it out of warm air and keep its radio path.")


def _alarms(facts: Facts) -> Iterator[Finding]:
    reach_mm = facts.frame.sizes.finished_depth_tenth_mm / 10 + ALARM_MARGIN_MM
    near = [one for one in facts.services.alarms or () if facts.holds(one.x_mm, ALARM_MARGIN_MM) and one.y_mm <= reach_mm]
    if near:
        names = ", ".join(f"{one.kind.value} alarm at {one.x_mm:g}" for one in near)
        says = f"{names}: nearer than {ALARM_MARGIN_MM:g} mm to the breast, which is a new wall. An electrician moves it."
        yield Finding("E14", says, stops=Stops.THIS_WORK)


def _connection(facts: Facts) -> Iterator[Finding]:
    for check in facts.unmet(ACCESS):
        yield Finding("E07", said(check))
    for check in facts.unmet(CABLE_COVER):
        yield Finding("E08", said(check))


def _metal_and_lights(facts: Facts) -> Iterator[Finding]:
    steel = facts.job.wall_construction is WallConstruction.STEEL_STUD
    if steel or (facts.job.bracket and facts.frame.screen_hung):
        metal = "Steel studs" if steel else "The metal bracket of the screen"
        yield Finding("E11", f"{metal}: the electrician says whether metal parts are bonded.")
    if any(one.kind is ExtraKind.LIGHTS for one in facts.job.survey.brief.extras or ()):
        yield Finding("E12", "Drivers of lights in a closed void want air, a way to reach them, and a box that does not burn.")


def _heights(facts: Facts) -> Iterator[Finding]:
    """Accessories of a new dwelling, and boxes in a wall that parts two dwellings."""
    accessories, year = facts.services.accessories or (), facts.site.build_year
    low_mm, high_mm = SOCKET_HEIGHTS_MM
    outside = [one for one in accessories if one.kind is AccessoryKind.SOCKET and not low_mm <= one.z_mm <= high_mm]
    if outside and year is not None and year >= int(facts.job.today[:4]) - NEW_DWELLING_YEARS:
        names = ", ".join(f"{one.x_mm:g}, {one.z_mm:g} high" for one in outside)
        yield Finding("E13", f"Sockets outside {low_mm:g} to {high_mm:g} mm in a new dwelling: {names}. Ask building control.")
    if accessories and facts.wall.party is Answer.YES:
        yield Finding("E15", "Boxes in a wall that parts two dwellings: not back to back, and sealed against fire and sound.")
