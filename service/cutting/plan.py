"""What the cutting stage answers: every cut placed, the stock to take, what is left, and how good it provably is.

"Proven" means that our own integer value equals our own rounded-up lower bound for the problem as asked.
"""

from __future__ import annotations

from enum import StrEnum

import msgspec

from service.cutting.pieces import BarAim, Defect, SheetLayout


class Method(StrEnum):
    """Which search found the plan."""

    NOTHING_TO_CUT = "nothing_to_cut"
    FIRST_FIT = "first_fit_decreasing"
    PACKING = "packing_search"  # packingsolver
    PATTERNS = "pattern_model"  # column generation, enumeration, integer master
    GUILLOTINE = "exact_guillotine"  # every set of pieces that fits a sheet, then a covering model
    PLUNGE = "plunge_search"  # packingsolver, cuts that stop inside the sheet allowed


class Stopped(StrEnum):
    """What ended the search."""

    DONE = "done"  # nothing is left to prove or to try
    WORK_LIMIT = "work_limit"
    CLOCK_GUARD = "clock_guard"  # the last plan found within the work limits before the time was over


class Proof(msgspec.Struct, frozen=True, kw_only=True):
    """How good a plan is, aim by aim; each later aim holds with the former ones fixed at the plan's values."""

    aim: BarAim  # which of the next two bounds is the one asked for
    cost_minor: int
    cost_bound_minor: int  # least cost possible; 0 if the aim is length
    bought_length_tenth_mm: int  # bars: length bought; sheets: 0
    length_bound_tenth_mm: int  # 0 if the aim is cost
    gap_ratio: float  # (value - bound) / value of the first aim
    first_proven: bool  # the first aim reaches its bound
    bought_count: int  # bars or sheets bought; offcuts on hand do not count
    bought_bound_count: int
    bought_proven: bool
    leftover_tenth_mm: int  # bars: longest rest of one bought bar; sheets: longest side of the largest rest
    leftover_proven: bool


class StockTaken(msgspec.Struct, frozen=True, kw_only=True):
    """One line of what to take from the yard or the rack."""

    code: str
    taken_count: int
    cost_each_minor: int
    offcut: bool


class SearchNote(msgspec.Struct, frozen=True, kw_only=True):
    """How the plan was found."""

    method: Method
    stopped: Stopped
    fallback: bool  # a solver failed or gave a bad plan, and a simpler one stands in
    work_count: int  # work units done
    engines: tuple[str, ...]  # names and versions of the solvers


class BarCut(msgspec.Struct, frozen=True, kw_only=True):
    """One piece on a bar, measured from the end where sawing starts (before the end trim)."""

    start_tenth_mm: int
    end_tenth_mm: int
    after_measure: bool

    @property
    def length_tenth_mm(self) -> int:
        """Length of the piece."""
        return self.end_tenth_mm - self.start_tenth_mm


class BarGroup(msgspec.Struct, frozen=True, kw_only=True):
    """Bars that are cut alike. `cuts` holds for each of them; `labels` has one row per bar, one label per cut."""

    name: str  # "B1": stands on the cutting sheet
    code: str
    length_tenth_mm: int
    cost_each_minor: int
    offcut: bool
    bars_count: int
    cuts: tuple[BarCut, ...]  # to cut now first, then after measuring; longest first in each
    labels: tuple[tuple[str, ...], ...]
    trim_tenth_mm: int
    kerf_tenth_mm: int  # turned to dust on each bar, all cuts together; the last may run off the end
    rest_tenth_mm: int  # what is left of each bar
    keep: bool  # the rest is long enough to be worth keeping


class Leftover(msgspec.Struct, frozen=True, kw_only=True):
    """A rest worth keeping. For a bar the height is 0."""

    label: str
    of: str  # name of the bar group or sheet that it comes from
    leftovers_count: int
    width_tenth_mm: int  # a bar's rest: its length
    height_tenth_mm: int


