"""Cutting plans on the wire, for a cut plan and for a quote: millimetres, money as decimal strings, one struct a thing."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

import msgspec
from msgspec import Meta

from service.cutting import Direction, Method, PartKind, SheetLayout, Stopped
from service.units import Money


class CutAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """What every part of a cutting plan is: immutable, by keyword."""


class AimName(StrEnum):
    """What a plan is chosen by."""

    LEAST_COST = "least_cost"
    LEAST_LENGTH = "least_length"  # of the bars bought
    FEWEST_BARS = "fewest_bars"  # bought; offcuts on hand do not count
    FEWEST_SHEETS = "fewest_sheets"
    LONGEST_LEFTOVER = "longest_leftover"  # of one bar bought
    LARGEST_LEFTOVER = "largest_leftover"  # of one sheet bought
    FEW_SAW_SETTINGS = "few_saw_settings"


class AimAnswer(CutAnswer, frozen=True, kw_only=True):
    """One aim; each is reached with the former ones held fixed."""

    aim: AimName
    proven: Annotated[bool, Meta(description="Nothing better is possible with the former aims at these values.")]


class ProofAnswer(CutAnswer, frozen=True, kw_only=True):
    """How good a plan is: proven only where our own value equals our own bound. Costs are null without prices."""

    aim: str
    cost: Money | None
    cost_bound: Money | None
    bought_length_mm: float
    length_bound_mm: float
    gap_ratio: float
    first_proven: bool
    bought_count: int
    bought_bound_count: int
    bought_proven: bool
    leftover_mm: float
    leftover_proven: bool
    method: Method
    stopped: Stopped
    fallback: bool
    engines: tuple[str, ...]


class LeftoverAnswer(CutAnswer, frozen=True, kw_only=True):
    """A rest worth keeping; the height of a bar's rest is 0."""

    label: str
    of: Annotated[str, Meta(description="Name of the bars or sheets that it comes from.")]
    leftovers_count: int
    width_mm: float
    height_mm: float


class StockAnswer(CutAnswer, frozen=True, kw_only=True):
    """What to take from the yard or the rack; `each` is null without a price."""

    code: str
    taken_count: int
    each: Money | None
    offcut: bool


class BarCutAnswer(CutAnswer, frozen=True, kw_only=True):
    """One cut piece of a bar, from the end where sawing starts; one mark for each bar cut alike."""

    start_mm: float
    end_mm: float
    length_mm: float
    after_measure: bool
    marks: tuple[str, ...]


class BarAnswer(CutAnswer, frozen=True, kw_only=True):
    """Bars that are cut alike; cuts in the order of sawing."""

    name: str
    code: str
    length_mm: float
    offcut: bool
    bars_count: int
    cuts: tuple[BarCutAnswer, ...]
    trim_mm: float
    rest_mm: float
    keep: bool


class BarStopAnswer(CutAnswer, frozen=True, kw_only=True):
    """One setting of the stop, in the order of work: what is cut now before what waits for measuring, longest first."""

    stop_mm: float
    after_measure: bool
    cuts_count: int
    bars: Annotated[tuple[str, ...], Meta(description="Names of the bars that go under the saw at this stop.")]


class BarPlanAnswer(CutAnswer, frozen=True, kw_only=True):
    """The bars. Pieces + kerfs + trims + kept + waste = stock."""

    aims: tuple[AimAnswer, ...]
    bars: tuple[BarAnswer, ...]
    sequence: tuple[BarStopAnswer, ...]
    stock: tuple[StockAnswer, ...]
    leftovers: tuple[LeftoverAnswer, ...]
    cost: Money | None
    stock_length_mm: float
    pieces_length_mm: float
    kerf_length_mm: float
    trim_length_mm: float
    kept_length_mm: float
    waste_length_mm: float
    kerf_mm: float
    proof: ProofAnswer


class PlacedAnswer(CutAnswer, frozen=True, kw_only=True):
    """One piece on a sheet, as it lies; one mark for each sheet cut alike."""

    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float
    rotated: bool
    after_measure: bool
    marks: tuple[str, ...]


class SawStepAnswer(CutAnswer, frozen=True, kw_only=True):
    """One setting of the saw, in the order of work: the same stop, used on one or more parts."""

    parts: tuple[str, ...]
    direction: Direction
    trim: bool
    stop_mm: float
    cuts_count: int
    yields: tuple[str, ...]


class SheetPartAnswer(CutAnswer, frozen=True, kw_only=True):
    """A part of the sheet on the saw."""

    name: str
    parent: str
    kind: PartKind
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float


class MarkLineAnswer(CutAnswer, frozen=True, kw_only=True):
    """One saw line of a sheet for the plunge saw, from the sheet's own corner; those for pieces cut now come first.

    The blade takes `at_mm` to `at_mm` plus the kerf and stops at both ends; what it leaves in a corner, a hand saw cuts.
    """

    direction: Direction
    at_mm: Annotated[float, Meta(description="Height above the lower edge (rip), distance from the left edge (cross-cut).")]
    from_mm: float
    to_mm: float
    after_measure: bool


class SheetAnswer(CutAnswer, frozen=True, kw_only=True):
    """Sheets that are cut alike."""

    name: str
    code: str
    width_mm: float
    height_mm: float
    offcut: bool
    sheets_count: int
    pieces: tuple[PlacedAnswer, ...]
    steps: tuple[SawStepAnswer, ...]
    parts: tuple[SheetPartAnswer, ...]
    layout: SheetLayout
    lines: Annotated[
        tuple[MarkLineAnswer, ...], Meta(description="What to mark out and saw where a plunge saw is needed; else none.")
    ]


class SheetPlanAnswer(CutAnswer, frozen=True, kw_only=True):
    """The sheets. Pieces + kept + lost (kerf, trim, waste) = stock."""

    aims: tuple[AimAnswer, ...]
    sheets: tuple[SheetAnswer, ...]
    stock: tuple[StockAnswer, ...]
    leftovers: tuple[LeftoverAnswer, ...]
    cost: Money | None
    stock_area_m2: float
    pieces_area_m2: float
    kept_area_m2: float
    lost_area_m2: float
    kerf_mm: float
    proof: ProofAnswer


class CutPlanOrigin(CutAnswer, frozen=True, kw_only=True):
    """What a plan can be made again from, with the request."""

    engine_version: str
    work_limit_count: Annotated[int, Meta(description="Most work of each search, in units of about a millisecond.")]
    request_digest: Annotated[str, Meta(description="SHA-256 of the request with its defaults, hexadecimal.")]


class CutPlanMade(CutAnswer, frozen=True, kw_only=True):
    """A cutting plan; null where nothing was asked."""

    bars: BarPlanAnswer | None
    sheets: SheetPlanAnswer | None
    origin: CutPlanOrigin
