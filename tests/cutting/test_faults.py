from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.cutting import (
    MOST_COST_MINOR,
    BarJob,
    BarPiece,
    BarStock,
    Defect,
    SheetJob,
    SheetStock,
    cut_bars,
    cut_sheets,
    faults_of_bars,
    faults_of_sheets,
)
from service.errors import Reason, RequestFaultsError
from tests.cutting.jobs import STOCK_A, bars, sheets

if TYPE_CHECKING:
    from service.errors import Fault

replace = msgspec.structs.replace
GOOD = bars([(1000, 2, False)], STOCK_A)
BOARD = sheets([(800, 400, 2)])


def piece(**fields: object) -> BarJob:
    return replace(GOOD, pieces=(replace(GOOD.pieces[0], **fields),))


def stock(**fields: object) -> BarJob:
    return replace(GOOD, stock=(replace(GOOD.stock[0], **fields),))


def panel(**fields: object) -> SheetJob:
    return replace(BOARD, pieces=(replace(BOARD.pieces[0], **fields),))


def board(**fields: object) -> SheetJob:
    return replace(BOARD, stock=(replace(BOARD.stock[0], **fields),))


def pointers(faults: tuple[Fault, ...]) -> set[str]:
    return {fault.pointer for fault in faults}


# The hostile list of `bench/cutting/findings.md`, section 5, points 1, 6, 9 and 10, and more of our own.
HOSTILE_BARS: dict[str, tuple[BarJob, str]] = {
    "zero length": (piece(length_tenth_mm=0), "/pieces/0/length_mm"),
    "negative length": (piece(length_tenth_mm=-5), "/pieces/0/length_mm"),
    "length that overflows": (piece(length_tenth_mm=2**62), "/pieces/0/length_mm"),
    "length beyond any integer": (piece(length_tenth_mm=10**40), "/pieces/0/length_mm"),
    "longer than 20 m": (piece(length_tenth_mm=200_001), "/pieces/0/length_mm"),
    "no pieces of a kind": (piece(pieces_count=0), "/pieces/0/count"),
    "fewer than none": (piece(pieces_count=-3), "/pieces/0/count"),
    "copies that overflow": (piece(pieces_count=2**31), "/pieces/0/count"),
    "too many pieces in all": (replace(GOOD, pieces=(replace(GOOD.pieces[0], pieces_count=6_000),) * 2), "/pieces"),
    "too many kinds": (replace(GOOD, pieces=tuple(BarPiece(label="x", length_tenth_mm=k) for k in range(1, 202))), "/pieces"),
    "no stock": (replace(GOOD, stock=()), "/stock"),
    "too much stock": (replace(GOOD, stock=GOOD.stock * 26), "/stock"),
    "stock without length": (stock(length_tenth_mm=0), "/stock/0/length_mm"),
    "stock that overflows": (stock(length_tenth_mm=2**63), "/stock/0/length_mm"),
    "negative cost": (stock(cost_minor=-1), "/stock/0/cost"),
    "cost that overflows": (stock(cost_minor=MOST_COST_MINOR + 1), "/stock/0/cost"),
    "negative copies": (stock(copies_count=-1), "/stock/0/copies_count"),
    "copies of stock that overflow": (stock(copies_count=2**62), "/stock/0/copies_count"),
    "negative kerf": (replace(GOOD, kerf_tenth_mm=-1), "/kerf_mm"),
    "kerf that overflows": (replace(GOOD, kerf_tenth_mm=2**40), "/kerf_mm"),
    "negative trim": (replace(GOOD, end_trim_tenth_mm=-1), "/end_trim_mm"),
    "trim wider than every bar": (replace(GOOD, end_trim_tenth_mm=48_001), "/pieces/0/length_mm"),
    "negative least offcut": (replace(GOOD, least_offcut_tenth_mm=-1), "/least_offcut_mm"),
    "longer than every bar": (piece(length_tenth_mm=48_001), "/pieces/0/length_mm"),
    "only stock that takes it is out": (
        replace(piece(length_tenth_mm=40_000), stock=(replace(GOOD.stock[3], copies_count=0), GOOD.stock[0])),
        "/pieces/0/length_mm",
    ),
}
HOSTILE_SHEETS: dict[str, tuple[SheetJob, str]] = {
    "zero width": (panel(width_tenth_mm=0), "/pieces/0/width_mm"),
    "negative height": (panel(height_tenth_mm=-1), "/pieces/0/height_mm"),
    "size of 2**31": (panel(width_tenth_mm=2**31), "/pieces/0/width_mm"),
    "no pieces of a kind": (panel(pieces_count=0), "/pieces/0/count"),
    "copies of 2**31": (panel(pieces_count=2**31), "/pieces/0/count"),
    "no stock": (replace(BOARD, stock=()), "/stock"),
    "sheet without height": (board(height_tenth_mm=0), "/stock/0/height_mm"),
    "sheet of 2**31": (board(width_tenth_mm=2**31), "/stock/0/width_mm"),
    "negative cost": (board(cost_minor=-1), "/stock/0/cost"),
    "negative copies": (board(copies_count=-2), "/stock/0/copies_count"),
    "negative kerf": (replace(BOARD, kerf_tenth_mm=-1), "/kerf_mm"),
    "kerf wider than the sheet": (replace(BOARD, kerf_tenth_mm=10**6), "/kerf_mm"),
    "negative trim": (replace(BOARD, edge_trim_tenth_mm=-1), "/edge_trim_mm"),
    "trims wider than the sheet": (replace(BOARD, edge_trim_tenth_mm=6_100), "/pieces/0"),
    "negative least width": (replace(BOARD, least_offcut_width_tenth_mm=-1), "/least_offcut_width_mm"),
    "negative least height": (replace(BOARD, least_offcut_height_tenth_mm=-1), "/least_offcut_height_mm"),
    "larger than every sheet": (panel(width_tenth_mm=24_401, rotatable=False), "/pieces/0"),
    "turned by grain only": (panel(width_tenth_mm=8_000, height_tenth_mm=20_000, rotatable=False), "/pieces/0"),
    "defect off the sheet": (
        board(defects=(Defect(x_tenth_mm=24_400, y_tenth_mm=0, width_tenth_mm=1, height_tenth_mm=1),)),
        "/stock/0/defects/0",
    ),
    "defect without size": (
        board(defects=(Defect(x_tenth_mm=0, y_tenth_mm=0, width_tenth_mm=0, height_tenth_mm=1),)),
        "/stock/0/defects/0",
    ),
    "defect all over": (
        board(defects=(Defect(x_tenth_mm=0, y_tenth_mm=0, width_tenth_mm=24_400, height_tenth_mm=12_200),)),
        "/pieces/0",
    ),
}


