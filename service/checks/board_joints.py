"""Joints of boards on timber, and what their screws grip (`knowledge/cladding.md`, sections 2 and 3)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from service.checks.amounts import PRACTICE, length
from service.checks.check import Check, Skipped
from service.checks.masses import board_of
from service.checks.timber import ends_of
from service.frame import Axis, Layer
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground
    from service.frame import Box, Member, Panel

JOINT: Final = "fixings.board_joint"
GRIP: Final = "fixings.board_screw_grip"
TIMBER_EDGE_MM: Final = 6.0  # of a screw from the edge of its timber: seen in a project specification (cladding.md, 2)
SCREW_EDGE_MM: Final = {"mdf": 12.0, "plywood": 12.0, "plasterboard": 13.0, "cement_board": 15.0, "calcium_silicate": 15.0}
THICK_MDF_MM: Final = 18.0  # from this thickness on 15 mm: common practice, no source
THICK_EDGE_MM: Final = 15.0
LAYERS: Final = (Layer.FACING, Layer.LINING, Layer.BACKBOARD, Layer.LID)


def board_joint_checks(ground: Ground) -> tuple[Result, ...]:
    """Every joint of two boards, then the screws of every layer that is there."""
    joints = [(panel, below) for panel in ground.frame.panels for below in (True, False) if _is_joint(panel, below=below)]
    return (
        *(_joint(panel, ground, below=below) for panel, below in joints),
        *(() if joints else (Skipped(code=JOINT, why="no board is joined: every face comes out of one sheet"),)),
        *(_grip(layer, ground) for layer in LAYERS if any(panel.layer is layer for panel in ground.frame.panels)),
    )


def _is_joint(panel: Panel, *, below: bool) -> bool:
    return panel.layer is not Layer.PAD and (panel.joint_below if below else panel.joint_left)


def _joint(panel: Panel, ground: Ground, *, below: bool) -> Check:
    """Timber each side of the joint: room for a screw from the edge of the board and of the timber."""
    board = board_of(panel, ground.job)
    edge_mm = screw_edge_mm(board.board_kind, millimetres(board.thickness_tenth_mm))
    asked_mm = max(ground.rules.frame.joint_support_mm, edge_mm + TIMBER_EDGE_MM)
    there_mm = _support_mm(panel, ground, below=below)
    return Check(
        code=JOINT,
        subject=panel.mark,
        says=f"its {'lower' if below else 'left'} joint has {there_mm:g} mm of timber each side, at least {asked_mm:g} mm asked",
        demand=length("asked", asked_mm),
        resistance=length("there", there_mm),
        clause=PRACTICE,
        inputs=(length("screw to edge", edge_mm), length("screw to edge of timber", TIMBER_EDGE_MM)),
        binding=there_mm < ground.rules.frame.joint_support_mm,
        remedy="" if asked_mm <= there_mm else f"timber at least {math.ceil(2 * asked_mm)} mm wide behind it, or two beside it",
    )


def screw_edge_mm(board_kind: str, thickness_mm: float) -> float:
    """Least distance of a screw from a cut edge of a board."""
    if board_kind in {"mdf", "plywood"} and thickness_mm >= THICK_MDF_MM:
        return THICK_EDGE_MM
    return SCREW_EDGE_MM.get(board_kind, THICK_EDGE_MM)


def _support_mm(panel: Panel, ground: Ground, *, below: bool) -> float:
    """The lesser side of the widest timber that runs along a joint; members that touch each other are not added up."""
    normal = Axis.Y if panel.box.x1_tenth_mm - panel.box.x0_tenth_mm > panel.thickness_tenth_mm else Axis.X
    level = next(axis for axis in (Axis.X, Axis.Y) if axis is not normal)
    across, along = (Axis.Z, level) if below else (level, Axis.Z)
    line_mm = ends_of(panel.box, across)[0]
    sides = [
        min(line_mm - low, high - line_mm)
        for member in ground.frame.members
        if member.along is along and _behind(member, panel.box, normal)
        for low, high in (ends_of(member.box, across),)
    ]
    return max((0.0, *sides))


def _behind(member: Member, box: Box, normal: Axis) -> bool:
    """Whether a member touches the back of a board."""
    low, high = ends_of(box, normal)
    own = ends_of(member.box, normal)
    return own[1] == low or own[0] == high


def _grip(layer: Layer, ground: Ground) -> Check:
    """Thread behind the board; the table of board screws is practice, so that a short one is told, not refused."""
    screw = ground.hardware.board_screw(layer.value)
    panel = next(panel for panel in ground.frame.panels if panel.layer is layer)
    asked_mm, thickness_mm = ground.rules.take_off.board_thread_mm, millimetres(panel.thickness_tenth_mm)
    there_mm = max(0.0, ((screw.length_mm if screw else None) or 0.0) - thickness_mm)
    name = screw.description if screw else "no screw that is sold"
    return Check(
        code=GRIP,
        subject=layer.value,
        says=f"{name} grips {there_mm:g} mm behind {thickness_mm:g} mm of board, at least {asked_mm:g} mm asked",
        demand=length("asked", asked_mm),
        resistance=length("there", there_mm),
        clause=PRACTICE,
        inputs=(length("thickness", thickness_mm),),
        binding=screw is None,
        remedy="" if asked_mm <= there_mm else f"screws of at least {math.ceil(thickness_mm + asked_mm)} mm",
    )
