from __future__ import annotations

from service.cut_plans import answer_cut_plan
from tests.cut_plans.cut_requests import pinwheel_body, read, sheets_body


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


def test_a_sheet_for_the_plunge_saw_says_so_and_has_lines_instead_of_steps() -> None:
    """The pinwheel, kerf 4: four lines of 804, whose blades start at 400 or at 804 (1208 - 404)."""
    edge, plunge = (answer_cut_plan(read(pinwheel_body(**layout))).sheets for layout in ({}, {"layout": "plunge_saw"}))
    assert edge is not None
    assert plunge is not None
    (sheet,) = plunge.sheets

    assert ({"edge_to_edge"}, ()) == ({one.layout for one in edge.sheets}, edge.sheets[0].lines)
    assert ("plunge_saw", ()) == (sheet.layout, sheet.steps)
    assert [("cross", 400.0), ("cross", 804.0), ("rip", 400.0), ("rip", 804.0)] == sorted(
        (line.direction.value, line.at_mm) for line in sheet.lines
    )
    assert {804.0} == {line.to_mm - line.from_mm for line in sheet.lines}
