"""From a laid board to a panel: its mark, and whether it comes out of its sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.brief import Board
from service.errors import Unmet
from service.frame.frame import CutOut, Layer, Panel, PanelRole
from service.frame.member import Box, CutWhen
from service.units import TENTHS_PER_MM, millimetres, text_mm

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.brief import Job

CODES = {
    PanelRole.FACE_BASE: "FB", PanelRole.FACE_CHEEK_LEFT: "FL", PanelRole.FACE_CHEEK_RIGHT: "FR", PanelRole.FACE_UPPER: "FU",
    PanelRole.RETURN_LEFT: "RL", PanelRole.RETURN_RIGHT: "RR", PanelRole.RETURN_BASE_LEFT: "RBL",
    PanelRole.RETURN_BASE_RIGHT: "RBR", PanelRole.RETURN_UPPER_LEFT: "RUL", PanelRole.RETURN_UPPER_RIGHT: "RUR",
    PanelRole.RETURN_ACCESS_LEFT: "AL", PanelRole.RETURN_ACCESS_RIGHT: "AR",
    PanelRole.PATTRESS: "PT",
    PanelRole.LID: "LD", PanelRole.LINING_BOTTOM: "NB", PanelRole.LINING_TOP: "NT", PanelRole.LINING_LEFT: "NL",
    PanelRole.LINING_RIGHT: "NR", PanelRole.BACKBOARD: "BB", PanelRole.PAD: "PD",
    PanelRole.LINING_NICHE_BOTTOM: "MB", PanelRole.LINING_NICHE_TOP: "MT", PanelRole.LINING_NICHE_LEFT: "ML",
    PanelRole.LINING_NICHE_RIGHT: "MR", PanelRole.BACKBOARD_NICHE: "BN",
}  # fmt: skip


class Piece(msgspec.Struct, frozen=True, kw_only=True):
    """What is said of one board before it has a mark; sizes in tenths of a millimetre but for the cut ones."""

    role: PanelRole
    layer: Layer
    board: Board
    width_tenth_mm: int
    height_tenth_mm: int
    cut_width_mm: int
    cut_height_mm: int
    box: Box
    cut_when: CutWhen = CutWhen.NOW
    cut_outs: tuple[CutOut, ...] = ()
    taper_tenth_mm: int = 0
    rise_tenth_mm: int = 0
    joint_below: bool = False
    joint_left: bool = False


def mark_panels(pieces: Iterable[Piece]) -> tuple[Panel, ...]:
    """Give every board its mark: role, number in the order of laying."""
    counts: dict[PanelRole, int] = {}
    made = []
    for piece in pieces:
        counts[piece.role] = counts.get(piece.role, 0) + 1
        made.append(_panel(piece, f"P-{CODES[piece.role]}{counts[piece.role]}"))
    return tuple(made)


def fits_sheet(cut_width_mm: int, cut_height_mm: int, board: Board) -> bool:
    """Whether a piece, as it is cut, comes out of one sheet either way round."""
    long, short = _sides(cut_width_mm, cut_height_mm)
    return long <= board.sheet_length_tenth_mm and short <= board.sheet_width_tenth_mm


def passing(board: Board, job: Job) -> Board:
    """The sheet as far as it passes the way in; larger ones are cut before they are carried in."""
    short, long = sorted((job.largest_board_length_tenth_mm, job.largest_board_width_tenth_mm))
    return msgspec.structs.replace(
        board,
        sheet_length_tenth_mm=min(board.sheet_length_tenth_mm, long),
        sheet_width_tenth_mm=min(board.sheet_width_tenth_mm, short),
    )


def too_large(pieces: Iterable[Piece], job: Job) -> tuple[Unmet, ...]:
    """A refusal for every board that no sheet that passes the way in gives, the same one only once."""
    found = [
        _refusal(piece, passing(piece.board, job))
        for piece in pieces
        if not fits_sheet(piece.cut_width_mm, piece.cut_height_mm, passing(piece.board, job))
    ]
    return tuple(dict.fromkeys(found))


def _sides(cut_width_mm: int, cut_height_mm: int) -> tuple[int, int]:
    """Long and short side in tenths of a millimetre."""
    return (max(cut_width_mm, cut_height_mm) * TENTHS_PER_MM, min(cut_width_mm, cut_height_mm) * TENTHS_PER_MM)


def _refusal(piece: Piece, board: Board) -> Unmet:
    long, short = _sides(piece.cut_width_mm, piece.cut_height_mm)
    too_long = long > board.sheet_length_tenth_mm
    asked, available = (long, board.sheet_length_tenth_mm) if too_long else (short, board.sheet_width_tenth_mm)
    name = piece.role.value.replace("_", " ")
    return Unmet(
        code="sheet",
        says=f"the {name} of {piece.cut_width_mm} x {piece.cut_height_mm} cannot be divided on timber to come out of "
        f"{text_mm(board.sheet_length_tenth_mm)} x {text_mm(board.sheet_width_tenth_mm)} of sheet",
        asked_mm=millimetres(asked),
        available_mm=millimetres(available),
        short_by_mm=millimetres(asked - available),
        offer=f"a sheet {text_mm(asked)} {'long' if too_long else 'wide'} that passes the way in, or a smaller breast",
    )


def _panel(piece: Piece, mark: str) -> Panel:
    return Panel(
        mark=mark,
        role=piece.role,
        layer=piece.layer,
        board_code=piece.board.code,
        thickness_tenth_mm=piece.board.thickness_tenth_mm,
        width_tenth_mm=piece.width_tenth_mm,
        height_tenth_mm=piece.height_tenth_mm,
        cut_width_mm=piece.cut_width_mm,
        cut_height_mm=piece.cut_height_mm,
        cut_when=piece.cut_when,
        box=piece.box,
        cut_outs=piece.cut_outs,
        taper_tenth_mm=piece.taper_tenth_mm,
        rise_tenth_mm=piece.rise_tenth_mm,
        joint_below=piece.joint_below,
        joint_left=piece.joint_left,
    )
