"""How much board of a low reaction-to-fire class the room's walls get (`knowledge/cautions.md`, H16)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.check import Check, Quantity
from service.frame import Layer
from service.rules import Source

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

LININGS = "heat.linings"

LINING_CLASS: Final = Source(document="Approved Document B", edition="volume 1", clause="B2, from memory")
CLASS_D: Final = frozenset({"mdf", "plywood"})  # without a declared treatment: EN 13986, from memory
MM2_PER_M2, TENTHS2_PER_M2 = 1e6, 1e8


def lining_checks(ground: Ground) -> tuple[Result, ...]:
    """Area of wood-based board in sight against half of the floor, and against 20 m2."""
    boards = {Layer.FACING: ground.job.board, Layer.LID: ground.job.lid}
    area_m2 = sum(
        panel.width_tenth_mm * panel.height_tenth_mm / TENTHS2_PER_M2
        for panel in ground.frame.panels
        if panel.layer in boards and boards[panel.layer].board_kind in CLASS_D
    )
    limit_m2 = _limit_m2(ground)
    return (
        Check(
            code=LININGS, subject="boards in sight", binding=False, clause=LINING_CLASS,
            says=f"{area_m2:.1f} m2 of wood-based board are in sight",
            demand=Quantity(symbol="class D", value=area_m2, unit="m2"),
            resistance=Quantity(symbol="allowed", value=limit_m2, unit="m2"),
            remedy="plasterboard or calcium silicate, or ask building control" if area_m2 > limit_m2 else "",
        ),
    )  # fmt: skip


def _limit_m2(ground: Ground) -> float:
    """Half of the floor where the room's sizes were told, 20 m2 at most."""
    most_m2, room = ground.rules.heat.lining_most_m2, ground.job.survey.room
    if room is None or room.wall_length_mm is None or room.depth_mm is None:
        return most_m2
    return min(ground.rules.heat.lining_floor_ratio * room.wall_length_mm * room.depth_mm / MM2_PER_M2, most_m2)
