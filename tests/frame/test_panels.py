from __future__ import annotations

import msgspec
import pytest

from service.brief import Board
from service.frame import Layer, PanelRole
from service.frame.panels import CODES, Piece, fits_sheet, mark_panels, passing, too_large
from service.frame.placing import box
from tests.examples_of import changed, example_a, job_of

BOARD = Board(
    code="BD-1",
    board_kind="mdf",
    description="",
    thickness_tenth_mm=150,
    sheet_length_tenth_mm=24_400,
    sheet_width_tenth_mm=12_200,
    mass_kg_m2=11.0,
    edge="square",
    stud_pitch_tenth_mm=6_000,
)


def piece(cut_width_mm: int, cut_height_mm: int, role: PanelRole = PanelRole.LID) -> Piece:
    """A board as cut, in one plane."""
    return Piece(
        role=role, layer=Layer.LID, board=BOARD, width_tenth_mm=cut_width_mm * 10, height_tenth_mm=cut_height_mm * 10,
        cut_width_mm=cut_width_mm, cut_height_mm=cut_height_mm, box=box((0, 1), (0, 1), (0, 1)),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("width_mm", "height_mm", "fits"),
    [(2440, 1220, True), (1220, 2440, True), (2441, 100, False), (1221, 1221, False), (1221, 1220, True), (1, 1, True)],
)
def test_fits_sheet(width_mm: int, height_mm: int, *, fits: bool) -> None:
    """Framing.md, section 11: either orientation."""
    assert fits is fits_sheet(width_mm, height_mm, BOARD)
    assert fits is fits_sheet(height_mm, width_mm, BOARD)


@pytest.mark.parametrize(
    ("length_mm", "width_mm", "usable"),
    [(3000, 1500, (24_400, 12_200)), (2000, 600, (20_000, 6_000)), (600, 2000, (20_000, 6_000)), (2440, 1220, (24_400, 12_200))],
)
def test_a_sheet_as_far_as_it_passes_the_way_in(length_mm: float, width_mm: float, usable: tuple[int, int]) -> None:
    """Framing.md, section 12: the longest board must pass the access."""
    job = job_of(changed(example_a(), {
        "/survey/site/largest_board_length_mm": length_mm, "/survey/site/largest_board_width_mm": width_mm,
    }))  # fmt: skip
    sheet = passing(BOARD, job)

    assert usable == (sheet.sheet_length_tenth_mm, sheet.sheet_width_tenth_mm)
    assert BOARD == msgspec.structs.replace(sheet, sheet_length_tenth_mm=24_400, sheet_width_tenth_mm=12_200)


@pytest.mark.parametrize(
    ("size", "asked_mm", "available_mm", "words"),
    [
        ((2500, 300), 2500, 2440, "2500 long"),
        ((1300, 1250), 1250, 1220, "1250 wide"),
        ((300, 2441), 2441, 2440, "2441 long"),
        ((2440, 1300), 1300, 1220, "1300 wide"),
    ],
)
def test_a_board_that_no_sheet_gives(size: tuple[int, int], asked_mm: float, available_mm: float, words: str) -> None:
    (refusal,) = too_large([piece(*size), piece(1, 1)], job_of(example_a()))

    assert ("sheet", asked_mm, available_mm) == (refusal.code, refusal.asked_mm, refusal.available_mm)
    assert asked_mm - available_mm == refusal.short_by_mm
    assert words in refusal.offer
    assert f"the lid of {size[0]} x {size[1]}" in refusal.says


def test_the_same_refusal_only_once() -> None:
    assert 1 == len(too_large([piece(2500, 300), piece(2500, 300)], job_of(example_a())))
    assert 2 == len(too_large([piece(2500, 300), piece(2500, 301)], job_of(example_a())))


def test_marks_count_by_role() -> None:
    roles = (PanelRole.LID, PanelRole.PAD, PanelRole.PAD, PanelRole.LID)
    panels = mark_panels([piece(10, 10, role) for role in roles])

    assert ["P-LD1", "P-PD1", "P-PD2", "P-LD2"] == [panel.mark for panel in panels]


def test_every_role_has_its_own_code() -> None:
    assert set(PanelRole) == set(CODES)
    assert len(set(CODES.values())) == len(CODES)


def test_a_panel_keeps_what_was_said_of_its_piece() -> None:
    said = msgspec.structs.replace(piece(500, 300), taper_tenth_mm=90, joint_below=True, joint_left=True)
    (panel,) = mark_panels([said])

    assert ("BD-1", 150, 5000, 3000, 500, 300, 90, True, True) == (
        panel.board_code, panel.thickness_tenth_mm, panel.width_tenth_mm, panel.height_tenth_mm, panel.cut_width_mm,
        panel.cut_height_mm, panel.taper_tenth_mm, panel.joint_below, panel.joint_left,
    )  # fmt: skip
