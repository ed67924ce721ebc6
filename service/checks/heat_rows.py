"""Cautions H: heat and the fire (`knowledge/cautions.md`, section 1)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks.finding import Finding, field_name
from service.survey.wishes import Finish

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.finding import Facts

USUAL_AMBIENT_DEG_C = 40.0  # typical of screen manuals, from memory
CLEAR_FRONT_MM = 1_000.0  # common practice, no source
CHILD_HEIGHT_TENTH_MM = 6_000  # common practice, no source
LEAST_ROOM_M3_PER_KW = 25.0  # common practice, no source
AIR_ON_FACE = frozenset({"front_top", "top_front"})
COMBUSTIBLE = frozenset({"mdf", "plywood"})


def heat_rows(facts: Facts) -> Iterator[Finding]:
    """Rows of heat and fire."""
    fire = facts.job.appliance
    if facts.job.missing_figures:
        names = ", ".join(field_name(pointer) for pointer in facts.job.missing_figures)
        yield Finding("H01", f"The makers do not state: {names}. Take these from the manuals before building.")
    yield from _zone(facts)
    yield from _heat(facts)
    front_mm = fire.clear_front_mm or CLEAR_FRONT_MM
    yield Finding("H14", f"Keep curtains, furniture and drying racks {front_mm:g} mm away from the front of the fire.")
    yield Finding("H17", "The clearances to timber are the maker's. Build to the manual: it outranks this design.")


def _zone(facts: Facts) -> Iterator[Finding]:
    """What the maker wants of the boards over the opening."""
    job = facts.job
    zone_mm = job.appliance.non_combustible_above_mm or 0.0
    if zone_mm > 0:
        what = "The board and the timber" if job.board.board_kind in COMBUSTIBLE else "The timber"
        yield Finding(
            "H05",
            f"{what} of this design can burn, and the maker wants nothing that burns for {zone_mm:g} mm over the opening. "
            "Use calcium silicate or cement board there, and ask the maker about the timber behind it.",
        )
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
