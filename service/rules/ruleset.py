"""The rule set: numbers of the trade and the standards as typed values, each read from a row that names its source.

A rule set is an argument of whatever uses it, never a module global: two requests may ask for two editions.
"""

from __future__ import annotations

import msgspec

from service.rules.eurocode import (
    ActionRules,
    DurationFactors,
    MemberRules,
    PartialFactors,
    ScrewRules,
    StrengthClass,
    WallLoad,
    WallRules,
)
from service.rules.limits import AccessRules, HeatRules, LiftZone, PowerRules, ViewingRules


class Source(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Where a number comes from; "house choice" and "common practice, no source" are documents too."""

    document: str
    edition: str = ""
    clause: str = ""


class Rule(msgspec.Struct, frozen=True, kw_only=True):
    """One row: the number, from when it holds, who says so."""

    key: str  # `frame.gap_over_fire_mm`
    value: int | float
    valid_from: str
    source: Source
    note: str = ""


class FrameRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Layout of frame and boards (`knowledge/framing.md`)."""

    gap_over_fire_mm: float
    gap_beside_fire_mm: float
    rear_clearance_mm: float
    frame_inset_mm: float
    upstand_mm: float
    screen_gap_mm: float
    hands_gap_mm: float
    lining_mm: float
    backboard_mm: float
    lid_mm: float
    glass_set_back_mm: float
    cable_room_mm: float
    straight_plug_room_mm: float
    ceiling_packing_mm: float
    scribe_mm: float
    skim_mm: float
    after_measure_allowance_mm: float
    ladder_pitch_mm: float
    shortest_bar_piece_mm: float
    least_noggin_mm: float
    least_cheek_mm: float
    least_cripple_mm: float
    bottom_noggin_room_mm: float
    low_platform_room_mm: float
    pad_rest_mm: float
    greatest_packer_mm: float
    high_platform_mm: float
    part_height_below_ceiling_mm: float
    ply_none_up_to_mm: float
    ply_one_up_to_mm: float
    upright_fixing_pitch_mm: float
    rail_fixing_pitch_mm: float
    cable_zone_mm: float
    joint_support_mm: float
    joint_off_corner_mm: float
    least_strip_mm: float
    measured_height_doubt_mm: float
    measured_height_refused_mm: float
    measured_size_doubt_mm: float
    measured_size_refused_mm: float
    longest_handy_panel_mm: float
    least_cable_space_mm: float
    noggin_between_joists_pitch_mm: float
    soundbar_room_mm: float
    shadow_gap_from_mm: float
    side_packing_mm: float
    side_fixing_from_end_mm: float


class DefaultRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What a survey field is taken as when it is left out (`knowledge/survey.md`)."""

    clear_height_mm: float
    wall_length_mm: float
    seat_distance_mm: float
    eye_height_mm: float
    wall_lining_mm: float
    wall_void_mm: float
    plumb_mm: float
    square_mm: float
    flat_mm: float
    floor_fall_mm: float
    ceiling_lining_mm: float
    joist_thickness_mm: float
    skirting_height_mm: float
    skirting_thickness_mm: float
    platform_height_mm: float
    longest_length_house_mm: float
    longest_length_flat_mm: float
    longest_length_winding_mm: float
    largest_board_length_mm: float
    largest_board_width_mm: float
    ripped_board_width_mm: float
    narrowest_door_mm: float
    socket_height_mm: float
    parking_distance_mm: float
    unit_width_step_mm: float


class HandlingRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Lifting and carrying (`knowledge/handling.md`, `knowledge/labour.md` section 2)."""

    awkward_load_ratio: float
    timber_density_kg_m3: float
    two_person_board_m2: float
    two_person_length_m: float
    two_person_mass_kg: float
    heavy_fire_kg: float
    heavy_screen_kg: float


class TakeOffRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Counting of materials and time (`knowledge/materials.md`, `knowledge/cladding.md`, `knowledge/labour.md`)."""

    joint_screw_count: int
    laminating_pitch_mm: float
    ply_end_screw_count: int
    fire_screw_count: int
    board_screw_pitch_mm: float
    plasterboard_screw_pitch_mm: float
    cement_screw_pitch_mm: float
    field_column_pitch_mm: float
    filler_ml_per_screw_ml: float
    filler_ml_per_m_joint_ml: float
    paint_edge_m2: float
    opening_not_painted_m2: float
    skirting_over_platform_mm: float
    timber_kerf_mm: float
    board_kerf_mm: float
    scored_board_kerf_mm: float
    least_offcut_mm: float
    least_offcut_board_mm: float
    waste_of_bought_ratio: float
    packaging_kg: float
    waste_kg_m3: float
    load_m3: float
    waste_sack_kg: float
    small_job_m2: float
    dust_sheet_count: int
    sheet_route_m: float
    board_thread_mm: float
    screw_grip_diameter_ratio: float
    wall_packing_mm: float
    counterbore_mm: float
    counterbore_leaves_mm: float
    ceiling_thread_mm: float
    stud_thread_mm: float
    carry_free_m: float
    carry_step_m: float
    fall_extra_mm: float
    lean_extra_mm: float


class RuleSet(msgspec.Struct, frozen=True, kw_only=True):
    """One edition of all rules, and the rows that they were read from."""

    edition: str
    frame: FrameRules
    defaults: DefaultRules
    handling: HandlingRules
    take_off: TakeOffRules
    timber: tuple[StrengthClass, ...]
    materials: tuple[DurationFactors, ...]
    partial: PartialFactors
    members: MemberRules
    actions: ActionRules
    screws: ScrewRules
    walls: WallRules
    wall_loads: tuple[WallLoad, ...]
    heat: HeatRules
    power: PowerRules
    viewing: ViewingRules
    access: AccessRules
    lifting: tuple[LiftZone, ...]
    rows: tuple[Rule, ...]

    def strength_class(self, name: str) -> StrengthClass:
        """Values of a class of timber, such as `C16`.

        Raises:
            KeyError: no row of that class: timber without a known class has no strength.
        """
        return _named(self.timber, name)

    def duration_factors(self, name: str) -> DurationFactors:
        """k_mod and k_def of a material in a service class, such as `solid_timber_1`.

        Raises:
            KeyError: the standard gives none.
        """
        return _named(self.materials, name)

    def wall_load(self, name: str) -> WallLoad:
        """Working load for an estimate, such as that of `solid_brick.sound.plug_10`.

        Raises:
            KeyError: no value of that fixing in that wall.
        """
        return _named(self.wall_loads, name)

    def lift_zone(self, name: str) -> LiftZone:
        """The lift filter in a zone, such as `above_shoulder`.

        Raises:
            KeyError: no such zone.
        """
        return _named(self.lifting, name)


def _named[Row: StrengthClass | DurationFactors | WallLoad | LiftZone](rows: tuple[Row, ...], name: str) -> Row:
    for row in rows:
        if row.name == name:
            return row
    raise KeyError(name)
