"""Cutting: lengths and rectangles in, a plan that a saw can follow out, with proof of how good it is."""

from service.cutting.bars import cut_bars, faults_of_bars
from service.cutting.pieces import (
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
    Method,
    PartKind,
    PlacedPiece,
    Proof,
    Search,
    SheetGroup,
    SheetPart,
    SheetPlan,
    SheetStep,
    StockTaken,
    Stopped,
)
from service.cutting.sheets import cut_sheets, faults_of_sheets

__all__ = [
    "QUICK", "STANDARD", "THOROUGH", "BarAim", "BarCut", "BarGroup", "BarJob", "BarPiece", "BarPlan", "BarStock", "CuttingError",
    "Defect", "Direction", "Effort", "FirstCut", "Leftover", "Method", "PartKind", "PlacedPiece", "Proof", "Search", "SheetGroup",
    "SheetJob", "SheetPart", "SheetPiece", "SheetPlan", "SheetStep", "SheetStock", "StockTaken", "Stop", "Stopped", "cut_bars",
    "cut_sheets", "faults_of_bars", "faults_of_sheets", "never",
]  # fmt: skip
