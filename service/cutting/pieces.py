"""What is asked of the cutting stage: pieces, stock, saw, aim and effort. All lengths are integer tenths of a millimetre.

A sheet lies with its width along x and its height along y; the grain runs along x. A *rip* is a saw line along x, over the
full width of the part on the saw; a *cross-cut* is a saw line along y. The kerf is what the blade turns to dust.
"""

from __future__ import annotations

from collections.abc import Callable
from enum import StrEnum
from typing import Final

import msgspec

LARGEST_SIZE_TENTH_MM: Final = 200_000  # 20 m; house choice: longer than any stock of the trade, far from overflow
MOST_PIECES_COUNT: Final = 10_000  # house choice, as issue 3 asks
MOST_KINDS_COUNT: Final = 200  # house choice, as issue 3 asks
MOST_STOCK_COUNT: Final = 100  # entries of stock; house choice
MOST_COST_MINOR: Final = 10**9  # of one bar or sheet; house choice: sums stay exact in 53 bits
MOST_COPIES_COUNT: Final = 1_000_000  # house choice: more than any yard holds

type Stop = Callable[[], bool]  # the caller's clock: True as soon as the time is over


def never() -> bool:
    """Never stop: the work limits alone end the search."""
    return False


class BarAim(StrEnum):
    """What comes first when bars are chosen."""

    COST = "cost"  # least sum of prices
    LENGTH = "length"  # least length bought


class FirstCut(StrEnum):
    """Which way the first cuts of every sheet must run."""

    ANY = "any"
    RIP = "rip"  # along the sheet, over its full width
    CROSS = "cross"  # across the sheet, over its full height


class SheetLayout(StrEnum):
    """How pieces may lie on a sheet."""

    EDGE_TO_EDGE = "edge_to_edge"  # every cut runs through the whole part on the saw (guillotine)
    PLUNGE_SAW = "plunge_saw"  # cuts may stop inside the sheet: marked out, and sawn with a plunge saw on a rail


class Effort(msgspec.Struct, frozen=True, kw_only=True):
    """How much work a search may do. One unit is counted work of about a millisecond on one core; never a clock."""

    work_count: int = 2_000
    greedy: bool = False  # the best of a few greedy plans, checked, without search or bound: for estimates


QUICK: Final = Effort(work_count=200)  # about 0.2 s at most
STANDARD: Final = Effort(work_count=2_000)  # about 2 s at most; a usual job needs a twentieth of it
THOROUGH: Final = Effort(work_count=20_000)
GREEDY: Final = Effort(work_count=20, greedy=True)  # some milliseconds


class BarPiece(msgspec.Struct, frozen=True, kw_only=True):
    """Pieces of one length that bear one label."""

    label: str
    length_tenth_mm: int
    pieces_count: int = 1
    after_measure: bool = False  # cut only when the ceiling has been measured


class BarStock(msgspec.Struct, frozen=True, kw_only=True):
    """One stock length at one price, or one kind of offcut on hand. A price step is an entry of its own, with copies."""

    code: str
    length_tenth_mm: int
    cost_minor: int = 0  # may be 0: an offcut on hand
    copies_count: int | None = None  # None: as many as wanted
    offcut: bool = False  # on hand, not bought: does not count among the bars bought


class BarJob(msgspec.Struct, frozen=True, kw_only=True):
    """Bars to be cut."""

    pieces: tuple[BarPiece, ...]
    stock: tuple[BarStock, ...]
    kerf_tenth_mm: int = 0  # between neighbouring pieces; the last cut may run off the end
    end_trim_tenth_mm: int = 0  # lost per bar, both ends together, trimming cuts included
    least_offcut_tenth_mm: int = 0  # a rest shorter than this is waste
    aim: BarAim = BarAim.COST


class SheetPiece(msgspec.Struct, frozen=True, kw_only=True):
    """Rectangles of one size that bear one label."""

    label: str
    width_tenth_mm: int  # along the sheet's width (the grain) unless it may be turned
    height_tenth_mm: int
    pieces_count: int = 1
    rotatable: bool = False
    after_measure: bool = False


class Defect(msgspec.Struct, frozen=True, kw_only=True):
    """A rectangle of a sheet that no piece may touch, from the sheet's own corner."""

    x_tenth_mm: int
    y_tenth_mm: int
    width_tenth_mm: int
    height_tenth_mm: int


class SheetStock(msgspec.Struct, frozen=True, kw_only=True):
    """One sheet size at one price, or one kind of offcut on hand."""

    code: str
    width_tenth_mm: int
    height_tenth_mm: int
    cost_minor: int = 0
    copies_count: int | None = None
    offcut: bool = False
    defects: tuple[Defect, ...] = ()


class SheetJob(msgspec.Struct, frozen=True, kw_only=True):
    """Sheets to be cut: edge to edge, unless a plunge saw is allowed."""

    pieces: tuple[SheetPiece, ...]
    stock: tuple[SheetStock, ...]
    kerf_tenth_mm: int = 0
    edge_trim_tenth_mm: int = 0  # lost on each of the four edges, the trimming cut included
    least_offcut_width_tenth_mm: int = 0  # a rest is kept if it is at least this by that, either way round
    least_offcut_height_tenth_mm: int = 0
    first_cut: FirstCut = FirstCut.ANY  # of sheets that are cut edge to edge
    layout: SheetLayout = SheetLayout.EDGE_TO_EDGE
