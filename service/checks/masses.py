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
SKIM_KG_M2 = 25 / 9  # thin-coat finish, set: one bag of 25 kg covers 9 m2 at 2 mm, as makers of plaster commonly state


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


def faced_kg(panel: Panel, job: Job, bed_kg_m2: float) -> float:
    """Mass of one panel with what is put on it: skim, or tile, stone or slips in their bed, on faces and returns."""
    board_kg_m2 = board_of(panel, job).mass_kg_m2
    if panel.layer is not Layer.FACING or board_kg_m2 <= 0:
        return panel_kg(panel, job)
    return panel_kg(panel, job) * (board_kg_m2 + finish_kg_m2(job, bed_kg_m2)) / board_kg_m2


def finish_kg_m2(job: Job, bed_kg_m2: float) -> float:
    """What skim and facing put on a square metre of a face or return; a facing comes with its bed."""
    facing_kg_m2 = job.survey.brief.facing_kg_m2 or 0.0
    return (SKIM_KG_M2 if job.skim_tenth_mm else 0.0) + (facing_kg_m2 + bed_kg_m2 if facing_kg_m2 else 0.0)


def centre_from_wall_mm(box: Box) -> float:
    """Distance of the middle of a box from the wall."""
    return (box.y0_tenth_mm + box.y1_tenth_mm) / 20


def centre_of_mm(parts: Iterable[Weighed]) -> float:
    """Distance of the common centre of gravity from the wall; 0 of nothing."""
    listed = tuple(parts)
    total_kg = sum(part.mass_kg for part in listed)
    return sum(part.mass_kg * part.from_wall_mm for part in listed) / total_kg if total_kg else 0.0
