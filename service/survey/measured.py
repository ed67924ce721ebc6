"""What was measured on site once the base is built and the fire stands on it, and what timber is there."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.fields import Input
from service.units import Code


class PiecesCut(StrEnum):
    """What has been cut already when the measure is taken."""

    NONE = "none"
    BASE = "base"  # the base frame stands
    NOW = "now"  # the base and all of the upper frame that does not follow from a measure


class FloorPacker(Input, frozen=True, kw_only=True):
    """A packer as it lies under one line of uprights."""

    x_mm: Annotated[float, Meta(ge=0, le=15_000, description="From the left end of the frame to the upright, as `stations`, mm.")]
    packer_mm: Annotated[float, Meta(ge=0, le=100)]


class BarsBought(Input, frozen=True, kw_only=True):
    """Whole bars that are there: by code, or by section and length; each is used at most once and costs nothing."""

    code: Code | None = None
    thickness_mm: Annotated[float, Meta(ge=10, le=150)] | None = None
    width_mm: Annotated[float, Meta(ge=10, le=300)] | None = None
    length_mm: Annotated[float, Meta(ge=50, le=12_000)] | None = None
    bars_count: Annotated[int, Meta(ge=1, le=1_000)] = 1


class OffcutLeft(Input, frozen=True, kw_only=True):
    """Offcuts of the job's studding that are there."""

    length_mm: Annotated[float, Meta(ge=50, le=12_000)]
    offcuts_count: Annotated[int, Meta(ge=1, le=1_000)] = 1


class Measured(Input, frozen=True, kw_only=True):
    """What was measured on site once the base is built; null before."""

    appliance_top_to_ceiling_mm: Annotated[tuple[Annotated[float, Meta(ge=50, le=4_000)], ...], Meta(min_length=1, max_length=40)]
    frame_width_mm: Annotated[float, Meta(ge=200, le=12_000)] | None = None  # of the base as built, without boards
    frame_depth_mm: Annotated[float, Meta(ge=50, le=2_000)] | None = None
    floor_packers: Annotated[tuple[FloorPacker, ...], Meta(min_length=1, max_length=60)] | None = None
    bars_bought: Annotated[tuple[BarsBought, ...], Meta(max_length=60)] | None = None
    offcuts_left: Annotated[tuple[OffcutLeft, ...], Meta(max_length=60)] | None = None
    pieces_cut: PiecesCut | None = None  # left out: `now` where bars or offcuts are named, else `none`
