"""The whole survey: its parts, where each value comes from, which cautions were cleared."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.ceiling import Ceiling
from service.survey.fields import Input
from service.survey.floor import Floor
from service.survey.measured import Measured
from service.survey.room import Room
from service.survey.services import Chimney, Services
from service.survey.site import Site
from service.survey.wall import Wall
from service.survey.wishes import Brief
from service.units import IsoDate, LongText, Pointer, ShortText


class Provenance(StrEnum):
    """How a value is known."""

    MEASURED = "measured"
    STATED = "stated"
    ASSUMED = "assumed"


class ClearingRole(StrEnum):
    """Who may clear a caution."""

    SURVEYOR = "surveyor"
    ELECTRICIAN = "electrician"
    GAS_ENGINEER = "gas_engineer"
    STRUCTURAL_ENGINEER = "structural_engineer"
    MAKER = "maker"
    OWNER = "owner"
    BUILDING_CONTROL = "building_control"


class Cleared(Input, frozen=True, kw_only=True):
    """A caution that somebody entitled has cleared; it stays in every document as cleared by that person."""

    code: Annotated[str, Meta(pattern=r"^[A-Z][0-9]{2}[a-z]?(?!\n)$")]
    pointer: Pointer | None = None
    name: ShortText
    role: ClearingRole
    on: IsoDate
    evidence: LongText


class Survey(Input, frozen=True, kw_only=True):
    """A room survey with the wishes of the customer. Every part left out takes its defaults, which are listed."""

    room: Room | None = None
    wall: Wall | None = None
    ceiling: Ceiling | None = None
    floor: Floor | None = None
    services: Services | None = None
    chimney: Chimney | None = None
    site: Site | None = None
    brief: Brief
    measured: Measured | None = None
    provenance: Annotated[dict[Pointer, Provenance], Meta(max_length=200)] | None = None
    cleared: Annotated[tuple[Cleared, ...], Meta(max_length=60)] | None = None
