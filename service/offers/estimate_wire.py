"""What an estimate is asked, and what it answers. Totals with tax only: nothing of what the shop pays."""

from __future__ import annotations

from typing import Annotated

import msgspec
from msgspec import Meta

from service.checks import Caution
from service.errors import Unmet
from service.quote import AlternativeAnswer, Origin, RecessSize
from service.survey import SurveyRequest
from service.survey.appliance import CatalogueAppliance, OpenEnds, SizeClassAppliance
from service.survey.ceiling import JoistDirection
from service.survey.fields import Input
from service.survey.services import SupplyWanted
from service.survey.wall import WallConstruction
from service.survey.wishes import CatalogueScreen, Finish, SizeClassScreen
from service.units import IsoDate, Money, Pointer

type Scalar = str | int | float | bool | None
type RoomHeightMm = Annotated[float, Meta(ge=1_900, le=4_500, description="Floor to ceiling, mm; usually 2200 to 3000.")]


class RoomAnswers(Input, frozen=True, kw_only=True):
    """What a shopper may say of the room. Whatever is left out is assumed, and the answer says what that may cost."""

    room_height_mm: RoomHeightMm | None = None
    wall: WallConstruction | None = None
    joists: JoistDirection | None = None
    floor_fall_mm: Annotated[float, Meta(ge=0, le=60, description="How much the floor falls over the breast, mm.")] | None = None
    supply: SupplyWanted | None = None
    flights_count: Annotated[int, Meta(ge=0, le=40, description="Flights of stairs up to the room.")] | None = None
    finish: Finish | None = None
    breast_width_mm: Annotated[float, Meta(ge=400, le=8_000)] | None = None
    breast_depth_mm: Annotated[float, Meta(ge=100, le=1_500)] | None = None
    platform_height_mm: Annotated[float, Meta(ge=0, le=1_500)] | None = None
    sill_above_appliance_mm: Annotated[float, Meta(ge=0, le=2_000)] | None = None
    date: IsoDate | None = None  # of the prices; left out: today


class EstimateRequest(RoomAnswers, frozen=True, kw_only=True):
    """A handful of answers."""

    appliance: CatalogueAppliance | SizeClassAppliance
    screen: CatalogueScreen | SizeClassScreen | None = None  # null: no screen; `bought: false`: none yet, room for one
    open_ends: OpenEnds | None = None


class Range(msgspec.Struct, frozen=True, kw_only=True):
    """A price with tax, rounded outward to ten units of its currency.

    `low` and `high` are the 10th and the 90th percentile of what the work may come to once the room is surveyed.
    """

    low: Money
    likely: Money
    high: Money


class EffectAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """Something assumed. Effects are on the price with tax, against the price with the value taken; null: not reckoned alone."""

    pointer: Pointer  # into `request`; empty: of no single field
    value: Scalar  # taken
    says: str
    effect_low: Money | None
    effect_high: Money | None


class QuestionAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """An answer that would narrow the range, and by how much on average."""

    member: str  # of the body of an estimate
    asks: str
    narrows_by: Money


class HeadSizes(msgspec.Struct, frozen=True, kw_only=True):
    """The breast in a few sizes."""

    finished_width_mm: float
    finished_depth_mm: float
    finished_top_mm: float
    platform_mm: float
    opening_width_mm: float
    opening_height_mm: float
    recess_clear: RecessSize | None
    screen_centre_mm: float | None


class Estimated(msgspec.Struct, frozen=True, kw_only=True, tag="designed", tag_field="outcome"):
    """A price range for a breast that was laid out, checked, cut and taken off. It is never firm."""

    price: Range
    complete: bool  # false: something has no price and is not in the range, see `not_in_price`
    not_in_price: tuple[str, ...]
    sizes: HeadSizes
    on_site_days: int
    assumptions: tuple[EffectAnswer, ...]  # greatest effect first
    narrowing: tuple[QuestionAnswer, ...]  # at most three, best first
    cautions: tuple[Caution, ...]  # those for a buyer
    not_proven: tuple[str, ...]
    meaning: str  # of low and high
    picture: str | None  # address of a picture; null: this version makes no such addresses, see POST /v1/drawings
    request: SurveyRequest  # the survey that was designed: goes on as it is to POST /v1/quotes
    origin: Origin


class NotEstimated(msgspec.Struct, frozen=True, kw_only=True, tag="unbuildable", tag_field="outcome"):
    """What was asked cannot be built: why, and the nearest designs that can. Their patches are on `request`."""

    unmet: tuple[Unmet, ...]
    alternatives: tuple[AlternativeAnswer, ...]
    no_alternative: str
    request: SurveyRequest
    origin: Origin


type EstimateAnswer = Estimated | NotEstimated
