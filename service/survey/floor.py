"""The floor under the breast, and the skirting that must come off."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.fields import Answer, Input, OutYMm, WallXMm


class FloorLevel(Input, frozen=True, kw_only=True):
    """Level of the floor at a point against a laser line; only differences count."""

    x_mm: WallXMm
    y_mm: OutYMm
    level_mm: Annotated[float, Meta(ge=-1_000, le=1_000)]


class LowEnd(StrEnum):
    """Where the floor is lowest."""

    LEFT = "left"
    RIGHT = "right"
    FRONT = "front"
    BACK = "back"
    UNKNOWN = "unknown"


class FloorConstruction(StrEnum):
    """What the floor is."""

    CONCRETE = "concrete"
    SCREED = "screed"
    BOARDS = "boards"
    CHIPBOARD = "chipboard"
    FLOATING = "floating"
    UNKNOWN = "unknown"


class Covering(StrEnum):
    """What lies on the floor."""

    NONE = "none"
    CARPET = "carpet"
    LAMINATE = "laminate"
    TILE = "tile"
    VINYL = "vinyl"


class SkirtingProfile(StrEnum):
    """Whether the skirting can be bought again."""

    KNOWN_STOCK = "known_stock"
    UNKNOWN = "unknown"


class Floor(Input, frozen=True, kw_only=True):
    """The floor."""

    levels: Annotated[tuple[FloorLevel, ...], Meta(max_length=60)] | None = None
    fall_mm: Annotated[float, Meta(ge=0, le=60, description="Fall over the width of the breast; usually 0 to 15.")] | None = None
    low_end: LowEnd | None = None
    construction: FloorConstruction | None = None
    covering: Covering | None = None
    underfloor_heating: Answer | None = None
    sound: Answer | None = None
    skirting_height_mm: Annotated[float, Meta(ge=0, le=400)] | None = None
    skirting_thickness_mm: Annotated[float, Meta(ge=0, le=60)] | None = None
    skirting_profile: SkirtingProfile | None = None
    skirting_reuse: bool | None = None
