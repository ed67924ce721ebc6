"""The room: clear heights, the wall's length, where the breast stands, what is in the way."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.fields import HeightZMm, Input, OutYMm, WallXMm


class HeightPoint(Input, frozen=True, kw_only=True):
    """One clear height, floor to ceiling."""

    x_mm: WallXMm
    y_mm: OutYMm
    height_mm: Annotated[float, Meta(ge=1_900, le=4_500, description="Clear height here, mm; usually 2200 to 3000.")]


class ObstacleKind(StrEnum):
    """What must stay clear."""

    DOOR = "door"
    DOOR_SWING = "door_swing"
    WINDOW = "window"
    LOFT_HATCH = "loft_hatch"
    STAIR = "stair"


class Obstacle(Input, frozen=True, kw_only=True):
    """A door, window or the like near the breast, as a rectangle on the wall and how far it reaches into the room."""

    kind: ObstacleKind
    x0_mm: WallXMm
    x1_mm: WallXMm
    z0_mm: HeightZMm = 0.0
    z1_mm: HeightZMm = 2_000.0
    reach_mm: OutYMm = 0.0


class Room(Input, frozen=True, kw_only=True):
    """The room. x runs from the left end of the wall, y out of it, z up from the finished floor."""

    heights: Annotated[tuple[HeightPoint, ...], Meta(max_length=60)] | None = None
    wall_length_mm: Annotated[float, Meta(ge=300, le=15_000)] | None = None
    breast_centre_from_left_mm: WallXMm | None = None
    depth_mm: Annotated[float, Meta(ge=1_500, le=12_000, description="Wall to opposite wall, mm.")] | None = None
    seat_distance_mm: Annotated[float, Meta(ge=800, le=12_000, description="Eyes to screen, mm.")] | None = None
    eye_height_mm: Annotated[float, Meta(ge=600, le=1_900, description="Eyes above the floor when seated, mm.")] | None = None
    volume_m3: Annotated[float, Meta(gt=0, le=2_000)] | None = None
    obstacles: Annotated[tuple[Obstacle, ...], Meta(max_length=40)] | None = None
