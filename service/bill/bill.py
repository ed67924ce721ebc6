"""The bill as a value: what to buy, by code and pack, each line with the rule that it comes from."""

from __future__ import annotations

from enum import StrEnum

import msgspec


class LineGroup(StrEnum):
    """What a line is for the build-up of the price."""

    MATERIAL = "material"
    DISPOSAL = "disposal"  # a preliminary, not a material
    HIRE = "hire"  # a preliminary, not a material


class BillLine(msgspec.Struct, frozen=True, kw_only=True):
    """One thing to buy."""

    code: str  # empty: the catalogue holds nothing for it; a person must choose
    description: str
    group: LineGroup
    unit: str  # what one pack is called
    need: float | None  # what is used, before waste, in `need_unit`; None: the packs are a cutting plan
    need_unit: str
    waste_ratio: float
    packs_count: int
    used_packs_ratio: float  # packs really used, waste included: what `pro_rata` charges
    charged_ratio: float  # share of the price that is charged: 1, or less for things used again
    rule: str  # the rule the number comes from, with its working


class Counts(msgspec.Struct, frozen=True, kw_only=True):
    """Counted things (`knowledge/materials.md`, section 1)."""

    bar_pieces_count: int
    butting_count: int  # members that butt at both ends, plies left out
    joints_count: int
    wide_joints_count: int  # driven through the wide side d
    laminating_screws_count: int  # with those at the ends of plies
    ply_end_screws_count: int  # of these, the ones that hand a ply's load over at a jack
    rail_brackets_count: int  # light ones, at the ends of timber
    heavy_brackets_count: int
    base_brackets_count: int
    wall_fixings_count: int  # of the upper frame
    ceiling_screws_count: int
    joist_noggins_count: int
    face_screws_count: int  # faces and returns
    lid_screws_count: int
    lining_screws_count: int
    backboard_screws_count: int
    openings_count: int
    grilles_count: int
    small_openings_count: int  # sockets, plates, grilles
    side_fixings_count: int = 0  # of ladders into a side wall
    more_packers_count: int = 0  # where ceiling or wall are further off than usual
    access_panels_count: int = 0
    ledges: tuple[str, ...] = ()  # beams and shelves over the fire, as words
    ledge_fixings_count: int = 0
    firrings_count: int = 0
    firrings_m: float = 0.0


class Measures(msgspec.Struct, frozen=True, kw_only=True):
    """Measured lengths and areas (`knowledge/materials.md`, section 2; `knowledge/cladding.md`, section 5)."""

    return_edge_m: float  # upright wall edges: of each return, or of the face at a side wall
    ceiling_edge_m: float  # W and D of each return in full height, else 0
    lid_edge_m: float  # W of a lid, and D at each side wall; else 0
    lining_corner_m: float  # the four inner corners of the recess
    recess_perimeter_m: float
    ply_m: float
    face_joint_m: float  # joints between facing boards
    skirting_m: float
    skirting_runs_mm: tuple[int, ...]  # one piece each, as cut
    skirting_joints_count: int  # external mitres, and scribes against the old skirting
    bead_edges_mm: tuple[int, ...]
    scrim_m: float
    facing_gross_m2: float  # faces, returns; cut-outs not taken off
    lid_m2: float
    lining_m2: float
    backboard_m2: float
    visible_m2: float  # faces and returns less openings over the limit
    lid_visible_m2: float
    cut_edge_m: float  # in sight, painted board only
    skim_m2: float
    paint_m2: float
    painted_board_gross_m2: float  # filled and sanded: linings and lid; faces and returns unless skimmed or taped


class Bill(msgspec.Struct, frozen=True, kw_only=True):
    """Everything to buy for one breast, and the quantities it was counted from."""

    lines: tuple[BillLine, ...]
    counts: Counts
    measures: Measures
    mass_bought_kg: float
    waste_kg: float
