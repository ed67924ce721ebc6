"""What is asked for when only cutting is wanted: bars, sheets or both. Millimetres and money, every number bounded.

Bounds: the cutting stage's own (`service.cutting`), house choices unless a field says otherwise.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Final

from msgspec import Meta

from service.cutting import BarAim, FirstCut, SheetLayout
from service.survey.fields import Input
from service.units import Money, ShortText

MOST_LINES_COUNT: Final = 1_000  # lines of pieces; each may stand for many. House choice: fits the usual limit of a body

type SizeMm = Annotated[float, Meta(ge=0.1, le=20_000, description="A size, mm; taken to a tenth.")]
type PlaceMm = Annotated[float, Meta(ge=0, le=20_000, description="A distance from the sheet's own corner, mm.")]
type KerfMm = Annotated[float, Meta(ge=0, le=50, description="What the saw turns to dust, mm.")]
type TrimMm = Annotated[float, Meta(ge=0, le=5_000, description="What is cut away before pieces are cut, mm.")]
type LeastMm = Annotated[float, Meta(ge=0, le=20_000, description="A rest shorter than this is waste, mm.")]
type PiecesCount = Annotated[int, Meta(ge=1, le=10_000, description="How many pieces; 10 000 in all.")]
type AvailableCount = Annotated[
    int, Meta(ge=0, le=1_000_000, description="How many there are to take; left out: as many as wanted.")
]
type StockCode = Annotated[
    str,
    Meta(min_length=1, max_length=40, pattern=r"^[^\x00-\x1f\x7f]*(?!\n)$", description="The caller's own name for a stock."),
]


class EffortName(StrEnum):
    """How long to search for what is not proven yet."""

    QUICK = "quick"
    STANDARD = "standard"
    THOROUGH = "thorough"


class BarPieceWanted(Input, frozen=True, kw_only=True):
    """Pieces of one length; the label comes back in the plan."""

    label: ShortText
    length_mm: SizeMm
    pieces_count: PiecesCount = 1
    after_measure: bool = False  # cut only when the place has been measured


class Offer(Input, frozen=True, kw_only=True):
    """Something to cut from. A price step is an entry of its own, with a count."""

    code: StockCode
    price: Money | None = None  # of one; an offcut without one is free
    available_count: AvailableCount | None = None
    offcut: bool = False  # on hand: does not count among what is bought


class BarOffer(Offer, frozen=True, kw_only=True):
    """Bars of one length at one price, or an offcut on hand."""

    length_mm: SizeMm


class BarsWanted(Input, frozen=True, kw_only=True):
    """Bars to be cut."""

    pieces: Annotated[tuple[BarPieceWanted, ...], Meta(min_length=1, max_length=MOST_LINES_COUNT)]
    stock: Annotated[tuple[BarOffer, ...], Meta(min_length=1, max_length=100)]
    kerf_mm: KerfMm = 0.0
    end_trim_mm: TrimMm = 0.0  # lost per bar, both ends together
    least_offcut_mm: LeastMm = 0.0
    aim: BarAim = BarAim.COST  # what comes first


class SheetPieceWanted(Input, frozen=True, kw_only=True):
    """Rectangles of one size; the grain of a sheet runs along its width."""

    label: ShortText
    width_mm: SizeMm
    height_mm: SizeMm
    pieces_count: PiecesCount = 1
    may_turn: bool = False  # by a quarter, against the grain
    after_measure: bool = False


class DefectArea(Input, frozen=True, kw_only=True):
    """A rectangle of a sheet that no piece may touch."""

    x_mm: PlaceMm
    y_mm: PlaceMm
    width_mm: SizeMm
    height_mm: SizeMm


class SheetOffer(Offer, frozen=True, kw_only=True):
    """Sheets of one size at one price, or an offcut on hand."""

    width_mm: SizeMm
    height_mm: SizeMm
    defects: Annotated[tuple[DefectArea, ...], Meta(max_length=50)] = ()


class SheetsWanted(Input, frozen=True, kw_only=True):
    """Sheets to be cut edge to edge, unless a plunge saw is allowed. Without any price the aim is fewest sheets."""

    pieces: Annotated[tuple[SheetPieceWanted, ...], Meta(min_length=1, max_length=MOST_LINES_COUNT)]
    stock: Annotated[tuple[SheetOffer, ...], Meta(min_length=1, max_length=100)]
    kerf_mm: KerfMm = 0.0
    edge_trim_mm: TrimMm = 0.0  # on each of the four edges
    least_offcut_width_mm: LeastMm = 0.0  # a rest is kept if it is at least this by that, either way round
    least_offcut_height_mm: LeastMm = 0.0
    first_cut: FirstCut = FirstCut.ANY  # of sheets that are cut edge to edge
    layout: Annotated[
        SheetLayout,
        Meta(
            description="`plunge_saw`: cuts may stop inside a sheet where that costs less or saves a sheet; such a sheet has "
            "`lines` to mark out instead of `steps`."
        ),
    ] = SheetLayout.EDGE_TO_EDGE


class CutPlanRequest(Input, frozen=True, kw_only=True):
    """Bars, sheets or both, to be cut at least cost."""

    bars: BarsWanted | None = None
    sheets: SheetsWanted | None = None
    effort: EffortName = EffortName.STANDARD
