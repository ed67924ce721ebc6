"""Cutting: lengths and rectangles in, a plan that a saw can follow out, with proof of how good it is."""

from service.cutting.bars import cut_bars, faults_of_bars
from service.cutting.of_frame import Available, BoardCuts, FramePlan, OnHand, Yard, boards_of, cut_frame
from service.cutting.pieces import (
    GREEDY,
    MOST_COST_MINOR,
    QUICK,
    STANDARD,
    THOROUGH,
    BarAim,
    BarJob,
    BarPiece,
    BarStock,
    Defect,
    Effort,
    FirstCut,
    SheetJob,
    SheetLayout,
    SheetPiece,
    SheetStock,
    Stop,
    never,
)
from service.cutting.plan import (
    BarCut,
    BarGroup,
    BarPlan,
    CuttingError,
    Direction,
    Leftover,
    MarkLine,
    Method,
    PartKind,
    PlacedPiece,
    Proof,
    SearchNote,
    SheetGroup,
    SheetPart,
    SheetPlan,
    SheetStep,
    StockTaken,
    Stopped,
)
from service.cutting.sheets import cut_sheets, faults_of_sheets

__all__ = [
    "GREEDY", "MOST_COST_MINOR", "QUICK", "STANDARD", "THOROUGH", "Available", "BarAim", "BarCut", "BarGroup", "BarJob",
    "BarPiece", "BarPlan", "BarStock", "BoardCuts", "CuttingError", "Defect", "Direction", "Effort", "FirstCut", "FramePlan",
    "Leftover", "MarkLine", "Method", "OnHand", "PartKind", "PlacedPiece", "Proof", "SearchNote", "SheetGroup", "SheetJob",
    "SheetLayout", "SheetPart", "SheetPiece", "SheetPlan", "SheetStep", "SheetStock", "StockTaken", "Stop", "Stopped", "Yard",
    "boards_of", "cut_bars", "cut_frame", "cut_sheets", "faults_of_bars", "faults_of_sheets", "never",
]  # fmt: skip
