"""Joint finder: into which strips a board too large for a sheet is divided, so that every joint falls on timber.

Rules: `knowledge/framing.md`, section 11; common practice, no source.
"""

from __future__ import annotations

from itertools import combinations, pairwise
from typing import TYPE_CHECKING

import msgspec

from service.units import tenths, whole_mm_nearest

if TYPE_CHECKING:
    from service.brief import Board
    from service.rules import RuleSet

MOST_JOINTS = 4


class Wanted(msgspec.Struct, frozen=True, kw_only=True):
    """A face or return before it is divided; tenths of a millimetre."""

    low: int  # z of its lower edge
    high: int
    left: int  # x (or y) of its left edge
    right: int
    grow_low: int = 0  # its lowest strip is longer by this for the fall of the floor
    heights: tuple[int, ...] = ()  # z of timber that runs its full width
    columns: tuple[tuple[int, int, int], ...] = ()  # (centre, from z, to z) of timber that a vertical joint may stand on
    corners: tuple[int, ...] = ()  # z of opening corners that joints keep away from
    on_rail: bool = False  # joints lie exactly on a rail, so corners do not matter


class Strip(msgspec.Struct, frozen=True, kw_only=True):
    """One piece of a divided board."""

    low: int
    high: int
    left: int
    right: int
    joint_below: bool
    joint_left: bool


def divide(wanted: Wanted, board: Board, rules: RuleSet) -> tuple[Strip, ...] | None:
    """The fewest pieces that the sheet gives; None if no division on timber fits.

    Among equals: no strip below the least, no joint near an opening corner, fewest pieces longer than the handy length, the
    highest joints, the leftmost vertical joints.
    """
    inside = sorted(level for level in wanted.heights if wanted.low < level < wanted.high)
    best: tuple[tuple[int, ...], tuple[Strip, ...]] | None = None
    for count in range(min(len(inside), MOST_JOINTS) + 1):
        for levels in combinations(inside, count):
            strips = _strips(wanted, levels, board)
            if strips is None:
                continue
            score = _score(strips, levels, wanted, rules)
            if best is None or score < best[0]:
                best = (score, strips)
        if best is not None and best[0][0] <= count + 2:
            break
    return None if best is None else best[1]


def fits_sheet(width: int, height: int, board: Board) -> bool:
    """Whether a piece, rounded as it is cut, comes out of one sheet either way round."""
    long, short = max(width, height), min(width, height)
    return (
        whole_mm_nearest(long) * 10 <= board.sheet_length_tenth_mm and whole_mm_nearest(short) * 10 <= board.sheet_width_tenth_mm
    )


def _strips(wanted: Wanted, levels: tuple[int, ...], board: Board) -> tuple[Strip, ...] | None:
    pieces: list[Strip] = []
    for index, (low, high) in enumerate(pairwise((wanted.low, *levels, wanted.high))):
        grow = wanted.grow_low if index == 0 else 0
        row = _columns(wanted, low, high, grow, board)
        if row is None:
            return None
        pieces += [
            Strip(low=low, high=high, left=left, right=right, joint_below=index > 0, joint_left=place > 0)
            for place, (left, right) in enumerate(pairwise(row))
        ]
    return tuple(pieces)


def _columns(wanted: Wanted, low: int, high: int, grow: int, board: Board) -> tuple[int, ...] | None:
    """Left edges and the last right edge of one strip's pieces, the vertical joints as few and as far left as they can be."""
    height = high - low + grow
    if fits_sheet(wanted.right - wanted.left, height, board):
        return (wanted.left, wanted.right)
    centres = sorted(centre for centre, foot, head in wanted.columns if foot <= low and head >= high and wanted.left < centre < wanted.right)
    for count in range(1, min(len(centres), MOST_JOINTS) + 1):
        for chosen in combinations(centres, count):
            edges = (wanted.left, *chosen, wanted.right)
            if all(fits_sheet(right - left, height, board) for left, right in pairwise(edges)):
                return edges
    return None


def _score(strips: tuple[Strip, ...], levels: tuple[int, ...], wanted: Wanted, rules: RuleSet) -> tuple[int, ...]:
    least, off, handy = (tenths(value) for value in (rules.frame.least_strip_mm, rules.frame.joint_off_corner_mm, rules.frame.longest_handy_panel_mm))
    short = sum(1 for strip in strips if min(strip.high - strip.low, strip.right - strip.left) < least)
    near = 0 if wanted.on_rail else sum(1 for level in levels for corner in wanted.corners if abs(level - corner) < off)
    long = sum(1 for strip in strips if max(strip.high - strip.low, strip.right - strip.left) > handy)
    return (len(strips), short, near, long if levels else 0, *(-level for level in reversed(levels)))
