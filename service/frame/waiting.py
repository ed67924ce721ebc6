"""Which timbers and boards wait for a measure on site, and which measure that is (`knowledge/framing.md`, section 2.2)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.frame.frame import Layer
from service.frame.member import CutWhen

if TYPE_CHECKING:
    from service.frame.frame import Frame

TO_CEILING = "appliance_top_to_ceiling_mm"


class Waiting(msgspec.Struct, frozen=True, kw_only=True):
    """One measure, and what is cut after it; marks of the frame."""

    measure: str  # the field of `survey.measured` that takes it
    says: str
    members: tuple[str, ...]
    panels: tuple[str, ...]


def measure_before_cutting(frame: Frame) -> tuple[Waiting, ...]:
    """Every measure that something waits for; none where nothing follows from the ceiling."""
    members = tuple(member.mark for member in frame.members if member.cut_when is CutWhen.AFTER_MEASURE)
    panels = tuple(
        panel.mark for panel in frame.panels if panel.cut_when is CutWhen.AFTER_MEASURE and panel.layer is Layer.FACING
    )
    if not members and not panels:
        return ()
    says = "from the top of the standing fire to the ceiling, at both ends and in the middle"
    return (Waiting(measure=TO_CEILING, says=says, members=members, panels=panels),)
