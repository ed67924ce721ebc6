"""Cautions E: electricity (`knowledge/cautions.md`, section 2)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.brief import supply_of
from service.checks.finding import Finding
from service.checks.result import CautionState, Stops
from service.survey.fields import Answer
from service.survey.services import AccessoryKind, CableScan, SupplyWanted
from service.survey.site import Country

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.finding import Facts

OPEN = CautionState.NOT_VERIFIED
FUSE_W = 13 * 230  # a 13 A fuse at 230 V
ALARM_MARGIN_MM = 300.0  # from walls and lights: Approved Document B, older text (services.md, section 6)
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
    job = facts.job
    screen_w = (job.screen.power_w or 0.0) if job.screen else 0.0
    load_w = job.appliance.heat_output_w + (job.appliance.flame_w or 0.0) + screen_w + (facts.services.other_load_w or 0.0)
    if load_w > FUSE_W:
        yield Finding(
            "E04", f"{load_w:g} W together are above the {FUSE_W} W of a 13 A connection. The fire wants a circuit of its own."
        )
    if supply_of(job) is SupplyWanted.PLUG_IN_REACH:
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
