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

CODES = {
    PanelRole.FACE_BASE: "FB", PanelRole.FACE_CHEEK_LEFT: "FL", PanelRole.FACE_CHEEK_RIGHT: "FR", PanelRole.FACE_UPPER: "FU",
    PanelRole.RETURN_LEFT: "RL", PanelRole.RETURN_RIGHT: "RR", PanelRole.RETURN_BASE_LEFT: "RBL",
    PanelRole.RETURN_BASE_RIGHT: "RBR", PanelRole.RETURN_UPPER_LEFT: "RUL", PanelRole.RETURN_UPPER_RIGHT: "RUR",
    PanelRole.LID: "LD", PanelRole.LINING_BOTTOM: "NB", PanelRole.LINING_TOP: "NT", PanelRole.LINING_LEFT: "NL",
    PanelRole.LINING_RIGHT: "NR", PanelRole.BACKBOARD: "BB", PanelRole.PAD: "PD",
}  # fmt: skip


class Piece(msgspec.Struct, frozen=True, kw_only=True):
    """What is said of one board before it has a mark; sizes in tenths of a millimetre but for the cut ones."""

    role: PanelRole
    layer: Layer
    board: Board
    width: int
    height: int
    cut_width_mm: int
    cut_height_mm: int
    box: Box
    cut_when: CutWhen = CutWhen.NOW
    cut_outs: tuple[CutOut, ...] = ()
    taper: int = 0
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


def too_large(pieces: Iterable[Piece]) -> tuple[Unmet, ...]:
    """A refusal for every board that no sheet gives, the same one only once."""
    found = [_refusal(piece) for piece in pieces if not fits_sheet(piece.cut_width_mm, piece.cut_height_mm, piece.board)]
    return tuple(dict.fromkeys(found))


def _sides(cut_width_mm: int, cut_height_mm: int) -> tuple[int, int]:
    """Long and short side in tenths of a millimetre."""
    return (max(cut_width_mm, cut_height_mm) * TENTHS_PER_MM, min(cut_width_mm, cut_height_mm) * TENTHS_PER_MM)


def _refusal(piece: Piece) -> Unmet:
    long, short = _sides(piece.cut_width_mm, piece.cut_height_mm)
    board = piece.board
    too_long = long > board.sheet_length_tenth_mm
    asked, available = (long, board.sheet_length_tenth_mm) if too_long else (short, board.sheet_width_tenth_mm)
    name = piece.role.value.replace("_", " ")
    return Unmet(
        code="sheet",
        says=f"the {name} of {piece.cut_width_mm} x {piece.cut_height_mm} cannot be divided on timber to fit a sheet of "
        f"{text_mm(board.sheet_length_tenth_mm)} x {text_mm(board.sheet_width_tenth_mm)}",
        asked_mm=millimetres(asked),
        available_mm=millimetres(available),
        short_by_mm=millimetres(asked - available),
        offer=f"a {'longer' if too_long else 'wider'} sheet, {text_mm(asked)} or more, or a smaller breast",
    )


def _panel(piece: Piece, mark: str) -> Panel:
    return Panel(
        mark=mark,
        role=piece.role,
        layer=piece.layer,
        board_code=piece.board.code,
        thickness_tenth_mm=piece.board.thickness_tenth_mm,
        width_tenth_mm=piece.width,
        height_tenth_mm=piece.height,
        cut_width_mm=piece.cut_width_mm,
        cut_height_mm=piece.cut_height_mm,
        cut_when=piece.cut_when,
        box=piece.box,
        cut_outs=piece.cut_outs,
        taper_tenth_mm=piece.taper,
        joint_below=piece.joint_below,
        joint_left=piece.joint_left,
    )
