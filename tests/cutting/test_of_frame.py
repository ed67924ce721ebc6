from __future__ import annotations

from typing import Any

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.cutting import BarAim, BarJob, SheetLayout, Yard, boards_of, cut_bars, cut_frame
from service.cutting.of_frame import bar_job, sheet_job
from service.frame import CutWhen, Layer
from service.rules import load_rules
from tests.bill.bill_facts import one_sided
from tests.examples_of import changed, frame_of, job_of
from tests.sold_examples import laid_out, made, sold

CATALOGUE = demo_catalogue()
YARD = Yard(catalogue=CATALOGUE, rules=load_rules())
AFTER, BEFORE = True, False
PLANS = (
    # example, after checks, allowance; pieces, sum mm; least length mm, bars; least price in minor units, bars
    ("A", BEFORE, 0, 52, 34_958, 35_400, 8, 6_297, 12),
    ("A", AFTER, 0, 52, 34_958, 35_400, 8, 6_297, 12),
    ("A", AFTER, 20, 52, 35_098, 35_400, 8, 6_297, 12),
    ("B", BEFORE, 0, 53, 37_911, 38_400, 8, 10_091, 14),
    ("B", AFTER, 0, 54, 39_442, 40_200, 9, 10_610, 14),
    ("B", AFTER, 20, 54, 39_562, 40_200, 9, 10_610, 14),
    ("C", BEFORE, 0, 47, 22_341, 22_800, 5, 2_888, 9),
    ("C", AFTER, 0, 48, 23_596, 24_000, 5, 3_058, 9),
    ("C0", BEFORE, 0, 28, 16_565, 16_800, 4, 2_152, 6),
    ("C0", AFTER, 0, 29, 17_820, 18_000, 4, 2_322, 6),
)


def job_of_bars(name: str, after: bool, allowance_mm: int) -> BarJob:
    job = msgspec.structs.replace(job_of(sold(name)), allowance_mm=allowance_mm)
    frame = made(name).frame if after else laid_out(name).frame
    return bar_job(frame, job, YARD)


@pytest.mark.parametrize("row", PLANS, ids=lambda row: f"{row[0]}{' after checks' if row[1] else ''}{' + 20' if row[2] else ''}")
def test_bars_are_the_worked_ones(row: tuple[Any, ...]) -> None:
    """`knowledge/worked-examples.md`, section 0, "Bar plans": value and number of bars, each proven."""
    name, after, allowance_mm, pieces, sum_mm, length_mm, length_bars, cost, cost_bars = row
    job = job_of_bars(name, after, allowance_mm)
    by_length, by_cost = cut_bars(msgspec.structs.replace(job, aim=BarAim.LENGTH)), cut_bars(job)

    assert (pieces, 10 * sum_mm) == (len(job.pieces), sum(piece.length_tenth_mm for piece in job.pieces))
    assert (10 * length_mm, length_bars) == (by_length.stock_length_tenth_mm, by_length.bars_count)
    assert (cost, cost_bars) == (by_cost.cost_minor, by_cost.bars_count)
    assert by_length.proof.first_proven
    assert by_cost.proof.first_proven


@pytest.mark.parametrize(
    ("name", "bars"),
    [("A", (18, 12, 10, 8)), ("B", (18, 18, 11, 8)), ("C", (10, 8, 7, 5)), ("C0", (8, 6, 5, 4))],
)
def test_one_stock_length_only(name: str, bars: tuple[int, ...]) -> None:
    """`knowledge/worked-examples.md`, "One stock length only" of each example, laid out: 2400, 3000, 3600, 4800."""
    job = job_of_bars(name, BEFORE, 0)
    plans = [cut_bars(msgspec.structs.replace(job, stock=(stock,))) for stock in job.stock]

    assert [24_000, 30_000, 36_000, 48_000] == [stock.length_tenth_mm for stock in job.stock]
    assert bars == tuple(plan.bars_count for plan in plans)


@pytest.mark.parametrize(
    ("name", "sheets"),
    [
        ("A", {"BD-2015R": 3, "BD-2218L": 1}),
        ("B", {"BD-2125K": 3, "BD-2015R": 1, "BD-2218L": 1}),
        ("C", {"BD-2012M": 1, "BD-2018U": 1}),
        ("C0", {"BD-2012M": 1, "BD-2018U": 1}),
    ],
)
def test_sheets_are_the_worked_ones(name: str, sheets: dict[str, int]) -> None:
    """`knowledge/worked-examples.md`, "Sheets" and its bounds: laid out and after checks alike, proven fewest."""
    for at in (made(name), laid_out(name)):
        assert sheets == {board.code: board.plan.sheets_count for board in at.plan.boards}
        assert all(board.plan.proof.bought_proven for board in at.plan.boards)


@pytest.mark.parametrize(("name", "with_allowance"), [("A", [True, False]), ("B", [True, False, False]), ("C", [False, False])])
def test_twenty_more_on_the_ceiling_edge_fit_the_same_sheets(name: str, with_allowance: list[bool]) -> None:
    """`knowledge/worked-examples.md`, "Panels" of A and B; linings, plywood and part height do not reach the ceiling."""
    assert with_allowance == [board.with_allowance for board in made(name).plan.boards]


def test_pieces_that_wait_for_the_measure_are_marked_and_longer() -> None:
    """Example A, column M: 4 ladder uprights 1585 and 3 cripples 612, bought 1605 and 632."""
    late = [piece for piece in job_of_bars("A", AFTER, 20).pieces if piece.after_measure]

    assert [16_050] * 4 + [6_320] * 3 == sorted((piece.length_tenth_mm for piece in late), reverse=True)
    assert 20 == made("A").plan.allowance_mm
    assert 0 == made("C").plan.allowance_mm


