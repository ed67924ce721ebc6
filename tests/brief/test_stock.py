"""Survey.md, section 10, timber and board: a code names section and class; ungraded timber is refused."""

from __future__ import annotations

import msgspec
import pytest

from service.brief.stock import board_of, boards_for_pads, house_board
from service.catalogue import demo_catalogue
from service.errors import Reason
from tests.examples_of import Request, changed, example_c, faults_of, job_of, without

TIMBER, BOARD = "/survey/brief/timber", "/survey/brief/board"
LONGEST = "/survey/site/longest_length_mm"
OWN_TIMBER: Request = {
    "kind": "custom", "thickness_mm": 45, "width_mm": 73, "strength_class": "C24", "lengths_mm": [4800, 3000, 3000]
}  # fmt: skip
OWN_BOARD: Request = {
    "kind": "custom", "board_kind": "mdf", "thickness_mm": 12, "sheet_length_mm": 1220, "sheet_width_mm": 1100,
    "density_kg_m3": 750,
}  # fmt: skip


def lengths(request: Request) -> list[float]:
    """Stock lengths in mm."""
    return [one.length_tenth_mm / 10 for one in job_of(request).timber.stock]


def test_every_length_of_the_section_and_class_is_stock() -> None:
    timber = job_of(changed(example_c(), {TIMBER: {"kind": "catalogue", "code": "TM-1105B"}})).timber

    assert (450, 950, "C16", 370) == (
        timber.thickness_tenth_mm,
        timber.width_tenth_mm,
        timber.strength_class,
        timber.density_kg_m3,
    )
    assert ["TM-1091L", "TM-1098U", "TM-1105B", "TM-1112J"] == [one.code for one in timber.stock]


def test_the_houses_timber() -> None:
    job = job_of(without(example_c(), TIMBER))
    (note,) = [note for note in job.assumptions if note.pointer == TIMBER]

    assert (380, 630, "C16") == (job.timber.thickness_tenth_mm, job.timber.width_tenth_mm, job.timber.strength_class)
    assert ("C16 38 x 63", True) == (note.value, note.house_choice)


@pytest.mark.parametrize(
    ("code", "reason"), [("TM-9999X", Reason.UNKNOWN_MODEL), ("BD-2015R", Reason.UNKNOWN_MODEL), ("TM-1407E", Reason.NOT_ALLOWED)]
)
def test_codes_that_are_no_graded_timber(code: str, reason: Reason) -> None:
    (fault,) = faults_of(changed(example_c(), {f"{TIMBER}/code": code}))

    assert (f"{TIMBER}/code", reason) == (fault.pointer, fault.reason)
    assert code in fault.detail


def test_ungraded_timber_is_refused_with_its_reason() -> None:
    (fault,) = faults_of(changed(example_c(), {f"{TIMBER}/code": "TM-1407E"}))

    assert "no strength class" in fault.detail
    assert "EN 338" in fault.remedy


def test_a_section_of_ones_own() -> None:
    timber = job_of(changed(example_c(), {TIMBER: OWN_TIMBER})).timber

    assert (450, 730, "C24", None) == (
        timber.thickness_tenth_mm,
        timber.width_tenth_mm,
        timber.strength_class,
        timber.density_kg_m3,
    )
    assert [3000, 4800] == lengths(changed(example_c(), {TIMBER: OWN_TIMBER}))
    assert {""} == {one.code for one in timber.stock}


def test_the_narrow_side_is_b_whichever_was_named_first() -> None:
    turned = {**OWN_TIMBER, "thickness_mm": 73, "width_mm": 45}

    assert job_of(changed(example_c(), {TIMBER: OWN_TIMBER})).timber == job_of(changed(example_c(), {TIMBER: turned})).timber


@pytest.mark.parametrize(
    ("longest_mm", "left"), [(2400, [2400]), (2999.9, [2400]), (3000, [2400, 3000]), (6000, [2400, 3000, 3600, 4800])]
)
def test_stock_that_passes_the_way_in(longest_mm: float, left: list[float]) -> None:
    assert left == lengths(changed(example_c(), {LONGEST: longest_mm}))


