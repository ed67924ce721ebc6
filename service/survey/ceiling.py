"""The ceiling over the breast and the joists in it."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.fields import Answer, Input, OutYMm, WallXMm


class CeilingKind(StrEnum):
    """What the ceiling is."""

    BOARDED_JOISTS = "boarded_joists"
    LATH_AND_PLASTER = "lath_and_plaster"
    CONCRETE_CAST = "concrete_cast"
    BEAM_AND_BLOCK = "beam_and_block"
    HOLLOW_PLANK = "hollow_plank"
    POST_TENSIONED = "post_tensioned"
    SUSPENDED_GRID = "suspended_grid"
    EXPOSED_BEAMS = "exposed_beams"
    STEEL_FURRING = "steel_furring"
    TRUSS_TIE = "truss_tie"
    UNKNOWN = "unknown"


class JoistDirection(StrEnum):
    """Which way the joists run: `across_wall` is square to the wall of the breast."""

    ACROSS_WALL = "across_wall"
    ALONG_WALL = "along_wall"
    UNKNOWN = "unknown"


class Noggins(StrEnum):
    """Short timbers between the joists that ceiling screws can bite in."""

    NONE = "none"
    TO_BE_FITTED = "to_be_fitted"
    FITTED = "fitted"


class AccessAbove(StrEnum):
    """How the joists can be reached from above."""

    LOFT = "loft"
    FLOORBOARDS = "floorboards"
    NONE = "none"
    UNKNOWN = "unknown"


class SlopeAxis(StrEnum):
    """The axis along which a sloping ceiling falls."""

    X = "x"
    Y = "y"


class CorniceKind(StrEnum):
    """Moulding between wall and ceiling."""

    NONE = "none"
    PLASTER = "plaster"
    POLYSTYRENE = "polystyrene"


class Cornice(Input, frozen=True, kw_only=True):
    """The moulding and how far it comes down and out."""

    kind: CorniceKind = CorniceKind.NONE
    height_mm: Annotated[float, Meta(ge=0, le=600)] = 0.0
    projection_mm: Annotated[float, Meta(ge=0, le=600)] = 0.0


class FittingKind(StrEnum):
    """Things in the ceiling."""

    DOWNLIGHT = "downlight"
    ALARM = "alarm"
    PIPE = "pipe"
    HATCH = "hatch"


class CeilingFitting(Input, frozen=True, kw_only=True):
    """One thing in the ceiling and where it is."""

    kind: FittingKind
    x_mm: WallXMm
    y_mm: OutYMm


class Ceiling(Input, frozen=True, kw_only=True):
    """The ceiling. Joist positions are x for joists across the wall and y for joists along it."""

    kind: CeilingKind | None = None
    joists: JoistDirection | None = None
    joist_positions_mm: Annotated[tuple[WallXMm, ...], Meta(max_length=60)] | None = None
    first_joist_mm: WallXMm | None = None
    joist_spacing_mm: Annotated[float, Meta(ge=150, le=1_200, description="Centre to centre; usually 300 to 650.")] | None = None
    joist_thickness_mm: Annotated[float, Meta(ge=30, le=150)] | None = None
    noggins: Noggins | None = None
    access_above: AccessAbove | None = None
    lining_mm: Annotated[float, Meta(ge=0, le=80, description="Board or plaster on joists; usually 9 to 40.")] | None = None
    slope_deg: Annotated[float, Meta(ge=0, le=60)] | None = None
    slope_axis: SlopeAxis | None = None
    textured_coating: Answer | None = None
    cornice: Cornice | None = None
    fittings: Annotated[tuple[CeilingFitting, ...], Meta(max_length=40)] | None = None
