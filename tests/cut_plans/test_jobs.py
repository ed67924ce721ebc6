from __future__ import annotations

from service.cut_plans.jobs import bar_job, faults_of, sheet_job
from tests.cut_plans.cut_requests import bars_body, read, sheets_body


def test_bars_become_tenths_and_pennies() -> None:
    bars = read(bars_body(end_trim_mm=10.05, least_offcut_mm=300)).bars
    assert bars is not None
    job = bar_job(bars)

    assert [(23_500, 3), (3_000, 1)] == [(piece.length_tenth_mm, piece.pieces_count) for piece in job.pieces]
    assert [(700, None, False), (400, None, False), (0, 1, True)] == [(s.cost_minor, s.copies_count, s.offcut) for s in job.stock]
    assert (40, 101, 3_000) == (job.kerf_tenth_mm, job.end_trim_tenth_mm, job.least_offcut_tenth_mm)


def test_sheets_become_tenths_and_pennies() -> None:
    defect = {"x_mm": 1, "y_mm": 2, "width_mm": 3, "height_mm": 4}
    board = {"code": "b", "width_mm": 2400, "height_mm": 1200, "defects": [defect]}
    sheets = read(sheets_body(stock=[board], kerf_mm=3.2, edge_trim_mm=5, first_cut="rip")).sheets
    assert sheets is not None
    job = sheet_job(sheets)
    (lies,) = job.stock[0].defects

    assert (24_000, 12_000, 32, 50, "rip") == (
        job.stock[0].width_tenth_mm,
        job.stock[0].height_tenth_mm,
        job.kerf_tenth_mm,
        job.edge_trim_tenth_mm,
        job.first_cut,
    )
    assert (10, 20, 30, 40) == (lies.x_tenth_mm, lies.y_tenth_mm, lies.width_tenth_mm, lies.height_tenth_mm)


def test_a_sound_request_has_no_fault() -> None:
    assert () == faults_of(read(bars_body() | sheets_body()))


def test_pointers_use_the_names_of_the_wire() -> None:
    stock = [{"code": "x", "length_mm": 4800, "price": {"amount": "1", "currency": "GBP"}, "available_count": 0}]
    (fault, *_) = faults_of(read(bars_body(stock=stock)))

    assert "/bars/pieces/0/length_mm" == fault.pointer
    assert fault.remedy.startswith("Allow copies of x")
