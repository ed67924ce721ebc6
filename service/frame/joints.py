"""Joint finder: into which strips a board too large for a sheet is divided, so that every joint falls on timber.

Rules: `knowledge/framing.md`, section 11; common practice, no source.
"""

from __future__ import annotations

from itertools import combinations, pairwise
from typing import TYPE_CHECKING

import msgspec

from service.frame.panels import fits_sheet
from service.units import tenths, whole_mm_nearest

if TYPE_CHECKING:
    from service.brief import Board
    from service.rules import RuleSet

MOST_JOINTS = 4


class Column(msgspec.Struct, frozen=True, kw_only=True):
    """Timber that a vertical joint may stand on, from a level up to another."""

    centre_tenth_mm: int
    foot_tenth_mm: int
    head_tenth_mm: int


class Wanted(msgspec.Struct, frozen=True, kw_only=True):
    """A face or return before it is divided; tenths of a millimetre."""

    low_tenth_mm: int  # z of its lower edge
    high_tenth_mm: int
    left_tenth_mm: int  # x (or y) of its left edge
    right_tenth_mm: int
    grow_low_tenth_mm: int = 0  # its lowest strip is longer by this for the fall of the floor
    grow_high_tenth_mm: int = 0  # its highest strip is longer by this for the rise of the ceiling
    heights_tenth_mm: tuple[int, ...] = ()  # z of timber that runs its full width
    columns: tuple[Column, ...] = ()
    corners_tenth_mm: tuple[int, ...] = ()  # z of opening corners that joints keep away from


class Strip(msgspec.Struct, frozen=True, kw_only=True):
    """One piece of a divided board; cut sizes are differences of once-rounded edges, so that those of a stack add up."""

    low_tenth_mm: int
    high_tenth_mm: int
    left_tenth_mm: int
    right_tenth_mm: int
    grow_tenth_mm: int
    rise_tenth_mm: int
    cut_width_mm: int
    cut_height_mm: int
    joint_below: bool
    joint_left: bool


def divide(wanted: Wanted, board: Board, rules: RuleSet) -> tuple[Strip, ...]:
    """The fewest pieces that the sheet gives; the whole board, too large, where no division on timber fits.

    Among equals: no strip below the least, no joint near an opening corner, fewest pieces longer than the handy length, the
    highest joints, the leftmost vertical joints.
    """
    inside = sorted(level for level in wanted.heights_tenth_mm if wanted.low_tenth_mm < level < wanted.high_tenth_mm)
    best: tuple[tuple[int, ...], tuple[Strip, ...]] | None = None
    for count in range(min(len(inside), MOST_JOINTS) + 1):
        if best is not None and best[0][0] <= count:
            break  # so many joints make more pieces than are needed
        for levels in combinations(inside, count):
            strips = _strips(wanted, levels, board, rules)
            if strips is None:
                continue
            score = _score(strips, levels, wanted, rules)
            if best is None or score < best[0]:
                best = (score, strips)
    return (
        _row(wanted, (wanted.low_tenth_mm, wanted.high_tenth_mm), (wanted.left_tenth_mm, wanted.right_tenth_mm))
        if best is None
        else best[1]
    )


def _strips(wanted: Wanted, levels: tuple[int, ...], board: Board, rules: RuleSet) -> tuple[Strip, ...] | None:
    strips: list[Strip] = []
    for low_high in pairwise((wanted.low_tenth_mm, *levels, wanted.high_tenth_mm)):
        row = _best_row(wanted, low_high, board, tenths(rules.frame.least_strip_mm))
        if row is None:
            return None
        strips += row
    return tuple(strips)


def _best_row(wanted: Wanted, low_high: tuple[int, int], board: Board, least: int) -> tuple[Strip, ...] | None:
    """One strip in as few pieces as its sheet gives, none narrower than the least if there is a choice, joints leftmost."""
    low, high = low_high
    centres = sorted(
        {
            column.centre_tenth_mm
            for column in wanted.columns
            if column.foot_tenth_mm <= low
            and column.head_tenth_mm >= high
            and wanted.left_tenth_mm < column.centre_tenth_mm < wanted.right_tenth_mm
        }
    )
    for count in range(min(len(centres), MOST_JOINTS) + 1):
        rows = [
            _row(wanted, low_high, (wanted.left_tenth_mm, *chosen, wanted.right_tenth_mm))
            for chosen in combinations(centres, count)
        ]
        fit = [row for row in rows if all(fits_sheet(strip.cut_width_mm, strip.cut_height_mm, board) for strip in row)]
        if fit:
            return min(fit, key=lambda row: sum(strip.right_tenth_mm - strip.left_tenth_mm < least for strip in row))
    return None


def _row(wanted: Wanted, low_high: tuple[int, int], edges: tuple[int, ...]) -> tuple[Strip, ...]:
    low, high = low_high
    grow = wanted.grow_low_tenth_mm if low == wanted.low_tenth_mm else 0
    floor = wanted.low_tenth_mm - wanted.grow_low_tenth_mm
    rise = wanted.grow_high_tenth_mm if high == wanted.high_tenth_mm else 0
    cut_height_mm = whole_mm_nearest(high + rise - floor) - whole_mm_nearest(low - grow - floor)
    return tuple(
        Strip(
            low_tenth_mm=low, high_tenth_mm=high, left_tenth_mm=left, right_tenth_mm=right, grow_tenth_mm=grow,
            cut_width_mm=whole_mm_nearest(right - wanted.left_tenth_mm) - whole_mm_nearest(left - wanted.left_tenth_mm),
            cut_height_mm=cut_height_mm, joint_below=low > wanted.low_tenth_mm, joint_left=left > wanted.left_tenth_mm,
            rise_tenth_mm=rise,
        )
        for left, right in pairwise(edges)
    )  # fmt: skip


def _score(strips: tuple[Strip, ...], levels: tuple[int, ...], wanted: Wanted, rules: RuleSet) -> tuple[int, ...]:
    frame = rules.frame
    least, off, handy = tenths(frame.least_strip_mm), tenths(frame.joint_off_corner_mm), tenths(frame.longest_handy_panel_mm)
    short = sum(
        1 for strip in strips if min(strip.high_tenth_mm - strip.low_tenth_mm, strip.right_tenth_mm - strip.left_tenth_mm) < least
    )
    near = sum(1 for level in levels for corner in wanted.corners_tenth_mm if abs(level - corner) < off)
    long = sum(
        1 for strip in strips if max(strip.high_tenth_mm - strip.low_tenth_mm, strip.right_tenth_mm - strip.left_tenth_mm) > handy
    )
    return (len(strips), short, near, long if levels else 0, *(-level for level in reversed(levels)))
