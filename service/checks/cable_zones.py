"""Which wall fixings count: not those where cables may run in a wall that nobody scanned (`knowledge/services.md`, section 3).

The zone under the ceiling and studs that were not found are known to the layout already; here are corners and accessories.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.survey.services import Services

if TYPE_CHECKING:
    from service.brief import Job
    from service.checks.ground import Ground
    from service.frame import WallFixing
    from service.survey.services import Accessory

PLATE_MM: Final = 86.0  # width and height of one gang of an accessory: BS 4662 boxes, from memory
GANG_MM: Final = 60.0  # that each further gang adds in width: BS 4662, from memory (double 146)
BESIDE_PLATE_MM: Final = 50.0  # on each side of the band of an accessory: house choice (services.md, 3)


def counted_fixings(ground: Ground) -> tuple[WallFixing, ...]:
    """Fixings of the upper frame that a check may count on."""
    job = ground.job
    counted = tuple(fixing for fixing in ground.frame.wall_fixings if fixing.counted)
    if job.cables_scanned:
        return counted
    left_mm = (job.wall_centre_tenth_mm - ground.frame.sizes.frame_width_tenth_mm / 2) / 10
    accessories = (job.survey.services or Services()).accessories or ()
    return tuple(
        fixing
        for fixing in counted
        if not _in_a_corner(left_mm + fixing.x_tenth_mm / 10, ground)
        and not any(_in_band(left_mm + fixing.x_tenth_mm / 10, fixing.z_tenth_mm / 10, one) for one in accessories)
    )


def _in_a_corner(wall_x_mm: float, ground: Ground) -> bool:
    zone_mm, length_mm = ground.rules.frame.cable_zone_mm, _wall_length_mm(ground.job)
    return wall_x_mm < zone_mm or (length_mm is not None and wall_x_mm > length_mm - zone_mm)


def _wall_length_mm(job: Job) -> float | None:
    """Length of the wall where it was told."""
    return job.survey.room.wall_length_mm if job.survey.room else None


def _in_band(wall_x_mm: float, z_mm: float, accessory: Accessory) -> bool:
    """Straight above, below or level with an accessory: BS 7671 522.6.202."""
    half_width_mm = (PLATE_MM + GANG_MM * (accessory.gang_count - 1)) / 2 + BESIDE_PLATE_MM
    half_height_mm = PLATE_MM / 2 + BESIDE_PLATE_MM
    return abs(wall_x_mm - accessory.x_mm) <= half_width_mm or abs(z_mm - accessory.z_mm) <= half_height_mm
