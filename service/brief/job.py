"""The job: everything that the frame stage needs, looked up, with every default filled in and named."""

from __future__ import annotations

import msgspec

from service.catalogue import Appliance, Bracket, Screen
from service.survey.appliance import OpenEnds
from service.survey.ceiling import JoistDirection, Noggins
from service.survey.floor import LowEnd
from service.survey.survey import Survey
from service.survey.terms import Terms
from service.survey.wall import WallConstruction
from service.survey.wishes import Finish

type Scalar = str | int | float | bool | None


class Assumption(msgspec.Struct, frozen=True, kw_only=True):
    """A default that was taken because a field was left out."""

    pointer: str
    value: Scalar
    effect: str  # what changes if it is wrong
    house_choice: bool = False  # ours to choose: no unknown, does not keep a quote from being firm
    needed_for_firm: bool = False  # a firm quote wants it measured or stated


class Doubt(msgspec.Struct, frozen=True, kw_only=True):
    """A value inside its hard limits but outside what is usual: accepted, please confirm."""

    pointer: str
    value: Scalar
    says: str


class Timber(msgspec.Struct, frozen=True, kw_only=True):
    """The studding: one section and class, and every length of it that is stock and passes the way in."""

    thickness_tenth_mm: int  # narrow side b
    width_tenth_mm: int  # wide side d
    strength_class: str
    density_kg_m3: float | None = None
    stock: tuple[TimberStock, ...]


class TimberStock(msgspec.Struct, frozen=True, kw_only=True):
    """One length sold."""

    code: str  # empty: a custom section, not in the catalogue
    length_tenth_mm: int


class Board(msgspec.Struct, frozen=True, kw_only=True):
    """A sheet as sold."""

    code: str  # empty: a custom board
    board_kind: str  # mdf, plasterboard, plywood, cement_board, calcium_silicate
    description: str
    thickness_tenth_mm: int
    sheet_length_tenth_mm: int
    sheet_width_tenth_mm: int
    mass_kg_m2: float
    edge: str
    stud_pitch_tenth_mm: int  # greatest centre spacing m of studs behind it


class ScreenGaps(msgspec.Struct, frozen=True, kw_only=True):
    """Free air round the screen."""

    side_tenth_mm: int
    top_tenth_mm: int
    bottom_tenth_mm: int


class Spot(msgspec.Struct, frozen=True, kw_only=True):
    """How far a surface is off at a place along the frame: a ceiling above its lowest point, a floor below its highest."""

    x_tenth_mm: int
    off_tenth_mm: int


class NicheWish(msgspec.Struct, frozen=True, kw_only=True):
    """A niche for a soundbar under the screen."""

    clear_width_tenth_mm: int
    clear_height_tenth_mm: int
    bar_depth_tenth_mm: int  # of the soundbar


class LedgeWish(msgspec.Struct, frozen=True, kw_only=True):
    """A beam or shelf on the face over the fire."""

    kind: str  # `beam`, `shelf`
    width_tenth_mm: int  # 0: as wide as the breast
    height_tenth_mm: int
    projection_tenth_mm: int
    above_tenth_mm: int  # its underside over the top of the opening
    mass_kg: float


class AccessWish(msgspec.Struct, frozen=True, kw_only=True):
    """A removable panel in a return."""

    left: bool | None  # None: where there is a return
    width_tenth_mm: int  # out of the wall; 0: the least
    height_tenth_mm: int


class Job(msgspec.Struct, frozen=True, kw_only=True):
    """One breast to design. Lengths in tenths of a millimetre, frame axes; nothing is left open."""

    survey: Survey  # as sent
    terms: Terms
    today: str  # RFC 3339 full-date of the quote
    rule_edition: str

    appliance: Appliance
    appliance_standing: str  # catalogue, custom, size_class
    screen: Screen | None
    screen_standing: str
    bracket: Bracket | None
    open_ends: OpenEnds
    full_height: bool
    clear_height_tenth_mm: int  # H
    finished_top_tenth_mm: int  # H, or P of a part-height breast
    width_tenth_mm: int | None  # W; None: both ends open, the width is a result
    depth_tenth_mm: int  # D
    platform_tenth_mm: int  # z0
    upstand_tenth_mm: int  # u
    shift_tenth_mm: int  # fire off the centre, + right
    gaps: ScreenGaps
    set_back_tenth_mm: int  # q
    cable_room_tenth_mm: int  # kr
    gap_over_tenth_mm: int  # ca
    gap_beside_tenth_mm: int  # cs
    rear_clearance_tenth_mm: int
    inset_tenth_mm: int  # e
    skim_tenth_mm: int  # s
    finish: Finish
    allowance_mm: int  # bought longer where the length follows from the ceiling

    timber: Timber
    board: Board
    lining: Board
    backboard: Board
    lid: Board
    pads: tuple[Board, ...]  # sheets that a very low platform can be built up from

    wall_construction: WallConstruction
    wall_lining_tenth_mm: int
    wall_void_tenth_mm: int
    studs_tenth_mm: tuple[int, ...] | None  # frame x of host studs; None: not a stud wall, or not known
    joists: JoistDirection
    joists_tenth_mm: tuple[int, ...]  # frame x of joists across the wall that screws may count on
    ceiling_lining_tenth_mm: int
    ceiling_holds_screws: bool
    noggins: Noggins
    cables_scanned: bool
    fall_tenth_mm: int
    low_end: LowEnd
    lean_mm: float
    skirting_height_mm: float
    skirting_thickness_mm: float
    storey_count: int
    parking_distance_mm: float
    largest_board_length_tenth_mm: int  # greatest piece of board that passes the way in
    largest_board_width_tenth_mm: int
    wall_centre_tenth_mm: int  # survey x of the breast's centre
    niche: NicheWish | None = None
    access: AccessWish | None = None
    ledge: LedgeWish | None = None
    leans_in: bool = True  # the wall leans into the room
    ceiling_rear: tuple[Spot, ...] = ()  # rises over the rear of the frame; empty: even
    ceiling_front: tuple[Spot, ...] = ()
    floor_rear: tuple[Spot, ...] = ()  # drops under the rear of the frame; empty: the fall is even
    floor_front: tuple[Spot, ...] = ()
    left_wall: bool = False  # that end stands against a side wall: no return there
    right_wall: bool = False
    side_packing_tenth_mm: int = 0  # between the rear of the ladder and a side wall
    out_of_square_tenth_mm: int = 0  # of a side wall, over the depth of the breast; positive: the gap grows to the front
    side_construction: WallConstruction = WallConstruction.UNKNOWN  # of a side wall that the breast stands against

    assumptions: tuple[Assumption, ...]
    doubts: tuple[Doubt, ...]
    by_hand: tuple[str, ...]  # wishes that this service leaves to a person, as sentences
    missing_figures: tuple[str, ...]  # pointers of maker's figures that the manual does not state
