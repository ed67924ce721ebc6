"""The levels that the height chains go through."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame import Role

if TYPE_CHECKING:
    from service.frame import Frame


def heights_of(frame: Frame) -> tuple[int, ...]:
    """Floor, platform, top of the fire opening, sill and head of niche and recess (or the upstand), top of the frame."""
    levels = frame.levels
    rails = [member.box.z1_tenth_mm for member in frame.members if member.role is Role.UPSTAND_RAIL]
    recess = [level for level in (levels.recess_sill_tenth_mm, levels.recess_head_tenth_mm) if level is not None]
    niche = (frame.niche.z0_tenth_mm, frame.niche.z1_tenth_mm) if frame.niche else ()
    return (0, levels.platform_tenth_mm, levels.appliance_top_tenth_mm, *rails, *niche, *recess, levels.upper_top_tenth_mm)
