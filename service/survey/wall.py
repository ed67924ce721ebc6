"""The wall that the breast is fixed to."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.fields import Answer, Input, WallXMm


class WallConstruction(StrEnum):
    """What the wall is made of, as a person with a drill can tell."""

    SOLID_BRICK = "solid_brick"
    DENSE_BLOCK = "dense_block"
    AERATED_BLOCK = "aerated_block"
    TIMBER_STUD = "timber_stud"
    STEEL_STUD = "steel_stud"
    PLASTERBOARD_ON_DABS = "plasterboard_on_dabs"
    BOARDED_BEHIND_PLASTERBOARD = "boarded_behind_plasterboard"
    LATH_AND_PLASTER = "lath_and_plaster"
    CONCRETE = "concrete"
    UNKNOWN = "unknown"


class Backing(StrEnum):
    """The masonry behind plasterboard on dabs."""

    SOLID_BRICK = "solid_brick"
    DENSE_BLOCK = "dense_block"
    AERATED_BLOCK = "aerated_block"
    CONCRETE = "concrete"
    UNKNOWN = "unknown"


class Units(StrEnum):
    """State and kind of the bricks or blocks."""

    SOUND = "sound"
    SOFT_OR_OLD = "soft_or_old"
    PERFORATED = "perforated"
    LIGHT_AGGREGATE = "light_aggregate"
    UNKNOWN = "unknown"


class ExternalBuild(StrEnum):
    """How an outside wall is built."""

    SOLID = "solid"
    CAVITY_INSULATED = "cavity_insulated"
    CAVITY_OPEN = "cavity_open"
    TIMBER_FRAME = "timber_frame"
    UNKNOWN = "unknown"


class Damp(StrEnum):
    """Signs of damp."""

    NONE = "none"
    SUSPECTED = "suspected"
    SHOWING = "showing"
    UNKNOWN = "unknown"


class WallFinish(StrEnum):
    """What is on the wall now."""

    PAINT = "paint"
    PAPER = "paper"
    PANELLING = "panelling"
    TILE = "tile"


class Wall(Input, frozen=True, kw_only=True):
    """The host wall."""

    construction: WallConstruction | None = None
    backing: Backing | None = None
    units: Units | None = None
    lining_mm: Annotated[float, Meta(ge=0, le=60, description="Plaster or board on the wall; usually 10 to 30.")] | None = None
    void_mm: Annotated[float, Meta(ge=0, le=80, description="Gap behind the board, mm; usually 10 to 40.")] | None = None
    stud_positions_mm: Annotated[tuple[WallXMm, ...], Meta(max_length=60)] | None = None
    stud_width_mm: Annotated[float, Meta(ge=25, le=100)] | None = None
    stud_depth_mm: Annotated[float, Meta(ge=38, le=300)] | None = None
    declared_tension_kn: Annotated[float, Meta(ge=0, le=2, description="Tested or declared tension of a fixing.")] | None = None
    declared_shear_kn: Annotated[float, Meta(ge=0, le=2, description="Tested or declared shear of a fixing.")] | None = None
    plumb_mm: Annotated[float, Meta(ge=-50, le=50, description="Lean over the height, mm; positive into the room.")] | None = None
    flat_mm: Annotated[float, Meta(ge=0, le=30, description="Greatest gap under a 2 m straight edge, mm.")] | None = None
    square_mm: Annotated[
        float, Meta(ge=-50, le=50, description="Side wall out of square over 600 mm; positive: opens to the room.")
    ] | None = None  # fmt: skip
    side_construction: WallConstruction | None = None  # of a side wall that the breast stands against
    external: bool | None = None
    external_build: ExternalBuild | None = None
    damp: Damp | None = None
    party: Answer | None = None
    thickness_mm: Annotated[float, Meta(ge=50, le=1_000)] | None = None
    finish: WallFinish | None = None
