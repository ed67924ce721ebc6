"""The fixings of one design: which screw, plug and bracket the frame is built with, and what each is declared to bear."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.catalogue import FixingLoad, Material
from service.frame import NOTHING_ADDED
from service.hardware import choosing

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame import Additions
    from service.hardware.shelf import Shelf

BRACKET_PLATE_MM = 2.0  # of an angle bracket that a wall fixing passes: the demo's brackets


class Hardware(msgspec.Struct, frozen=True, kw_only=True):
    """What holds the design together; None: nothing sold does it. The bill buys these, the checks prove these."""

    wall_fixing: Material | None  # through rear members into the host wall
    wall_load: FixingLoad | None  # what it bears there; None: no value for this wall
    base_fixing: Material | None  # through the brackets of the base into the host wall
    base_load: FixingLoad | None
    ceiling_screw: Material | None
    narrow_screw: Material | None  # of a joint through the narrow side of a member
    wide_screw: Material | None  # of a joint through the wide side
    laminating_screw: Material | None
    bracket: Material | None
    bracket_screw: Material | None
    heavy_bracket: Material | None
    heavy_bracket_screw: Material | None
    board_screws: tuple[tuple[str, Material | None], ...]  # by `facing`, `lining`, `lid`, `backboard`
    fire_screw: Material | None

    def board_screw(self, layer: str) -> Material | None:
        """Screw of a layer of boards."""
        return dict(self.board_screws).get(layer)


def choose_hardware(job: Job, shelf: Shelf, added: Additions = NOTHING_ADDED) -> Hardware:
    """The smallest thing sold that does each job, or so many sizes more as strengthening adds; no price is looked at."""
    b_mm, d_mm = job.timber.thickness_tenth_mm / 10, job.timber.width_tenth_mm / 10
    wall = choosing.wall_fixing(job, d_mm, shelf, added.wall_fixing_steps_count)
    base = choosing.wall_fixing(job, BRACKET_PLATE_MM, shelf)
    bracket, heavy = choosing.light_bracket(shelf.catalogue), choosing.heavy_bracket(shelf.catalogue)
    boards = (("facing", job.board), ("lining", job.lining), ("lid", job.lid), ("backboard", job.backboard))
    return Hardware(
        wall_fixing=wall,
        wall_load=choosing.wall_load(job, wall, shelf.catalogue),
        base_fixing=base,
        base_load=choosing.wall_load(job, base, shelf.catalogue),
        ceiling_screw=choosing.ceiling_screw(job, shelf, added.ceiling_screw_steps_count),
        narrow_screw=choosing.joint_screw(b_mm, shelf),
        wide_screw=choosing.joint_screw(d_mm, shelf),
        laminating_screw=choosing.laminating_screw(b_mm, shelf.catalogue),
        bracket=bracket,
        bracket_screw=_screw_of(bracket, shelf),
        heavy_bracket=heavy,
        heavy_bracket_screw=_screw_of(heavy, shelf),
        board_screws=tuple(
            (layer, choosing.board_screw(board.board_kind, board.thickness_tenth_mm / 10, shelf)) for layer, board in boards
        ),
        fire_screw=choosing.fire_screw(shelf.catalogue),
    )


def _screw_of(bracket: Material | None, shelf: Shelf) -> Material | None:
    return shelf.catalogue.materials.get((bracket.screw_code if bracket else None) or "")
