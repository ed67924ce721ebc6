"""The laid-out frame as a value: members, panels, fixings, openings, levels, sizes and the sums that must hold."""

from __future__ import annotations

from enum import StrEnum

import msgspec

from service.frame.additions import Additions
from service.frame.member import Box, CutWhen, Member


class PanelRole(StrEnum):
    """What a board is (`knowledge/framing.md`, section 11)."""

    FACE_BASE = "face_base"
    FACE_CHEEK_LEFT = "face_cheek_left"
    FACE_CHEEK_RIGHT = "face_cheek_right"
    FACE_UPPER = "face_upper"
    RETURN_LEFT = "return_left"  # closed end: floor to top
    RETURN_RIGHT = "return_right"
    RETURN_BASE_LEFT = "return_base_left"  # open end: below the glass
    RETURN_BASE_RIGHT = "return_base_right"
    RETURN_UPPER_LEFT = "return_upper_left"  # open end: above the glass
    RETURN_UPPER_RIGHT = "return_upper_right"
    RETURN_ACCESS_LEFT = "return_access_left"  # a removable panel in a return
    RETURN_ACCESS_RIGHT = "return_access_right"
    PATTRESS = "pattress"  # behind the face, to fix a beam or shelf into
    LID = "lid"
    LINING_BOTTOM = "lining_bottom"
    LINING_TOP = "lining_top"
    LINING_LEFT = "lining_left"
    LINING_RIGHT = "lining_right"
    BACKBOARD = "backboard"
    LINING_NICHE_BOTTOM = "lining_niche_bottom"
    LINING_NICHE_TOP = "lining_niche_top"
    LINING_NICHE_LEFT = "lining_niche_left"
    LINING_NICHE_RIGHT = "lining_niche_right"
    BACKBOARD_NICHE = "backboard_niche"
    PAD = "pad"  # one sheet of the solid pad of a very low platform


class Layer(StrEnum):
    """Which board a panel is cut from."""

    FACING = "facing"  # faces and returns: the board of the brief
    LID = "lid"
    LINING = "lining"
    BACKBOARD = "backboard"
    PAD = "pad"


class CutOut(msgspec.Struct, frozen=True, kw_only=True):
    """A hole in a panel, from the panel's lower left corner as one faces it."""

    kind: str  # `recess`, `niche`
    x_tenth_mm: int
    y_tenth_mm: int
    width_tenth_mm: int
    height_tenth_mm: int


class Panel(msgspec.Struct, frozen=True, kw_only=True):
    """One board as cut. Width runs along the wall for faces, out of it for returns; height up, or out for a lid."""

    mark: str  # "P-FU1"
    role: PanelRole
    layer: Layer
    board_code: str  # empty: a custom board
    thickness_tenth_mm: int
    width_tenth_mm: int
    height_tenth_mm: int
    cut_width_mm: int
    cut_height_mm: int
    cut_when: CutWhen
    box: Box
    cut_outs: tuple[CutOut, ...] = ()
    taper_tenth_mm: int = 0  # its low edge is cut tapered by this much for the fall of the floor
    rise_tenth_mm: int = 0  # its upper edge is cut tapered by this much to an uneven ceiling
    joint_below: bool = False  # its lower edge is a joint with the strip below
    joint_left: bool = False


class Opening(msgspec.Struct, frozen=True, kw_only=True):
    """A hole in the front of the frame: the fire's or the screen recess."""

    kind: str  # `fire`, `recess`, `niche`
    x0_tenth_mm: int
    x1_tenth_mm: int
    z0_tenth_mm: int
    z1_tenth_mm: int


class Levels(msgspec.Struct, frozen=True, kw_only=True):
    """Heights above the highest floor point; None without a screen."""

    platform_tenth_mm: int  # z0
    appliance_top_tenth_mm: int  # z1: top of the opening, underside of the upper frame
    upper_top_tenth_mm: int  # z2
    finished_top_tenth_mm: int  # H or P
    recess_sill_tenth_mm: int | None = None  # zs
    recess_head_tenth_mm: int | None = None  # zh
    screen_centre_tenth_mm: int | None = None  # zc


class Recess(msgspec.Struct, frozen=True, kw_only=True):
    """The screen recess. Clear sizes are inside the linings, framing sizes inside the timber."""

    clear_width_tenth_mm: int
    clear_height_tenth_mm: int
    depth_tenth_mm: int  # Dr, from the finished face
    framing_width_tenth_mm: int
    framing_height_tenth_mm: int
    framing_depth_tenth_mm: int  # of the linings: Dr - tf
    full_width: bool  # without jamb studs
    jamb_gap_tenth_mm: int  # between jamb and ladder; 0 when full width
    rest_behind_bearers_tenth_mm: int
    row_levels_tenth_mm: tuple[int, ...]  # heights of the bracket's hole rows
    bearer_back_tenth_mm: int  # yb: front face of the bearers