def test_the_saw_of_the_call_wins() -> None:
    wide = msgspec.structs.replace(YARD, kerf_mm=6.0)

    assert 40 == bar_job(made("A").frame, made("A").job, YARD).kerf_tenth_mm
    assert 60 == bar_job(made("A").frame, made("A").job, wide).kerf_tenth_mm
    assert 6.0 == cut_frame(made("A").frame, made("A").job, wide).kerf_mm


def test_a_stock_length_without_a_price_makes_length_the_aim() -> None:
    prices = {code: steps for code, steps in CATALOGUE.prices.items() if code != "TM-1056Y"}
    yard = msgspec.structs.replace(YARD, catalogue=msgspec.structs.replace(CATALOGUE, prices=prices))

    assert BarAim.LENGTH is bar_job(made("A").frame, made("A").job, yard).aim
    assert BarAim.COST is bar_job(made("A").frame, made("A").job, YARD).aim


def test_prices_are_those_of_the_day() -> None:
    """The demo book holds from 2026-09-01: before that nothing has a price."""
    early = msgspec.structs.replace(made("A").job, today="2026-08-31")

    assert {0} == {stock.cost_minor for stock in bar_job(made("A").frame, early, YARD).stock}


def test_custom_timber_and_board_are_stock_without_a_code() -> None:
    timber = {"kind": "custom", "thickness_mm": 44, "width_mm": 70, "strength_class": "C24", "lengths_mm": [2400, 4800]}
    board = {
        "kind": "custom", "board_kind": "mdf", "thickness_mm": 16, "sheet_length_mm": 2800, "sheet_width_mm": 1300,
        "density_kg_m3": 740,
    }  # fmt: skip
    request = changed(sold("A"), {"/survey/brief/timber": timber, "/survey/brief/board": board})
    job, frame = job_of(request), frame_of(request)

    assert ["custom-2400", "custom-4800"] == [stock.code for stock in bar_job(frame, job, YARD).stock]
    assert ["", "BD-2015R", "BD-2218L"] == [board_.code for board_, _panels in boards_of(frame, job)]


def test_boards_of_one_code_are_cut_together() -> None:
    """Example A: faces, returns and linings are all MDF 15."""
    grouped = {board.code: len(panels) for board, panels in boards_of(made("A").frame, made("A").job)}

    assert {"BD-2015R": 11, "BD-2218L": 1} == grouped


def test_scored_board_loses_nothing_to_a_saw() -> None:
    """`knowledge/cladding.md`, section 2: plasterboard is scored and snapped; others lose 4."""
    at = made("B")
    kerfs = {
        board.board_kind: sheet_job(board, panels, at.job, yard=YARD, allowance_mm=0).kerf_tenth_mm
        for board, panels in boards_of(at.frame, at.job)
    }

    assert {"plasterboard": 0, "mdf": 40, "plywood": 40} == kerfs


def test_plywood_faces_stand_grain_upright_where_they_can() -> None:
    """`knowledge/cladding.md`, section 2: ply long way up. Wider than a sheet is high, it lies across."""
    request = changed(sold("A"), {"/survey/brief/board": {"kind": "catalogue", "code": "BD-2218L"}})
    job, frame = job_of(request), frame_of(request)
    board, panels = next((board, panels) for board, panels in boards_of(frame, job) if board.code == "BD-2218L")
    pieces = {piece.label: piece for piece in sheet_job(board, panels, job, yard=YARD, allowance_mm=0).pieces}
    by_mark = {panel.mark: panel for panel in panels}

    for mark, piece in pieces.items():
        panel = by_mark[mark]
        upright = panel.layer is Layer.FACING and panel.cut_width_mm * 10 <= board.sheet_width_tenth_mm

        assert upright == (not piece.rotatable)
        if upright:
            assert 10 * panel.cut_height_mm == piece.width_tenth_mm
    assert {True, False} == {piece.rotatable for piece in pieces.values()}


def test_a_plywood_breast_is_cut() -> None:
    request = changed(sold("A"), {"/survey/brief/board": {"kind": "catalogue", "code": "BD-2218L"}})
    plan = cut_frame(frame_of(request), job_of(request), YARD)

    assert ["BD-2218L", "BD-2015R"] == [board.code for board in plan.boards]


def test_a_panel_as_long_as_its_sheet_gets_no_allowance() -> None:
    """Returns 2440 high come whole out of a sheet of 2440, with nothing to spare for the ceiling."""
    heights = [{"x_mm": 2_000, "y_mm": 0, "height_mm": 2_440}]
    values = {
        "/survey/brief/top": {"kind": "ceiling"}, "/survey/room/heights": heights, "/survey/brief/breast_depth_mm": 300,
        "/survey/floor/levels": [], "/survey/floor/fall_mm": 0,
    }  # fmt: skip
    request = changed(one_sided("AF-104"), values)
    frame, job = frame_of(request), job_of(request)
    tall = [panel for panel in frame.panels if panel.cut_height_mm == 2440]

    assert tall
    assert all(panel.cut_when is CutWhen.AFTER_MEASURE for panel in tall)
    assert [False] == [board.with_allowance for board in cut_frame(frame, job, YARD).boards]


def test_a_plunge_saw_is_passed_on_to_every_board() -> None:
    allowed = msgspec.structs.replace(YARD, layout=SheetLayout.PLUNGE_SAW)
    job = job_of(sold("A"))
    boards = boards_of(laid_out("A").frame, job)

    assert [(SheetLayout.EDGE_TO_EDGE, SheetLayout.PLUNGE_SAW)] * len(boards) == [
        tuple(sheet_job(board, panels, job, yard=yard, allowance_mm=0).layout for yard in (YARD, allowed))
        for board, panels in boards
    ]
