"""The solid pad of a very low platform: plies of sheet laid on the floor, the rest made up by packers.

Rule: `knowledge/framing.md`, section 3; common practice, no source.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from service.frame.frame import Layer, PanelRole
from service.frame.panels import Piece, passing
from service.frame.placing import box
from service.units import tenths, whole_mm_nearest

if TYPE_CHECKING:
    from service.brief import Board, Job
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

MOST_PLIES = 4


def pad_heights(job: Job) -> dict[int, tuple[int, ...]]:
    """Heights of a solid pad that sheets of the catalogue add up to, each with its sheets, thickest first and fewest."""
    best: dict[int, tuple[int, ...]] = {0: ()}
    for _ply in range(MOST_PLIES):
        for total, plies in list(best.items()):
            for board in job.pads:
                taller = total + board.thickness_tenth_mm
                stack = tuple(sorted((*plies, board.thickness_tenth_mm), reverse=True))
                if taller < job.timber.thickness_tenth_mm and (taller not in best or len(stack) < len(best[taller])):
                    best[taller] = stack
    return best


def greatest_platform(height: int, job: Job, rules: RuleSet) -> int:
    """The greatest platform, no higher than a height, that one of the forms of section 3 can be built to."""
    if height >= job.timber.thickness_tenth_mm:
        return height
    rest = tenths(rules.frame.pad_rest_mm)
    built = max(total for total in pad_heights(job) if total <= height)
    return min(height, built + rest) if built else 0


def pad_pieces(at: SettingOut, job: Job) -> tuple[Piece, ...]:
    """The sheets of the pad, from the floor up; the joints of one ply lie between those of the next."""
    if not 0 < at.z0 < at.b:
        return ()
    heights = pad_heights(job)
    built = max(total for total in heights if total <= at.z0)
    pieces: list[Piece] = []
    low = at.z0 - built
    for number, thickness in enumerate(heights[built]):
        board = next(board for board in job.pads if board.thickness_tenth_mm == thickness)
        pieces += [
            _piece(at, board, low, edges) for edges in pairwise(_joints(at, passing(board, job), staggered=number % 2 == 1))
        ]
        low += thickness
    return tuple(pieces)


def _joints(at: SettingOut, board: Board, *, staggered: bool) -> tuple[int, ...]:
    """Edges along the wall of the sheets of one ply, in whole millimetres but for the last."""
    run = board.sheet_length_tenth_mm if at.df <= board.sheet_width_tenth_mm else board.sheet_width_tenth_mm
    count = -(-at.wf // run)
    if count == 1:
        return (0, at.wf)
    shift = 1 if staggered else 0
    steps = range(1, count + shift)
    return (0, *(at.wf * (2 * step - shift) // (2 * count) // 10 * 10 for step in steps), at.wf)


def _piece(at: SettingOut, board: Board, low: int, edges: tuple[int, int]) -> Piece:
    left, right = edges
    return Piece(
        role=PanelRole.PAD,
        layer=Layer.PAD,
        board=board,
        width_tenth_mm=right - left,
        height_tenth_mm=at.df,
        cut_width_mm=whole_mm_nearest(right - left),
        cut_height_mm=whole_mm_nearest(at.df),
        box=box((left, right), (0, at.df), (low, low + board.thickness_tenth_mm)),
    )