def test_no_stock_passes_the_way_in() -> None:
    (fault,) = faults_of(changed(example_c(), {LONGEST: 2399.9}))

    assert (LONGEST, (TIMBER,), Reason.CONTRADICTION) == (fault.pointer, fault.related, fault.reason)


def test_a_board_of_the_catalogue() -> None:
    """Plasterboard 12.5 of the demo data: 24.8 kg on 2400 x 1200 are 8.61 kg/m2 (worked-examples.md, section 0)."""
    board = job_of(changed(example_c(), {BOARD: {"kind": "catalogue", "code": "BD-2125K"}})).board

    assert ("plasterboard", 125, 24000, 12000, 6000) == (
        board.board_kind, board.thickness_tenth_mm, board.sheet_length_tenth_mm, board.sheet_width_tenth_mm,
        board.stud_pitch_tenth_mm,
    )  # fmt: skip
    assert 8.61 == round(board.mass_kg_m2, 2)


@pytest.mark.parametrize("code", ["BD-9999X", "TM-1007V"])
def test_codes_that_are_no_board(code: str) -> None:
    (fault,) = faults_of(changed(example_c(), {f"{BOARD}/code": code}))

    assert (f"{BOARD}/code", Reason.UNKNOWN_MODEL) == (fault.pointer, fault.reason)


def test_the_houses_board() -> None:
    job = job_of(without(example_c(), BOARD))

    assert "BD-2015R" == job.board.code
    assert ["BD-2015R"] == [note.value for note in job.assumptions if note.pointer == BOARD]


@pytest.mark.parametrize(
    ("kind", "thickness_mm", "pitch_mm"),
    [
        ("mdf", 12, 400), ("mdf", 14.9, 400), ("mdf", 15, 600), ("mdf", 18, 600), ("plywood", 17.9, 400), ("plywood", 18, 600),
        ("plasterboard", 9.5, 400), ("plasterboard", 12.4, 400), ("plasterboard", 12.5, 600), ("calcium_silicate", 12, 400),
        ("cement_board", 12, 400), ("cement_board", 15, 400), ("calcium_silicate", 25, 400),
    ],
)  # fmt: skip
def test_spacing_of_studs_by_board(kind: str, thickness_mm: float, pitch_mm: float) -> None:
    """Framing.md, section 7; a board that stands in no row of it gets the closer spacing, on the safe side."""
    own = {**OWN_BOARD, "board_kind": kind, "thickness_mm": thickness_mm}

    assert pitch_mm == job_of(changed(example_c(), {BOARD: own})).board.stud_pitch_tenth_mm / 10


def test_a_board_of_ones_own() -> None:
    own = {**OWN_BOARD, "sheet_length_mm": 1100, "sheet_width_mm": 1220}
    board = job_of(changed(example_c(), {BOARD: own})).board

    assert (12200, 11000, "") == (board.sheet_length_tenth_mm, board.sheet_width_tenth_mm, board.code)
    assert 9.0 == board.mass_kg_m2


def test_house_boards_are_the_smallest_of_their_kind() -> None:
    catalogue = demo_catalogue()
    lining, back, lid = (house_board(kind, mm, catalogue) for kind, mm in (("mdf", 15.0), ("plywood", 18.0), ("mdf", 18.0)))

    assert ("BD-2015R", "BD-2218L", "BD-2018U") == tuple(board.code if board else "" for board in (lining, back, lid))
    assert house_board("mdf", 99.0, catalogue) is None


def test_sheets_for_pads_are_one_a_thickness_plywood_first() -> None:
    """Framing.md, section 3: sheet plies; of the demo catalogue 12, 15 and 18."""
    assert [(120, "mdf"), (150, "mdf"), (180, "plywood")] == [
        (board.thickness_tenth_mm, board.board_kind) for board in boards_for_pads(demo_catalogue())
    ]


def test_a_row_with_nothing_declared() -> None:
    row = next(row for row in demo_catalogue().materials.values() if row.kind == "board")
    bare = msgspec.structs.replace(
        row, mass_kg=None, edge=None, stud_pitch_mm=None, length_mm=None, width_mm=None, board_kind=None
    )
    board = board_of(bare)

    assert (0.0, "square", 4000, 0) == (board.mass_kg_m2, board.edge, board.stud_pitch_tenth_mm, board.sheet_length_tenth_mm)