class Sizes(msgspec.Struct, frozen=True, kw_only=True):
    """Overall sizes (`knowledge/framing.md`, section 2)."""

    finished_width_tenth_mm: int  # W
    finished_depth_tenth_mm: int  # D
    frame_width_tenth_mm: int  # Wf
    frame_depth_tenth_mm: int  # Df
    rail_length_tenth_mm: int  # Lr
    cross_noggin_length_tenth_mm: int  # n
    opening_width_tenth_mm: int  # Ao
    opening_height_tenth_mm: int  # Az
    upper_height_tenth_mm: int  # Hu
    trimmer_span_tenth_mm: int
    board_opening_width_tenth_mm: int  # of the cut edge of the board around the fire
    recess: Recess | None = None
    beside_left_tenth_mm: int = 0  # frame to finished end: board and skim, or the packing to a side wall
    beside_right_tenth_mm: int = 0


class Term(msgspec.Struct, frozen=True, kw_only=True):
    """One part of a closure sum."""

    name: str
    value_tenth_mm: int


class Closure(msgspec.Struct, frozen=True, kw_only=True):
    """A sum of parts that must equal a whole exactly."""

    name: str
    terms: tuple[Term, ...]
    total_name: str
    total_tenth_mm: int


class WallFixing(msgspec.Struct, frozen=True, kw_only=True):
    """One fixing of the upper frame into the wall, driven through a rear member."""

    x_tenth_mm: int
    z_tenth_mm: int
    counted: bool  # False: lies in a cable zone that was not scanned
    through: str  # mark of the member
    packing_tenth_mm: int = 0  # behind the frame, where the wall leans


class CeilingScrew(msgspec.Struct, frozen=True, kw_only=True):
    """One screw through a top rail into a joist."""

    x_tenth_mm: int
    y_tenth_mm: int
    through: str
    packing_tenth_mm: int = 0  # between rail and ceiling


class SideFixing(msgspec.Struct, frozen=True, kw_only=True):
    """One fixing through the front upright of a ladder into the side wall that it stands against."""

    left: bool
    y_tenth_mm: int
    z_tenth_mm: int
    through: str


class Ledge(msgspec.Struct, frozen=True, kw_only=True):
    """A beam or shelf on the face over the fire: where it stands before the face, its mass, its fixings."""

    kind: str  # `beam`, `shelf`
    box: Box
    mass_kg: float
    fixings_count: int  # one at every stud that it crosses


class Station(msgspec.Struct, frozen=True, kw_only=True):
    """One line of uprights of the base: bracket to the wall, packers for the fall of the floor."""

    x_tenth_mm: int
    packer_tenth_mm: int  # the greater of both
    rear_packer_tenth_mm: int = 0
    front_packer_tenth_mm: int = 0


class Frame(msgspec.Struct, frozen=True, kw_only=True):
    """A frame that closes to a tenth of a millimetre."""

    members: tuple[Member, ...]
    panels: tuple[Panel, ...]
    openings: tuple[Opening, ...]
    levels: Levels
    sizes: Sizes
    closures: tuple[Closure, ...]
    stations: tuple[Station, ...]
    joist_noggin_count: int  # noggins to be fitted between joists
    wall_fixings: tuple[WallFixing, ...]
    ceiling_screws: tuple[CeilingScrew, ...]
    ply_count: int
    left_open: bool
    right_open: bool
    full_height: bool
    screen_hung: bool
    additions: Additions  # what strengthening added
    left_wall: bool = False  # that end stands against a side wall: no return there
    right_wall: bool = False
    side_fixings: tuple[SideFixing, ...] = ()
    ledges: tuple[Ledge, ...] = ()
    firrings_tenth_mm: tuple[int, ...] = ()  # lengths of strips ripped to an uneven ceiling, one a top rail
    notes: tuple[str, ...] = ()  # what the fitter must know of how it was laid out

    @property
    def returns_open(self) -> tuple[bool, ...]:
        """Of each end that has a return whether it is open to the glass; an end at a side wall has none."""
        ends = ((self.left_open, self.left_wall), (self.right_open, self.right_wall))
        return tuple(is_open for is_open, at_wall in ends if not at_wall)

    @property
    def niche(self) -> Opening | None:
        """The niche of a soundbar, as framed."""
        return next((one for one in self.openings if one.kind == "niche"), None)

    @property
    def side_walls_count(self) -> int:
        """How many ends stand against a side wall."""
        return self.left_wall + self.right_wall
