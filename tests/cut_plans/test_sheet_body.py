from __future__ import annotations

from service.cut_plans import answer_cut_plan
from tests.cut_plans.cut_requests import read, sheets_body


def test_a_sheet_names_pieces_steps_parts_and_leftovers() -> None:
    """By hand: one piece of 1200 x 600 out of 2400 x 1200 leaves a strip; rests of 300 mm and more are kept."""
    pieces = [{"label": "a", "width_mm": 1200, "height_mm": 600}]
    sheets = answer_cut_plan(
        read(sheets_body(pieces=pieces, kerf_mm=3, least_offcut_width_mm=300, least_offcut_height_mm=300))
    ).sheets
    assert sheets is not None
    (sheet,) = sheets.sheets
    parts = {part.name: part for part in sheet.parts}

    assert [("a",)] == [piece.marks for piece in sheet.pieces]
    assert 2 == len(sheet.steps)
    assert all(name in parts for step in sheet.steps for name in (*step.parts, *step.yields))
    assert {"leftover"} == {parts[name].kind for name in parts if parts[name].kind not in {"sheet", "part", "piece"}}
    assert 2 == sum(left.leftovers_count for left in sheets.leftovers)
    assert ["least_cost", "fewest_sheets", "largest_leftover", "few_saw_settings"] == [aim.aim for aim in sheets.aims]


def test_areas_are_square_metres() -> None:
    sheets = answer_cut_plan(read(sheets_body())).sheets
    assert sheets is not None

    assert (2.88, 2.88, 0.0, 0.0) == (sheets.stock_area_m2, sheets.pieces_area_m2, sheets.kept_area_m2, sheets.lost_area_m2)
