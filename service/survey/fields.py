"""Number types and small enums that several parts of a survey share, with their hard limits.

Limits: `knowledge/survey.md`, sections 3 to 10, common practice, no source, unless a field says otherwise.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

import msgspec
from msgspec import Meta


class Input(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What every part of a request is: immutable, by keyword, no field that we do not know."""


class Answer(StrEnum):
    """A yes/no that may be open."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"


type WallXMm = Annotated[float, Meta(ge=0, le=15_000, description="Distance from the left end of the wall, mm.")]
type OutYMm = Annotated[float, Meta(ge=0, le=12_000, description="Distance out of the wall, mm.")]
type HeightZMm = Annotated[float, Meta(ge=0, le=4_500, description="Height above the finished floor, mm.")]
type SmallMm = Annotated[float, Meta(ge=0, le=400, description="A thickness or small distance, mm.")]
type PartMm = Annotated[float, Meta(gt=0, le=4_000, description="A size of a thing in the breast, mm.")]
type MassKg = Annotated[float, Meta(ge=0, le=500, description="Mass, kg.")]
type PowerW = Annotated[float, Meta(ge=0, le=9_000, description="Electrical power, W.")]
type AreaMm2 = Annotated[float, Meta(ge=0, le=10_000_000, description="Area, mm2.")]
