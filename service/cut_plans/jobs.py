"""A request as jobs of the cutting stage, and everything that is wrong with it, all at once."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.cut_plans.prices import all_priced, faults_of_missing, faults_of_prices, none_priced, price_minor
from service.cutting import (
    BarAim,
    BarJob,
    BarPiece,
    BarStock,
    Defect,
    SheetJob,
    SheetPiece,
    SheetStock,
    faults_of_bars,
    faults_of_sheets,
)
from service.errors import Fault, Reason
from service.units import tenths

if TYPE_CHECKING:
    from service.cut_plans.requests import BarsWanted, CutPlanRequest, SheetOffer, SheetsWanted

_WIRE_NAMES: Final = {"count": "pieces_count", "cost": "price", "copies_count": "available_count"}  # of the cutting stage's


def faults_of(request: CutPlanRequest) -> tuple[Fault, ...]:
    """Everything that keeps a request from being cut; pointers run from the body."""
    if request.bars is None and request.sheets is None:
        detail, remedy = "neither bars nor sheets are asked for", "Send `bars`, `sheets` or both."
        return (Fault(pointer="", reason=Reason.CONTRADICTION, detail=detail, remedy=remedy),)
    prices = faults_of_prices(request)
    return (*prices, *_of_bars(request.bars), *_of_sheets(request.sheets))


def bar_job(bars: BarsWanted) -> BarJob:
    """The bars as a job; a price at fault raises ValueError."""
    priced = bars.aim is BarAim.COST or all_priced(bars.stock)
    return BarJob(
        pieces=tuple(
            BarPiece(
                label=piece.label,
                length_tenth_mm=tenths(piece.length_mm),
                pieces_count=piece.pieces_count,
                after_measure=piece.after_measure,
            )
            for piece in bars.pieces
        ),
        stock=tuple(
            BarStock(
                code=one.code,
                length_tenth_mm=tenths(one.length_mm),
                cost_minor=price_minor(one.price) if priced else 0,
                copies_count=one.available_count,
                offcut=one.offcut,
            )
            for one in bars.stock
        ),
        kerf_tenth_mm=tenths(bars.kerf_mm),
        end_trim_tenth_mm=tenths(bars.end_trim_mm),
        least_offcut_tenth_mm=tenths(bars.least_offcut_mm),
        aim=bars.aim,
    )


def sheet_job(sheets: SheetsWanted) -> SheetJob:
    """The sheets as a job; a price at fault raises ValueError."""
    return SheetJob(
        pieces=tuple(
            SheetPiece(
                label=piece.label,
                width_tenth_mm=tenths(piece.width_mm),
                height_tenth_mm=tenths(piece.height_mm),
                pieces_count=piece.pieces_count,
                rotatable=piece.may_turn,
                after_measure=piece.after_measure,
            )
            for piece in sheets.pieces
        ),
        stock=tuple(_sheet_stock(one) for one in sheets.stock),
        kerf_tenth_mm=tenths(sheets.kerf_mm),
        edge_trim_tenth_mm=tenths(sheets.edge_trim_mm),
        least_offcut_width_tenth_mm=tenths(sheets.least_offcut_width_mm),
        least_offcut_height_tenth_mm=tenths(sheets.least_offcut_height_mm),
        first_cut=sheets.first_cut,
        layout=sheets.layout,
    )


def _sheet_stock(one: SheetOffer) -> SheetStock:
    return SheetStock(
        code=one.code,
        width_tenth_mm=tenths(one.width_mm),
        height_tenth_mm=tenths(one.height_mm),
        cost_minor=price_minor(one.price),
        copies_count=one.available_count,
        offcut=one.offcut,
        defects=tuple(
            Defect(
                x_tenth_mm=tenths(defect.x_mm),
                y_tenth_mm=tenths(defect.y_mm),
                width_tenth_mm=tenths(defect.width_mm),
                height_tenth_mm=tenths(defect.height_mm),
            )
            for defect in one.defects
        ),
    )


def _of_bars(bars: BarsWanted | None) -> tuple[Fault, ...]:
    if bars is None:
        return ()
    missing: tuple[Fault, ...] = ()
    if bars.aim is BarAim.COST:
        missing = faults_of_missing("/bars/stock", bars.stock, 'Add the price of one bar, or ask for "aim": "length".')
    unpriced = tuple(msgspec.structs.replace(one, price=None) for one in bars.stock)
    return (*missing, *_pointed("/bars", faults_of_bars(bar_job(msgspec.structs.replace(bars, stock=unpriced)))))


def _of_sheets(sheets: SheetsWanted | None) -> tuple[Fault, ...]:
    if sheets is None:
        return ()
    missing: tuple[Fault, ...] = ()
    if not none_priced(sheets.stock):
        missing = faults_of_missing("/sheets/stock", sheets.stock, "Add the price of one sheet, or leave out all prices.")
    unpriced = tuple(msgspec.structs.replace(one, price=None) for one in sheets.stock)
    return (*missing, *_pointed("/sheets", faults_of_sheets(sheet_job(msgspec.structs.replace(sheets, stock=unpriced)))))


def _pointed(stem: str, faults: tuple[Fault, ...]) -> tuple[Fault, ...]:
    """Faults of a job as faults of the body: its pointers, its names."""
    return tuple(
        msgspec.structs.replace(fault, pointer=f"{stem}{_renamed(fault.pointer)}", remedy=_sentence(fault.remedy))
        for fault in faults
    )


def _renamed(pointer: str) -> str:
    head, slash, last = pointer.rpartition("/")
    return f"{head}{slash}{_WIRE_NAMES.get(last, last)}"


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."
