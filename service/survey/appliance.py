"""The electric fire of a brief: from the catalogue, from its manual, or by its size class.

Field table: `knowledge/heat.md`, section 2. Sizes in millimetres, masses in kilograms.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.fields import Answer, AreaMm2, Input, MassKg, PartMm, PowerW, SmallMm
from service.units import Code, ShortText


class OutletPosition(StrEnum):
    """Where the warm air of a fire leaves."""

    FRONT_TOP = "front_top"
    FRONT_BOTTOM = "front_bottom"
    TOP_FRONT = "top_front"
    TOP = "top"
    NONE = "none"


class AirPosition(StrEnum):
    """Where a fire takes its air."""

    FRONT_BOTTOM = "front_bottom"
    FRONT_TOP = "front_top"
    SIDE = "side"
    REAR = "rear"
    UNDER_GLASS = "under_glass"
    NONE = "none"


class AirMayFace(StrEnum):
    """Where a fire may take its air from and give it to."""

    ROOM = "room"
    VOID = "void"
    EITHER = "either"


class ServiceAccess(StrEnum):
    """Side from which a fire is serviced."""

    NONE = "none"
    FRONT = "front"
    SIDE = "side"
    TOP = "top"


class InstallationOrder(StrEnum):
    """Whether a fire must stand before the frame does."""

    YES = "yes"
    NO = "no"
    EITHER = "either"


class Connection(StrEnum):
    """How a fire is connected to the mains."""

    PLUG = "plug"
    HARD_WIRED = "hard_wired"


class OpenEnd(StrEnum):
    """Which end of a two-sided fire may be open."""

    LEFT = "left"
    RIGHT = "right"
    EITHER = "either"


class OpenEnds(StrEnum):
    """Which ends of the breast show glass, seen from the room."""

    NONE = "none"
    LEFT = "left"
    RIGHT = "right"
    BOTH = "both"


class CatalogueAppliance(Input, frozen=True, kw_only=True, tag="catalogue", tag_field="kind"):
    """A fire of the catalogue."""

    model: Code


class CustomAppliance(Input, frozen=True, kw_only=True, tag="custom", tag_field="kind"):
    """A fire described by its manual. A maker's figure left out keeps the quote provisional; it is never invented."""

    name: ShortText
    manual_edition: ShortText | None = None
    open_ends_count: Annotated[int, Meta(ge=0, le=2, description="0 one-sided, 1 two-sided, 2 three-sided glass.")]
    open_end: OpenEnd | None = None
    body_width_mm: Annotated[float, Meta(ge=300, le=4_000)]
    body_height_mm: Annotated[float, Meta(ge=200, le=1_500)]
    body_depth_mm: Annotated[float, Meta(ge=80, le=700)]
    frame_inset_mm: Annotated[float, Meta(ge=0, le=50)] | None = None
    trim_lap_mm: SmallMm | None = None
    mass_kg: Annotated[float, Meta(ge=3, le=200)]
    packed_mass_kg: MassKg | None = None
    foot_spacing_mm: PartMm | None = None
    mass_centre_from_front_mm: PartMm | None = None
    heat_output_w: PowerW
    flame_w: PowerW | None = None
    current_a: Annotated[float, Meta(ge=0, le=63)] | None = None
    connection: Connection
    outlet_position: OutletPosition
    outlet_height_mm: Annotated[float, Meta(ge=0, le=1_500)] | None = None
    outlet_rise_k: Annotated[float, Meta(ge=0, le=200)] | None = None
    clear_above_mm: SmallMm | None = None
    clear_side_mm: SmallMm | None = None
    clear_rear_mm: SmallMm | None = None
    clear_front_mm: Annotated[float, Meta(ge=0, le=5_000)] | None = None
    clear_floor_mm: SmallMm | None = None
    outlet_to_screen_least_mm: Annotated[float, Meta(ge=0, le=2_000)] | None = None
    outlet_to_shelf_least_mm: Annotated[float, Meta(ge=0, le=2_000)] | None = None
    shelf_projection_mm: Annotated[float, Meta(ge=0, le=1_000)] | None = None
    non_combustible_above_mm: Annotated[float, Meta(ge=0, le=2_000)] | None = None
    non_combustible_side_mm: Annotated[float, Meta(ge=0, le=1_000)] | None = None
    air_inlet_area_mm2: AreaMm2 | None = None
    air_outlet_area_mm2: AreaMm2 | None = None
    air_inlet_position: AirPosition | None = None
    air_outlet_position: AirPosition | None = None
    air_may_face: AirMayFace | None = None
    service_access: ServiceAccess | None = None
    access_width_mm: PartMm | None = None
    access_height_mm: PartMm | None = None
    installation_before_frame: InstallationOrder | None = None
    may_be_boarded_over: bool | None = None
    max_void_deg_c: Annotated[float, Meta(ge=0, le=200)] | None = None
    weight_on_top_kg: MassKg | None = None
    timber_housing: Answer | None = None


class SizeClassAppliance(Input, frozen=True, kw_only=True, tag="size_class", tag_field="kind"):
    """A fire of which only the kind and length are known: enough for an estimate, never for a firm quote."""

    open_ends_count: Annotated[int, Meta(ge=0, le=2)]
    length_mm: Annotated[float, Meta(ge=300, le=4_000, description="Length of the body, mm.")]


type ApplianceChoice = CatalogueAppliance | CustomAppliance | SizeClassAppliance
