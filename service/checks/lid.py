"""Lid of a part-height breast: its rails, joists and board under a person (structure.md, 5.7)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.amounts import house, length
from service.checks.check import Check, Skipped
from service.checks.ledges import Ledge, bend_ledge, ledge_of, sag_ledge
from service.checks.timber import bent, extent_mm, length_mm, of_roles
from service.frame import Axis, Role
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

LID_RAIL: Final = "structure.lid_rail_bending"
LID_SAG: Final = "structure.lid_rail_sag"
LID_JOIST: Final = "structure.lid_joist_bending"
LID_BOARD: Final = "structure.lid_board"
NO_LID: Final = "the breast goes up to the ceiling and has no lid"
LIDLESS: Final = (LID_RAIL, LID_SAG, LID_JOIST, LID_BOARD)
GREATEST_BOARD_MM: Final = 400.0  # between what carries a lid: structure.md 5.7, common practice, no source


def lid_checks(ground: Ground) -> tuple[Result, ...]:
    """Rails, joists and board of a lid; one that is out of reach carries half a person."""
    if ground.frame.full_height:
        return tuple(Skipped(code=code, why=NO_LID) for code in LIDLESS)
    load_n = lid_load_n(ground)
    rails = [ledge_of(rail, load_n, ground) for rail in of_roles(ground, Role.TOP_RAIL_FRONT, Role.TOP_RAIL_REAR)]
    return (
        *(bend_ledge(LID_RAIL, rail, ground) for rail in rails),
        *(sag_ledge(LID_SAG, rail, ground) for rail in rails),
        *_joists(load_n, ground),
        _board(ground),
    )


def lid_load_n(ground: Ground) -> float:
    """A person on the lid, or half of one where it cannot be reached."""
    actions = ground.rules.actions
    high = millimetres(ground.frame.levels.finished_top_tenth_mm) > actions.high_lid_mm
    return actions.high_lid_n if high else actions.person_n


def _joists(load_n: float, ground: Ground) -> tuple[Result, ...]:
    """All joists of a lid are alike: the first stands for them."""
    joists = of_roles(ground, Role.LID_JOIST)
    if not joists:
        return (Skipped(code=LID_JOIST, why="the lid spans between its rails without joists"),)
    first = joists[0]
    return (bend_ledge(LID_JOIST, Ledge(first.mark, bent(first, Axis.Z, ground), length_mm(first), load_n), ground),)


def _board(ground: Ground) -> Check:
    """How far the board of the lid spans; its own strength is the maker's to say."""
    gap_mm = board_gap_mm(ground)
    return Check(
        code=LID_BOARD,
        subject=ground.job.lid.description,
        says=f"spans {gap_mm:.0f} mm clear, of {GREATEST_BOARD_MM:.0f} mm",
        demand=length("span", gap_mm),
        resistance=length("greatest", GREATEST_BOARD_MM),
        clause=house("what carries a lid stands at most 400 mm apart"),
        inputs=(length("thickness", millimetres(ground.job.lid.thickness_tenth_mm)),),
        remedy="" if gap_mm <= GREATEST_BOARD_MM else f"joists between the rails, at most {GREATEST_BOARD_MM:.0f} mm apart",
    )


def board_gap_mm(ground: Ground) -> float:
    """Between front and rear rail, or between joists if these stand closer."""
    between_mm = max(0.0, millimetres(ground.frame.sizes.cross_noggin_length_tenth_mm))
    joists = of_roles(ground, Role.LID_JOIST)
    if not joists:
        return between_mm
    width_mm = millimetres(ground.frame.sizes.rail_length_tenth_mm)
    clear_mm = (width_mm - sum(extent_mm(joist.box, Axis.X) for joist in joists)) / (len(joists) + 1)
    return min(between_mm, clear_mm)
