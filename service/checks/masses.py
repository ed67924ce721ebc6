"""Masses and weights of members, boards and things, and where they act (`knowledge/structure.md`, section 4)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.frame import Layer
from service.units import STANDARD_GRAVITY_M_S2

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.brief import Board, Job
    from service.frame import Box, Member, Panel

TENTHS3_PER_M3 = 1e12
TENTHS2_PER_M2 = 1e8


class Weighed(msgspec.Struct, frozen=True, kw_only=True):
    """A mass and how far its centre lies from the wall."""

    what: str  # a mark, or a name
    mass_kg: float
    from_wall_mm: float


def weight_n(mass_kg: float) -> float:
    """Weight of a mass."""
    return mass_kg * STANDARD_GRAVITY_M_S2


def member_kg(member: Member, density_kg_m3: float) -> float:
    """Mass of one member at a density (450 where it hangs or is lifted; 0.9 x 370 is for what stabilises)."""
    return member.thickness_tenth_mm * member.width_tenth_mm * member.length_tenth_mm / TENTHS3_PER_M3 * density_kg_m3


def board_of(panel: Panel, job: Job) -> Board:
    """The board that a panel is cut from."""
    if panel.layer is Layer.PAD:
        return next(pad for pad in job.pads if pad.code == panel.board_code)
    return {Layer.FACING: job.board, Layer.LID: job.lid, Layer.LINING: job.lining, Layer.BACKBOARD: job.backboard}[panel.layer]


def panel_kg(panel: Panel, job: Job) -> float:
    """Mass of one panel without its cut-outs, as it hangs."""
    holes = sum(hole.width_tenth_mm * hole.height_tenth_mm for hole in panel.cut_outs)
    area_m2 = (panel.width_tenth_mm * panel.height_tenth_mm - holes) / TENTHS2_PER_M2
    return area_m2 * board_of(panel, job).mass_kg_m2


def centre_from_wall_mm(box: Box) -> float:
    """Distance of the middle of a box from the wall."""
    return (box.y0_tenth_mm + box.y1_tenth_mm) / 20


def centre_of_mm(parts: Iterable[Weighed]) -> float:
    """Distance of the common centre of gravity from the wall; 0 of nothing."""
    listed = tuple(parts)
    total_kg = sum(part.mass_kg for part in listed)
    return sum(part.mass_kg * part.from_wall_mm for part in listed) / total_kg if total_kg else 0.0
