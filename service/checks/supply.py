"""Electricity of the fire and the screen: needs for an electrician, no electrical design (`knowledge/services.md`, 1 to 3).

Whether a circuit can bear a load is never said: its history is not known.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.brief import supply_of
from service.checks.amounts import current, length
from service.checks.amounts import power as watts
from service.checks.cable_zones import counted_fixings
from service.checks.check import Check, Quantity, Skipped
from service.checks.clearances import FIRE, SCREEN, own_figures
from service.checks.void_heat import void_deg_c
from service.engineering import power
from service.rules import Source
from service.survey.appliance import ServiceAccess
from service.survey.fields import Answer
from service.survey.services import CableScan, Services, SupplyWanted
from service.survey.wishes import ExtraKind

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

CONNECTION = "power.connection"
CIRCUIT = "power.circuit"
RESIDUAL_CURRENT = "power.residual_current"
SPARE_WAY = "power.spare_way"
SCAN = "power.cable_zones"
CABLE_COVER = "power.cable_cover"
WARM_CABLE = "power.warm_cable"
ACCESS = "power.access"
RECESS_SOCKET = "power.recess_socket"

FUSE: Final = Source(document="BS 1363", clause="part 1, fuse of a plug or a fused connection, from memory")
USUAL: Final = Source(document="common practice, no source", clause="usual domestic circuits")
RCD: Final = Source(document="BS 7671", clause="411.3.3, from memory")
ZONES: Final = Source(document="BS 7671", clause="522.6.202")
AMBIENT: Final = Source(document="BS 7671", clause="Table 4B1, from memory")
REACH: Final = Source(document="common practice, no source", clause="way to a connection behind cladding")
PLATE: Final = Source(document="BS 4662", clause="plate of a twin socket, from memory")


def load_checks(ground: Ground) -> tuple[Result, ...]:
    """Current of the connection and the circuit, protection, a spare way."""
    return (_connection(ground), _circuit(ground), _residual_current(ground), _spare_way(ground))


def cable_checks(ground: Ground) -> tuple[Result, ...]:
    """Cables in the wall and in the frame, the way to the connection, sockets in the recess."""
    return (_scan(ground), _cover(ground), _warm(ground), _access(ground), _recess_socket(ground))


def breast_w(ground: Ground) -> float:
    """All that the breast takes at once; no diversity is taken."""
    job = ground.job
    screen_w = (job.screen.power_w or 0.0) if job.screen else 0.0
    return power.total_w((job.appliance.heat_output_w, job.appliance.flame_w or 0.0, screen_w))


def _services(ground: Ground) -> Services:
    return ground.job.survey.services or Services()


def _connection(ground: Ground) -> Check:
    """Fire, screen and what else is fixed on that circuit on one fuse; on a circuit of its own the fire alone."""
    rules, job = ground.rules.power, ground.job
    other_w = _services(ground).other_load_w or 0.0
    own = supply_of(job) is SupplyWanted.NEW_CIRCUIT
    total_w = power.total_w((job.appliance.heat_output_w, job.appliance.flame_w or 0.0)) if own else breast_w(ground) + other_w
    limit_a = rules.radial_a if own else rules.plug_a
    current_a = max(power.current_a(total_w, rules.supply_v), job.appliance.current_a or 0.0)
    limit_w = power.plug_power_w(limit_a, rules.supply_v)
    over_w = max(total_w - limit_w, 0.0)
    eased = f"{over_w:.0f} W less, or a circuit that the electrician designs"
    remedy = eased if own else f"a new circuit for the fire, or {over_w:.0f} W less on this one"
    what = "a circuit of its own" if own else "one fused connection"
    return Check(
        code=CONNECTION, subject=FIRE, clause=USUAL if own else FUSE,
        says=f"{total_w:g} W are connected, {current_a:.1f} A; {what} bears {limit_a:g} A, that is {limit_w:g} W",
        demand=current("I", current_a), resistance=current("rated", limit_a),
        inputs=(watts("P", total_w), watts("other load", other_w), Quantity(symbol="U", value=rules.supply_v, unit="v")),
        remedy="" if current_a <= limit_a else remedy,
    )  # fmt: skip


def _circuit(ground: Ground) -> Result:
    """Advice only where it is too much; a pass would say that the circuit is adequate."""
    rules = ground.rules.power
    total_w = breast_w(ground) + (_services(ground).other_load_w or 0.0)
    current_a = power.current_a(total_w, rules.supply_v)
    if supply_of(ground.job) is SupplyWanted.NEW_CIRCUIT or current_a <= rules.radial_a:
        return Skipped(
            code=CIRCUIT, why="whether the circuit can bear it is the electrician's to say: what hangs on it is not known"
        )
    return Check(
        code=CIRCUIT, subject=FIRE, binding=False, clause=USUAL,
        says=f"{total_w:g} W together take {current_a:.1f} A; a radial circuit is rated {rules.radial_a:g} A as a rule",
        demand=current("I", current_a), resistance=current("radial", rules.radial_a), inputs=(current("ring", rules.ring_a),),
        remedy="ask the electrician for a separate circuit",
    )  # fmt: skip


def _yes_or_no(code: str, says: str, answer: Answer | None, *, clause: Source, remedy: str) -> Check:
    """One thing that must be there: 1 of 1, 0 of 1, or not known."""
    there = {Answer.YES: 1.0, Answer.NO: 0.0}.get(answer) if answer else None
    return Check(
        code=code, subject="consumer unit", binding=False, clause=clause, says=says,
        demand=Quantity(symbol="asked", value=1.0, unit="count"),
        resistance=None if there is None else Quantity(symbol="there", value=there, unit="count"),
        unverified="it was not looked up" if there is None else "", remedy="" if there else remedy,
    )  # fmt: skip


def _residual_current(ground: Ground) -> Check:
    says = "socket outlets and cables in walls want residual-current protection of 30 mA"
    remedy = "the electrician looks, and prices the upgrade where there is none"
    return _yes_or_no(RESIDUAL_CURRENT, says, _services(ground).rcd, clause=RCD, remedy=remedy)


def _spare_way(ground: Ground) -> Result:
    if supply_of(ground.job) is not SupplyWanted.NEW_CIRCUIT:
        return Skipped(code=SPARE_WAY, why="no new circuit is wanted")
    says, remedy = "a new circuit wants a spare way in the consumer unit", "the electrician looks, and prices a larger unit"
    return _yes_or_no(SPARE_WAY, says, _services(ground).spare_way, clause=USUAL, remedy=remedy)


def _scan(ground: Ground) -> Check:
    """Rows that do not count until the wall is scanned; advice, as the fixings are proved without them."""
    scanned = _services(ground).cable_scan is CableScan.DONE
    open_count = 0 if scanned else len(ground.frame.wall_fixings) - len(counted_fixings(ground))
    zone_mm = ground.rules.frame.cable_zone_mm
    where = "the wall was scanned for cables" if scanned else "the wall was not scanned for cables"
    return Check(
        code=SCAN, subject="wall fixings", binding=False, clause=ZONES,
        says=f"{where}; {open_count} wall fixings do not count: within {zone_mm:g} mm of ceiling or corner, or off studs",
        demand=Quantity(symbol="not counted", value=float(open_count), unit="count"),
        resistance=Quantity(symbol="allowed", value=0.0, unit="count"),
        remedy="scan, isolate, then drill; scanned, they count" if open_count else "",
    )  # fmt: skip


def _cover(ground: Ground) -> Check:
    """A cable through holes in the middle of the uprights: how deep it lies under the return."""
    job, asked_mm = ground.job, ground.rules.power.cable_depth_mm
    there_mm = (job.board.thickness_tenth_mm + job.skim_tenth_mm + job.timber.width_tenth_mm / 2) / 10
    return Check(
        code=CABLE_COVER, subject="cable in the frame", binding=False, clause=ZONES,
        says=f"a cable through the middle of the uprights lies {there_mm:g} mm under the face",
        demand=length("asked", asked_mm), resistance=length("there", there_mm),
        remedy="" if there_mm >= asked_mm else "steel plates before it, in line with its outlet",
    )  # fmt: skip


def _warm(ground: Ground) -> Result:
    rules, heat = ground.rules.power, ground.rules.heat
    if ground.job.appliance.heat_output_w <= 0:
        return Skipped(code=WARM_CABLE, why="the fire gives no heat")
    air_deg_c = void_deg_c(ground)
    keeps = power.warm_cable_ratio(air_deg_c, rated_deg_c=heat.cable_deg_c, conductor_deg_c=rules.conductor_deg_c)
    return Check(
        code=WARM_CABLE, subject="cable in the void", binding=False, clause=AMBIENT,
        says=f"a cable in a void of {air_deg_c:.0f} degrees keeps {keeps:.2f} of its rating",
        demand=Quantity(symbol="air", value=air_deg_c, unit="deg_c"),
        resistance=Quantity(symbol="full rating", value=heat.cable_deg_c, unit="deg_c"),
        inputs=(Quantity(symbol="keeps", value=keeps, unit="ratio"),),
        remedy="" if air_deg_c <= heat.cable_deg_c else f"take {keeps:.2f} of the rating",
    )  # fmt: skip


def _access(ground: Ground) -> Result:
    """How the connection is reached: outside, through an access panel, or with the fire drawn out of its opening."""
    if supply_of(ground.job) is SupplyWanted.PLUG_IN_REACH:
        return Skipped(code=ACCESS, why="the fire plugs into a socket in reach outside the breast")
    own = own_figures(ground)
    through_front = own is None or own.service_access in {None, ServiceAccess.FRONT}
    panels = [one for one in ground.job.survey.brief.extras or () if one.kind is ExtraKind.ACCESS_PANEL]
    ways = [(one.width_mm or 0.0, one.height_mm or 0.0) for one in panels]
    sizes = ground.frame.sizes
    if through_front:
        ways.append((sizes.opening_width_tenth_mm / 10, sizes.opening_height_tenth_mm / 10))
    asked = (own.access_width_mm, own.access_height_mm) if own else (None, None)
    short_mm, long_mm = sorted((asked[0] or ground.rules.power.access_short_mm, asked[1] or ground.rules.power.access_long_mm))
    there = max((min(min(way) / short_mm, max(way) / long_mm) for way in ways), default=0.0)
    return Check(
        code=ACCESS, subject="connection of the fire", clause=REACH,
        says="the connection behind the face is reached " + ("through the fire's own opening" if through_front else "by a panel"),
        demand=Quantity(symbol="asked", value=1.0, unit="ratio"), resistance=Quantity(symbol="there", value=there, unit="ratio"),
        inputs=(Quantity(symbol="short", value=short_mm, unit="mm"), Quantity(symbol="long", value=long_mm, unit="mm")),
        remedy="" if there >= 1.0 else f"a removable panel of {short_mm:g} x {long_mm:g} mm, or a socket outside",
    )  # fmt: skip


def _recess_socket(ground: Ground) -> Result:
    recess, bracket = ground.frame.sizes.recess, ground.job.bracket
    if recess is None or bracket is None or not ground.frame.screen_hung:
        return Skipped(code=RECESS_SOCKET, why="no screen hangs in a recess")
    asked_mm = ground.rules.power.socket_plate_mm
    there_mm = (recess.clear_width_tenth_mm / 10 - bracket.plate_width_mm) / 2
    return Check(
        code=RECESS_SOCKET, subject=SCREEN, binding=False, clause=PLATE,
        says=f"{there_mm:g} mm are free beside the bracket's plate for a twin socket",
        demand=length("plate", asked_mm), resistance=length("there", there_mm),
        remedy="" if there_mm >= asked_mm else f"a recess wider by {2 * (asked_mm - there_mm):g} mm",
    )  # fmt: skip