class BarPlan(msgspec.Struct, frozen=True, kw_only=True):
    """A complete plan for bars. Pieces + kerfs + trims + rests = stock taken, exactly."""

    groups: tuple[BarGroup, ...]
    stock: tuple[StockTaken, ...]
    leftovers: tuple[Leftover, ...]
    cost_minor: int
    bars_count: int  # taken, offcuts included
    stock_length_tenth_mm: int
    pieces_length_tenth_mm: int
    kerf_length_tenth_mm: int
    trim_length_tenth_mm: int
    kept_length_tenth_mm: int
    waste_length_tenth_mm: int  # rests too short to keep
    proof: Proof
    search: SearchNote


class Direction(StrEnum):
    """Which way a saw line runs."""

    RIP = "rip"  # along x, over the full width of the part
    CROSS = "cross"  # along y, over the full height of the part


class PartKind(StrEnum):
    """What becomes of a part of a sheet."""

    SHEET = "sheet"  # the whole sheet, untrimmed
    PART = "part"  # is cut further
    PIECE = "piece"
    LEFTOVER = "leftover"  # worth keeping
    WASTE = "waste"


class SheetPart(msgspec.Struct, frozen=True, kw_only=True):
    """A node of the cut tree: a rectangle that lies on the saw at some moment, from the sheet's own corner."""

    name: str  # "S": the sheet; "S.0": the sheet when its edges are trimmed; "S.1": its first strip; "S.1.2" ...
    parent: str  # "" for the sheet
    kind: PartKind
    x_tenth_mm: int
    y_tenth_mm: int
    width_tenth_mm: int
    height_tenth_mm: int


class SheetStep(msgspec.Struct, frozen=True, kw_only=True):
    """One setting of the saw: the same stop, used for one or more cuts. The place in the tuple is the step's number."""

    parts: tuple[str, ...]  # names of the parts on the saw, one after the other
    direction: Direction
    trim: bool  # a squaring cut on a factory edge
    stop_tenth_mm: int  # size of what is cut off, edge to blade
    cuts_count: int
    yields: tuple[str, ...]  # names of the parts that fall off


class MarkLine(msgspec.Struct, frozen=True, kw_only=True):
    """One saw line of a marked-out sheet. The blade takes `at` to `at` plus the kerf, and stops at both ends of the line."""

    direction: Direction
    at_tenth_mm: int  # height (rip) or distance along the sheet (cross-cut) where the blade's dust begins; below 0: runs off
    from_tenth_mm: int
    to_tenth_mm: int
    after_measure: bool  # no piece that is cut now needs it


class PlacedPiece(msgspec.Struct, frozen=True, kw_only=True):
    """One piece on a sheet; sizes as it lies."""

    part: str  # its node in the cut tree
    x_tenth_mm: int
    y_tenth_mm: int
    width_tenth_mm: int
    height_tenth_mm: int
    rotated: bool
    after_measure: bool


class SheetGroup(msgspec.Struct, frozen=True, kw_only=True):
    """Sheets that are cut alike. `labels` has one row per sheet, one label per piece."""

    name: str  # "S1"
    code: str
    width_tenth_mm: int
    height_tenth_mm: int
    cost_each_minor: int
    offcut: bool
    defects: tuple[Defect, ...]
    sheets_count: int
    pieces: tuple[PlacedPiece, ...]
    labels: tuple[tuple[str, ...], ...]
    parts: tuple[SheetPart, ...]
    steps: tuple[SheetStep, ...]  # edge to edge; none where a plunge saw is needed
    layout: SheetLayout = SheetLayout.EDGE_TO_EDGE
    lines: tuple[MarkLine, ...] = ()  # to be marked out and sawn, where a plunge saw is needed


class SheetPlan(msgspec.Struct, frozen=True, kw_only=True):
    """A complete plan for sheets. Pieces + leftovers + lost (kerf, trim, waste) = area taken, exactly."""

    groups: tuple[SheetGroup, ...]
    stock: tuple[StockTaken, ...]
    leftovers: tuple[Leftover, ...]
    cost_minor: int
    sheets_count: int  # taken, offcuts included
    stock_area_mm2: float
    pieces_area_mm2: float
    kept_area_mm2: float
    lost_area_mm2: float
    proof: Proof
    search: SearchNote


class CuttingError(Exception):
    """Our own mistake: a plan failed the independent check and no simpler plan stands in."""
