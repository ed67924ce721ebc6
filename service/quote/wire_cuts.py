"""The cutting plan of a frame on the wire."""

from __future__ import annotations

import msgspec

from service.cut_plans import BarPlanAnswer, SheetPlanAnswer


class FrameBarsAnswer(BarPlanAnswer, frozen=True, kw_only=True):
    """The bars of a frame; pieces that are cut after measuring count longer by the allowance."""

    allowance_mm: int


class OtherBarsAnswer(FrameBarsAnswer, frozen=True, kw_only=True):
    """The bars of another section or strength class, for members that the checks made stronger."""

    thickness_mm: float
    width_mm: float
    strength_class: str


class BoardPlanAnswer(SheetPlanAnswer, frozen=True, kw_only=True):
    """The sheets of one board."""

    board_code: str
    description: str
    with_allowance: bool


class CutPlanAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """How everything is cut."""

    bars: FrameBarsAnswer  # of the studding of the job
    other_bars: tuple[OtherBarsAnswer, ...]
    boards: tuple[BoardPlanAnswer, ...]
