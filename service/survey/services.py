"""Electricity, gas, water, air and alarms on or behind the wall, and the old chimney."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.fields import Answer, HeightZMm, Input, OutYMm, PartMm, PowerW, WallXMm


class AccessoryKind(StrEnum):
    """Electrical things on the wall."""

    SOCKET = "socket"
    SWITCH = "switch"
    SPUR = "spur"
    JOINT = "joint"
    DATA = "data"
    AERIAL = "aerial"
    THERMOSTAT = "thermostat"
    ROUTER = "router"


class Accessory(Input, frozen=True, kw_only=True):
    """One electrical thing on the host wall."""

    kind: AccessoryKind
    x_mm: WallXMm
    z_mm: HeightZMm
    gang_count: Annotated[int, Meta(ge=1, le=8)] = 1
    live: Answer = Answer.UNKNOWN


class CableScan(StrEnum):
    """Whether the wall was scanned for cables."""

    DONE = "done"
    NOT_DONE = "not_done"


class SupplyWanted(StrEnum):
    """How the fire gets its electricity."""

    PLUG_IN_REACH = "plug_in_reach"
    FUSED_CONNECTION = "fused_connection"
    NEW_CIRCUIT = "new_circuit"


class GasState(StrEnum):
    """Gas at or behind the wall."""

    NONE = "none"
    CAPPED_OFF = "capped_off"
    PRESENT = "present"
    UNKNOWN = "unknown"


class PipeKind(StrEnum):
    """What a pipe carries."""

    WATER = "water"
    HEATING = "heating"
    UNKNOWN = "unknown"


class Pipe(Input, frozen=True, kw_only=True):
    """A run of pipe in the wall."""

    kind: PipeKind
    x0_mm: WallXMm
    z0_mm: HeightZMm
    x1_mm: WallXMm
    z1_mm: HeightZMm


class Radiator(Input, frozen=True, kw_only=True):
    """A radiator on the wall."""

    x0_mm: WallXMm
    x1_mm: WallXMm
    z0_mm: HeightZMm = 150.0
    depth_mm: OutYMm = 100.0


class VentServes(StrEnum):
    """What an air vent in the wall is for."""

    FLUE = "flue"
    APPLIANCE = "appliance"
    FLOOR = "floor"
    ROOM = "room"
    UNKNOWN = "unknown"


class AirVent(Input, frozen=True, kw_only=True):
    """An air vent in the wall."""

    x_mm: WallXMm
    z_mm: HeightZMm
    serves: VentServes = VentServes.UNKNOWN


class AlarmKind(StrEnum):
    """Kind of an alarm."""

    SMOKE = "smoke"
    HEAT = "heat"
    CO = "co"


class Alarm(Input, frozen=True, kw_only=True):
    """An alarm in the room."""

    kind: AlarmKind
    x_mm: WallXMm
    y_mm: OutYMm
    linked: bool = False


class Services(Input, frozen=True, kw_only=True):
    """Services on the host wall."""

    accessories: Annotated[tuple[Accessory, ...], Meta(max_length=60)] | None = None
    cable_scan: CableScan | None = None
    rcd: Answer | None = None
    spare_way: Answer | None = None
    supply_wanted: SupplyWanted | None = None
    other_load_w: PowerW | None = None
    gas: GasState | None = None
    pipes: Annotated[tuple[Pipe, ...], Meta(max_length=40)] | None = None
    radiators: Annotated[tuple[Radiator, ...], Meta(max_length=20)] | None = None
    air_vents: Annotated[tuple[AirVent, ...], Meta(max_length=20)] | None = None
    alarms: Annotated[tuple[Alarm, ...], Meta(max_length=20)] | None = None
    data_count: Annotated[int, Meta(ge=0, le=20)] | None = None
    aerial_count: Annotated[int, Meta(ge=0, le=20)] | None = None


class Flue(StrEnum):
    """State of a flue in the wall."""

    NONE = "none"
    IN_USE = "in_use"
    OPEN = "open"
    BLOCKED_AND_VENTED = "blocked_and_vented"
    BLOCKED_NOT_VENTED = "blocked_not_vented"
    UNKNOWN = "unknown"


class ExistingBreast(StrEnum):
    """An old masonry breast at this place."""

    NONE = "none"
    KEPT = "kept"
    REMOVED_ABOVE = "removed_above"
    REMOVED_BELOW = "removed_below"
    TO_BE_COVERED = "to_be_covered"


class Chimney(Input, frozen=True, kw_only=True):
    """The old chimney, if there is one."""

    flue: Flue | None = None
    flue_shared: Answer | None = None
    vent_x_mm: WallXMm | None = None
    vent_z_mm: HeightZMm | None = None
    existing_breast: ExistingBreast | None = None
    existing_breast_width_mm: PartMm | None = None
    existing_breast_depth_mm: Annotated[float, Meta(gt=0, le=1_500)] | None = None
    front_thickness_mm: Annotated[float, Meta(ge=0, le=1_000)] | None = None
    hearth_height_mm: Annotated[float, Meta(ge=0, le=600, description="Height of an old hearth; 0 is flush.")] | None = None
