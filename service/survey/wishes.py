"""What is wanted: the fire, the screen, the shape of the breast, timber, board, finish and extras.

Field tables: `knowledge/survey.md`, section 10; `knowledge/heat.md`, section 2; `knowledge/viewing.md`, section 5.
Every size is in millimetres, every mass in kilograms.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from msgspec import Meta

from service.survey.appliance import ApplianceChoice, OpenEnds
from service.survey.fields import Answer, Input, MassKg, PartMm, PowerW, SmallMm
from service.units import Code, ShortText


class Thread(StrEnum):
    """Screw thread in the back of a screen."""

    M4 = "m4"
    M6 = "m6"
    M8 = "m8"


class Connectors(StrEnum):
    """Where the plugs of a screen sit."""

    SIDE = "side"
    DOWN = "down"
    REAR = "rear"


class Sound(StrEnum):
    """Where the loudspeakers of a screen point."""

    DOWN = "down"
    REAR = "rear"
    FRONT = "front"


class CatalogueScreen(Input, frozen=True, kw_only=True, tag="catalogue", tag_field="kind"):
    """A screen of the catalogue."""

    model: Code


class CustomScreen(Input, frozen=True, kw_only=True, tag="custom", tag_field="kind"):
    """A screen described by its data sheet; sizes are of the body, without the stand."""

    name: ShortText
    diagonal_in: Annotated[float, Meta(ge=10, le=120, description="Diagonal of the picture, inches.")]
    picture_width_mm: PartMm | None = None
    picture_height_mm: PartMm | None = None
    body_width_mm: PartMm
    body_height_mm: PartMm
    body_depth_mm: Annotated[float, Meta(gt=0, le=300)]
    mass_kg: Annotated[float, Meta(gt=0, le=150)]
    hole_pattern_width_mm: Annotated[float, Meta(ge=50, le=1_200)]
    hole_pattern_height_mm: Annotated[float, Meta(ge=50, le=1_000)]
    hole_centre_offset_mm: Annotated[float, Meta(ge=-500, le=500, description="Pattern centre above body centre.")] | None = None
    thread: Thread = Thread.M6
    greatest_thread_depth_mm: SmallMm | None = None
    least_gap_mm: SmallMm | None = None
    gap_top_mm: SmallMm | None = None
    gap_side_mm: SmallMm | None = None
    gap_bottom_mm: SmallMm | None = None
    power_w: PowerW | None = None
    max_ambient_deg_c: Annotated[float, Meta(ge=0, le=100)] | None = None
    connectors: Connectors | None = None
    straight_plug_length_mm: SmallMm | None = None
    sound: Sound | None = None
    recess_allowed: Answer | None = None


class SizeClassScreen(Input, frozen=True, kw_only=True, tag="size_class", tag_field="kind"):
    """A screen of which only the diagonal is known, or room for one to come."""

    diagonal_in: Annotated[float, Meta(ge=20, le=110)]
    bought: bool = True  # False: no screen yet, room for up to this size


type ScreenChoice = CatalogueScreen | CustomScreen | SizeClassScreen


class BracketKind(StrEnum):
    """How a wall bracket moves."""

    FIXED = "fixed"
    TILT = "tilt"
    PULL_OUT = "pull_out"
    ARM = "arm"


class HandsAt(StrEnum):
    """Where fingers must reach behind the screen."""

    NONE = "none"
    SIDES = "sides"


class CatalogueBracket(Input, frozen=True, kw_only=True, tag="catalogue", tag_field="kind"):
    """A screen bracket of the catalogue."""

    model: Code


class CustomBracket(Input, frozen=True, kw_only=True, tag="custom", tag_field="kind"):
    """A screen bracket described by its leaflet."""

    name: ShortText
    bracket_kind: BracketKind
    depth_mm: Annotated[float, Meta(ge=5, le=300)]
    reach_mm: Annotated[float, Meta(ge=5, le=1_500)] | None = None
    mass_kg: MassKg
    rating_kg: Annotated[float, Meta(gt=0, le=300)]
    plate_width_mm: PartMm
    plate_height_mm: PartMm
    plate_hole_width_mm: PartMm
    plate_hole_height_mm: PartMm
    fixing_count: Annotated[int, Meta(ge=2, le=16)] = 4
    screen_pattern_least_width_mm: PartMm
    screen_pattern_greatest_width_mm: PartMm
    screen_pattern_least_height_mm: PartMm
    screen_pattern_greatest_height_mm: PartMm
    plate_hole_diameter_mm: Annotated[float, Meta(gt=0, le=30)] | None = None
    tilt_deg: Annotated[float, Meta(ge=0, le=45)] | None = None
    tilt_clearance_mm: SmallMm | None = None
    approval: ShortText | None = None
    hands_at: HandsAt = HandsAt.NONE
    lift_height_mm: SmallMm | None = None


type BracketChoice = CatalogueBracket | CustomBracket


class TopCeiling(Input, frozen=True, kw_only=True, tag="ceiling", tag_field="kind"):
    """The breast goes up to the ceiling."""


class TopPartHeight(Input, frozen=True, kw_only=True, tag="part_height", tag_field="kind"):
    """The breast stops below the ceiling and gets a lid."""

    height_mm: Annotated[float, Meta(ge=400, le=4_500, description="Top of the lid above the floor, mm.")]


type TopChoice = TopCeiling | TopPartHeight


class StrengthClass(StrEnum):
    """Strength classes of softwood in EN 338:2016 that studding is sold in."""

    C14 = "C14"
    C16 = "C16"
    C18 = "C18"
    C20 = "C20"
    C22 = "C22"
    C24 = "C24"
    C27 = "C27"
    C30 = "C30"


class CatalogueTimber(Input, frozen=True, kw_only=True, tag="catalogue", tag_field="kind"):
    """One stick of the catalogue; it names the section and class, and every length of these is stock."""

    code: Code


class CustomTimber(Input, frozen=True, kw_only=True, tag="custom", tag_field="kind"):
    """A section that the shop does not list; it must be strength graded."""

    thickness_mm: Annotated[float, Meta(ge=25, le=100, description="Narrow side b, mm.")]
    width_mm: Annotated[float, Meta(ge=38, le=250, description="Wide side d, mm.")]
    strength_class: StrengthClass
    lengths_mm: Annotated[tuple[Annotated[float, Meta(ge=1_800, le=6_000)], ...], Meta(min_length=1, max_length=12)]


type TimberChoice = CatalogueTimber | CustomTimber


class BoardKind(StrEnum):
    """What a board is made of."""

    MDF = "mdf"
    PLASTERBOARD = "plasterboard"
    PLYWOOD = "plywood"
    CEMENT_BOARD = "cement_board"
    CALCIUM_SILICATE = "calcium_silicate"


class CatalogueBoard(Input, frozen=True, kw_only=True, tag="catalogue", tag_field="kind"):
    """One sheet of the catalogue."""

    code: Code


class CustomBoard(Input, frozen=True, kw_only=True, tag="custom", tag_field="kind"):
    """A sheet that the shop does not list."""

    board_kind: BoardKind
    thickness_mm: Annotated[float, Meta(ge=6, le=30)]
    sheet_length_mm: Annotated[float, Meta(ge=900, le=4_000)]
    sheet_width_mm: Annotated[float, Meta(ge=600, le=2_000)]
    density_kg_m3: Annotated[float, Meta(ge=200, le=2_500)]


type BoardChoice = CatalogueBoard | CustomBoard


class Finish(StrEnum):
    """How the face is finished."""

    PAINTED = "painted"
    TAPED = "taped"
    SKIMMED = "skimmed"
    TILED = "tiled"
    SLATTED = "slatted"


class ScreenPlace(StrEnum):
    """Where the screen hangs."""

    RECESS = "recess"
    ON_FACE = "on_face"


class CorniceWish(StrEnum):
    """What happens to a cornice."""

    STOP_UNDER = "stop_under"
    RETURN_ROUND = "return_round"


class ExtraKind(StrEnum):
    """Things besides the plain breast."""

    SHELF = "shelf"
    BEAM = "beam"
    SOUNDBAR_NICHE = "soundbar_niche"
    LIGHTS = "lights"
    ACCESS_PANEL = "access_panel"
    ALCOVE_UNIT = "alcove_unit"


class Side(StrEnum):
    """An end of the breast as one faces it."""

    LEFT = "left"
    RIGHT = "right"


class Extra(Input, frozen=True, kw_only=True):
    """One thing besides the plain breast, with its size and mass."""

    kind: ExtraKind
    width_mm: PartMm | None = None
    height_mm: PartMm | None = None
    depth_mm: PartMm | None = None
    mass_kg: MassKg | None = None
    above_opening_mm: SmallMm | None = None  # underside of a beam or shelf over the top of the fire opening
    side: Side | None = None  # of an access panel; left out: where there is a return


class Brief(Input, frozen=True, kw_only=True):
    """What is wanted. A wish left out is a house choice and is listed in `assumptions`."""

    appliance: ApplianceChoice
    screen: ScreenChoice | None = None
    screen_bracket: BracketChoice | None = None
    open_ends: OpenEnds | None = None
    breast_width_mm: Annotated[float, Meta(ge=400, le=8_000)] | None = None
    breast_depth_mm: Annotated[float, Meta(ge=100, le=1_500)] | None = None
    top: TopChoice | None = None
    platform_height_mm: Annotated[float, Meta(ge=0, le=1_500, description="Top of the base, mm; usually 0 to 700.")] | None = None
    sill_above_appliance_mm: Annotated[
        float, Meta(ge=0, le=2_000, description="Underside of the upper frame to underside of the recess lining, mm.")
    ] | None = None  # fmt: skip
    appliance_shift_mm: Annotated[float, Meta(ge=-2_000, le=2_000, description="Fire right of breast centre.")] | None = None
    screen_gap_mm: Annotated[float, Meta(ge=50, le=400)] | None = None
    hands_at: HandsAt | None = None
    glass_set_back_mm: Annotated[float, Meta(ge=0, le=200)] | None = None
    cable_room_mm: Annotated[float, Meta(ge=0, le=200)] | None = None
    screen_place: ScreenPlace | None = None
    timber: TimberChoice | None = None
    board: BoardChoice | None = None
    finish: Finish | None = None
    facing_kg_m2: Annotated[float, Meta(ge=0, le=200)] | None = None
    cornice: CorniceWish | None = None
    after_measure_allowance_mm: Annotated[float, Meta(ge=0, le=100)] | None = None
    extras: Annotated[tuple[Extra, ...], Meta(max_length=20)] | None = None