def test_a_sound_job_has_no_faults() -> None:
    assert () == faults_of_bars(GOOD)
    assert () == faults_of_sheets(BOARD)


@pytest.mark.parametrize("name", HOSTILE_BARS)
def test_hostile_bars_are_refused_where_they_are_wrong(name: str) -> None:
    job, pointer = HOSTILE_BARS[name]

    assert pointer in pointers(faults_of_bars(job))
    with pytest.raises(RequestFaultsError):
        cut_bars(job)


@pytest.mark.parametrize("name", HOSTILE_SHEETS)
def test_hostile_sheets_are_refused_where_they_are_wrong(name: str) -> None:
    job, pointer = HOSTILE_SHEETS[name]

    assert pointer in pointers(faults_of_sheets(job))
    with pytest.raises(RequestFaultsError):
        cut_sheets(job)


def test_all_faults_come_at_once() -> None:
    job = replace(piece(length_tenth_mm=0, pieces_count=0), kerf_tenth_mm=-1, stock=(replace(GOOD.stock[0], cost_minor=-1),))

    assert {"/pieces/0/length_mm", "/pieces/0/count", "/kerf_mm", "/stock/0/cost"} == pointers(faults_of_bars(job))


def test_every_piece_that_fits_nowhere_is_named_with_what_would_take_it() -> None:
    first, second = faults_of_bars(bars([(5000, 1, False), (900, 1, False), (6000, 1, False)], STOCK_A))

    assert [Reason.UNCUTTABLE_PIECE] * 2 == [first.reason, second.reason]
    assert "'M0' (5000 mm)" in first.detail
    assert "at least 5000 mm" in first.remedy
    assert "T4800 (4800 mm)" in first.remedy
    assert "'M2' (6000 mm)" in second.detail


def test_the_nearest_stock_that_is_out_is_offered() -> None:
    out = tuple(
        BarStock(code=f"T{length}", length_tenth_mm=10 * length, copies_count=0 if length > 2400 else None)
        for length in (2400, 3000, 3600)
    )
    (fault,) = faults_of_bars(replace(piece(length_tenth_mm=28_000), stock=out))

    assert fault.remedy.startswith("allow copies of T3000 (3000 mm)")


def test_a_panel_that_fits_turned_is_told_so() -> None:
    (fault,) = faults_of_sheets(panel(width_tenth_mm=8_000, height_tenth_mm=20_000, rotatable=False))

    assert "let it be turned: BOARD" in fault.remedy


def test_a_panel_too_large_is_told_the_sheet_it_needs() -> None:
    job = replace(panel(width_tenth_mm=24_400, rotatable=False), edge_trim_tenth_mm=50)
    (fault,) = faults_of_sheets(job)

    assert "at least 2450 x 410 mm" in fault.remedy


def test_a_panel_whose_sheet_is_out_is_told_so() -> None:
    large = SheetStock(code="LARGE", width_tenth_mm=30_500, height_tenth_mm=12_200, copies_count=0)
    job = panel(width_tenth_mm=28_000)
    (fault,) = faults_of_sheets(replace(job, stock=(*job.stock, large)))

    assert "allow copies of LARGE" == fault.remedy


def test_a_panel_beside_a_defect_fits() -> None:
    """By hand: a defect 100 wide at the left edge leaves 2340 x 1220."""
    edge = Defect(x_tenth_mm=0, y_tenth_mm=0, width_tenth_mm=1_000, height_tenth_mm=12_200)
    marred = board(defects=(edge,))

    assert () == faults_of_sheets(replace(marred, pieces=(replace(BOARD.pieces[0], width_tenth_mm=23_400, rotatable=False),)))
    assert () != faults_of_sheets(replace(marred, pieces=(replace(BOARD.pieces[0], width_tenth_mm=23_401, rotatable=False),)))


def test_the_largest_job_allowed_is_allowed() -> None:
    pieces = tuple(BarPiece(label=f"{k}", length_tenth_mm=1_000 + k, pieces_count=50) for k in range(200))

    assert () == faults_of_bars(replace(GOOD, pieces=pieces))
