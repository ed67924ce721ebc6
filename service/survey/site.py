"""The building, the way in, and when it was surveyed."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.fields import Answer, Input
from service.units import IsoDate, Money, ShortText


class Country(StrEnum):
    """Whose electrical and building rules hold; `gb` means the region was not told."""

    GB = "gb"
    GB_ENGLAND = "gb_england"
    GB_WALES = "gb_wales"
    GB_SCOTLAND = "gb_scotland"
    GB_NORTHERN_IRELAND = "gb_northern_ireland"
    OTHER = "other"


class Building(StrEnum):
    """House or flat."""

    HOUSE = "house"
    FLAT = "flat"


class RouteKind(StrEnum):
    """One piece of the way from the kerb to the room."""

    DOOR = "door"
    CORRIDOR = "corridor"
    STAIR = "stair"
    LANDING = "landing"
    LIFT = "lift"


class RoutePart(Input, frozen=True, kw_only=True):
    """A narrow place on the way in."""

    kind: RouteKind
    width_mm: Annotated[float, Meta(ge=300, le=10_000)]
    height_mm: Annotated[float, Meta(ge=1_000, le=10_000)] | None = None
    depth_mm: Annotated[float, Meta(ge=300, le=50_000)] | None = None


class Stairs(StrEnum):
    """Kind of stairs on the way in."""

    STRAIGHT = "straight"
    WINDING = "winding"
    NONE = "none"


class Workspace(StrEnum):
    """Where timber and board can be cut."""

    OUTSIDE = "outside"
    GARAGE = "garage"
    IN_ROOM = "in_room"
    NONE = "none"


class Site(Input, frozen=True, kw_only=True):
    """The site."""

    country: Country | None = None
    building: Building | None = None
    storey: Annotated[int, Meta(ge=0, le=40)] | None = None
    build_year: Annotated[int, Meta(ge=1000, le=2200)] | None = None
    longest_length_mm: Annotated[float, Meta(ge=1_800, le=6_000, description="Longest bar that goes in.")] | None = None
    largest_board_length_mm: Annotated[float, Meta(ge=600, le=6_000)] | None = None
    largest_board_width_mm: Annotated[float, Meta(ge=300, le=2_000)] | None = None
    route: Annotated[tuple[RoutePart, ...], Meta(max_length=30)] | None = None
    narrowest_door_mm: Annotated[float, Meta(ge=500, le=2_000)] | None = None
    stairs: Stairs | None = None
    parking_distance_mm: Annotated[float, Meta(ge=0, le=1_000_000)] | None = None
    parking_cost: Money | None = None
    workspace: Workspace | None = None
    occupied: Answer | None = None
    pets: Answer | None = None
    children: Answer | None = None
    linked_alarm: Answer | None = None
    listed: Answer | None = None
    conservation: Answer | None = None
    leasehold: Answer | None = None
    tenancy: Answer | None = None
    hours_allowed: ShortText | None = None
    surveyed_on: IsoDate | None = None
