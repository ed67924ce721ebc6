"""Cautions H: heat and the fire (`knowledge/cautions.md`, section 1)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks.check import Verdict
from service.checks.clearances import (
    CLEAR_ABOVE,
    CLEAR_BEHIND,
    CLEAR_BESIDE,
    CLEAR_FRONT,
    OUTLET_TO_SCREEN,
    OUTLET_TO_SCREEN_USUAL,
    OUTLET_TO_SHELF,
    SCREEN_GAP,
    ZONE_BOARD,
    ZONE_TIMBER,
)
from service.checks.finding import Finding, field_name, said
from service.checks.linings import LININGS
from service.checks.result import CautionState, Stops
from service.checks.void_heat import AIR_INLET, AIR_OUTLET, VOID_TEMPERATURE
from service.survey.services import AccessoryKind, Flue, GasState
from service.survey.wishes import Finish

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.finding import Facts

USUAL_AMBIENT_DEG_C = 40.0  # typical of screen manuals, from memory
CLEAR_FRONT_MM = 1_000.0  # common practice, no source
CHILD_HEIGHT_TENTH_MM = 6_000  # common practice, no source
LEAST_ROOM_M3_PER_KW = 25.0  # common practice, no source
AIR_ON_FACE = frozenset({"front_top", "top_front"})
WIRED = frozenset({AccessoryKind.SOCKET, AccessoryKind.SPUR, AccessoryKind.JOINT})
CLOSED_FLUES = frozenset({Flue.OPEN, Flue.BLOCKED_AND_VENTED, Flue.BLOCKED_NOT_VENTED})


def heat_rows(facts: Facts) -> Iterator[Finding]:
    """Rows of heat and fire."""
    fire = facts.job.appliance
    if facts.job.missing_figures:
        names = ", ".join(field_name(pointer) for pointer in facts.job.missing_figures)
        yield Finding("H01", f"The makers do not state: {names}. Take these from the manuals before building.")
    yield from _clear(facts)
    yield from _zone(facts)
    yield from _around(facts)
    yield from _heat(facts)
    front_mm = fire.clear_front_mm or CLEAR_FRONT_MM
    yield Finding("H14", f"Keep curtains, furniture and drying racks {front_mm:g} mm away from the front of the fire.")
    yield Finding("H17", "The clearances to timber are the maker's. Build to the manual: it outranks this design.")


def _clear(facts: Facts) -> Iterator[Finding]:
    """The makers' clearances and air, as the checks found them."""
    for check in facts.unmet(CLEAR_ABOVE, CLEAR_BESIDE, CLEAR_BEHIND, CLEAR_FRONT, SCREEN_GAP):
        yield Finding("H02", said(check))
    for check in facts.unmet(OUTLET_TO_SCREEN, OUTLET_TO_SCREEN_USUAL):
        yield Finding("H03", said(check), stops=None if check.binding else Stops.NOTHING)
    for check in facts.unmet(VOID_TEMPERATURE, AIR_INLET, AIR_OUTLET):
        yield Finding("H07", said(check))
    for check in facts.report.of(OUTLET_TO_SHELF):
        yield Finding("H08", said(check))


def _zone(facts: Facts) -> Iterator[Finding]:
    """What the maker wants of the boards over the opening."""
    job = facts.job
    for check in facts.unmet(ZONE_BOARD):
        yield Finding("H05", said(check))
    for check in facts.report.of(ZONE_TIMBER):
        if check.verdict is Verdict.PROVISIONAL:
            yield Finding("H05", said(check), CautionState.NOT_VERIFIED, Stops.FIRM_QUOTE)
    if job.board.board_kind == "plasterboard" and job.appliance.outlet_position in AIR_ON_FACE:
        yield Finding(
            "H06",
            "Gypsum suffers above about 49 degrees, and the warm air leaves at the edge of the plasterboard. "
            "Set a strip of calcium silicate over the opening.",
        )


def _heat(facts: Facts) -> Iterator[Finding]:
    job, heat_w = facts.job, facts.job.appliance.heat_output_w
    if heat_w <= 0:
        return
    if job.screen and facts.frame.screen_hung and job.appliance.outlet_position != "none":
        limit = job.screen.max_ambient_deg_c
        known = (
            f"This screen is limited to {limit:g} degrees around it"
            if limit
            else f"Screens are commonly limited to {USUAL_AMBIENT_DEG_C:g} degrees around them"
        )
        yield Finding(
            "H04",
            f"{known}, above a fire that blows warm air. Keep the gaps of this design open at the top and bottom.",
        )
    if job.finish is Finish.SKIMMED:
        yield Finding("H11", "New skim wants 7 days and paint 48 hours before the first heating. Then heat on low.")
    else:
        yield Finding("H11", "New paint wants 48 hours before the first heating. Then heat on low.")
    volume_m3 = facts.room.volume_m3
    if volume_m3 is not None and volume_m3 < LEAST_ROOM_M3_PER_KW * heat_w / 1000:
        yield Finding("H12", f"{heat_w:g} W are much for a room of {volume_m3:g} m3: it gets hot quickly. Use the thermostat.")
    if facts.frame.levels.platform_tenth_mm < CHILD_HEIGHT_TENTH_MM:
        yield Finding("H15", "The hot front is at the height of a child. Use a guard, and the lock of the fire.")


def _around(facts: Facts) -> Iterator[Finding]:
    """Sockets in the fire's column, finishes, other fuels, the class of the linings."""
    column = [one for one in facts.services.accessories or () if one.kind in WIRED and facts.over_fire(one.x_mm)]
    if column and facts.job.appliance.outlet_position != "none":
        names = ", ".join(f"{one.kind.value} at {one.x_mm:g}, {one.z_mm:g} high" for one in column)
        yield Finding("H09", f"In the column of the fire: {names}. Heaters do not sit above or below a socket; move it sideways.")
    if facts.job.finish is Finish.SLATTED:
        yield Finding("H10", "Slats at the opening: ask their maker what heat they stand and whether they yellow.")
    if facts.services.gas is GasState.CAPPED_OFF or facts.chimney.flue in CLOSED_FLUES:
        yield Finding(
            "H13", "There is an old gas pipe or flue, but this breast is for an electric fire only. No flame may be put in later."
        )
    yield from _linings(facts)


def _linings(facts: Facts) -> Iterator[Finding]:
    frame = facts.frame
    whole_wall = frame.left_wall and frame.right_wall
    for check in facts.unmet(LININGS):
        yield Finding("H16", said(check), stops=Stops.FIRM_QUOTE if whole_wall else None)
